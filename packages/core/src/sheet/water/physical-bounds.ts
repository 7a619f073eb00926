import { exact, type Figure } from "../../figure/figure.ts";
import { measure } from "../../figure/in-system.ts";
import { type Note, note } from "../../figure/problem.ts";
import { type Decimal, fixedText } from "../../number/decimal.ts";

/** Warns of a density above that of the dough without any air: no dough can have it. */
export function denserNotes(density: Figure, poreFree: Figure, dough: string): readonly Note[] {
  if (exact(density).lte(exact(poreFree))) return [];
  const facts = { density: measure(density.value, "g/mL", 3), dough, poreFree: measure(poreFree.value, "g/mL", 3) };
  return [note("sheet.denser-than-solid", ["sheet", "density"], facts)];
}

/** Warns of a spring-back below 1: a sheet thinner than the gap that it came through. */
export function thinnerNotes(springBack: Decimal): readonly Note[] {
  if (springBack.gte(1)) return [];
  return [note("sheet.thinner-than-gap", ["sheet", "springBack"], { springBack: fixedText(springBack, 2) })];
}
