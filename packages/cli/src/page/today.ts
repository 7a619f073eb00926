import { type Answer, askBatch, askWater, type Noodle, type Problem, readNoodleData } from "@noodlewright/core";
import type { Batch } from "@noodlewright/core/answers";
import { type Figure, fixedText, pathText } from "@noodlewright/core/figure";
import { weightCell } from "@noodlewright/core/render";
import { basisText } from "@noodlewright/core/spec";
import { type Put, textAt, valueAt, withValues } from "../input/put.ts";
import type { PageData } from "./page-data.ts";
import { putOf, type State } from "./state.ts";
import { words } from "./words.ts";

type Line = Noodle["formula"]["lines"][number];
/** Where the protein of a flour and its basis stand, from the flour on. */
export const proteinPlace = ["figures", "protein"] as const;
const basisPlace = ["figures", "proteinBasis"] as const;

type Water = Extract<ReturnType<typeof askWater>, { readonly ok: true }>["value"];

/** The noodle of today, and what was worked out for it. */
export interface Today {
  /** The spec with what is different today in it. */
  readonly spec: unknown;
  readonly noodle?: Noodle;
  readonly batch?: Extract<Answer<Batch>, { readonly ok: true }>;
  readonly water?: Extract<Answer<Water>, { readonly ok: true }>;
  readonly items: readonly Item[];
  readonly problems: readonly Problem[];
}

/** One thing to weigh for a load. */
export interface Item {
  readonly id: string;
  readonly name: string;
  readonly mass: Figure;
  readonly unit: string;
  /** Division of its scale, g. */
  readonly division: string;
  readonly scale: string;
  /** Division of a scale that would do, g, where its own is too coarse for it. */
  readonly finer?: Figure;
  /** So much of it as ice. */
  readonly ice?: Figure;
  /** Made up first, or no part of the dough. */
  readonly kind: "ingredient" | "stock" | "dusting";
}

/** The spec with what is different today in it: the same data that the command has with `--set`. */
export function specToday({ spec }: PageData, state: State, written: Noodle | undefined): unknown {
  const puts = state.entries.map(putOf).flatMap((put) => [put, ...basisBeside(put, spec, written)]);
  const changed = withValues(spec, puts);
  const wetter = puts.some(({ path }) => path[0] === "flours" && path.at(-1) === "moisture");
  const own = puts.some(({ path }) => path[0] === "water");
  const reference = valueAt(spec, ["water", "onFlourMoisture"]) !== undefined;
  if (!state.keepWet || !wetter || own || reference || written === undefined) return changed;
  return withValues(changed, [{ path: ["water", "dough"], value: `${keptWater(written)} %` }]);
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

/** The dough water to keep, % of the dough, to what no scale tells. */
export function keptWater({ formula }: Noodle): string {
  return fixedText(formula.water.doughWater.value, 4);
}

/** Works the noodle out with what is different today. */
export function workOut(data: PageData, state: State, written?: Noodle): Today {
  const spec = specToday(data, state, written);
  const reading = readNoodleData(spec, { units: data.units });
  if (!reading.ok) return { spec, items: [], problems: reading.problems };
  const noodle = reading.value;
  const batch = askBatch(noodle);
  if (!batch.ok) return { spec, noodle, items: [], problems: batch.problems };
  const asked = noodle.spec.temperature?.dough !== undefined;
  const water = asked ? askWater(noodle) : undefined;
  return {
    spec,
    noodle,
    batch: { ...batch, report: kept(batch.report) },
    ...(water?.ok && { water }),
    items: itemsOf(batch.value, water?.ok ? water.value : undefined),
    problems: water?.ok === false ? water.problems : [],
  };
}

/** The same work, done when it is first asked for. */
function kept<T>(work: () => T): () => T {
  let done: { readonly value: T } | undefined;
  return () => {
    done ??= { value: work() };
    return done.value;
  };
}

function itemsOf({ lines, withStock, rework, dusting, remedies }: Batch, water: Water | undefined): readonly Item[] {
  const minded = (id: string | undefined) => {
    const finer = remedies.finer.find(({ weighed }) => weighed.line.id === id)?.division;
    return { ...iceOf(id), ...(finer && { finer }) };
  };
  const waterId = lines.find(({ line }) => line.role === "water")?.line.id;
  const iceOf = (id: string | undefined) => {
    const ice = id === waterId ? water?.weighed.ice?.ice : undefined;
    return ice && { ice };
  };
  const plain = lines.map(({ line, load, unit, division, scale }): Item => {
    return { id: line.id, name: line.name, mass: load, unit, division, scale, kind: "ingredient", ...minded(line.id) };
  });
  const stocked = withStock?.map(({ name, mass, unit, division, scale, weighed }): Item => {
    const kind = weighed === undefined && mass.id !== rework?.mass.id ? "stock" : "ingredient";
    const id = weighed?.line.id ?? mass.id;
    return { id, name, mass, unit, division, scale, kind, ...minded(weighed?.line.id) };
  });
  const old = rework && withStock === undefined ? [{ ...rework, id: rework.mass.id, kind: "ingredient" as const }] : [];
  const dust = dusting && [{ ...dusting, id: dusting.line.id, name: dusting.line.name, mass: dusting.load }];
  return [
    ...(stocked ?? plain),
    ...old.map(
      ({ id, name, mass, unit, division, scale, kind }): Item => ({ id, name, mass, unit, division, scale, kind }),
    ),
    ...(dust ?? []).map(({ id, name, mass, unit, division, scale }): Item => {
      return { id, name, mass, unit, division, scale, kind: "dusting", ...minded(id) };
    }),
  ];
}

/** What is to be weighed for a load: the list, or what mends the load. */
export function itemsOfLoad({ items }: Today, { mended }: State, load: number): readonly Item[] {
  const totals = mended[load];
  if (totals === undefined) return items;
  return items.map((item) => {
    const total = totals[item.id];
    if (total === undefined) return item;
    const { grams: value, division, scale } = total;
    const mass: Figure = { ...item.mass, value, working: { kind: "given", by: words.weigh.mendedBy } };
    return { ...item, mass, division, scale };
  });
}

/** A mass as the scale of an item shows it, without the unit. */
export function asShown({ mass, unit, division }: Item, grams: string = mass.value): string {
  return weightCell({ ...mass, value: grams }, unit, division).text;
}
