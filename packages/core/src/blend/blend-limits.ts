import { basisText, type MoistureBasis } from "../materials/fields.ts";
import { type Decimal, type DecimalText, dec, decimalText, HUNDRED, ONE, sum, ZERO } from "../number/decimal.ts";
import type { BlendQuestion, Candidate, ProteinTarget } from "./blend-question.ts";
import type { Row } from "./step-problem.ts";

/** A limit on a quotient of two sums over the flours, such as protein at 14 % moisture. */
export interface Limit {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly side: "least" | "most";
  readonly bound: Decimal;
  /** The bound as it was said, where that is told. */
  readonly said?: string;
  /** The value that was asked for, where this is one end of what is near enough to it. */
  readonly asked?: { readonly value: string; readonly within: string };
  readonly top: readonly Decimal[];
  readonly bottom: readonly Decimal[];
  /** The same at the least and at the greatest that the flours' protein may be, where any has such a range. */
  readonly ends?: { readonly low: readonly Decimal[]; readonly high: readonly Decimal[] };
}

/** A limit on the share of one flour, in whole steps. */
export interface FlourLimit {
  readonly id: string;
  readonly label: string;
  readonly index: number;
  readonly side: "least" | "most";
  readonly steps: number;
}

/** What the blend comes to in the quantity a limit is on; `undefined` where it has none (a ratio to a flour left out). */
export function reached(
  limit: Pick<Limit, "top" | "bottom">,
  steps: readonly (number | Decimal)[],
): Decimal | undefined {
  const below = weighted(limit.bottom, steps);
  return below.isZero() ? undefined : weighted(limit.top, steps).div(below);
}

/**
 * A limit as a row of whole numbers.
 *
 * The row of a limit on protein at a moisture basis is `protein × (100 − basis) − bound × (100 − moisture)` for each flour:
 * the blend is mixed as it is, and its own mixed moisture converts it. Ten digits are kept, so that the remainders of a
 * figure converted there and back do not decide.
 */
export function limitRow(limit: Limit, bound: Decimal = limit.bound): Row {
  const differences = limit.top.map((top, index) => top.minus(bound.times(limit.bottom[index] ?? ZERO)));
  const signed = limit.side === "least" ? differences : differences.map((value) => value.negated());
  return { id: limit.id, coefficients: wholeNumbers(signed), constant: 0 };
}

/** Makes decimals whole numbers of at most ten digits with the same proportions. @example wholeNumbers([dec("0.5"), dec("-1.25")]) // => [2, -5] */
export function wholeNumbers(values: readonly Decimal[]): readonly number[] {
  const exponents = values.flatMap((value) => (value.isZero() ? [] : [value.e]));
  if (exponents.length === 0) return values.map(() => 0);
  const scale = dec(10).pow(Math.max(0, 9 - Math.max(...exponents)));
  const whole = values.map((value) => value.times(scale).round().toNumber());
  const divisor = whole.reduce(commonDivisor, 0);
  return whole.map((value) => value / divisor + 0);
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? Math.abs(a) : commonDivisor(b, a % b);
}

/** The limits that the targets set. */
export function targetLimits({ flours, targets, currency, flourMass }: BlendQuestion): readonly Limit[] {
  const { protein, glutenProtein, ash, wholegrain, price, bowlPrice, batchPrice, wholeRange } = targets;
  const flat = flours.map(() => ONE);
  const limits: Limit[] = [];
  const add = (
    name: string,
    unit: string,
    { top, bottom, ends }: Pick<Limit, "top" | "bottom" | "ends">,
    bounds: { readonly [Side in Limit["side"]]?: Decimal | string | undefined } & Pick<Limit, "said">,
  ): void => {
    for (const side of ["least", "most"] as const) {
      const bound = bounds[side];
      if (bound === undefined) continue;
      const surest = wholeRange === true ? ends?.[side === "least" ? "low" : "high"] : undefined;
      const id = `${name.replaceAll(" ", "-")}.${side}`;
      const label = surest === undefined ? name : `${name}, over its whole range`;
      const asked = name === "protein" && protein?.value !== undefined && { asked: protein };
      const naming = { id, label, unit, side, bound: dec(bound), ...(bounds.said && { said: bounds.said }) };
      limits.push({ ...naming, top: surest ?? top, bottom, ...(ends && { ends }), ...asked });
    }
  };
  if (protein !== undefined) {
    const values = rangedAtBasis(flours, protein.basis, ({ protein: own, proteinRange }) => [own, proteinRange]);
    add("protein", unitAt(protein.basis), values, proteinBounds(protein));
  }
  if (glutenProtein !== undefined) {
    const values = rangedAtBasis(flours, glutenProtein.basis, ({ protein: all, glutenProtein: own, proteinRange }) => [
      own ?? "0",
      own === all ? proteinRange : undefined,
    ]);
    add("gluten-forming protein", unitAt(glutenProtein.basis), values, glutenProtein);
  }
  if (ash !== undefined) {
    const values = flours.map((flour) => dec(flour.ash ?? 0));
    add("ash", unitAt(ash.basis), atBasis(flours, values, ash.basis), ash);
  }
  if (wholegrain !== undefined) {
    const top = flours.map((flour) => (flour.wholegrain === true ? HUNDRED : ZERO));
    add("wholegrain share", "%", { top, bottom: flat }, wholegrain);
  }
  const prices = flours.map((flour) => dec(flour.price ?? 0));
  if (price !== undefined) add("price", priceUnit(currency), { top: prices, bottom: flat }, price);
  if (bowlPrice !== undefined) {
    const top = prices.map((one) => one.times(bowlPrice.flour).plus(bowlPrice.others));
    add("price of a bowl", currency ?? "", { top, bottom: flat }, bowlPrice);
  }
  if (batchPrice !== undefined) {
    const kilograms = dec(flourMass ?? 0).div(1000);
    const top = prices.map((one) => one.times(kilograms));
    add("price of the flour of the batch", currency ?? "", { top, bottom: doughsOf(flours) }, batchPrice);
  }
  return limits;
}

/** Dough that each flour makes, beside the blend as it is. */
function doughsOf(flours: readonly Candidate[]): readonly Decimal[] {
  return flours.map(({ dough }) => dec(dough ?? 1));
}

/** Flour of the batch, g, in a blend: of a batch that is a mass of dough it follows the water of the blend. */
export function flourOfBatch(
  { flours, flourMass }: Pick<BlendQuestion, "flours" | "flourMass">,
  shares: readonly Decimal[],
): Decimal | undefined {
  if (flourMass === undefined) return undefined;
  return reached({ top: flours.map(() => dec(flourMass)), bottom: doughsOf(flours) }, shares) ?? dec(flourMass);
}

/** The limits that the store sets, and the greatest share within each beside the flour that makes the most dough, %. */
export function storeLimits({ flours, flourMass }: Pick<BlendQuestion, "flours" | "flourMass">) {
  const bottom = doughsOf(flours);
  const most = bottom.reduce((one, other) => (one.gt(other) ? one : other), ZERO);
  return flours.flatMap(({ name, store }, index) => {
    if (store === undefined || flourMass === undefined) return [];
    const less = most.minus(bottom[index] ?? ONE).times(store);
    const share = most.times(store).times(HUNDRED).div(less.plus(flourMass));
    const top = flours.map((_, at) => (at === index ? dec(flourMass) : ZERO));
    const naming = { id: `stored:${name}:most`, label: `stored share of ${name}`, unit: "g", side: "most" as const };
    return [{ index, share, limit: { ...naming, bound: dec(store), top, bottom } }];
  });
}

/** A figure of the flours at a basis, with its ends where the protein of any flour has a range. */
function rangedAtBasis(
  flours: readonly Candidate[],
  basis: MoistureBasis,
  read: (flour: Candidate) => readonly [value: string, range: Candidate["proteinRange"]],
): Pick<Limit, "top" | "bottom" | "ends"> {
  const at = (end?: "low" | "high") =>
    atBasis(
      flours,
      flours.map((flour) => {
        const [value, range] = read(flour);
        return dec((end && range?.[end]) ?? value);
      }),
      basis,
    );
  const open = flours.some((flour) => read(flour)[1] !== undefined);
  return { ...at(), ...(open && { ends: { low: at("low").top, high: at("high").top } }) };
}

/** A protein value as a limit, by what the flours' protein is without its range. */
export function valueLimit({ flours, targets: { protein } }: BlendQuestion) {
  if (protein?.value === undefined) return undefined;
  const { value, nearest, basis } = protein;
  const values = flours.map((flour) => dec(flour.protein));
  const naming = { id: "protein.value", label: "protein", unit: unitAt(basis), side: "least" as const };
  return { ...naming, bound: dec(value), nearest: nearest === true, ...atBasis(flours, values, basis) };
}

/** Least and greatest protein of a target. */
export function proteinBounds(target: ProteinTarget): { readonly least?: Decimal; readonly most?: Decimal } {
  if (target.value !== undefined) {
    const value = dec(target.value);
    return { least: value.minus(target.within), most: value.plus(target.within) };
  }
  return {
    ...(target.least === undefined ? {} : { least: dec(target.least) }),
    ...(target.most === undefined ? {} : { most: dec(target.most) }),
  };
}

/** A share of the flour as it is, as a quotient that gives it at a basis. */
export function atBasis(
  flours: readonly Candidate[],
  values: readonly Decimal[],
  basis: MoistureBasis,
): Pick<Limit, "top" | "bottom"> {
  if (basis.kind === "as is") return { top: values, bottom: flours.map(() => ONE) };
  const dryShare = HUNDRED.minus(basis.moisture);
  return {
    top: values.map((value) => value.times(dryShare)),
    bottom: flours.map((flour) => HUNDRED.minus(flour.moisture)),
  };
}

/** How a basis is written after the percent sign. @example unitAt({ kind: "at", moisture: "14" }) // => "% at 14 % mb" */
export function unitAt(basis: MoistureBasis): string {
  if (basis.kind === "as is") return "%";
  return dec(basis.moisture).isZero() ? "% dry" : `% at ${basisText(basis)}`;
}

/** How a price is written. @example priceUnit("EUR") // => "EUR/kg" */
export function priceUnit(currency: string | undefined): string {
  return currency === undefined ? "per kg" : `${currency}/kg`;
}

/** A figure to two places, below 0.1 to three digits, rounded up or down. @example toHundredths(dec("11.703"), "up") // => "11.71" */
export function toHundredths(value: Decimal, way: "up" | "down"): DecimalText {
  const scale = dec(10).pow(value.e < -1 ? 2 - value.e : 2);
  const whole = dec(decimalText(value)).times(scale);
  return decimalText((way === "up" ? whole.ceil() : whole.floor()).div(scale));
}

function weighted(weights: readonly Decimal[], steps: readonly (number | Decimal)[]): Decimal {
  const used = weights.flatMap((weight, index) => {
    const count = steps[index] ?? 0;
    return count === 0 ? [] : [weight.times(count)];
  });
  return sum(used);
}
