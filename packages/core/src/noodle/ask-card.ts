import * as z from "zod/mini";
import type { Batch } from "../batch/batch.ts";
import { type Card, type CardFile, card, isDay } from "../card/card.ts";
import { frozen } from "../figure/frozen.ts";
import { type Graph, published } from "../figure/graph.ts";
import { answer, type Note, note, type Outcome, problem, problemsOf, refuse } from "../figure/problem.ts";
import { told } from "../figure/told.ts";
import { section } from "../materials/fields.ts";
import { printableData } from "../render/printable.ts";
import { planDay } from "../sheet/day/day-plan.ts";
import { loadWater } from "../sheet/water/dough-water.ts";
import { asRead, type Noodle } from "./noodle.ts";
import { plannedBatch } from "./planned-batch.ts";
import { plannedSheet } from "./planned-sheet.ts";
import { readWish, wishedText } from "./wishes.ts";

/** What a card is told that the noodle does not know. */
export interface CardWish {
  /** Date on the card, such as `2026-11-25`. */
  readonly date: string;
  /** The spec and the files it includes. */
  readonly files?: readonly CardFile[] | undefined;
  /** What was changed of the spec, in words. */
  readonly said?: string | undefined;
  /** Loads to print boxes for, such as `1,3-4`; all unless stated. */
  readonly loads?: string | undefined;
}

const cardWish = section({ description: "What a card says" }, () => ({
  date: wishedText("Date on the card", "2026-11-25"),
  files: z._default(z.array(z.strictObject({ name: z.string(), checksum: z.string() })), []),
  said: z._default(wishedText("What was changed of the spec", "40 bowls"), ""),
  loads: z.optional(wishedText("Loads to print boxes for", "1,3-4")),
}));

/** What is said of an answer that the spec asks for and that cannot be had. */
export type MissingAnswer = Note<"card.no-answer">;

/** A card, what its spec asks for that it cannot show, and what else is to be said about it. */
export interface MadeCard {
  readonly card: Card;
  readonly missing: readonly MissingAnswer[];
  readonly remarks: readonly Note[];
  /** Behind the figures of the card, which it shows in its own words and in the units of its scales. */
  readonly graph: Graph;
}

/**
 * The card to hang by the machine: the batch, and every other answer that the spec has data for. One that cannot be had
 * is noted on the card. All of a card is in one system of units, that of the scales.
 *
 * Problems: those of `askBatch`; what is wrong in the input of the other answers; `card.loads`, `card.date`; of the wish.
 * @example askCard(example("school-noodle"), { date: "2026-11-25" }).value.card.weights.loads // => [1, 2, 3]
 */
export function askCard(noodle: Noodle, wish: CardWish): Outcome<MadeCard> {
  const { spec, formula } = asRead(noodle);
  const wished = readWish(cardWish, wish);
  if (!wished.ok) return wished;
  const { date, files, said, loads: named } = wished.value;
  if (!isDay(date)) return frozen(refuse(problem("card.date", ["date"], { written: `"${date}"` })));
  const batch = plannedBatch(noodle);
  if (!batch.ok) return batch;
  // One card, one system of units: that of the scales it is weighed on.
  const units = batch.value.lines.some(({ unit }) => unit === "oz") ? "us" : "metric";
  const more = moreAnswers(noodle, batch.value);
  if (!more.ok) return frozen(more);
  const loads = chosenLoads(named, Number(batch.value.loads.count.value));
  if (!loads.ok) return frozen(loads);
  const made = card(spec, formula, batch.value, {
    about: spec.notes ?? "",
    date,
    files,
    said,
    loads: loads.value,
    units,
    ...more.value.answers,
    notes: [...noodle.notes, ...batch.notes, ...more.notes],
  });
  const remarks = noodle.units === "us" && units === "metric" ? [note("card.metric", ["scales"], {})] : [];
  const { water, sheet, day } = more.value.answers;
  const graph = { ...formula.graph, ...batch.value.graph, ...water?.graph, ...sheet?.graph, ...day?.graph };
  const whole = published({ card: printableData(made), missing: more.value.missing, remarks }, graph);
  return frozen(answer({ ...whole, graph: { ...whole.graph, ...graph } }));
}

/** The answers that the spec has data for. One that cannot be had is told in a note; wrong input is refused. */
function moreAnswers(noodle: Noodle, batch: Batch) {
  const { spec, formula } = noodle;
  const water = spec.temperature?.dough && loadWater(spec, batch);
  const sheet = spec.sheet && plannedSheet(noodle);
  const served = spec.plan?.serve !== undefined;
  const day = served ? planDay(spec, formula, batch, sheet?.ok ? sheet.value : undefined) : undefined;
  const outcomes = [
    ["water", water],
    ["sheet", sheet],
    ["day", day],
  ] as const;
  const problems = outcomes.flatMap(([, outcome]) => problemsOf(outcome)).filter((one) => told(one).kind === "input");
  if (problems.length > 0) return refuse(...problems);
  const missing = outcomes.flatMap(([lacks, outcome]) =>
    problemsOf(outcome).map((one) => note("card.no-answer", one.path, { lacks, problem: one })),
  );
  const answers = {
    ...(water?.ok && { water: water.value }),
    ...(sheet?.ok && { sheet: sheet.value }),
    ...(day?.ok && { day: day.value }),
  };
  const notes = outcomes.flatMap(([, outcome]) => (outcome?.ok ? outcome.notes : []));
  return answer({ answers, missing }, [...notes, ...missing]);
}

/** Reads a choice of loads such as `1,3` or `2-4`; all where nothing is chosen. */
function chosenLoads(text: string | undefined, count: number): Outcome<readonly number[]> {
  if (text === undefined) return answer([]);
  const parts = text.split(",").map((part) => /^\s*(\d+)(?:\s*-\s*(\d+))?\s*$/u.exec(part));
  const ranges = parts.map((match) => [Number(match?.[1]), Number(match?.[2] ?? match?.[1])] as const);
  if (!ranges.every(([from, to]) => from >= 1 && from <= to && to <= count)) {
    return refuse(problem("card.loads", ["loads"], { loads: text, count: String(count) }));
  }
  const loads = ranges.flatMap(([from, to]) => Array.from({ length: to - from + 1 }, (_, index) => from + index));
  return answer([...new Set(loads)].sort((a, b) => a - b));
}
