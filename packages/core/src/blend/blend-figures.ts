import { exact, type Figure, found, given, type Naming, worked } from "../figure/figure.ts";
import { type Graph, graphOf, inputsOf, scoped } from "../figure/graph.ts";
import { measure } from "../figure/in-system.ts";
import type { Reached } from "../figure/problems/explore.ts";
import { definition, fromSpec, massBalance } from "../figure/source.ts";
import { absorptionFigure } from "../formula/flour-figures.ts";
import { type MixedFlour, mix } from "../formula/mix.ts";
import { withRange } from "../formula/ranges.ts";
import type { MoistureBasis } from "../materials/fields.ts";
import { type Decimal, type DecimalText, dec, decimalText, fixedText, shortText, ZERO } from "../number/decimal.ts";
import { finest } from "./blend-grid.ts";
import { flourOfBatch, type Limit, priceUnit, reached, targetLimits } from "./blend-limits.ts";
import type { BlendQuestion, Candidate, CandidateFigures, Check, FoundBlend } from "./blend-question.ts";
import { ratioLimits, type Setup } from "./blend-setup.ts";
import { weigh } from "./step-problem.ts";
import type { StockedFlour } from "./substitute-question.ts";

/**
 * Writes a blend of steps out: shares, what it comes to, and how each target stands.
 *
 * @param scope - what its figures are under
 */
export function describeBlend(setup: Setup, steps: readonly number[], scope: string): FoundBlend {
  const { question, unit } = setup;
  const values = question.flours.map((_, index) => unit.times(steps[index] ?? 0));
  const places = Math.max(...values.map((share) => share.decimalPlaces()));
  const looked = lookedAt(question);
  const shares = question.flours.map((flour, index) => {
    const naming = shareNaming(flour, index, places);
    return found({ ...naming, id: `${scope}.${naming.id}` }, values[index] ?? ZERO, "search in whole steps", looked);
  });
  const checks = setup.targets.map((limit, index) =>
    checkOf(limit, steps, weigh(setup.rows[index]?.coefficients ?? [], steps) >= 0),
  );
  return {
    ...comesTo(question, shares, scope),
    checks: [...valueAsOne(question, checks), ...stockChecks(question, values)],
  };
}

/** All that is given of what a search looks at: the old blend it holds, the flour of the batch where that is limited. */
export function lookedAt(question: BlendQuestion): readonly Figure[] {
  const { flours, targets, batch, old = {} } = question;
  const isLimited = targets.batchPrice !== undefined || flours.some(({ store, bag }) => (store ?? bag) !== undefined);
  return inputsOf({ ...old, ...flourGraph(question), ...(isLimited && batch) });
}

function shareNaming(flour: Candidate, index: number, places: number): Naming {
  return { ...figuresOf(flour, index).share, label: `share of ${flour.name}`, places };
}

/** The share of a flour, by its place in the question, in a blend that was given. */
export function shareFigure(flour: Candidate, index: number, value: DecimalText): Figure {
  const { share } = figuresOf(flour, index);
  if (exact(share).eq(value)) return share;
  return given(shareNaming(flour, index, Math.min(2, dec(value).decimalPlaces())), value, "the blend", fromSpec);
}

/** The shares of a blend, and what its flours come to at them. */
function comesTo(question: BlendQuestion, all: readonly Figure[], scope: string): Omit<FoundBlend, "checks"> {
  const shares = question.flours.flatMap(({ name }, index) => {
    const share = all[index];
    return share === undefined || exact(share).isZero() ? [] : [{ name, share }];
  });
  const figures = blendFigures(question, all, scope);
  return { scope, shares, figures: scope === "" ? figures : scoped(scope, figures) };
}

/**
 * Works out what a blend comes to: moisture and protein as it is and at a basis; ash, gluten-forming protein, wholegrain
 * share and price where every flour in it has the figure.
 *
 * @param shares - one figure for each flour, % of the blend
 */
export function blendFigures(question: BlendQuestion, shares: readonly Figure[], scope = ""): readonly Figure[] {
  const { flours, targets, currency } = question;
  const basis: MoistureBasis = targets.protein?.basis ?? { kind: "at", moisture: "14" };
  const used = flours.flatMap((flour, index) => {
    const share = shares[index];
    return share === undefined || exact(share).isZero() ? [] : [{ ...figuresOf(flour, index, currency), share }];
  });
  if (used.length === 0) return [];
  const { moisture, protein, gluten, ash, wholegrain, price } = mix(used);
  const held = [protein, gluten, ash].flatMap((one) =>
    one === undefined ? [] : [one.asIs, ...(basis.kind === "at" ? [one.at(basis.moisture)] : [])],
  );
  const mass = flourOfBatch(question, shares.map(exact));
  const flour =
    mass &&
    found(
      {
        id: scope === "" ? "blend.batch-flour" : `${scope}.blend.batch-flour`,
        label: "flour of the batch",
        unit: "g",
        places: 0,
      },
      mass,
      "by the dough that the blend makes",
      inputsOf({ ...flourGraph(question), ...question.batch }),
    );
  const ofBatch =
    price &&
    flour &&
    worked(
      { id: "blend.batch-price", label: "price of the flour of the batch", unit: currency ?? "", places: 2 },
      "price * flour / 1000",
      { price, flour },
      massBalance,
    );
  return [moisture, ...held, wholegrain, ...(price ? [price] : []), ...(ofBatch ? [ofBatch] : [])];
}

/** The figures of a flour of a question, under its place there where it is no line of a noodle. */
export function figuresOf(flour: StockedFlour, index: number, currency?: string): CandidateFigures {
  if (flour.figures !== undefined) return flour.figures;
  const { name, glutenProtein, ash, price, newLot, ownWater } = flour;
  const id = `flour.${index + 1}`;
  const of = newLot ? "lot" : id;
  const stated = (what: string, value: string, open?: Candidate["proteinRange"], unit = "%"): Figure => {
    const naming = { id: `${of}.${what.replaceAll(" ", "-")}`, label: `${what} of ${name}`, unit, places: 2 };
    return withRange(
      given(naming, value, "the flour's figures", fromSpec),
      open && { ...open, why: `range of ${what} of ${name}` },
    );
  };
  const protein = { value: stated("protein", flour.protein, flour.proteinRange) };
  const ofGluten = (): MixedFlour["gluten"] => {
    if (glutenProtein === undefined) return undefined;
    if (glutenProtein === flour.protein) return protein;
    return dec(glutenProtein).isZero() ? "none" : { value: stated("gluten-forming protein", glutenProtein) };
  };
  return {
    id,
    share: given({ id: `${id}.parts`, label: name, unit: "% of flour", places: 2 }, 0, "not in the blend", definition),
    moisture: stated("moisture", flour.moisture, flour.moistureRange),
    protein,
    gluten: ofGluten(),
    ash: ash === undefined ? undefined : stated("ash", ash),
    wholegrain: stated("wholegrain", flour.wholegrain === true ? "1" : "0", undefined, ""),
    price: price === undefined ? undefined : stated("price", price, undefined, priceUnit(currency)),
    openAsIs: flour.proteinAsIs === true,
    absorption: absorptionFigure({ id: of, name, material: { absorption: ownWater } }),
  };
}

/** The graph of the flours of a question. */
export function flourGraph({ flours, currency }: Pick<BlendQuestion, "flours" | "currency">): Graph {
  const all = flours.flatMap((flour, index) => {
    const { share, moisture, protein, gluten, ash, wholegrain, price, absorption } = figuresOf(flour, index, currency);
    const held = [protein, gluten].flatMap((one) =>
      one === undefined || one === "none" ? [] : [one.value, one.factor],
    );
    return [share, moisture, ...held, ash, wholegrain, price, absorption];
  });
  return graphOf(all.filter((figure) => figure !== undefined));
}

function checkOf(limit: Limit, shares: readonly (number | Decimal)[], holds: boolean): Check {
  const at = (top: readonly Decimal[]): string => decimalText(reached({ top, bottom: limit.bottom }, shares) ?? dec(0));
  const { id, label, side, bound, said, unit, ends } = limit;
  const check = {
    id,
    label,
    side,
    unit,
    holds,
    bound: decimalText(bound),
    reached: at(limit.top),
    ...(said && { said }),
  };
  return {
    ...check,
    ...(ends && { range: { low: at(ends.low), high: at(ends.high) } }),
  };
}

/** The most places that what was asked is told in: a price of a pack may come to thirty. */
export const mostPlaces = 4;

/** What a check finds and what was asked, with as many digits as it was asked in, from two to four places. */
export function checkTexts({ reached, unit, side, bound, said, within }: Check): Reached {
  const places = Math.max(2, Math.min(dec(bound).decimalPlaces(), mostPlaces));
  const value = said ?? `${shortText(bound, mostPlaces)} ${unit}`;
  const wanted = {
    near: `${value}, ± ${within}`,
    whole: `whole bags of ${value}`,
    least: `at least ${value}`,
    most: `at most ${value}`,
  };
  const price = said !== undefined && {
    price: { reached: measure(reached, unit, places), most: measure(bound, unit, places) },
  };
  return { reached: `${fixedText(reached, places)} ${unit}`, wanted: wanted[side], ...price };
}

/** The two ends that a protein value is met within as the one thing that was asked. */
function valueAsOne({ targets: { protein } }: BlendQuestion, checks: readonly Check[]): readonly Check[] {
  const [least, most] = ["protein.least", "protein.most"].map((end) => checks.find(({ id }) => id === end));
  if (protein?.value === undefined || least === undefined || most === undefined) return checks;
  const { value: bound, within } = protein;
  const asked: Check = { ...least, id: "protein", side: "near", bound, within, holds: least.holds && most.holds };
  return checks.flatMap((one) => (one === most ? [] : [one === least ? asked : one]));
}

/** A blend as somebody has it, with what it comes to, in whatever steps its shares are: one for each flour. */
export function describeShares(question: BlendQuestion, shares: readonly Figure[], scope = ""): FoundBlend {
  const values = shares.map(({ value }) => value);
  return {
    ...comesTo(question, shares, scope),
    checks: [...checksOfTargets(question, values), ...stockChecks(question, values.map(dec))],
  };
}

/**
 * Holds a blend as it is against all that a question asks: its targets; the limits, store, bags and ratio of each flour;
 * and how many flours it may have.
 *
 * @param shares - one for each flour, % of the blend
 */
export function checksOfShares(question: BlendQuestion, shares: readonly string[]): readonly Check[] {
  const parts = shares.map(dec);
  const flours = question.flours.flatMap(({ name, least, most, fixed, missing }, index) => {
    const share = parts[index] ?? dec(0);
    const check = (side: "least" | "most", bound: string | undefined): readonly Check[] => {
      if (bound === undefined) return [];
      const holds = side === "least" ? share.gte(bound) : share.lte(bound);
      const naming = { id: `share.${index + 1}.${side}`, label: `share of ${name}`, unit: "%" };
      return [{ ...naming, side, bound, reached: decimalText(share), holds }];
    };
    return [...check("least", least ?? fixed), ...check("most", missing === true ? "0" : (most ?? fixed))];
  });
  return [
    ...checksOfTargets(question, shares),
    ...flours,
    ...stockChecks(question, parts),
    ...ratioChecks(question, parts),
    ...countChecks(question, parts),
  ];
}

/** The flour of the batch in kg, beside what is in the store, and in whole bags, whose shares are rounded to whole steps. */
function stockChecks(question: BlendQuestion, parts: readonly Decimal[]): readonly Check[] {
  const { flours, bagMass } = question;
  const flourNow = flourOfBatch(question, parts);
  if (flourNow === undefined) return [];
  const counted = dec(bagMass ?? flourNow);
  return flours.flatMap(({ name, store, bag }, index): readonly Check[] => {
    const share = parts[index] ?? ZERO;
    const taken = share.times(flourNow).div(100);
    const mass = share.times(counted).div(100);
    const inKg = (grams: Decimal | string): string => decimalText(dec(grams).div(1000));
    const check = (key: "store" | "bag", label: string, own: Pick<Check, "side" | "bound" | "holds">): Check => {
      return { id: `${key}.${index + 1}`, label, ...own, reached: inKg(key === "bag" ? mass : taken), unit: "kg" };
    };
    const bags = bag === undefined ? ZERO : mass.div(bag).round();
    const off = share.minus(
      dec(bag ?? 0)
        .times(bags)
        .div(counted)
        .times(100),
    );
    const isWhole = off.abs().lte(bags.times(finest).div(2).plus(rest));
    return [
      ...(store === undefined || share.isZero()
        ? []
        : [check("store", `${name} from the store`, { side: "most", bound: inKg(store), holds: taken.lte(store) })]),
      ...(bag === undefined ? [] : [check("bag", name, { side: "whole", bound: inKg(bag), holds: isWhole })]),
    ];
  });
}

/** What a division may leave of a share that is whole. */
const rest = "1e-9";

/** Each ratio of one flour to another; of two that are both left out, any. */
function ratioChecks({ flours }: BlendQuestion, parts: readonly Decimal[]): readonly Check[] {
  return flours.flatMap((flour, index) => {
    const [limit] = ratioLimits(flours, flour, index);
    if (limit === undefined) return [];
    const ratio = reached(limit, parts);
    const holds = ratio === undefined ? parts[index]?.isZero() === true : ratio.minus(limit.bound).abs().lte(rest);
    return [{ ...checkOf(limit, parts, holds), id: `ratio.${index + 1}`, side: "near" as const, within: "0" }];
  });
}

function countChecks({ mostFlours }: BlendQuestion, parts: readonly Decimal[]): readonly Check[] {
  if (mostFlours === undefined) return [];
  const used = parts.filter((share) => !share.isZero()).length;
  const naming = { id: "flours.most", label: "number of flours", side: "most" as const, unit: "flours" };
  return [{ ...naming, bound: String(mostFlours), reached: String(used), holds: used <= mostFlours }];
}

/**
 * Holds a blend as it is against the targets of a question.
 *
 * @param shares - one for each flour, % of the blend
 */
export function checksOfTargets(question: BlendQuestion, shares: readonly string[]): readonly Check[] {
  const parts = shares.map(dec);
  const checks = targetLimits(question).map((limit) => {
    const value = reached(limit, parts) ?? dec(0);
    const room = limit.side === "least" ? value.minus(limit.bound) : limit.bound.minus(value);
    return checkOf(limit, parts, room.gte("-1e-9"));
  });
  return valueAsOne(question, checks);
}
