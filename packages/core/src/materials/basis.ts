import { type Figure, given, worked } from "../figure/figure.ts";
import { answer, type Outcome, type Problem, problem, refuse } from "../figure/problem.ts";
import { fromSpec, massBalance, type Source } from "../figure/source.ts";
import { type Decimal, type DecimalInput, type DecimalText, dec, HUNDRED, ZERO } from "../number/decimal.ts";
import type { MoistureBasis } from "./fields.ts";

/** A moisture on which figures are quoted, and who does so. */
export interface NamedBasis {
  readonly name: string;
  /** % */
  readonly moisture: DecimalText;
  readonly usedFor: string;
  readonly source: Source;
}

const canada: Source = { cite: "Cereals Canada, Methods of Analysis", standing: "read" };

/** The moisture bases of the trade. */
export const namedBases: readonly NamedBasis[] = [
  {
    name: "dry",
    moisture: "0",
    usedFor: "flour types of Germany, Italy and France; 21 CFR 137; Codex",
    source: { cite: "21 CFR 137.105; DPR 187/2001; DIN 10355", standing: "copy" },
  },
  {
    name: "12 % mb",
    moisture: "12",
    usedFor: "protein of US wheat grain",
    source: { cite: "US grain trade", standing: "memory" },
  },
  { name: "13.5 % mb", moisture: "13.5", usedFor: "wheat grain", source: canada },
  {
    name: "14 % mb",
    moisture: "14",
    usedFor: "flour and semolina; farinograph absorption (ICC Standard 115/1)",
    source: canada,
  },
  { name: "15 % mb", moisture: "15", usedFor: "alveograph", source: canada },
];

/**
 * Turns a share of a material from one moisture to another: P_b = P_a (100 − M_b) / (100 − M_a).
 *
 * @param value - % of the material at moisture `from`
 * @param from - %, below 100
 * @param to - %, below 100; 0 is dry
 * @throws {RangeError} at a moisture of 100 % or more, which the caller has to rule out.
 * @example onMoisture(dec(12), dec(14), dec(0)).toFixed(4) // => "13.9535"
 */
export function onMoisture(value: Decimal, from: Decimal, to: Decimal): Decimal {
  if (from.gte(HUNDRED) || to.gte(HUNDRED)) throw new RangeError("a moisture of 100 % leaves nothing to reckon on");
  return value.times(HUNDRED.minus(to)).div(HUNDRED.minus(from));
}

/** The moisture that a basis means for a material of the given moisture. @example moistureOf({ kind: "as is" }, dec(13)).toString() // => "13" */
export function moistureOf(basis: MoistureBasis, actual: Decimal): Decimal {
  return basis.kind === "as is" ? actual : dec(basis.moisture);
}

/** A share with its basis, and the moisture of the material. */
export interface OnBasis {
  /** %, on the basis `from`. */
  readonly value: DecimalText;
  readonly from: MoistureBasis;
  readonly to: MoistureBasis;
  /** Moisture of the material as it is, %, from 0 to below 100. */
  readonly moisture: DecimalText;
  /** What the share is of: `protein`, `ash`. */
  readonly what: string;
}

/**
 * A share of a material brought to another moisture basis, with its working.
 *
 * Problems: `basis.moisture-range`.
 * @example convertBasis({ value: "43", from: { kind: "at", moisture: "14" }, to: { kind: "at", moisture: "0" }, moisture: "13", what: "starch" }).value.value // => "50"
 */
export function convertBasis({ value, from, to, moisture, what }: OnBasis): Outcome<Figure> {
  const before = moistureOf(from, dec(moisture));
  const after = moistureOf(to, dec(moisture));
  const problems = [before, after].flatMap(moistureProblem);
  if (problems.length > 0) return refuse(...problems);
  return answer(
    worked({
      id: `basis.${what}`,
      label: `${what}, ${nameOf(to)}`,
      unit: "%",
      places: 2,
      formula: "stated * (100 - to) / (100 - from)",
      from: {
        stated: givenShare(`${what}, ${nameOf(from)}`, value),
        to: givenShare(`moisture ${nameOf(to)}`, after),
        from: givenShare(`moisture ${nameOf(from)}`, before),
      },
      sources: [massBalance, ...namedBases.filter(({ moisture: own }) => after.eq(own)).map(({ source }) => source)],
    }),
  );
}

function nameOf(basis: MoistureBasis): string {
  if (basis.kind === "as is") return "as is";
  return dec(basis.moisture).isZero() ? "dry" : `at ${basis.moisture} % mb`;
}

function givenShare(label: string, value: DecimalInput): Figure {
  return given({ id: "basis.given", label, unit: "%", places: 2, value, by: "as stated", sources: [fromSpec] });
}

function moistureProblem(moisture: Decimal): readonly Problem[] {
  if (moisture.gte(ZERO) && moisture.lt(HUNDRED)) return [];
  return [problem("basis.moisture-range", [], { moisture: moisture.toString() })];
}

/**
 * The flour to weigh and the water to add in place of flour at the basis moisture, so that both the dry matter and the
 * water of the dough stay as they were.
 */
export interface MoistureCorrection {
  /** Flour at its own moisture, g. */
  readonly flour: Figure;
  /** Water to add, g; below zero when the flour brings more than the dough may hold. */
  readonly water: Figure;
}

/** A dough stated on a basis moisture, and the flour at hand. */
export interface StatedDough {
  /** Flour at the basis moisture, g. */
  readonly flour: DecimalText;
  /** Water on that flour, g. */
  readonly water: DecimalText;
  /** Moisture the statement rests on, %; 14 where nothing else is said. */
  readonly basis?: DecimalText;
  /** Moisture of the flour at hand, %. */
  readonly moisture: DecimalText;
}

/**
 * Corrects flour and water for the moisture of the flour, as the farinograph method corrects to 14 %.
 *
 * Problems: `basis.moisture-range`.
 * Source: mass balance; 14 % moisture after ICC Standard 115/1.
 * @example correctForMoisture({ flour: "100", water: "34", moisture: "20" }).value.flour.value // => "107.5"
 */
export function correctForMoisture({ flour, water, basis = "14", moisture }: StatedDough): Outcome<MoistureCorrection> {
  const problems = [dec(basis), dec(moisture)].flatMap(moistureProblem);
  if (problems.length > 0) return refuse(...problems);
  const mass = (label: string, value: DecimalInput): Figure =>
    given({ id: "basis.mass", label, unit: "g", places: 2, value, by: "as stated", sources: [fromSpec] });
  const stated = mass(`flour at ${basis} % mb`, flour);
  const weighed = worked({
    id: "basis.flour",
    label: "flour to weigh",
    unit: "g",
    places: 2,
    formula: "flour * (100 - basis) / (100 - moisture)",
    from: {
      flour: stated,
      basis: givenShare("basis moisture", basis),
      moisture: givenShare("moisture of the flour", moisture),
    },
    sources: [massBalance, farinographSource],
  });
  const added = worked({
    id: "basis.water",
    label: "water to add",
    unit: "g",
    places: 2,
    formula: "water + flour - weighed",
    from: { water: mass(`water on flour at ${basis} % mb`, water), flour: stated, weighed },
    sources: [massBalance],
  });
  return answer({ flour: weighed, water: added });
}

/** The farinograph's own basis: mL of water on 100 g of flour of 14.0 % moisture. */
export const farinographSource: Source = {
  cite: "ICC Standard 115/1, Method for using the Brabender Farinograph",
  standing: "read",
};
