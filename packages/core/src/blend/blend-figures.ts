import { type Figure, found, given, type Range, worked } from "../figure/figure.ts";
import { fromSpec, massBalance } from "../figure/source.ts";
import { basisRange, sumRange, withRange } from "../formula/ranges.ts";
import { basisText, type MoistureBasis } from "../materials/fields.ts";
import { basisRule, dryRatio } from "../materials/moisture.ts";
import { type Decimal, dec, decimalText, fixedText, ZERO } from "../number/decimal.ts";
import { finest } from "./blend-grid.ts";
import { type Limit, priceUnit, reached, targetLimits } from "./blend-limits.ts";
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
    question.flourMass,
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
 * The figures of a flour bear its number in the order of the question, such as `protein.1`.
 *
 * @param shares - one figure for each flour that is in it, in the place of the flour, % of the blend
 */
export function blendFigures(
  flours: readonly Candidate[],
  shares: readonly (Figure | undefined)[],
  basis: MoistureBasis,
  currency?: string,
  flourMass?: string,
): readonly Figure[] {
  const used = flours.flatMap((flour, index) => {
    const share = shares[index];
    return share === undefined || dec(share.value).isZero() ? [] : [{ flour, share, number: index + 1 }];
  });
  const mixed = (id: string, label: string, unit: string, read: Read, open: Open = () => undefined): Figure[] => {
    const values = used.flatMap(({ flour, number }) => {
      const value = read(flour);
      if (value === undefined) return [];
      const naming = { id: `${id}.${number}`, label: `${label} of ${flour.name}`, unit, places: 2 };
      const range = open(flour);
      const figure = given(naming, value, "the flour's figures", fromSpec);
      return [withRange(figure, range && { ...range, why: `range of ${label} of ${flour.name}` })];
    });
    if (values.length < used.length || used.length === 0) return [];
    const figure = worked(
      { id: `blend.${id}`, label: `${label} of the blend`, unit, places: 2 },
      "sum(share * figure) / 100",
      { share: used.map(({ share }) => share), figure: values },
      massBalance,
    );
    const terms = used.flatMap(({ share }, index) => {
      const one = values[index];
      return one === undefined ? [] : [{ weight: () => dec(share.value).div(100), figure: one }];
    });
    return [sumRange(figure, terms, `range of ${label} of the flours`)];
  };
  const moistureWith = (open: Open): Figure | undefined =>
    mixed("moisture", "moisture", "%", ({ moisture }) => moisture, open)[0];
  const moisture = moistureWith(({ moistureRange }) => moistureRange);
  const apart =
    moisture?.range &&
    moistureWith(({ moistureRange, proteinAsIs }) => (proteinAsIs === true ? moistureRange : undefined))?.range;
  const protein = mixed("protein", "protein", "%", (flour) => flour.protein, proteinOf);
  const ash = mixed("ash", "ash", "%", (flour) => flour.ash);
  const gluten = mixed("gluten-protein", "gluten-forming protein", "%", (flour) => flour.glutenProtein, glutenOf);
  const price = mixed("price", "price", priceUnit(currency), (flour) => flour.price);
  return [
    ...(moisture ? [moisture] : []),
    ...[...protein, ...ash, ...gluten].flatMap((figure) => [figure, ...withBasis(figure, moisture, apart, basis)]),
    ...mixed("wholegrain", "wholegrain share", "%", (flour) => (flour.wholegrain === true ? "100" : "0")),
    ...price,
    ...price.flatMap((figure) => batchPrice(figure, currency, flourMass)),
  ];
}

/** What all the flour of a batch costs. */
function batchPrice(price: Figure, currency = "", flourMass?: string): readonly Figure[] {
  if (flourMass === undefined) return [];
  return [
    worked(
      { id: "blend.batch-price", label: "price of the flour of the batch", unit: currency, places: 2 },
      "price * flour / 1000",
      { price, flour: flourMass },
      massBalance,
    ),
  ];
}

type Read = (flour: Candidate) => string | undefined;
type Open = (flour: Candidate) => Candidate["proteinRange"];

const proteinOf: Open = ({ proteinRange }) => proteinRange;
const glutenOf: Open = ({ protein, glutenProtein, proteinRange }) =>
  glutenProtein === protein ? proteinRange : undefined;

/**
 * The same figure at a moisture basis: the blend is mixed as it is and then converted by its own moisture.
 *
 * @param apart - the range of the moisture that the share as is does not depend on
 */
function withBasis(
  figure: Figure,
  moisture: Figure | undefined,
  apart: Range | undefined,
  basis: MoistureBasis,
): Figure[] {
  if (basis.kind === "as is" || moisture === undefined) return [];
  const where = dec(basis.moisture).isZero() ? "dry" : `at ${basisText(basis)}`;
  const own = worked(
    { id: `${figure.id}.at-basis`, label: `${figure.label}, ${where}`, unit: figure.unit, places: figure.places },
    `figure * ${dryRatio("moisture", "basis")}`,
    { figure, basis: basis.moisture, moisture },
    basisRule,
  );
  const { range } = basisRange(own, figure, moisture, apart);
  const both = "range of protein of the flours, and of the moisture of those with protein as is";
  return [withRange(own, range && { ...range, why: apart === undefined ? range.why : both })];
}

/** The basis the protein target is in; 14 % moisture where none is asked for. */
function basisAsked(targets: BlendQuestion["targets"]): MoistureBasis {
  return targets.protein?.basis ?? { kind: "at", moisture: "14" };
}

function checkOf(limit: Limit, shares: readonly (number | Decimal)[], holds: boolean): Check {
  const at = (top: readonly Decimal[]): string => decimalText(reached({ top, bottom: limit.bottom }, shares) ?? dec(0));
  const { id, label, side, bound, unit, ends } = limit;
  return {
    id,
    label,
    side,
    unit,
    holds,
    bound: decimalText(bound),
    reached: at(limit.top),
    ...(ends && { range: { low: at(ends.low), high: at(ends.high) } }),
  };
}

/** What a check finds and what was asked, with as many digits as it was asked in, two at least. */
export function checkTexts({ reached, unit, side, bound, within }: Check) {
  const places = Math.max(2, dec(bound).decimalPlaces());
  const value = `${bound} ${unit}`;
  const wanted = {
    near: `${value}, ± ${within}`,
    whole: `whole bags of ${value}`,
    least: `at least ${value}`,
    most: `at most ${value}`,
  };
  return { reached: `${fixedText(reached, places)} ${unit}`, wanted: wanted[side] };
}

/** The two ends that a protein value is met within as the one thing that was asked. */
function valueAsOne({ targets: { protein } }: BlendQuestion, checks: readonly Check[]): readonly Check[] {
  const [least, most] = ["protein.least", "protein.most"].map((end) => checks.find(({ id }) => id === end));
  if (protein?.value === undefined || least === undefined || most === undefined) return checks;
  const { value: bound, within } = protein;
  const asked: Check = { ...least, id: "protein", side: "near", bound, within, holds: least.holds && most.holds };
  return checks.flatMap((one) => (one === most ? [] : [one === least ? asked : one]));
}

/** A blend as somebody has it, with what it comes to, in whatever steps its shares are. */
export function describeShares(question: BlendQuestion, given: readonly Figure[]): FoundBlend {
  const { flours, targets, currency, flourMass } = question;
  const values = given.map(({ value }) => value);
  return {
    shares: flours.flatMap(({ name }, index) => {
      const share = given[index];
      return share === undefined || dec(share.value).isZero() ? [] : [{ name, share }];
    }),
    figures: blendFigures(flours, given, basisAsked(targets), currency, flourMass),
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
      return [
        {
          id: `share.${index + 1}.${side}`,
          label: `share of ${name}`,
          side,
          bound,
          reached: decimalText(share),
          unit: "%",
          holds,
        },
      ];
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
function stockChecks({ flours, flourMass }: BlendQuestion, parts: readonly Decimal[]): readonly Check[] {
  if (flourMass === undefined) return [];
  return flours.flatMap(({ name, store, bag }, index): readonly Check[] => {
    const share = parts[index] ?? ZERO;
    const mass = share.times(flourMass).div(100);
    const inKg = (grams: Decimal | string): string => decimalText(dec(grams).div(1000));
    const common = { reached: inKg(mass), unit: "kg" };
    const check = (key: "store" | "bag", label: string, own: Pick<Check, "side" | "bound" | "holds">): Check => ({
      id: `${key}.${index + 1}`,
      label,
      ...own,
      ...common,
    });
    const bags = bag === undefined ? ZERO : mass.div(bag).round();
    const off = share.minus(
      bags
        .times(bag ?? 0)
        .div(flourMass)
        .times(100),
    );
    const isWhole = off.abs().lte(bags.times(finest).div(2).plus(rest));
    return [
      ...(store === undefined || share.isZero()
        ? []
        : [check("store", `${name} from the store`, { side: "most", bound: inKg(store), holds: mass.lte(store) })]),
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
