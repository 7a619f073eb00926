import type { Report } from "../report/schema.ts";

/** A list at the head of an answer. */
export interface Head {
  readonly id: string;
  readonly heading: string;
  readonly lines: readonly string[];
}

/**
 * What stands at the head of an answer, under its headings: what has to be read first, and the amounts that were found; and
 * the other notes.
 *
 * @example byLoudness({ notes: [{ code: "a", text: "first", loud: true }, { code: "b", text: "second" }] }).quiet // => ["second"]
 */
export function byLoudness({ notes }: Report): { readonly heads: readonly Head[]; readonly quiet: readonly string[] } {
  const textsOf = (which: (note: Report["notes"][number]) => boolean): readonly string[] =>
    notes.flatMap((note) => (which(note) ? [note.text] : []));
  const heads = [
    {
      id: "first-of-all",
      heading: "First of all",
      lines: textsOf(({ loud, code }) => loud === true && code !== found),
    },
    { id: "found", heading: "Amounts", lines: textsOf(({ loud, code }) => loud === true && code === found) },
  ];
  return { heads: heads.filter(({ lines }) => lines.length > 0), quiet: textsOf(({ loud }) => loud !== true) };
}

const found = "settle.found";
