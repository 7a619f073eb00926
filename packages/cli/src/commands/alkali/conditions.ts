import type { UnitSystem } from "@noodlewright/core";
import type { BaumeName } from "@noodlewright/core/chemistry";
import type { DecimalText } from "@noodlewright/core/figure";
import { ownProblem } from "../../input/problem.ts";
import type { Asking } from "./asking.ts";

/** Where and how a solution is made, kept, checked and weighed. */
export interface Conditions {
  readonly temperature: DecimalText;
  readonly storage?: DecimalText;
  readonly scale: BaumeName;
  readonly division: DecimalText;
  readonly divisionUnit: string;
  readonly units: UnitSystem;
}

/** The division of a scale for small weights, where none is stated. */
const fineScale = {
  metric: { text: "0.1 g", value: "0.1", unit: "g" },
  us: { text: "0.005 oz", value: "0.141747615625", unit: "oz" },
};

/** Reads the flags of every member that ends in a solution to weigh out. */
export function conditionsOf(ask: Asking): Conditions {
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
