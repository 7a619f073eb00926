import type { BaumeName } from "../chemistry/baume.ts";
import { baumeScales } from "../chemistry/baume.ts";
import type { RatioBy } from "../chemistry/ratio.ts";
import type { StatedStrength } from "../chemistry/stated-strength.ts";
import { frozen } from "../figure/frozen.ts";
import { type DecimalText, dec, decimalText, HUNDRED } from "../number/decimal.ts";
import { poundsPerGallon } from "../number/units.ts";

/** What goes with a strength as written: the hydrometer's scale, the temperature, and what parts count. */
export interface StrengthTerms {
  /** 145 unless stated */
  readonly modulus?: BaumeName | undefined;
  /** °C of volumes and densities; 20 unless stated */
  readonly temperature?: DecimalText | undefined;
  /** °C of the liquid when its degrees Baumé were read; the hydrometer's own unless stated */
  readonly readAt?: DecimalText | undefined;
  readonly ratioBy?: RatioBy | undefined;
}

const writtenNumber = /(?<![\p{L}\d.,])[.,]?\d+(?:[.,]\d+)*/gu;

/**
 * A text with points for its decimal commas: a comma between digits, with no blank behind it. Undefined where a comma may
 * also stand between thousands, or where it stands before a number.
 *
 * @example pointed("K2CO3 28,5 °Bé") // => "K2CO3 28.5 °Bé"
 */
export function pointed(text: string): string | undefined {
  const numbers = text.match(writtenNumber)?.filter((one) => one.includes(",")) ?? [];
  const sure = numbers.every((one) => /^\d+,\d+$/u.test(one) && !/^[1-9]\d{0,2},\d{3}$/u.test(one));
  return sure ? text.replaceAll(writtenNumber, (one) => one.replace(",", ".")) : undefined;
}

/** The ways to write a strength, for messages. */
export const strengthForms =
  "20 % (by mass), 22 % w/v, 250 g/L, 1.2 mol/L, 1.2 mol/kg, 1.18 g/mL, 9.85 lb/gal, 24 °Bé or 1 to 3";

const number = String.raw`(\d+(?:\.\d+)?|\.\d+)`;
const measured = new RegExp(`^${number} ?(.+)$`, "u");
const inParts = new RegExp(`^${number}(?: ?: ?| to )${number}$`, "u");

/** Measures that only a solution has, and what one of the unit is in that of the measure where it is another. */
const ofSolutions: readonly (readonly [form: string, measure: StatedStrength["measure"], factor?: DecimalText])[] = [
  ["(?:(?:°|º|degrees?|deg) ?)?(?:baum[ée]|b[ée])", "degrees-baume"],
  ["% ?(?:w/v|m/v)|g ?(?:/|per) ?100 ?(?:ml|cc)", "mass-volume-percent"],
  ["g ?(?:/|per) ?(?:l|litre|liter)", "grams-per-litre"],
  ["mol ?(?:/|per) ?(?:l|litre|liter)", "mol-per-litre"],
  ["mol ?/ ?kg", "mol-per-kilogram"],
  ["g ?/ ?ml|kg ?/ ?l", "density"],
  ["lbs? ?(?:/|per) ?(?:us )?gal(?:lon)?", "density", poundsPerGallon],
];

/** The units of a strength that only a solution has, to be found within a line. */
export const solutionUnits = ofSolutions.map(([form]) => form).join("|");

const byMass = ["% ?(?:w/w|m/m)?|% (?:by|of) (?:mass|weight)", "mass-percent"] as const;

const measures = [...ofSolutions, byMass].map(
  ([form, measure, factor = "1"]) => ({ form: new RegExp(`^(?:${form})$`, "u"), measure, factor }) as const,
);

/**
 * Reads the strength of a solution as people write it; undefined where it cannot be read.
 *
 * Parts are salts to water: `1 to 3` or `1:3`. Percent alone is by mass.
 *
 * @example readStrength("24 °Bé") // => { measure: "degrees-baume", value: "24", scale: "145" }
 */
export function readStrength(text: string, terms: StrengthTerms = {}): StatedStrength | undefined {
  const plain = pointed(text.trim().toLowerCase().replaceAll(/\s+/gu, " ")) ?? "";
  const parts = inParts.exec(plain);
  if (parts?.[1] !== undefined && parts[2] !== undefined) {
    if (dec(parts[2]).isZero()) return undefined;
    const value = decimalText(HUNDRED.times(parts[1]).div(parts[2]));
    return { measure: terms.ratioBy === "as-weighed" ? "parts-as-weighed" : "parts-to-water", value };
  }
  const [, amount, unit] = measured.exec(plain) ?? [];
  if (amount === undefined || unit === undefined) return undefined;
  const { measure, factor = "1" } = measures.find(({ form }) => form.test(unit)) ?? {};
  const value = decimalText(dec(amount).times(factor));
  if (measure === "degrees-baume") return { measure, value, scale: terms.modulus ?? "145", ...at(terms.readAt) };
  return measure && { measure, value, ...at(terms.temperature) };
}

function at(temperature: DecimalText | undefined): { readonly temperature?: DecimalText } {
  return temperature === undefined ? {} : { temperature };
}

/** Names of the hydrometer scales by their modulus. */
export const moduli: readonly BaumeName[] = frozen(Object.keys(baumeScales) as readonly BaumeName[]);

/** The scale that a modulus names. @example readModulus("144.3") // => "144.3" */
export function readModulus(text: string): BaumeName | undefined {
  const plain = text.trim();
  return moduli.find((name) => name === plain);
}

/**
 * Reads a ratio of so many parts, `6 to 4` or `6:4`; undefined where it cannot be read or has another number of parts.
 *
 * @example readRatio("9 to 1", 2) // => ["9", "1"]
 */
export function readRatio(text: string, count: number): readonly DecimalText[] | undefined {
  const parts = (pointed(text.trim()) ?? "").split(/ ?: ?| to /u).map((part) => part.trim());
  const sound = parts.length === count && parts.every((part) => /^\d+(?:\.\d+)?$/u.test(part));
  return sound && parts.some((part) => dec(part).gt(0)) ? parts : undefined;
}
