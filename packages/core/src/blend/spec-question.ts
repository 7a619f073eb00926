import { linesOf } from "../batch/dough-size.ts";
import { findTarget } from "../batch/target.ts";
import { graphOf, inGraph } from "../figure/graph.ts";
import { answer, type Note, note, type Outcome, type Path, type Problem, problem, refuse } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import type { FormulaLine } from "../formula/line.ts";
import type { MoistureBasis } from "../materials/fields.ts";
import { type DecimalText, dec, decimalText, fixedText, sum } from "../number/decimal.ts";
import type { Bounds } from "../spec/blend-schema.ts";
import type { Spec } from "../spec/spec.ts";
import type { BlendQuestion, BlendTargets, ProteinTarget } from "./blend-question.ts";
import type { FlourShelf } from "./flour-shelf.ts";
import { roomAround, roomOf } from "./met.ts";
import { styleFacts } from "./style-notes.ts";
import { styleRanges } from "./style-ranges.ts";
import type { BatchSize } from "./substitute-question.ts";

/** What every search in a spec shares: flours, steps and the flour of the batch. */
export type SharedQuestion = Pick<
  BlendQuestion,
  "step" | "flourMass" | "alternatives" | "currency" | "mostFlours" | "leastShare" | "batch"
>;

/** How many blends are shown unless the spec says otherwise. */
const usualAlternatives = 3;
/** Smallest share of a flour that is in the blend at all, %, unless the spec says otherwise: common practice, no source. */
const usualLeastShare = "2";

/** Basis of protein and ash unless the spec says otherwise. */
export function wantedBasis({ wanted }: Spec): MoistureBasis {
  return wanted?.basis ?? { kind: "at", moisture: "14" };
}

/**
 * The step, the number of blends and the flour of the batch, which a store is held against.
 *
 * Problems: those of `findTarget`.
 */
export function sharedQuestion(spec: Spec, formula: Formula, shelf: FlourShelf): Outcome<SharedQuestion> {
  const { wanted } = spec;
  const common: SharedQuestion = {
    step: wanted?.step?.value ?? "1",
    alternatives: wanted?.alternatives ?? usualAlternatives,
    leastShare: wanted?.leastShare?.value ?? usualLeastShare,
    ...(wanted?.mostFlours !== undefined && { mostFlours: wanted.mostFlours }),
    ...(shelf.currency !== undefined && { currency: shelf.currency }),
  };
  if (spec.batch === undefined) {
    const open = shelf.flours.some(({ flour: { store, bag } }) => store !== undefined || bag !== undefined);
    return answer(common, open ? [storeNote] : []);
  }
  const target = findTarget(spec, formula);
  if (!target.ok) return target;
  const flourMass = decimalText(dec(target.value.dough.value).times(100).div(formula.water.dough.value));
  const batch = graphOf([target.value.dough, formula.water.dough], formula.graph);
  return answer({ ...common, flourMass, batch }, shortNotes(shelf, flourMass));
}

/** What the batch is a mass of, on 100 of flour: of dough, less what follows that, or of what there is of the water or of a flour of the blend. */
function sizeOfBatch({ batch, mixer }: Spec, formula: Formula, dough: DecimalText): BatchSize | undefined {
  const isDough = batch?.bowls !== undefined || batch?.dough !== undefined;
  if (isDough || (batch?.load !== undefined && mixer?.of !== "flour"))
    return { parts: dough, water: true, flours: [], share: "0" };
  const lines = batch?.have === undefined ? [] : linesOf(batch.have.name, formula);
  const partsOf = (some: readonly FormulaLine[]) => decimalText(sum(some.map(({ parts }) => dec(parts.value))));
  const flours = lines.filter(({ role }) => role === "flour");
  const water = lines.some(({ role }) => role === "water");
  if (!water && flours.length === 0) return undefined;
  return { parts: partsOf(lines), water, flours: flours.map(({ name }) => name), share: partsOf(flours) };
}

/**
 * The water of the dough, what the spec holds of it, and what the batch is a mass of. Salt that is found follows the dough.
 *
 * @param found - places of the amounts that the spec left to be found
 */
export function doughNow(spec: Spec, formula: Formula, found: readonly Path[]) {
  const { water } = formula;
  const salt = dec(found.some(([key]) => key === "salt") ? formula.salt.value : 0);
  const beside = dec(water.dough.value).minus(salt);
  const others = decimalText(beside.minus(water.added.value).minus(100));
  const percent = decimalText(salt.times(100).div(water.dough.value));
  const onMoisture = formula.referenceFactor && { onMoisture: water.flour.value };
  const held = heldIn(spec, formula, found);
  const size = sizeOfBatch(spec, formula, decimalText(beside));
  return {
    water: inGraph(water.added, formula.graph),
    ...(held && { held: { ...held, others, salt: percent, ...onMoisture } }),
    ...(size && { size }),
  };
}

/** What is stated of the dough's water, or found for what is wanted of the water, stays; else what is wanted is kept. */
function heldIn(spec: Spec, { water: of }: Formula, found: readonly Path[]) {
  const isFound = found.some(([key]) => key === "water");
  const { doughWater, addedWater } = spec.wanted ?? {};
  const wishes = [
    { of: "dough", now: of.doughWater.value, wanted: doughWater },
    { of: "added", now: of.added.value, wanted: addedWater },
  ] as const;
  const isStated = spec.water.dough !== undefined && !isFound;
  const wish = isStated ? wishes[0] : wishes.find(({ wanted }) => wanted !== undefined && wanted.text !== "any");
  if (wish === undefined) return undefined;
  const { now, wanted } = wish;
  if (wanted === undefined || isStated || isFound) return { of: wish.of, least: now, most: now };
  const { least = "0", most = "100" } = roomOf(wanted, spec);
  const aim = wanted.value ?? wanted.aim;
  return { of: wish.of, least, most, ...(aim !== undefined && { aim }) };
}

/** Flours of which the store holds less than the blend takes now. */
function shortNotes(shelf: FlourShelf, flourMass: DecimalText): readonly Note[] {
  return shelf.flours.flatMap(({ flour: { name, store }, path, share }): readonly Note[] => {
    if (store === undefined) return [];
    const most = dec(store).times(100).div(flourMass);
    if (most.gte(share)) return [];
    return [note("blend.store-short", path, { name, most: fixedText(most, 1), share: decimalText(dec(share)) })];
  });
}

const storeNote = note("blend.store-open", ["batch"], {});

/** The flours as candidates; a store and whole bags count only beside the flour of a batch. */
export function candidatesOf(shelf: FlourShelf, { flourMass }: SharedQuestion) {
  return shelf.flours.map(({ flour }) => {
    if (flourMass !== undefined) return flour;
    const { store: _store, bag: _bag, ...open } = flour;
    return open;
  });
}

/** The blend of the spec as shares. */
export function sharesNow(shelf: FlourShelf) {
  return shelf.flours
    .filter(({ share }) => !dec(share).isZero())
    .map(({ flour, share }) => ({ name: flour.name, share }));
}

/**
 * The question that a spec asks about its blend. Problems: `wanted.nothing`, and those of `sharedQuestion`.
 */
export function blendQuestion(spec: Spec, formula: Formula, shelf: FlourShelf): Outcome<BlendQuestion> {
  const shared = sharedQuestion(spec, formula, shelf);
  if (!shared.ok) return shared;
  const wish = spec.wanted?.prefer ?? { kind: "nearest" as const };
  const prefer = wish.kind === "nearest" ? { kind: wish.kind, to: sharesNow(shelf) } : wish;
  const asked = targetsOf(spec);
  const style = Object.keys(asked).length === 0 && prefer.kind === "nearest" ? styleTargets(spec, shelf) : undefined;
  const targets = style?.targets ?? asked;
  if (Object.keys(targets).length === 0 && prefer.kind === "nearest")
    return refuse(problem("wanted.nothing", ["wanted"], {}));
  const ranged = spec.wanted?.wholeRange === true ? { ...targets, wholeRange: true } : targets;
  const flours = candidatesOf(shelf, shared.value);
  return answer({ ...shared.value, flours, targets: ranged, prefer }, [...shared.notes, ...(style?.notes ?? [])]);
}

/** What the spec says that the blend has to reach. */
export function targetsOf(spec: Spec): BlendTargets {
  const { wanted = {} } = spec;
  const basis = wantedBasis(spec);
  const protein = proteinTarget(spec, basis);
  const wholegrain = ends(wanted.wholegrain);
  const { value: most } = wanted.ash ?? {};
  const ash = most === undefined ? ends(wanted.ash) : { most };
  return {
    ...(protein && { protein }),
    ...(wanted.glutenProtein && { glutenProtein: { least: wanted.glutenProtein.value, basis } }),
    ...(ash && { ash: { ...ash, basis } }),
    ...(wholegrain && { wholegrain }),
    ...(wanted.price && { price: { most: wanted.price.perKilogram, said: wanted.price.text } }),
    ...(wanted.batchPrice && { batchPrice: { most: wanted.batchPrice.amount } }),
  };
}

/**
 * What the style of a spec asks of its flours where nothing else is asked: the range of protein, and of ash where that is
 * known of every flour. Of several ranges the one that was read itself comes first; a basis not stated is taken as 14 % mb.
 */
function styleTargets(
  { style }: Spec,
  shelf: FlourShelf,
): { readonly targets: BlendTargets; readonly notes: readonly Note[] } | undefined {
  if (style === undefined) return undefined;
  const basis = { kind: "at" as const, moisture: "14" };
  const known = { protein: true, ash: shelf.flours.every(({ flour }) => flour.ash !== undefined) };
  const ranges = (["protein", "ash"] as const).flatMap((quantity) => {
    const range = styleRanges().find((one) => one.style === style.toLowerCase() && one.quantity === quantity);
    return range === undefined || !known[quantity] ? [] : [{ ...range, quantity }];
  });
  const targets = Object.fromEntries(
    ranges.map(({ quantity, low, high }) => [
      quantity,
      { basis, ...(low !== undefined && { least: low }), ...(high !== undefined && { most: high }) },
    ]),
  );
  const notes = ranges.map((range) => note("blend.style", ["style"], styleFacts(range)));
  return { targets, notes };
}

/** A value as near as can be, unless it is written how near is near enough: then what is preferred decides within that. */
function proteinTarget(spec: Spec, basis: MoistureBasis): ProteinTarget | undefined {
  const { protein: bounds, within: stated } = spec.wanted ?? {};
  const value = bounds?.aim ?? bounds?.value;
  if (bounds === undefined || value === undefined) {
    const range = ends(bounds);
    return range && { ...range, basis };
  }
  const within = bounds.aim === undefined ? stated?.value : decimalText(dec(bounds.most ?? value).minus(value));
  return within === undefined
    ? { value, within: roomAround(value, spec), nearest: true, basis }
    : { value, within, basis };
}

function ends(bounds: Bounds | undefined): { readonly least?: DecimalText; readonly most?: DecimalText } | undefined {
  const { value, least = value, most = value } = bounds ?? {};
  if (least === undefined && most === undefined) return undefined;
  return { ...(least !== undefined && { least }), ...(most !== undefined && { most }) };
}

const keys: Readonly<Record<string, string>> = { step: "step", alternatives: "alternatives", prefer: "prefer" };
const flourKeys: Readonly<Record<string, Path>> = {
  step: ["step"],
  least: ["share"],
  most: ["share"],
  fixed: ["share"],
  ratioTo: ["ratio"],
};

/** A problem of a question with its place in the spec. */
export function atSpec(shelf: FlourShelf): (problem: Problem) => Problem {
  return (problem) => {
    const [first, second, third] = problem.path;
    if (first === "flours" && typeof second === "number") {
      const flour = shelf.flours[second];
      const limit = flourKeys[String(third)];
      const path = limit === undefined ? (flour?.path ?? ["flours"]) : ["shelf", flour?.flour.name ?? "", ...limit];
      return { ...problem, path };
    }
    if (first === "flourMass") return { ...problem, path: ["batch"] };
    const key = keys[String(first)];
    return { ...problem, path: key === undefined ? ["wanted"] : ["wanted", key] };
  };
}
