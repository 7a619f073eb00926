import { basisText, type MoistureBasis } from "../materials/fields.ts";
import { type Decimal, dec, HUNDRED, ONE, sum, ZERO } from "../number/decimal.ts";
import type { BlendTargets, Candidate, ProteinTarget } from "./blend-question.ts";
import type { Row } from "./step-problem.ts";

/** A limit on a quotient of two sums over the flours, such as protein at 14 % moisture. */
export interface Limit {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly side: "least" | "most";
  readonly bound: Decimal;
  readonly top: readonly Decimal[];
  readonly bottom: readonly Decimal[];
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
  const largest = values.reduce((most, value) => (value.abs().gt(most) ? value.abs() : most), ZERO);
  if (largest.isZero()) return values.map(() => 0);
  const places = Math.max(0, 9 - Math.floor(Math.log10(largest.toNumber())));
  const needed = values.reduce((most, value) => Math.max(most, value.toDecimalPlaces(places).decimalPlaces()), 0);
  const whole = values.map((value) => value.times(dec(10).pow(needed)).toDecimalPlaces(0).toNumber());
  const divisor = whole.reduce(commonDivisor, 0);
  return divisor === 0 ? whole : whole.map((value) => value / divisor + 0);
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? Math.abs(a) : commonDivisor(b, a % b);
}

/** The limits that the targets set. */
export function targetLimits(flours: readonly Candidate[], targets: BlendTargets, currency?: string): readonly Limit[] {
  const { protein, glutenProtein, ash, wholegrain, price } = targets;
  const flat = flours.map(() => ONE);
  const limits: Limit[] = [];
  const add = (
    name: string,
    unit: string,
    quotient: Pick<Limit, "top" | "bottom">,
    bounds: { readonly least?: Decimal | string | undefined; readonly most?: Decimal | string | undefined },
  ): void => {
    for (const side of ["least", "most"] as const) {
      const bound = bounds[side];
      if (bound !== undefined)
        limits.push({ id: `${idOf(name)}.${side}`, label: name, unit, side, bound: dec(bound), ...quotient });
    }
  };
  if (protein !== undefined) {
    const values = flours.map((flour) => dec(flour.protein));
    add("protein", unitAt(protein.basis), atBasis(flours, values, protein.basis), proteinBounds(protein));
  }
  if (glutenProtein !== undefined) {
    const values = flours.map((flour) => dec(flour.glutenProtein ?? 0));
    add(
      "gluten-forming protein",
      unitAt(glutenProtein.basis),
      atBasis(flours, values, glutenProtein.basis),
      glutenProtein,
    );
  }
  if (ash !== undefined) {
    add(
      "ash",
      unitAt(ash.basis),
      atBasis(
        flours,
        flours.map((flour) => dec(flour.ash ?? 0)),
        ash.basis,
      ),
      ash,
    );
  }
  if (wholegrain !== undefined) {
    const top = flours.map((flour) => (flour.wholegrain === true ? HUNDRED : ZERO));
    add("wholegrain share", "%", { top, bottom: flat }, wholegrain);
  }
  if (price !== undefined)
    add("price", priceUnit(currency), { top: flours.map((flour) => dec(flour.price ?? 0)), bottom: flat }, price);
  return limits;
}

/** Least and greatest protein of a target. */
export function proteinBounds(target: ProteinTarget): { readonly least?: Decimal; readonly most?: Decimal } {
  if ("value" in target) {
    const value = dec(target.value);
    const within = target.within === undefined ? halfLastDigit(target.value) : dec(target.within);
    return { least: value.minus(within), most: value.plus(within) };
  }
  return {
    ...(target.least === undefined ? {} : { least: dec(target.least) }),
    ...(target.most === undefined ? {} : { most: dec(target.most) }),
  };
}

/** Half a unit of the last digit somebody wrote. @example halfLastDigit("12.0").toString() // => "0.05" */
export function halfLastDigit(text: string): Decimal {
  const places = text.includes(".") ? text.length - text.indexOf(".") - 1 : 0;
  return dec(10).pow(-places).div(2);
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

function idOf(name: string): string {
  return name.replaceAll(" ", "-");
}

function weighted(weights: readonly Decimal[], steps: readonly (number | Decimal)[]): Decimal {
  return sum(weights.map((weight, index) => weight.times(steps[index] ?? 0)));
}
