import type { Report } from "../report/schema.ts";

/** Heading of what is said before anything else. */
export const firstOfAll = "First of all";

/**
 * The notes that go to the head of an answer, and the others.
 *
 * @example byLoudness({ notes: [{ code: "a", text: "first", loud: true }, { code: "b", text: "second" }] }) // => { loud: ["first"], quiet: ["second"] }
 */
export function byLoudness({ notes }: Report): { readonly loud: readonly string[]; readonly quiet: readonly string[] } {
  return {
    loud: notes.flatMap(({ text, loud }) => (loud ? [text] : [])),
    quiet: notes.flatMap(({ text, loud }) => (loud ? [] : [text])),
  };
}
