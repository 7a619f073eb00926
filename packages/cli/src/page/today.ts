import {
  type Answer,
  askBatch,
  askWater,
  missed,
  type Noodle,
  type Problem,
  readStatedNoodle,
  settle,
  shortPortions,
} from "@noodlewright/core";
import type { Batch } from "@noodlewright/core/answers";
import { fixedText, type Path, pathText } from "@noodlewright/core/figure";
import { basisText } from "@noodlewright/core/spec";
import { type Put, textAt, valueAt, withValues } from "../input/put.ts";
import type { Changes } from "./answers.ts";
import type { PageData } from "./page-data.ts";
import { isFound, putOf } from "./state.ts";

type Line = Noodle["formula"]["lines"][number];
type Answered<T> = Extract<T, { readonly ok: true }>;

/** Where the protein of a flour and its basis stand, from the flour on. */
export const proteinPlace = ["figures", "protein"] as const;
const basisPlace = ["figures", "proteinBasis"] as const;

/** The noodle of today, and what was worked out for it. */
export interface Today {
  /** The spec with what is different today in it. */
  readonly spec: unknown;
  /** The spec as it is written. */
  readonly written: unknown;
  readonly noodle?: Noodle;
  readonly batch?: Answered<Answer<Batch>>;
  readonly water?: Answered<ReturnType<typeof askWater>>;
  readonly problems: readonly Problem[];
}

/** Where the strength of an alkaline product stands, when it is a solution. */
export function strengthPlace(spec: unknown, path: Path, name: string): Path | undefined {
  return [
    [...path, "figures"],
    ["materials", name],
  ]
    .map((at) => [...at, "solution", "strength"])
    .find((at) => textAt(spec, at) !== "");
}

interface SpecToday {
  readonly spec: unknown;
  /** The moisture for which the water of the dough stands there. */
  readonly keeps?: Path | undefined;
}

/** The spec with what is different today in it: the same data that the command has with `--set`. */
function specToday({ spec }: PageData, changes: Changes, written: Noodle | undefined): SpecToday {
  const puts = changes.entries.map(putOf).flatMap((put) => [put, ...basisBeside(put, spec, written)]);
  const changed = withValues(spec, puts);
  const wetter = puts.findLast(({ path }) => path[0] === "flours" && path.at(-1) === "moisture");
  const own = puts.some(({ path }) => path[0] === "water");
  const reference = valueAt(spec, ["water", "onFlourMoisture"]) !== undefined;
  const open = ["added", "tap", "dough"].some((way) => isFound(valueAt(spec, ["water", way])));
  if (!changes.keepWet || !wetter || own || reference || open || written === undefined) return { spec: changed };
  const dough = [{ path: ["water", "dough"], value: `${keptWater(written)} %` }];
  return { spec: withValues(changed, dough), keeps: wetter.path };
}

/** The basis that the label names goes in beside a protein. */
function basisBeside({ path }: Put, spec: unknown, written: Noodle | undefined): readonly Put[] {
  const line = written?.formula.lines.find((one) => pathText([...one.path, ...proteinPlace]) === pathText(path));
  return line === undefined ? [] : [{ path: [...line.path, ...basisPlace], value: proteinBasis(spec, line) }];
}

/** Moisture basis on which the page shows and takes the protein of a flour: the one it is stated on. */
export function proteinBasis(spec: unknown, { path, material }: Line): string {
  const { stated, kind } = material;
  const besides = textAt(spec, [...path, ...basisPlace]);
  if (besides !== "") return besides;
  if (stated.protein) return basisText(stated.protein.basis);
  return ["flour", "bran"].includes(kind) ? "14 % mb" : "as is";
}

/**
 * The protein that a flour is reckoned with where the spec does not state it, on the basis on which the page takes it and by
 * the nitrogen factor of flour: that of a blend of it alone.
 */
export function reckonedProtein(spec: unknown, line: Line): string {
  const flour = withValues(valueAt(spec, line.path), [{ path: ["amount"], value: "100 %" }]);
  const alone = {
    name: line.name,
    materials: valueAt(spec, ["materials"]),
    flours: [flour],
    water: { added: "36 %" },
    batch: { flour: "1 kg" },
  };
  const reading = readStatedNoodle(alone, {});
  const protein = reading.ok ? reading.value.formula.blend.protein : undefined;
  const figure = proteinBasis(spec, line) === "as is" ? protein?.asIs : protein?.at14;
  return figure === undefined ? "" : fixedText(figure.value, figure.places);
}

/** The dough water to keep, % of the dough, to what no scale tells. */
export function keptWater({ formula }: Noodle): string {
  return fixedText(formula.water.doughWater.value, 4);
}

/** Works the noodle out with what is different today. */
export function workOut(data: PageData, changes: Changes, before?: Noodle): Today {
  const { spec, keeps } = specToday(data, changes, before);
  const reading = readStatedNoodle(spec, { units: data.units }, { settle, missed, shortPortions });
  if (!reading.ok) {
    // What is wrong with the water that is kept is wrong with the moisture that it is kept for.
    const placed = (problem: Problem): Problem =>
      keeps && pathText(problem.path) === "water.dough" ? { ...problem, path: keeps } : problem;
    return { spec, written: data.spec, problems: reading.problems.map(placed) };
  }
  const noodle = reading.value;
  const today = { spec, written: data.spec, noodle };
  const batch = askBatch(noodle);
  if (!batch.ok) return { ...today, problems: batch.problems };
  const asked = noodle.spec.temperature?.dough !== undefined;
  const water = asked ? askWater(noodle) : undefined;
  if (water?.ok === true) return { ...today, batch, water, problems: [] };
  return { ...today, batch, problems: water?.problems ?? [] };
}
