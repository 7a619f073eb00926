import { createHash } from "node:crypto";
import { basename } from "node:path";
import {
  type Batch,
  type Card,
  type CardFile,
  type CardWishes,
  card,
  type Formula,
  formulaOf,
  loadWater,
  type Note,
  type Outcome,
  type OwnMachines,
  type Problem,
  planBatch,
  planDay,
  planSheet,
  type Spec,
  sheetReport,
  temperatureReport,
  told,
  type UnitSystem,
} from "@noodlewright/core";
import type { Paper } from "@noodlewright/core/render";
import { lengthWarning, printable, printableData } from "@noodlewright/core/render";
import type { PlacedProblem } from "../input/document.ts";
import { loadSpec, type Override } from "../input/load-spec.ts";
import type { TextFile } from "../input/read-file.ts";
import type { Io } from "../io.ts";

/** What a card is asked for. */
export interface CardOrder {
  readonly path: string;
  readonly overrides: readonly Override[];
  readonly date: string;
  readonly loads: string | undefined;
  readonly units: UnitSystem;
}

/** A card, and what its spec asks for that cannot be had, each in a line for the terminal. */
export interface MadeCard {
  readonly card: Card;
  readonly missing: readonly string[];
  /** What else is to be said there. */
  readonly remarks: readonly string[];
}

export type CardMaking =
  | ({ readonly ok: true } & MadeCard)
  | { readonly ok: false; readonly problems: readonly PlacedProblem[] };

/** Characters of the checksum that are printed: enough to tell the specs of a kitchen apart. */
const shownOfChecksum = 8;

/** Makes the card of a spec: its batch, and every other answer that the spec has data for. */
export async function makeCard(order: CardOrder, io: Io): Promise<CardMaking> {
  const loading = await loadSpec(order.path, order.overrides, io, "machines");
  if (!loading.ok) return loading;
  const { data, included, machines, place, files } = loading.spec;
  const outcome = formulaOf(data, included);
  if (!outcome.ok) return { ok: false, problems: outcome.problems.map(place) };
  const { spec, formula } = outcome.value;
  const batch = planBatch(spec, formula, order.units === "us");
  if (!batch.ok) return { ok: false, problems: batch.problems.map(place) };
  const units = systemOf(batch.value);
  const more = moreAnswers(spec, formula, batch.value, machines, units);
  if (!more.ok) return { ok: false, problems: more.problems.map(place) };
  const loads = chosenLoads(order.loads, Number(batch.value.loads.count.value));
  if (!loads.ok) return { ok: false, problems: [loads.problem] };
  const made = card(spec, formula, batch.value, {
    about: spec.notes ?? "",
    date: order.date,
    files: files.map(cardFile),
    said: order.overrides.map(({ flag, value }) => `${flagWords(flag)} ${sayValue(value)}`).join(", "),
    loads: loads.value,
    units,
    ...more.answers,
    notes: [...outcome.notes, ...batch.notes, ...more.notes],
  });
  const other = order.units === "us" && units === "metric" ? [scalesRule] : [];
  const told = (lines: readonly string[]) => lines.map((line) => `${formula.name}: ${line}`);
  return { ok: true, card: printableData(made), missing: told(more.missing), remarks: told(other) };
}

const scalesRule = "the scales show g, so all of the card is metric; name scales in lb or oz for a card in US units";

/** One card, one system of units: that of the scales it is weighed on. */
function systemOf({ lines }: Batch): UnitSystem {
  return lines.some(({ unit }) => unit === "oz") ? "us" : "metric";
}

/** Says on standard error what the card has not, and where it may be longer than promised. */
export function tellOfCard({ card, missing, remarks }: MadeCard, paper: Paper, io: Io): void {
  for (const line of [...missing, ...remarks]) io.err(`${printable(line)}\n`);
  io.err(lengthWarning(card, paper) ?? "");
}

function cardFile({ name, bytes }: TextFile): CardFile {
  const checksum = createHash("sha256").update(bytes).digest("hex").slice(0, shownOfChecksum);
  return { name: basename(name), checksum };
}

type More =
  | {
      readonly ok: true;
      readonly answers: Pick<CardWishes, "water" | "sheet" | "day">;
      readonly notes: readonly Note[];
      readonly missing: readonly string[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** The answers that the spec has data for. One that cannot be had is told in a note; wrong input is refused. */
function moreAnswers(spec: Spec, formula: Formula, batch: Batch, machines: OwnMachines, units: UnitSystem): More {
  const water = spec.temperature?.dough && loadWater(spec, batch);
  const sheet = spec.sheet && planSheet(spec, formula, batch, machines);
  const served = spec.plan?.serve !== undefined;
  const day = served ? planDay(spec, formula, batch, sheet?.ok ? sheet.value : undefined) : undefined;
  const outcomes = [
    ["Water temperature", "water-temperature", water],
    ["Sheet", "sheet", sheet],
    ["Plan", "plan", day],
  ] as const;
  const problems = outcomes
    .flatMap(([, , outcome]) => problemsOf(outcome))
    .filter((problem) => told(problem).kind === "input");
  if (problems.length > 0) return { ok: false, problems };
  const faults = outcomes.flatMap(([name, command, outcome]) =>
    problemsOf(outcome).map((problem) => ({ command, note: missingNote(name, problem) })),
  );
  return {
    ok: true,
    notes: [
      ...outcomes.flatMap(([, , outcome]) => (outcome?.ok ? outcome.notes : [])),
      ...faults.map(({ note }) => note),
    ],
    missing: faults.map(({ command, note }) => `not on the card: ${note.text}; see noodlewright ${command}`),
    answers: {
      ...(water?.ok && { water: temperatureReport("Water of one load", water.value, [], units) }),
      ...(sheet?.ok && { sheet: sheetReport(formula, sheet.value, [], units) }),
      ...(day?.ok && { day: day.value }),
    },
  };
}

function problemsOf(outcome: Outcome<unknown> | undefined): readonly Problem[] {
  return outcome?.ok === false ? outcome.problems : [];
}

function missingNote(name: string, problem: Problem): Note {
  const { found, expected } = told(problem);
  return { code: "card.no-answer", path: problem.path, text: `${name}: ${found} (expected: ${expected})` };
}

/** What a flag changes, as words on paper. */
function flagWords(flag: string): string {
  return flag.replace(/^--/u, "").replaceAll("-", " ");
}

function sayValue(value: unknown): string {
  if (typeof value === "object" && value !== null) return Object.values(value).map(String).join(" = ");
  return String(value);
}

type Choice =
  | { readonly ok: true; readonly value: readonly number[] }
  | { readonly ok: false; readonly problem: PlacedProblem };

/** Reads a choice of loads such as `1,3` or `2-4`; all where nothing is chosen. */
function chosenLoads(text: string | undefined, count: number): Choice {
  if (text === undefined) return { ok: true, value: [] };
  const parts = text.split(",").map((part) => /^\s*(\d+)(?:\s*-\s*(\d+))?\s*$/u.exec(part));
  const ranges = parts.map((match) => [Number(match?.[1]), Number(match?.[2] ?? match?.[1])] as const);
  const fits = ranges.every(([from, to]) => from >= 1 && from <= to && to <= count);
  if (!fits) {
    const expected = `loads from 1 to ${count}, such as ${count > 1 ? "1,2 or 1-2" : "1"}`;
    const problem = {
      code: "card.loads",
      kind: "input",
      path: [],
      found: text,
      expected,
      advice: "name loads of the batch",
      flag: "--loads",
    } as const;
    return { ok: false, problem };
  }
  const loads = ranges.flatMap(([from, to]) => Array.from({ length: to - from + 1 }, (_, index) => from + index));
  return { ok: true, value: [...new Set(loads)].sort((a, b) => a - b) };
}
