import { exact, type Figure, shown } from "../../figure/figure.ts";
import type { Note } from "../../figure/problem.ts";
import { type Decimal, fixedText } from "../../number/decimal.ts";

/** Warns of a density above that of the dough without any air: no dough can have it. */
export function denserNotes(density: Figure, poreFree: Figure, dough: string): readonly Note[] {
  if (exact(density).lte(exact(poreFree))) return [];
  const text = `A density of ${fixedText(density.value, 3)} g/mL cannot be: without any air ${dough} has ${shown({ ...poreFree, places: 3 })}. Most often the thickness was read too thin, with a gauge that presses into the dough or at one place only; measure several places of a larger strip, and weigh it again.`;
  return [{ code: "sheet.denser-than-solid", path: ["sheet", "density"], text }];
}

/** Warns of a spring-back below 1: a sheet thinner than the gap that it came through. */
export function thinnerNotes(springBack: Decimal): readonly Note[] {
  if (springBack.gte(1)) return [];
  const text = `A spring-back of ${fixedText(springBack, 2)} means a sheet thinner than the gap that it came through: rolls cannot do that. Measure the gap with dough between the rolls and the thickness with a gauge that does not press, and see that nothing draws the sheet out as it leaves.`;
  return [{ code: "sheet.thinner-than-gap", path: ["sheet", "springBack"], text }];
}
