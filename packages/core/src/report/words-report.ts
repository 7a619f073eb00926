import type { Note } from "../figure/problem.ts";
import { citation } from "../figure/source.ts";
import { listing, report, section, wordColumn } from "./build.ts";
import type { Block, Report } from "./schema.ts";
import { type Word, wordsIn } from "./words.ts";

/** The words that are explained, each with its source. */
export function wordsReport(words: readonly Word[], asked: string, notes: readonly Note[]): Report {
  const explained = listing("words", words, [
    [wordColumn("word", "word"), ({ word }) => word],
    [wordColumn("meaning", "what it means"), ({ meaning }) => meaning],
    [wordColumn("source", "source"), ({ source }) => citation(source)],
  ]);
  return report({
    command: "words",
    title: asked === "" ? "Words" : `Words: ${asked}`,
    main: "words",
    sections: [section("words", "Words", explained)],
    notes,
  });
}

/**
 * The report with the words explained that it uses.
 *
 * @example withWords(askFormula(example("school-noodle")).report()).sections.at(-1).id // => "words"
 */
export function withWords(plain: Report): Report {
  const text = [
    ...plain.sections.flatMap(({ heading, blocks }) => [heading, ...blocks.flatMap(textsIn)]),
    ...plain.notes.map((note) => note.text),
  ].join("\n");
  const lines = wordsIn(text).map(({ word, meaning }) => `${word}: ${meaning}.`);
  if (lines.length === 0) return plain;
  return {
    ...plain,
    sections: [...plain.sections, { id: "words", heading: "Words", blocks: [{ kind: "text", lines }] }],
  };
}

function textsIn(block: Block): readonly string[] {
  switch (block.kind) {
    case "table":
      return [
        ...block.columns.map(({ label }) => label),
        ...block.rows.flatMap(({ cells }) => cells.map(({ text }) => text)),
      ];
    case "figures":
    case "working":
      return block.figures.map(({ label, unit }) => `${label} ${unit}`);
    case "text":
      return block.lines;
    case "picture":
      return [];
  }
}
