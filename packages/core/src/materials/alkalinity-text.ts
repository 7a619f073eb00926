import { type AlkalinityStandard, alkalinityStandards, type StatedAlkalinity } from "../chemistry/titration.ts";
import type { DecimalText } from "../number/decimal.ts";

const number = String.raw`(\d+(?:\.\d+)?)`;
const asSubstance = new RegExp(`^${number} ?% as (\\w+)$`, "u");
const byAcid = new RegExp(`^${number} ?ml of ${number} ?(?:n|eq/l)(?: acid)? (?:on|for) ${number} ?g$`, "u");

/** The ways to state an alkalinity, for messages. */
export const alkalinityForms = `an alkalinity such as "98 % as Na2CO3" (${alkalinityStandards.join(", ")}) or "37.4 mL of 1 N acid on 2 g"`;

/**
 * Reads an alkalinity as a label or certificate states it; undefined where it cannot be read.
 *
 * @example readAlkalinity("58 % as Na2O") // => { as: "Na2O", percent: "58" }
 */
export function readAlkalinity(text: string): StatedAlkalinity | undefined {
  const plain = text.trim().replaceAll(/\s+/gu, " ").toLowerCase();
  const [, percent, substance] = asSubstance.exec(plain) ?? [];
  const standard: AlkalinityStandard | undefined = alkalinityStandards.find((one) => one.toLowerCase() === substance);
  if (percent !== undefined) return standard && { as: standard, percent };
  const [, millilitres, normality, sample] = byAcid.exec(plain) ?? [];
  if (millilitres === undefined || normality === undefined || sample === undefined) return undefined;
  return { acid: { millilitres, normality, sample } };
}

/** Reads the normality of an acid, `1 N` or `0.5 eq/L`; undefined where it cannot be read. @example readNormality("0.5 N") // => "0.5" */
export function readNormality(text: string): DecimalText | undefined {
  return /^(\d+(?:\.\d+)?) ?(?:n|eq\/l)$/u.exec(text.trim().toLowerCase())?.[1];
}
