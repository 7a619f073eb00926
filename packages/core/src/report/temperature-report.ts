import type { Figure } from "../figure/figure.ts";
import type { Note } from "../figure/problem.ts";
import type { DoughWater } from "../sheet/dough-water.ts";
import { report, section } from "./build.ts";
import type { Report } from "./schema.ts";
import { inSystem, type UnitSystem } from "./show.ts";

const assumed: ReadonlySet<string> = new Set([
  "dough.temperature",
  "flour.temperature",
  "other-ingredients.temperature",
  "tap.temperature",
]);

/** Tells how warm the water of a mix has to be, and how much of it is ice. */
export function temperatureReport(
  title: string,
  { plan, water, byRule, figures }: DoughWater,
  notes: readonly Note[],
  units: UnitSystem = "metric",
): Report {
  const tap = figures.filter(({ id }) => assumed.has(id));
  const answers = plan.ice === undefined ? [plan.temperature, water] : [plan.ice.ice, plan.ice.tapWater, water];
  const below = plan.ice === undefined ? [] : [plan.temperature];
  const shown = (all: readonly Figure[]) => all.map((figure) => inSystem(figure, units));
  return report({
    command: "water-temperature",
    title,
    main: "water",
    sections: [
      section("water", "Water", { kind: "figures", figures: shown(answers) }),
      section("from", "Worked out from", {
        kind: "figures",
        figures: shown([...tap, plan.dough, plan.heatMade, ...below]),
      }),
      section("cross-check", "Cross-check", byRule && { kind: "figures", figures: shown([byRule]) }),
    ],
    figures,
    notes,
    cautions: [],
  });
}
