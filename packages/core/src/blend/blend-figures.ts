import { type Figure, found, given, worked } from "../figure/figure.ts";
import { measure } from "../figure/in-system.ts";
import type { Reached } from "../figure/problems/explore.ts";
import { fromSpec, massBalance } from "../figure/source.ts";
import { type MixedFlour, mix } from "../formula/mix.ts";
import { withRange } from "../formula/ranges.ts";
import type { MoistureBasis } from "../materials/fields.ts";
import { type Decimal, dec, decimalText, fixedText, shortText, ZERO } from "../number/decimal.ts";
import { finest } from "./blend-grid.ts";
import { flourOfBatch, type Limit, priceUnit, reached, targetLimits } from "./blend-limits.ts";
import type { BlendQuestion, Candidate, Check, FoundBlend } from "./blend-question.ts";
import { ratioLimits, type Setup } from "./blend-setup.ts";
import { weigh } from "./step-problem.ts";

/** Writes a blend of steps out: shares, what it comes to, and how each target stands. */
export function describeBlend(setup: Setup, steps: readonly number[]): FoundBlend {
  const { question, unit } = setup;
  const values = question.flours.map((_, index) => unit.times(steps[index] ?? 0));
  const places = Math.max(...values.map((share) => share.decimalPlaces()));
  const shares = question.flours.map(({ name }, index) => {
    const value = values[index] ?? ZERO;
    if (value.isZero()) return undefined;
    const naming = { id: `share.${index + 1}`, label: `share of ${name}`, unit: "% of flour", places };
    return { name, share: found(naming, value, "search in whole steps") };
  });
  const figures = blendFigures(
    question.flours,
    shares.map((one) => one?.share),
    basisAsked(question.targets),
    question.currency,
    flourOfBatch(question, values),
  );
  const checks = setup.targets.map((limit, index) =>
    checkOf(limit, steps, weigh(setup.rows[index]?.coefficients ?? [], steps) >= 0),
  );
  return {
    shares: shares.filter((one) => one !== undefined),
    figures,
    checks: [...valueAsOne(question, checks), ...stockChecks(question, values)],
  };
}

/**
 * Works out what a blend comes to: moisture and protein as it is and at a basis; ash, gluten-forming protein, wholegrain
 * share and price where every flour in it has the figure.
 *
 * The figures of a flour bear its number in the order of the question, such as `flour.1.protein`.
 *
 * @param shares - one figure for each flour that is in it, in the place of the flour, % of the blend
 */
export function blendFigures(
  flours: readonly Candidate[],
  shares: readonly (Figure | undefined)[],
  basis: MoistureBasis,
  currency?: string,
  flourMass?: Decimal,
): readonly Figure[] {
  const used = flours.flatMap((flour, index) => {
    const share = shares[index];
    return share === undefined || dec(share.value).isZero() ? [] : [asMixed(flour, share, index + 1, currency)];
  });
  if (used.length === 0) return [];
  const { moisture, protein, gluten, ash, wholegrain, price } = mix(used);
  const held = [protein, gluten, ash].flatMap((one) =>
    one === undefined ? [] : [one.asIs, ...(basis.kind === "at" ? [one.at(basis.moisture)] : [])],
  );
  const ofBatch =
    price &&
    flourMass !== undefined &&
    worked(
      { id: "blend.batch-price", label: "price of the flour of the batch", unit: currency ?? "", places: 2 },
      "price * flour / 1000",
      { price, flour: decimalText(flourMass) },
      massBalance,
    );
  return [moisture, ...held, wholegrain, ...(price ? [price] : []), ...(ofBatch ? [ofBatch] : [])];
}

/** A flour of a question as it is mixed. */
function asMixed(flour: Candidate, share: Figure, number: number, currency: string | undefined): MixedFlour {
  const { name, glutenProtein, ash, price } = flour;
  const stated = (what: string, value: string, open?: Candidate["proteinRange"], unit = "%"): Figure => {
    const naming = { id: `flour.${number}.${what.replaceAll(" ", "-")}`, label: `${what} of ${name}`, unit, places: 2 };
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
    share,
    moisture: stated("moisture", flour.moisture, flour.moistureRange),
    protein,
    gluten: ofGluten(),
    ash: ash === undefined ? undefined : stated("ash", ash),
    wholegrain: stated("wholegrain", flour.wholegrain === true ? "1" : "0", undefined, ""),
    price: price === undefined ? undefined : stated("price", price, undefined, priceUnit(currency)),
    openAsIs: flour.proteinAsIs === true,
  };
}

/** The basis the protein target is in; 14 % moisture where none is asked for. */
function basisAsked(targets: BlendQuestion["targets"]): MoistureBasis {
  return targets.protein?.basis ?? { kind: "at", moisture: "14" };
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

/** A blend as somebody has it, with what it comes to, in whatever steps its shares are: a figure for each flour in it. */
export function describeShares(question: BlendQuestion, given: readonly (Figure | undefined)[]): FoundBlend {
  const { flours, targets, currency } = question;
  const values = given.map((share) => share?.value ?? "0");
  return {
    shares: flours.flatMap(({ name }, index) => {
      const share = given[index];
      return share === undefined || dec(share.value).isZero() ? [] : [{ name, share }];
    }),
    figures: blendFigures(flours, given, basisAsked(targets), currency, flourOfBatch(question, values.map(dec))),
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
