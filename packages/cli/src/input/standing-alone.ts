import { parseFile } from "./document.ts";
import { isSection } from "./put.ts";
import type { TextFile } from "./read-file.ts";

/**
 * The data of a spec with the materials and machines of its kitchen files in it, so that it needs none beside it; its own
 * come first.
 *
 * @param files - the spec, then the files it includes
 */
export function standingAlone(data: unknown, [, ...included]: readonly TextFile[]): unknown {
  if (!isSection(data)) return data;
  const { include: _, ...spec } = data;
  const parts = [
    ...included.map((file) => {
      const parsing = parseFile(file);
      return parsing.ok ? parsing.parsed.data : {};
    }),
    spec,
  ];
  // A later one comes first, for names that are read alike, and counts where the name is the same.
  const together = (key: string): Readonly<Record<string, unknown>> => {
    const all = parts.flatMap((part) => (isSection(part) && isSection(part[key]) ? [part[key]] : []));
    return all.length === 0 ? {} : { [key]: Object.assign({}, ...all.toReversed(), ...all) };
  };
  return { ...spec, ...together("materials"), ...together("machines") };
}
