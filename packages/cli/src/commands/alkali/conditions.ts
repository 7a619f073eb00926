import type { Note, Outcome, Report } from "@noodlewright/core";
import { recipeReport } from "@noodlewright/core/chemistry";
import { answer } from "@noodlewright/core/figure";
import { ownProblem } from "../../input/problem.ts";
import type { Asking } from "./asking.ts";

/** The division of a scale for small weights, where none is stated. */
const fineScale = {
  metric: { text: "0.1 g", value: "0.1", unit: "g" },
  us: { text: "0.005 oz", value: "0.141747615625", unit: "oz" },
};

/** Where and how a solution is made, kept, checked and weighed, by the flags of every member that ends in one to weigh out. */
export function conditionsOf(ask: Asking) {
  const division = ask.maybe("division", ["mass"]) ?? fineScale[ask.units];
  if (/^0(?:\.0+)?$/u.test(division.value)) {
    ask.wrong("--division", ownProblem("weighing.division", { written: `"${division.text}"` }));
  }
  const storage = ask.maybe("storage", ["temperature"]);
  return {
    temperature: ask.temperature,
    scale: ask.scale,
    division: division.value,
    divisionUnit: division.unit,
    units: ask.units,
    ...(storage && { storage: storage.value }),
  };
}

type Found = Outcome<Parameters<typeof recipeReport>[0]>;

/** The answer that a solution to weigh out comes to. @param before - what is worth knowing of what it is made from */
export function recipeAnswer(
  recipe: Found,
  telling: Parameters<typeof recipeReport>[1],
  before: readonly Note[] = [],
): Outcome<Report> {
  return recipe.ok ? answer(recipeReport(recipe.value, telling, [...before, ...recipe.notes])) : recipe;
}
