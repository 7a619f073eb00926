import { basename, extname } from "node:path";

/**
 * Names the card of each spec of a folder: the name of the spec with `.html` in place of its ending, or behind it where
 * another spec, or the index, would have the same name.
 */
export function cardNames(specs: readonly string[]): ReadonlyMap<string, string> {
  const stems = specs.map((spec) => basename(spec, extname(spec)));
  const taken = ["index", ...specs, ...stems].map((name) => name.toLowerCase());
  const isOnlyOne = (stem: string): boolean => taken.filter((name) => name === stem.toLowerCase()).length === 1;
  return new Map(
    specs.map((spec, index) => {
      const stem = stems[index] ?? spec;
      return [spec, `${isOnlyOne(stem) ? stem : spec}.html`];
    }),
  );
}
