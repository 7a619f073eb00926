import type { Batch } from "../batch/batch.ts";
import { type Cost, costOf } from "../batch/cost.ts";
import { nutritionOf } from "../batch/nutrition.ts";
import { questionProblems } from "../blend/blend-checks.ts";
import { checksOfTargets, checkTexts } from "../blend/blend-figures.ts";
import type { Check } from "../blend/blend-question.ts";
import { flourShelf } from "../blend/flour-shelf.ts";
import { sharedQuestion, sharesNow, targetsOf, wantedBasis } from "../blend/spec-question.ts";
import { type Figure, shown } from "../figure/figure.ts";
import type { Published } from "../figure/graph.ts";
import { loudNote, type Note, note, problemsOf } from "../figure/problem.ts";
import type { Reached } from "../figure/problems/explore.ts";
import type { OnBases } from "../formula/blend.ts";
import type { Formula } from "../formula/formula.ts";
import { atMoisture } from "../formula/mix.ts";
import { minorPlaces } from "../materials/currencies.ts";
import type { OwnMaterials } from "../materials/own.ts";
import { ceilToDivision, dec, fixedText, floorToDivision } from "../number/decimal.ts";
import type { Bounds } from "../spec/blend-schema.ts";
import type { Spec } from "../spec/spec.ts";
import { reachedBy, saltOfDough, type Want, wantedEnds } from "./wanted-figures.ts";

/** One thing that a spec wants, beside what its noodle comes to. */
export interface WantedCheck extends Reached {
  readonly label: string;
  readonly holds: boolean;
  /** What of a price that is missed costs most. */
  readonly dearest?: { readonly name: string; readonly cost: string };
}

/** The checks that can be made, and what cannot be told. */
export interface WantedChecks {
  readonly checks: readonly WantedCheck[];
  readonly notes: readonly Note[];
}

/** A check, and what is wanted as figures. */
export interface HeldWant {
  readonly check: WantedCheck;
  readonly want: Want;
}

interface HeldWants {
  readonly held: readonly HeldWant[];
  readonly notes: readonly Note[];
}

/**
 * Holds a formula against all that its spec wants: the blend, water, alkali and salt; and, of a batch, what a bowl costs.
 * What is reached counts as it is shown, and a value is met as `wantedEnds` says; protein within `within` where that is stated.
 */
export function wantedChecks(
  spec: Spec,
  formula: Formula,
  batch: Batch | undefined,
  extra: OwnMaterials = {},
): WantedChecks {
  const { held, notes } = heldWants(spec, formula, batch, extra);
  return { checks: held.map(({ check }) => check), notes };
}

/** The same, each check with its figures. */
export function heldWants(spec: Spec, formula: Formula, batch: Batch | undefined, extra: OwnMaterials = {}): HeldWants {
  const limits = { held: shareChecks(spec, formula), notes: [] };
  if (spec.wanted === undefined) return limits;
  const costing = batch && spec.wanted.bowlPrice && costOf(spec, formula, batch);
  const cost = costing?.ok ? costing.value : undefined;
  const parts = [
    limits,
    blendChecks(spec, formula, batch, extra),
    formulaChecks(spec, formula),
    bowlChecks(spec, formula, cost),
  ];
  return { held: parts.flatMap(({ held }) => held), notes: parts.flatMap(({ notes }) => notes) };
}

/** What is wanted and not met, one loud note each. */
export function missedNotes({ checks }: WantedChecks): readonly Note[] {
  return checks
    .filter(({ holds }) => !holds)
    .map(({ holds: _holds, ...facts }) => loudNote("wanted.missed", ["wanted"], facts));
}

/** The shares of the flours that have a least or a most of their own. */
function shareChecks(spec: Spec, { lines }: Formula): readonly HeldWant[] {
  return spec.flours.flatMap(({ name, least, most }, index) => {
    const line = lines.find(({ path }) => path[0] === "flours" && path[1] === index);
    const ends = [least && `at least ${least.text}`, most && `at most ${most.text}`].filter((end) => end !== undefined);
    if (line === undefined || ends.length === 0) return [];
    const bounds = { text: ends.join(", "), ...(least && { least: least.value }), ...(most && { most: most.value }) };
    return check({ id: line.id, label: `the share of ${name}` }, line.parts, bounds, spec);
  });
}

function blendChecks(spec: Spec, formula: Formula, batch: Batch | undefined, extra: OwnMaterials): HeldWants {
  const targets = targetsOf(spec);
  if (Object.keys(targets).length === 0) return { held: [], notes: [] };
  const shelf = flourShelf(spec, formula, extra);
  const shared = shelf.ok ? sharedQuestion(spec, formula, shelf.value) : shelf;
  if (!shelf.ok || !shared.ok) {
    const problems = problemsOf(shelf.ok ? shared : shelf).slice(0, 1);
    return { held: [], notes: problems.map((one) => note("wanted.no-blend", ["wanted"], { problem: one })) };
  }
  const inUse = shelf.value.flours.filter(({ share }) => !dec(share).isZero());
  const whole = spec.wanted?.wholeRange === true ? { ...targets, wholeRange: true } : targets;
  const prefer = { kind: "nearest" as const, to: sharesNow(shelf.value) };
  const asked = { ...shared.value, flours: inUse.map(({ flour }) => flour), targets: whole, prefer };
  const missing = questionProblems(asked).filter(({ code }) => code === "blend.figure-missing");
  const open = new Map(missing.map((one) => [String(one.path.at(-1)), one] as const));
  const notes = [...open.values()].map((one) => note("wanted.no-blend", ["wanted"], { problem: one }));
  const isOpen = (key: string): boolean => open.has(key === "batchPrice" ? "price" : key);
  const told = Object.fromEntries(Object.entries(whole).filter(([key]) => !isOpen(key)));
  const question = { ...asked, targets: told };
  const shares = inUse.map(({ share }) => share);
  const held = checksOfTargets(question, shares).map((check): HeldWant => {
    const { label, holds, range } = check;
    const key = keys[check.id.replace(/\.(?:least|most)$/u, "")];
    const openEnds = range !== undefined && spec.wanted?.wholeRange === true;
    const reached = key === undefined || openEnds ? undefined : blendFigure(key, spec, formula, batch);
    const ends = key === undefined || reached === undefined ? {} : blendEnds(key, check, reached, spec);
    return { check: { label, ...checkTexts(check), holds }, want: { label, reached, ...ends, asShown: false } };
  });
  return { held, notes };
}

type BlendKey = "protein" | "glutenProtein" | "ash" | "wholegrain" | "price" | "batchPrice";

/** The keys of what is wanted of a blend, by the names that its checks have. */
const keys: Readonly<Record<string, BlendKey>> = {
  protein: "protein",
  "gluten-forming-protein": "glutenProtein",
  ash: "ash",
  "wholegrain-share": "wholegrain",
  price: "price",
  "price-of-the-flour-of-the-batch": "batchPrice",
};

function blendEnds(
  key: BlendKey,
  { side, bound, said }: Check,
  { label: reached, unit }: Figure,
  spec: Spec,
): Pick<Want, "least" | "most"> {
  const { protein, within } = spec.wanted ?? {};
  const of = { id: key, label: reached, unit };
  if (side === "near" || side === "whole") return protein ? wantedEnds(of, protein, spec, within?.value) : {};
  return wantedEnds(of, { text: `at ${side} ${said ?? `${bound} ${unit}`}`, [side]: bound }, spec);
}

/** What the blend comes to, as a figure; undefined where not all is known of it. */
function blendFigure(
  key: BlendKey,
  spec: Spec,
  { blend, water }: Formula,
  batch: Batch | undefined,
): Figure | undefined {
  if (key === "wholegrain") return blend.wholegrain;
  if (key !== "price" && key !== "batchPrice") return atWantedBasis(blend[key], blend.moisture, spec);
  const { price, currency } = blend;
  if (key === "price") return price;
  if (price === undefined || currency === undefined || batch === undefined) return undefined;
  const ofAll = { label: "price of the flour of the batch", unit: currency };
  return reachedBy("batchPrice", ofAll, "price * dough / parts / 10", {
    price,
    dough: batch.target.dough,
    parts: water.dough,
  });
}

function atWantedBasis(bases: OnBases | undefined, moisture: Figure, spec: Spec): Figure | undefined {
  const basis = wantedBasis(spec);
  if (bases === undefined || basis.kind === "as is") return bases?.asIs;
  if (dec(basis.moisture).isZero()) return bases.dry;
  return dec(basis.moisture).eq(14) ? bases.at14 : atMoisture(bases.asIs, moisture, basis.moisture);
}

function formulaChecks(spec: Spec, { water, alkali, salt }: Formula): HeldWants {
  const { wanted = {} } = spec;
  const none = (id: string, label: string, unit: string) => reachedBy(id, { label, unit }, "0", {});
  const one = (
    id: keyof typeof wanted,
    label: string,
    unit: string,
    figure: Figure | undefined,
    bounds: Bounds | undefined,
  ) => check({ id, label }, figure ?? none(id, label, unit), bounds, spec);
  const held = [
    one("addedWater", "added water", "", water.added, wanted.addedWater),
    one("doughWater", "dough water", "", water.doughWater, wanted.doughWater),
    one("alkalinity", "alkalinity M", "meq/100 g flour", alkali?.alkalinityM, wanted.alkalinity),
    one("anhydrousSalts", "anhydrous alkaline salts", "% of flour", alkali?.anhydrous, wanted.anhydrousSalts),
    one("potassiumShare", "potassium carbonate", "% of the carbonates", alkali?.potassiumShare, wanted.potassiumShare),
    one("saltInDough", "salt in the dough", "", saltOfDough({ salt, water }), wanted.saltInDough),
  ];
  return { held: held.flat(), notes: [] };
}

/** What a bowl holds when it is cooked, and what it costs. */
function bowlChecks(spec: Spec, formula: Formula, cost: Cost | undefined): HeldWants {
  const { saltInBowl, sodium: mostSodium, bowlPrice } = spec.wanted ?? {};
  const held: HeldWant[] = [];
  const notes: Note[] = [];
  if (saltInBowl !== undefined || mostSodium !== undefined) {
    const nutrition = nutritionOf(spec, formula, { rules: "EU" });
    const bowl = nutrition.ok ? nutrition.value.bowl : undefined;
    if (!nutrition.ok || bowl === undefined) notes.push(note("wanted.no-bowl", ["wanted"], {}));
    else {
      const { amounts, kept, graph } = nutrition.value;
      const of = { id: "saltInBowl", label: "salt in a cooked bowl" };
      const salt = reachedBy(of.id, { label: of.label, unit: "g" }, "salt / dough * raw * kept / 100", {
        salt: formula.salt,
        dough: formula.water.dough,
        raw: bowl.raw,
        kept: kept.sodium,
      });
      held.push(...check(of, { ...salt, graph }, saltInBowl, spec));
      const amount = amounts.find(({ name }) => name === "sodium");
      const figure = (amount?.most ?? amount)?.cooked.bowl;
      if (mostSodium !== undefined && figure !== undefined) {
        const most = dec(mostSodium.value).times(1000).toFixed();
        const ofSodium = { id: "sodium", label: "sodium of a cooked bowl" };
        held.push(...check(ofSodium, { ...figure, graph }, atMost(most, figure), spec));
        const { missing = [] } = amount ?? {};
        if (missing.length > 0) notes.push(note("wanted.sodium", ["wanted"], { names: missing }));
      }
    }
  }
  if (bowlPrice !== undefined) {
    const bowl = cost?.bowl;
    if (cost === undefined || bowl === undefined || bowl.unit !== bowlPrice.currency)
      notes.push(note("wanted.cost", ["wanted"], { currency: bowlPrice.currency }));
    else {
      const of = { id: "bowlPrice", label: "the cost of a bowl" };
      const costs = cost.lines.flatMap(({ weighed, bowl: own }) => (own ? [{ weighed, own }] : []));
      const [most] = costs.toSorted((one, other) => dec(other.own.value).cmp(one.own.value));
      for (const { check: made, want } of check(of, bowl, atMost(bowlPrice.amount, bowl), spec)) {
        if (cost.unpriced.length > 0) {
          // What is not priced comes on top: a price that is missed without it is missed, and one that is met may not be.
          notes.push(note("wanted.prices", ["wanted"], { names: cost.unpriced }));
          if (made.holds) continue;
        }
        const dearest = !made.holds && most && { dearest: { name: most.weighed.line.name, cost: shown(most.own) } };
        held.push({
          check: { ...made, ...dearest },
          want: cost.unpriced.length > 0 ? { label: want.label, asShown: want.asShown } : want,
        });
      }
    }
  }
  return { held, notes };
}

function atMost(most: string, { unit }: Figure): Bounds {
  const places = Math.max(minorPlaces(unit) ?? 0, dec(most).decimalPlaces());
  return { text: `at most ${fixedText(most, places)} ${unit}`, most };
}

function check(
  { id, label }: { readonly id: string; readonly label: string },
  figure: Figure | Published<Figure>,
  bounds: Bounds | undefined,
  spec: Spec,
): readonly HeldWant[] {
  if (bounds === undefined) return [];
  const { value, unit, places } = figure;
  const { least, most, room } = wantedEnds({ id, label, unit }, bounds, spec);
  const reached = fixedText(value, places);
  const step = dec(10).pow(-places);
  // As shown, but never stricter than the ends themselves: what just meets one of more places is met.
  const tooLittle = least !== undefined && dec(reached).lt(floorToDivision(dec(least.value), step));
  const tooMuch = most !== undefined && dec(reached).gt(ceilToDivision(dec(most.value), step));
  const wanted = room === undefined || bounds.aim !== undefined ? bounds.text : `${bounds.text}, ± ${room.value}`;
  return [
    {
      check: { label, reached: `${reached} ${unit}`, wanted, holds: !tooLittle && !tooMuch },
      want: { label, reached: figure, least, most, asShown: true },
    },
  ];
}
