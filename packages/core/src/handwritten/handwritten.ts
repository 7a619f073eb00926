import type { Problem } from "../figure/problem.ts";
import { told } from "../figure/told.ts";
import { formulaOf } from "../formula/formula.ts";
import { dec, decimalText, fixedText, sum } from "../number/decimal.ts";
import { mostNotes } from "../spec/spec.ts";
import { madeOf } from "./beside.ts";
import { lineEnds, mostLines, mostText, plainLine, plainLines, type WrittenLine } from "./characters.ts";
import { type Draft, type DraftEntry, draftData, draftText } from "./draft.ts";
import { addedUp, type Part, type PlacedItem, placed } from "./entries.ts";
import { isOfKind } from "./heads.ts";
import { type Item, ingredientsOf, type ReadLine, readLine } from "./line.ts";
import { withoutTables } from "./table.ts";
import { nameOfThing, productOf, type Thing, thingsWithin } from "./things.ts";
import { asked, withUnits } from "./units.ts";

/** A line that became a part of the spec. */
export interface UnderstoodLine {
  /** From 1. */
  readonly line: number;
  readonly text: string;
  readonly part: Part;
  readonly name: string;
  readonly amount: string;
  /** What was taken for what, and what a label would add. */
  readonly remarks: readonly string[];
}

/** A line that became no part of the spec. */
export interface UnknownLine {
  readonly line: number;
  readonly text: string;
  readonly why: string;
}

/** A line that is kept as it is, in the notes of the spec. */
export interface KeptNote {
  readonly line: number;
  readonly text: string;
}

/** What the cook has to answer. Its place in the spec is left open, so that the spec is refused until it is filled in. */
export interface OpenQuestion {
  /** The line it is about; none where something is missing from the whole. */
  readonly line?: number;
  readonly text: string;
  /** Where it goes in the spec. */
  readonly part: Part | undefined;
  readonly about: "name" | "amount" | "missing" | "formula";
  readonly ask: string;
}

/** The bowls that a formula makes, and the raw weight of each where it is stated or follows from the weights. */
export interface Yields {
  readonly bowls: number;
  readonly rawWeight?: string;
  /** In words, how the raw weight was worked out where the formula does not state it. */
  readonly workedOut?: string;
}

/** A formula as somebody wrote it, read. */
export interface Handwritten {
  readonly understood: readonly UnderstoodLine[];
  readonly notUnderstood: readonly UnknownLine[];
  /** Lines that are in the notes of the spec; what of them may belong in the formula is in `notUnderstood` too. */
  readonly notes: readonly KeptNote[];
  readonly questions: readonly OpenQuestion[];
  /** What holds for the whole formula, such as what its bare numbers count. */
  readonly remarks: readonly string[];
  /** Bowls that it says it makes. */
  readonly yields?: Yields;
  /** The spec as plain data. */
  readonly spec: Readonly<Record<string, unknown>>;
  /** The spec in YAML, with comments. */
  readonly text: string;
}

/** What goes into the spec beside what is written. */
export interface HandwrittenWishes {
  /** Name of the noodle, before the one of the text. */
  readonly name?: string | undefined;
  /** Sections of the spec, such as `batch` and `scales`, as plain data. */
  readonly sections?: Readonly<Record<string, unknown>>;
  /** What to say above a section, by its key. */
  readonly remarks?: Readonly<Record<string, readonly string[]>>;
}

/**
 * Reads a formula the way people write it, a line for each ingredient, and writes a spec of it.
 *
 * Weights in g, kg, oz and lb, per cents, bare numbers, fractions, decimal commas, bullets, tables and headings are read.
 * Nothing is guessed: what may be several things, is measured by volume or has no amount becomes a question, and its place
 * in the spec stays open; a line that is not understood is left out and listed. Where there is neither, the spec can be
 * worked out as it is. A text of more than four hundred lines is read up to there.
 *
 * @example readHandwritten("bread flour 1 kg\nwater 380 g").understood.map(({ amount }) => amount) // => ["1 kg", "380 g"]
 */
export function readHandwritten(text: string, wishes: HandwrittenWishes = {}): Handwritten {
  const all = plainLines(text);
  const { lines, comma, ...table } = withoutTables(all.slice(0, mostLines));
  const parted = lines.flatMap((line) => ingredientsOf(line, comma));
  const beside = table.notes.map((line) => ({ line, read: { kind: "note", opensSteps: false } as const }));
  const read = joinedLines(parted.map((line) => ({ line, read: readLine(line, comma) })));
  const { notes: written, ...sorted } = sortLines([...read, ...beside], table.leftOut);
  const texts = written.map((note) => note.text);
  const notes = written.filter((_, index) => texts.slice(0, index + 1).join("\n").length < mostNotes);
  const { items, remarks } = withUnits(sorted.placed);
  const { draft, items: merged } = assemble(items, { ...sorted, notes, prices: table.prices }, wishes);
  const open = merged.flatMap(({ item: { line }, part, asks }) =>
    asks.map(({ about, text: ask }) => ({ line: line.number, text: line.text, part, about, ask })),
  );
  const missing = missingOf(draft);
  const spec = draftData(draft);
  const beyond = open.length + missing.length > 0 ? [] : formulaQuestions(spec, draft, lines);
  return {
    understood: merged.filter(({ asks }) => asks.length === 0).map(understoodLine),
    notUnderstood: sorted.leftOut,
    notes,
    questions: [...open, ...missing, ...beyond],
    remarks: [
      ...remarks,
      ...table.remarks,
      ...(all.length > mostLines || text.length > mostText
        ? [`only the first ${mostLines} lines are read, or ${mostText} letters`]
        : []),
      ...written
        .slice(notes.length, notes.length + 1)
        .map(({ line }) => `a spec keeps ${mostNotes} letters of notes: those from line ${line} on are left out`),
    ],
    ...(sorted.yields && { yields: withRawWeight(sorted.yields, merged) }),
    spec,
    text: draftText(draft),
  };
}

/** g of raw noodle that a bowl may hold: a formula whose dough makes less or more is not the whole of it. Common practice, no source. */
const aBowl = { least: 60, most: 400 };

/** What a bowl weighs raw follows from the weights of the dough, to a tenth of a gram. */
function withRawWeight(yields: Yields, items: readonly PlacedItem[]): Yields {
  const masses = items.flatMap(({ part, amount, entry }) =>
    part === "dusting" ? [] : [amount.by === "mass" ? entry.value : undefined],
  );
  if (yields.rawWeight !== undefined || masses.length === 0 || masses.includes(undefined)) return yields;
  const dough = sum(masses.map((grams) => dec(grams ?? 0)));
  const each = dough.div(yields.bowls);
  if (each.lt(aBowl.least) || each.gt(aBowl.most)) return yields;
  const rawWeight = `${decimalText(dec(fixedText(each, 1)))} g`;
  const workedOut = `${rawWeight} a bowl is worked out from the notes: ${decimalText(dec(fixedText(dough, 1)))} g of dough for ${yields.bowls} bowls`;
  return { ...yields, rawWeight, workedOut };
}

interface NumberedLine {
  readonly line: WrittenLine;
  readonly read: ReadLine;
}

/** A name on one line and its amount on the next are one ingredient. */
function joinedLines(lines: readonly NumberedLine[]): readonly NumberedLine[] {
  const joined: NumberedLine[] = [];
  for (const one of lines) {
    const last = joined.at(-1);
    if (
      one.read.kind === "amount" &&
      one.line.table === undefined &&
      last?.read.kind === "item" &&
      last.read.amounts.length === 0
    ) {
      joined.splice(-1, 1, { ...last, read: { ...last.read, amounts: one.read.amounts } });
    } else joined.push(one);
  }
  return joined;
}

interface Sorted {
  readonly title: string | undefined;
  readonly placed: readonly PlacedItem[];
  readonly leftOut: readonly UnknownLine[];
  readonly notes: readonly KeptNote[];
  readonly yields?: Yields;
}

/** Sorts the lines: ingredients, what is not understood, the title, and what stands beside. */
function sortLines(lines: readonly NumberedLine[], ofTables: readonly UnknownLine[]): Sorted {
  let section: "dough" | "dusting" | "method" = "dough";
  let title: string | undefined;
  let yields: Yields | undefined;
  const items: PlacedItem[] = [];
  const leftOut: UnknownLine[] = [...ofTables];
  const notes: KeptNote[] = [];
  const beside: WrittenLine[] = [];
  const leave = ({ number, text }: WrittenLine, why: string): void => {
    leftOut.push({ line: number, text, why });
  };
  const note = (line: WrittenLine): void => {
    notes.push({ line: line.number, text: line.text });
    beside.push(line);
  };
  const beforeAll = (): boolean => items.length === 0 && leftOut.length === ofTables.length;
  for (const { line, read } of lines) {
    if (read.kind === "heading") section = read.part;
    const named = /^(?:name|title) ?[:\t] ?(.+)$/iu.exec(line.text)?.[1];
    if (title === undefined && beforeAll() && isTitle(line, read, named !== undefined)) {
      title = (named ?? line.text)
        .replaceAll("\t", " ")
        .replace(/^[#*_"\s]+|[:*_"\s]+$/gu, "")
        .slice(0, 120);
      continue;
    }
    if (read.kind === "yield") {
      if (beforeAll() && read.title !== "") title ??= read.title;
      yields ??= { bowls: Number(read.bowls), ...(read.each !== undefined && { rawWeight: read.each }) };
      if (read.aside !== undefined) {
        const meant = `"${read.bowls} bowls of ${read.aside}"`;
        leave(line, `it is not clear whether ${read.aside} is what a bowl weighs raw: if so, write ${meant}`);
      }
      continue;
    }
    if (read.kind === "heading") beside.push(line);
    if (read.kind === "heading" || read.kind === "total") continue;
    if (read.kind === "note") {
      if (read.opensSteps) section = "method";
      note(line);
      continue;
    }
    if (section === "method" && isStep(read)) {
      if (!isBare(read)) leave(line, ofStep);
      note(line);
      continue;
    }
    if (read.kind === "amount") {
      leave(line, "an amount without a name: write what it is of");
      continue;
    }
    const one = placed(read, section === "dusting");
    if ("why" in one) leave(line, one.why);
    else items.push(one);
  }
  const others = ofOtherFormulas(items);
  for (const { item } of others) leave(item.line, ofAnother);
  const again = items.filter((one, at) => isNamedAgain(one, at, items));
  for (const { number, sentence: text = "" } of new Set(again.map(({ item }) => item.line))) {
    if (leftOut.some((one) => one.line === number && one.text === text)) continue;
    leftOut.push({ line: number, text, why: ofStep });
    notes.push({ line: number, text });
  }
  const listed = new Set(leftOut.map(({ line }) => line));
  for (const line of beside.filter(({ number }) => !listed.has(number))) {
    const names = namedOnly(line.text, items);
    if (names.length === 0) continue;
    leave(
      line,
      `it names ${names.join(", ")} without an amount: if that belongs in the noodle, weigh it and write the grams`,
    );
  }
  for (const list of [leftOut, notes]) list.sort((one, other) => one.line - other.line);
  const placedItems = items.filter((one) => !others.includes(one) && !again.includes(one));
  return { title, placed: placedItems, leftOut, notes, ...(yields && { yields }) };
}

const ofAnother = "it stands in a second table with flour and water of its own: a spec is of one formula";

/** What stands in tables that are formulas by themselves, behind the first of these. */
function ofOtherFormulas(items: readonly PlacedItem[]): readonly PlacedItem[] {
  const tableOf = ({ item }: PlacedItem): number => item.line.table ?? 0;
  const formulas = [...new Set(items.map(tableOf))].filter(
    (table) =>
      table > 0 &&
      ["flours", "water"].every((part) => items.some((one) => one.part === part && tableOf(one) === table)),
  );
  return items.filter((one) => formulas.indexOf(tableOf(one)) > 0);
}

const ofStep = "a step with an amount: what of it belongs in the formula, write on a line of its own";

/** Whether a sentence names what another line, or the sentence before, puts into the formula. */
function isNamedAgain({ item, part, entry }: PlacedItem, at: number, items: readonly PlacedItem[]): boolean {
  const { line, thing } = item;
  return items.some((other, place) => {
    if (line.sentence === undefined || other.part !== part || (other.item.line.sentence !== undefined && place >= at))
      return false;
    if (part === "water" || part === "salt" || part === "rework") return true;
    const [name, named] = [entry.name, other.entry.name].map((one) => one.toLowerCase());
    const isWithin = other.item.line.number !== line.number && named?.includes(name ?? "") === true;
    return name === named || isWithin || (thing.is === "material" && isAmong([other], thing));
  });
}

/** Under the heading of the steps, a known name with an amount is an ingredient, and all else a step. */
function isStep(read: Extract<ReadLine, { readonly kind: "item" | "amount" }>): boolean {
  return read.kind === "amount" || read.amounts.length === 0 || (read.thing.is === "unknown" && !read.thing.alkali);
}

/** What a line names that is in no line of the formula. */
function namedOnly(text: string, items: readonly PlacedItem[]): readonly string[] {
  return [...new Set(thingsWithin(text).flatMap((thing) => (isAmong(items, thing) ? [] : [nameOfThing(thing)])))];
}

function isAmong(items: readonly PlacedItem[], thing: Thing): boolean {
  return items.some(({ part, item: { thing: other } }) => {
    if (thing.is === "several") return part === (thing.several.kind === "flour" ? "flours" : thing.several.kind);
    if (thing.is === "material") return other.is === "material" && other.material.key === thing.material.key;
    return other.is === thing.is;
  });
}

/** Most known things in a title, such as `Rye and wheat noodles`: what names more is of the formula. */
const mostNamed = 2;

function isTitle({ sentence, text }: WrittenLine, read: ReadLine, named: boolean): boolean {
  if (named) return true;
  if (sentence !== undefined || (read.kind === "note" && thingsWithin(text).length > mostNamed)) return false;
  if (read.kind === "note") return !read.opensSteps;
  if (read.kind === "heading")
    return (
      read.part === "dough" &&
      !isOfKind(read.title) &&
      !/^(?:ingredients?|for|dough|formula|recipe|zutaten|材料)/iu.test(read.title)
    );
  const called = read.kind === "item" && read.thing.is === "unknown" && isBare(read) ? read.thing : undefined;
  return (
    called !== undefined &&
    (!called.alkali || /(?<!\p{L})(?:noodles|nudeln|nouilles|fideos)(?!\p{L})/iu.test(called.name))
  );
}

function isBare({ amounts }: Pick<Item, "amounts">): boolean {
  return amounts.every(({ is }) => is.by === "number");
}

/** Puts the ingredients into their places; water, salt, rework and dusting have one each. */
function assemble(
  items: readonly PlacedItem[],
  sorted: Sorted & { readonly prices: ReadonlyMap<number, string> },
  { name, sections = {}, remarks = {} }: HandwrittenWishes,
) {
  const merged: PlacedItem[] = [];
  for (const one of items) {
    const single = ["water", "salt", "rework", "dusting"].includes(one.part);
    const same = single ? merged.findIndex(({ part }) => part === one.part) : -1;
    const first = merged[same];
    if (first === undefined) merged.push(one);
    else merged.splice(same, 1, both(first, one));
  }
  const of = (part: Part): readonly DraftEntry[] => merged.filter((one) => one.part === part).map(({ entry }) => entry);
  const prices = merged.flatMap(({ part, item, entry }) => {
    const price = part === "water" ? undefined : (item.price ?? sorted.prices.get(item.line.number));
    return price === undefined ? [] : [[entry.name, price] as const];
  });
  const draft: Draft = {
    name: name ?? sorted.title ?? "Noodles",
    flours: of("flours"),
    water: of("water")[0],
    alkali: of("alkali"),
    salt: of("salt")[0],
    ingredients: of("ingredients"),
    rework: of("rework")[0],
    dusting: of("dusting")[0],
    notes: sorted.notes.map(({ text }) => text),
    leftOut: sorted.leftOut.map(({ line, text, why }) => `line ${line}: ${text}: ${why}`),
    sections: { ...(prices.length > 0 && { prices: Object.fromEntries(prices) }), ...sections },
    remarks,
  };
  return { draft, items: merged };
}

function both(first: PlacedItem, second: PlacedItem): PlacedItem {
  const alike = first.part !== "dusting" || first.entry.name === second.entry.name;
  const entry = alike ? addedUp(first.entry, second.entry) : undefined;
  if (entry !== undefined) return { ...first, entry };
  return asked(first, `"${second.item.line.text}" is a second ${first.part}: write them as one`);
}

function understoodLine({ item, part, entry }: PlacedItem): UnderstoodLine {
  const { number, text } = item.line;
  return { line: number, text, part, name: entry.name, amount: entry.amount ?? "", remarks: entry.remarks };
}

function missingOf(draft: Draft): readonly OpenQuestion[] {
  const missing = (part: Part, ask: string): OpenQuestion => ({ text: part, part, about: "missing", ask });
  return [
    ...(draft.flours.length === 0 ? [missing("flours", "which flour, and how much of it?")] : []),
    ...(draft.water === undefined ? [missing("water", "how much water is poured in?")] : []),
  ];
}

/** What keeps a spec, each of whose lines is understood, from being worked out: a dose beyond belief, water beyond dough. */
function formulaQuestions(spec: unknown, draft: Draft, lines: readonly WrittenLine[]): readonly OpenQuestion[] {
  const outcome = formulaOf(spec);
  if (outcome.ok) return [];
  return outcome.problems.map((problem) => {
    const line = lines.find(({ number }) => number === entryAt(draft, problem)?.line);
    const { found, expected, advice } = told(problem);
    const ask = `${found}; right would be ${expected}: ${advice}`;
    const text = line?.text ?? problem.path.join(" ");
    return { ...(line && { line: line.number }), text, part: undefined, about: "formula", ask };
  });
}

function entryAt(draft: Draft, { path }: Problem): DraftEntry | undefined {
  const [key, index] = path;
  if (key === "flours" || key === "alkali" || key === "ingredients") return draft[key][Number(index)];
  return key === "water" || key === "salt" || key === "rework" || key === "dusting" ? draft[key] : undefined;
}

/**
 * The line that an answer to a question makes: the answer itself where it has a name and an amount, or else the line with
 * the new name, the new amount, or what the product is made of.
 *
 * @example answeredLine("kansui 12 g", "sodium carbonate") // => "sodium carbonate 12 g"
 */
export function answeredLine(line: string, answer: string): string {
  const [was, now] = [line, answer].map((text) => readLine({ number: 1, text }, undefined));
  if (was?.kind !== "item" || now === undefined) return answer;
  if (now.kind === "amount") return `${was.name} ${answer}`;
  const amount = was.amounts[0]?.written ?? "";
  if (now.kind === "item" && now.amounts.some(({ is }) => is.by === "mass")) return answer;
  const product = productOf(answer) !== undefined && madeOf(answer, false) === undefined;
  if (product || (now.kind === "item" && now.amounts.length === 0)) return `${answer} ${amount}`;
  return `${was.name} (${answer}) ${amount}`;
}

/**
 * The text with one of its lines, or the part of it that was read as one, replaced.
 *
 * @param line - from 1
 * @param was - the part, as the reading tells it
 * @example amendedText("flour 1 kg, kansui 12 g", 1, "kansui 12 g", "soda ash 12 g") // => "flour 1 kg, soda ash 12 g"
 */
export function amendedText(text: string, line: number, was: string, now: string): string {
  const lines = text.split(lineEnds);
  const old = plainLine(lines[line - 1] ?? "");
  lines[line - 1] = old.includes(was) ? old.replace(was, () => now) : now;
  return lines.join("\n");
}
