import { loudNote, type Note } from "../figure/problem.ts";
import { citation, type Source } from "../figure/source.ts";
import { type Decimal, type DecimalInput, type DecimalText, dec, fixedText } from "../number/decimal.ts";

/** A published use, and how much of it, % of flour. */
export interface Use {
  readonly percent: DecimalText;
  readonly source: Source;
}

const alkaliUsed: Use = {
  percent: "1.7",
  source: { cite: "Wu and others, quoted in npj Science of Food, s41538-023-00183-5", standing: "copy" },
};

/** Says where a dose, in % of flour, is beyond the greatest published use. */
export function beyondUse(
  code: "alkali.unusual" | "alkali.hydroxide" | "salt.unusual",
  dose: Decimal,
  { percent, source }: Use,
): readonly Note[] {
  if (dose.lte(percent)) return [];
  const facts = { dose: fixedText(dose, 2), used: percent, source: citation(source) };
  return [loudNote(code, [code === "salt.unusual" ? "salt" : "alkali"], facts)];
}

/** Says where anhydrous alkaline salts, in % of flour, are beyond the greatest published use. @example alkaliBeyond("1.8").length // => 1 */
export function alkaliBeyond(anhydrous: DecimalInput): readonly Note[] {
  return beyondUse("alkali.unusual", dec(anhydrous), alkaliUsed);
}
