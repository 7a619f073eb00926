import type { Published } from "../figure/graph.ts";
import { inSystem, type UnitSystem } from "../figure/in-system.ts";
import type { Note } from "../figure/problem.ts";
import type { Measurement } from "../sheet/water/measurements.ts";
import { listing, numberColumn, report, section, wordColumn } from "./build.ts";
import type { Report } from "./schema.ts";
import { measureCell } from "./show.ts";

/**
 * Tells the kitchen's own figures, and how they are written into the spec.
 *
 * @example calibrateReport("A boiling", measuredCooking({ raw: "500 g", cooked: "880 g" }).value, []).main // => "measured"
 */
export function calibrateReport(
  title: string,
  { results, lines, graph }: Published<Measurement>,
  notes: readonly Note[],
  units: UnitSystem = "metric",
): Report {
  const measured = listing("measured", results, [
    [wordColumn("what", "what"), ({ label }) => label],
    [numberColumn("value", "value"), (figure) => measureCell(inSystem(figure, units))],
  ]);
  return report({
    command: "calibrate",
    title,
    main: "measured",
    sections: [section("measured", "Measured", measured), section("spec", "For the spec", lines)],
    figures: Object.values(graph),
    units,
    notes,
  });
}
