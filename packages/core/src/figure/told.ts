import { type Measure, measureText, type UnitSystem } from "./in-system.ts";
import { printable } from "./printable.ts";
import type { Facts, Note, NoteFacts, Problem, ProblemIn } from "./problem.ts";
import type { Inner, NoteEntry, ProblemEntry, Sentences, TellWithin } from "./problems/entry.ts";
import { catalogue } from "./problems/index.ts";

/** A problem in words. */
export interface Told extends Sentences {
  readonly kind: ProblemEntry<never>["kind"];
}

/**
 * What tells the problems of a catalogue.
 *
 * @example telling({ "a.none": input(() => ({ found: "none", expected: "some", advice: "add one" })) })({ code: "a.none", path: [], facts: {} }).advice // => "add one"
 */
export function telling<Facts>(catalogue: { readonly [Code in keyof Facts]: ProblemEntry<Facts[Code]> }) {
  return <Code extends keyof Facts>(
    { code, path, facts }: ProblemIn<Facts, Code>,
    units: UnitSystem = "metric",
  ): Told => {
    // What another version made is data, too.
    if (!Object.hasOwn(catalogue, code)) return unknownCode(String(code));
    const { kind, say } = catalogue[code];
    const { found, expected, advice, lines } = say(
      facts,
      path,
      within(units, (inner) => toldIn(units)(inner as Problem)),
    );
    const words = { kind, found: printable(found), expected: printable(expected), advice: printable(advice) };
    return lines === undefined ? words : { ...words, lines: lines.map(printable) };
  };
}

function unknownCode(code: string): Told {
  const found = printable(`something that this version has no words for: ${code}`);
  return { kind: "no-answer", found, expected: "a code of this version", advice: "ask the version that it comes from" };
}

const problemTold = telling<Facts>(catalogue);

const sentences: { readonly [Code in keyof NoteFacts]: NoteEntry<NoteFacts[Code]> } = catalogue;

function noteTold<Code extends keyof NoteFacts>(
  { code, facts }: ProblemIn<NoteFacts, Code>,
  units: UnitSystem,
): string {
  return sentences[code].say(
    facts,
    within(units, (inner) => toldWithin(inner, units)),
  );
}

/** Tells what stands within a sentence. */
function within<Words>(units: UnitSystem, tell: (inner: Inner) => Words): TellWithin<Words> {
  function toldIn(measure: Measure): string;
  function toldIn(inner: Inner): Words;
  function toldIn(one: Measure | Inner): string | Words {
    return "code" in one ? tell(one) : measureText(one, units);
  }
  return toldIn;
}

/**
 * Tells a problem in words: whose fault it is, what was found, what was expected, what to do. Tells a note in one sentence.
 * Names in it are safe to print. Of a code that this version does not know, it says that.
 *
 * @example told({ code: "stock.no-alkali", path: [], facts: {} }).advice // => "name a product instead"
 */
export function told(problem: Problem): Told;
export function told(note: Note): string;
export function told(one: Problem | Note): Told | string {
  return isNote(one) ? toldIn("metric")(one) : toldIn("metric")(one);
}

/** Tells a problem or a note. */
export interface Telling {
  (problem: Problem): Told;
  (note: Note): string;
}

/**
 * The same, with measures in the units of a system.
 *
 * @example toldIn("us")({ code: "sheet.strand-length", path: [], facts: { length: { value: "267", unit: "mm", places: 0 } } }).slice(0, 31) // => "The strands come out 10.512 in "
 */
export function toldIn(units: UnitSystem): Telling {
  function tell(problem: Problem): Told;
  function tell(note: Note): string;
  function tell(one: Problem | Note): Told | string {
    return isNote(one) ? sentenceOf(one, units) : problemTold(one, units);
  }
  return tell;
}

function sentenceOf(one: Note, units: UnitSystem): string {
  const sentence = printable(noteTold(one, units));
  if (one.of === undefined) return sentence;
  return "noodle" in one.of
    ? `${printable(one.of.noodle)}: ${sentence}`
    : `in place of ${printable(one.of.inPlaceOf)}, on 100 g of flour: ${sentence}`;
}

function isNote(one: Problem | Note): one is Note {
  return Object.hasOwn(catalogue, one.code) && catalogue[one.code].kind === "note";
}

/** What stands within another was made as a problem or a note; its type is wider, since the catalogue cannot name itself. */
function toldWithin(inner: Inner, units: UnitSystem): string {
  const one = inner as Problem | Note;
  if (isNote(one)) return sentenceOf(one, units);
  const { found, expected } = problemTold(one, units);
  return `found ${found}, expected ${expected}`;
}
