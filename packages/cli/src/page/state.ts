import { type Path, pathText } from "@noodlewright/core/figure";
import * as z from "zod/mini";
import type { Put } from "../input/put.ts";
import { asNumber, readTyped, splitTyped, type Typed, usualDecimals } from "./numbers.ts";

const text = z.string().check(z.maxLength(2000));

/** A value that somebody typed in place of the spec's: as typed, with the unit beside it. */
const entrySchema = z.strictObject({
  path: z.readonly(
    z
      .array(z.union([z.string().check(z.maxLength(120)), z.int().check(z.minimum(0), z.maximum(100))]))
      .check(z.minLength(1), z.maxLength(8)),
  ),
  text,
  /** `number` for a plain number, empty for words. */
  unit: z.string().check(z.maxLength(20)),
});

const load = z.int().check(z.minimum(1), z.maximum(100_000));

const mass = z.string().check(z.regex(/^\d{1,12}(\.\d{1,30})?$/u));

const weighedSchema = z.strictObject({
  /** What the scale showed, g. */
  grams: mass,
  /** What it was. */
  name: text,
  /** When, in milliseconds since 1970. */
  at: z.number(),
});

/** A weight that mends a load, g, the scale for what is added, and what it takes the place of on the list. */
const mendedSchema = z.strictObject({ grams: mass, division: mass, scale: text, of: text });

const doughSchema = z.strictObject({
  temperature: z.optional(text),
  thickness: z.optional(text),
  cooked: z.optional(text),
  score: z.optional(text),
  note: z.optional(text),
  initials: z.optional(text),
});

/** A timer: times in milliseconds since 1970. */
const timerSchema = z.strictObject({
  label: text,
  minutes: z.number(),
  /** When it rings. */
  end: z.number(),
  load: z._default(load, 1),
  /** When somebody ended what it timed; it runs until then. */
  ended: z.optional(z.number()),
});

/** Most timers that are kept; the oldest go first. */
const mostTimers = 10_000;

/** All that happened at the bench: what is different today, what was weighed and what was written down. */
export const stateSchema = z.readonly(
  z.strictObject({
    entries: z.readonly(z.array(entrySchema).check(z.maxLength(200))),
    /** Whether the dough keeps the water it has by the spec when a flour is drier or wetter. */
    keepWet: z.boolean(),
    load,
    /** By load and ingredient. */
    weighed: z.readonly(z.record(text, weighedSchema)),
    /** Weights that a load was given to mend it, g, by load and then by ingredient. */
    mended: z.readonly(z.record(text, z.record(text, mendedSchema))),
    /** Lots by load and ingredient. */
    lots: z.readonly(z.record(text, text)),
    /** What was written down, by load. */
    doughs: z.readonly(z.record(text, doughSchema)),
    timers: z.readonly(z.array(timerSchema).check(z.maxLength(mostTimers))),
  }),
);

export type State = z.output<typeof stateSchema>;
export type Entry = z.output<typeof entrySchema>;
export type Dough = z.output<typeof doughSchema>;
export type Timer = State["timers"][number];

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

/** The lot that a load takes of an ingredient: its own, or that of the last load before it. */
export function lotOf({ lots }: State, load: number, id: string): string {
  for (let one = load; one > 0; one -= 1) {
    const lot = lots[weighedKey(one, id)];
    if (lot !== undefined) return lot;
  }
  return "";
}

/** The state with a timer of a load that starts now. */
export function withTimer(state: State, load: number, label: string, minutes: number, now: number): State {
  const timer: Timer = { label, minutes, end: now + minutes * 60_000, load };
  return { ...state, timers: [...state.timers.slice(1 - mostTimers), timer] };
}

/** When a timer was started, in milliseconds since 1970. */
export function startOf({ end, minutes }: Timer): number {
  return end - minutes * 60_000;
}

/** What was timed of a load. */
export function stepsOf({ timers }: Pick<State, "timers">, load: number): readonly Timer[] {
  return timers.filter((one) => one.load === load);
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
