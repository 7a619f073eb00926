import { type Path, pathText } from "@noodlewright/core/figure";
import type { Put } from "../input/put.ts";
import {
  type Checked,
  either,
  isNumber,
  isYesOrNo,
  listOf,
  oneOf,
  recordOf,
  shapeOf,
  textLike,
  textOf,
  wholeFrom,
} from "./checks.ts";
import { asNumber, readTyped, splitTyped, type Typed, usualDecimals } from "./numbers.ts";

const text = textOf(2000);

/** A value that somebody typed in place of the spec's: as typed, with the unit beside it. */
const entry = shapeOf({
  path: listOf(either(textOf(120), wholeFrom(0, 100)), 8),
  text,
  /** `number` for a plain number, empty for words. */
  unit: textOf(20),
});

const load = wholeFrom(1, 100_000);

const mass = textLike(/^\d{1,12}(\.\d{1,30})?$/u);

/** A part of a stock solution, g. */
const held = shapeOf({ id: text, name: text, grams: mass });

/** One thing to weigh, as a list had it. */
const listed = shapeOf(
  {
    id: text,
    name: text,
    /** Mass on the list, g. */
    grams: mass,
    unit: oneOf("g", "kg", "oz", "lb"),
    /** Of its scale, g. */
    division: mass,
    scale: text,
    /** A stock is made up first, and dusting is no part of the dough. */
    kind: oneOf("ingredient", "stock", "dusting"),
  },
  { /** What a stock brings of each ingredient. */ holds: listOf(held, 100) },
);

const weighed = shapeOf(
  {
    /** What the scale showed, g. */
    grams: mass,
    /** What it was. */
    name: text,
    /** When, in milliseconds since 1970. */
    at: isNumber,
  },
  {
    /** What the list asked for then. */
    of: listed,
    /** What differed from the spec then, in words. */
    differs: listOf(textOf(4000), 200),
    /** The amounts that were found then for what is wanted, in words. */
    found: listOf(textOf(4000), 10),
  },
);

/** A weight that mends a load, g, the scale for what is added, and what it takes the place of on the list. */
const mended = shapeOf(
  { grams: mass, division: mass, scale: text, of: text },
  { /** So much of it as ice. */ ice: text },
);

const dough = shapeOf(
  {},
  { temperature: text, thickness: text, cooked: text, score: text, note: text, initials: text },
);

/** A timer: times in milliseconds since 1970. */
const timer = shapeOf(
  {
    label: text,
    minutes: isNumber,
    /** When it rings. */
    end: isNumber,
  },
  {
    /** The first, where it does not say. */
    load,
    /** When somebody ended what it timed; it runs until then. */
    ended: isNumber,
    /** Longest that it may take, in minutes. */
    most: isNumber,
  },
);

/** Most timers that are kept; the oldest go first. */
const mostTimers = 10_000;

/** All that happened at the bench: what is different today, what was weighed and what was written down. */
export const isState = shapeOf(
  {
    entries: listOf(entry, 200),
    /** Whether the dough keeps the water it has by the spec when a flour is drier or wetter. */
    keepWet: isYesOrNo,
    load,
    /** By load and ingredient. */
    weighed: recordOf(text, weighed),
    /** Weights that a load was given to mend it, g, by load and then by ingredient. */
    mended: recordOf(text, recordOf(text, mended)),
    /** Lots by load and ingredient. */
    lots: recordOf(text, text),
    /** What was written down, by load. */
    doughs: recordOf(text, dough),
    timers: listOf(timer, mostTimers),
  },
  {
    /** The list by which all of a load was weighed, by load. */
    lists: recordOf(text, listOf(listed, 1000)),
  },
);

export type State = Checked<typeof isState>;
export type Entry = Checked<typeof entry>;
export type Held = Checked<typeof held>;
export type Listed = Checked<typeof listed>;
export type Dough = Checked<typeof dough>;
export type Timer = Checked<typeof timer>;

export const freshState: State = {
  entries: [],
  keepWet: true,
  load: 1,
  weighed: {},
  mended: {},
  lots: {},
  doughs: {},
  timers: [],
};

/** The entry at a place. */
export function entryAt({ entries }: Pick<State, "entries">, path: Path): Entry | undefined {
  return entries.find((one) => pathText(one.path) === pathText(path));
}

/** The state with another entry at a place; without one where nothing is typed. */
export function withEntry(state: State, entry: Entry, instead: readonly Path[] = []): State {
  const gone = new Set([entry.path, ...instead].map(pathText));
  const others = state.entries.filter(({ path }) => !gone.has(pathText(path)));
  return { ...state, entries: entry.text.trim() === "" ? others : [...others, entry] };
}

/** An entry as it goes into the spec: what is no number stays as it was typed. */
export function putOf(entry: Entry): Put {
  const { path, text: typed, unit } = entry;
  const reading = unit === "" ? undefined : readEntry(entry);
  if (reading?.ok !== true) return { path, value: typed.trim() };
  return { path, value: reading.unit === "number" ? Number(reading.number) : `${reading.number} ${reading.unit}` };
}

/** Reads the number of an entry and its unit: the one beside the field, where none was typed. */
export function readEntry({ text: typed, unit }: Entry): Typed & { readonly unit: string } {
  const own = splitTyped(typed);
  const measured = own.unit || unit;
  return { ...readTyped(own.number, usualDecimals(measured)), unit: measured };
}

/** Whether two numbers as typed are the same. */
export function sameNumber(typed: string, other: string): boolean {
  return typed.trim() !== "" && other.trim() !== "" && Number(asNumber(typed)) === Number(asNumber(other));
}

/** Whether an amount of a spec is to be found by what it wants. */
export function isFound(amount: unknown): boolean {
  return typeof amount === "string" && amount.trim().toLowerCase() === "find";
}

/** A quantity of a spec in two parts, for a pad and a unit; words stay whole. */
export function splitQuantity(value: unknown): { readonly text: string; readonly unit: string } {
  if (typeof value !== "string" && typeof value !== "number") return { text: "", unit: "" };
  const match = /^\s*([-−]?(?:\d+(?:\.\d+)?|\.\d+))\s*([^\d\s].*?)?\s*$/u.exec(String(value));
  return match === null ? { text: String(value), unit: "" } : { text: match[1] ?? "", unit: match[2] ?? "" };
}

/** A text that is the same where the same weights follow. */
export function keyOf({ entries, keepWet }: Pick<State, "entries" | "keepWet">): string {
  return JSON.stringify([entries, keepWet]);
}

/** Where the weight and the lot of an ingredient of a load are kept. */
export function weighedKey(load: number, id: string): string {
  return `${load}/${id}`;
}

/** What was weighed of a load, the first of it first. */
export function weightsOf({ weighed }: State, load: number): readonly State["weighed"][string][] {
  const start = weighedKey(load, "");
  return Object.entries(weighed)
    .flatMap(([key, one]) => (key.startsWith(start) ? [one] : []))
    .sort((one, other) => one.at - other.at);
}

/** The lot that a load takes of an ingredient: its own, or that of the last load before it. */
export function lotOf({ lots }: State, load: number, id: string): string {
  for (let one = load; one > 0; one -= 1) {
    const lot = lots[weighedKey(one, id)];
    if (lot !== undefined) return lot;
  }
  return "";
}

/** The state with a timer of a load that starts now. */
export function withTimer(
  state: State,
  load: number,
  { label, minutes, most }: Pick<Timer, "label" | "minutes" | "most">,
  now: number,
): State {
  const timer: Timer = { label, minutes, end: now + minutes * 60_000, load, ...(most !== undefined && { most }) };
  return { ...state, timers: [...state.timers.slice(1 - mostTimers), timer] };
}

/** When a timer was started, in milliseconds since 1970. */
export function startOf({ end, minutes }: Timer): number {
  return end - minutes * 60_000;
}

/** When what a timer times has to be over, where it may not take as long as it likes. */
export function latestOf(timer: Timer): number | undefined {
  return timer.most === undefined ? undefined : startOf(timer) + timer.most * 60_000;
}

/** The load that a timer is of. */
export function loadOf({ load = 1 }: Timer): number {
  return load;
}

/** What was timed of a load. */
export function stepsOf({ timers }: Pick<State, "timers">, load: number): readonly Timer[] {
  return timers.filter((one) => loadOf(one) === load);
}

/** The timers that run. */
export function running({ timers }: Pick<State, "timers">): readonly Timer[] {
  return timers.filter(({ ended }) => ended === undefined);
}

/** The state with a weight of a load. The lot that went in stays with it, whatever later loads take. */
export function withWeight(state: State, load: number, id: string, weight: State["weighed"][string]): State {
  const key = weighedKey(load, id);
  const lots = { ...state.lots, [key]: lotOf(state, load, id) };
  return { ...state, weighed: { ...state.weighed, [key]: weight }, lots };
}

/** What is kept, without what was kept under a key. */
export function without<T>(kept: Readonly<Record<string, T>>, key: string): Readonly<Record<string, T>> {
  return Object.fromEntries(Object.entries(kept).filter(([one]) => one !== key));
}
