import type { Figure } from "../figure/figure.ts";
import type { Published } from "../figure/graph.ts";
import type { Outcome } from "../figure/problem.ts";
import type { BaumeName } from "./baume.ts";
import { type Composition, fromMasses } from "./composition.ts";
import { type ReadStrength, readHydrometer } from "./hydrometer.ts";

/** What one reads off a hydrometer in a kitchen, degrees: common practice, no source. */
const usualReadingError = "0.2";

/**
 * What a hydrometer tells about a solution one has made, and what an error of reading is worth.
 *
 * @param degrees - what it shows in the solution, as `baumeFigure` has it
 * Problems: those of `readHydrometer`.
 * @example shown(checkByHydrometer({ species: { K2CO3: "30" }, water: "70", inert: "0" }, "145", baumeFigure({ species: { K2CO3: "30" }, water: "70", inert: "0" }, "145").value).value.massPercent) // => "30.00 % w/w"
 */
export function checkByHydrometer(
  solution: Composition,
  scale: BaumeName,
  degrees: Figure,
): Outcome<Published<ReadStrength>> {
  const dry = fromMasses({ species: solution.species, inert: solution.inert });
  return readHydrometer(dry, { measure: "degrees-baume", scale, value: degrees.value }, usualReadingError, [degrees]);
}
