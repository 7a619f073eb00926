import { type Outcome, refuse } from "../figure/problem.ts";
import type { DecimalInput } from "../number/decimal.ts";
import type { BaumeName } from "./baume.ts";
import { type Composition, fromMasses } from "./composition.ts";
import { type ReadStrength, readHydrometer } from "./hydrometer.ts";
import { baumeFigure } from "./strength.ts";

/** What one reads off a hydrometer in a kitchen, degrees: common practice, no source. */
const usualReadingError = "0.2";

/**
 * What a hydrometer tells about a solution one has made, and what an error of reading is worth.
 *
 * @param readingError - degrees Baumé
 * Problems: those of `baumeFigure` and `readHydrometer`.
 * @example shown(checkByHydrometer({ species: { K2CO3: "30" }, water: "70", inert: "0" }, "145").value.massPercent) // => "30.00 % w/w"
 */
export function checkByHydrometer(
  solution: Composition,
  scale: BaumeName,
  readingError: DecimalInput = usualReadingError,
): Outcome<ReadStrength> {
  const degrees = baumeFigure(solution, scale);
  if (!degrees.ok) return refuse(...degrees.problems);
  const dry = fromMasses({ species: solution.species, inert: solution.inert });
  return readHydrometer(dry, { measure: "degrees-baume", scale, value: degrees.value.value }, readingError);
}
