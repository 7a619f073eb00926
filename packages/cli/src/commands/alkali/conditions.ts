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

/** Reads the flags of every member that ends in a solution to weigh out. */
export function conditionsOf(ask: Asking): Conditions {
  const division = ask.quantity("division", ["mass"]);
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
