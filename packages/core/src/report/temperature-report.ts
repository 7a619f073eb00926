import type { Figure } from "../figure/figure.ts";
import type { Graph, Published } from "../figure/graph.ts";
import { inSystem, type UnitSystem } from "../figure/in-system.ts";
import type { Note } from "../figure/problem.ts";
import type { DoughWater } from "../sheet/water/dough-water.ts";
import { figureBlock, report, section } from "./build.ts";
import type { Report } from "./schema.ts";
import { asScaleShows } from "./show.ts";

/** What the answer rests on, beside the temperatures. */
const inputs: ReadonlySet<string> = new Set(["mixer.power", "mixer.minutes", "mix.heat"]);
/** The room is told as what is as warm. */
function saidAs({ id, label }: Figure, graph: Graph): string {
  const others = id === "room.temperature" && graph["other-ingredients.rise"] !== undefined;
  return others ? "eggs, salts and all else: as the room" : label;
}

function isTakenTemperature(id: string): boolean {
  return id.endsWith(".temperature") && id !== "water.temperature";
}

/** The temperatures that an answer about the water was worked out from, as their system shows them. */
export function takenTemperatures({ graph }: Published<DoughWater>, units: UnitSystem): readonly Figure[] {
  return Object.values(graph)
    .filter(({ id }) => isTakenTemperature(id))
    .map((figure) => inSystem({ ...figure, label: saidAs(figure, graph) }, units));
}

/**
 * Tells how warm the water of a mix has to be, and how much of it is ice.
 *
 * @example temperatureReport("Water", askWater(example("school-noodle")).value, []).main // => "water"
 */
export function temperatureReport(
  title: string,
  { plan, water, weighed, byRule, apart, graph }: Published<DoughWater>,
  notes: readonly Note[],
  units: UnitSystem = "metric",
): Report {
  const figures = Object.values(graph);
  const from = figures
    .filter(({ id }) => inputs.has(id) || isTakenTemperature(id))
    .map((figure) => ({ ...figure, label: saidAs(figure, graph) }));
  const onScale = (figure: Figure) => asScaleShows(figure, weighed.scale);
  const all = { ...onScale(weighed.listed), id: weighed.listed.id, label: water.label };
  const answers =
    weighed.ice === undefined
      ? [plan.temperature, all]
      : [onScale(weighed.ice.ice), onScale(weighed.ice.tapWater), all];
  const friction = graph["rule.friction"];
  const below = plan.ice === undefined ? [] : [plan.temperature, plan.ice.share];
  return report({
    command: "water-temperature",
    title,
    main: "water",
    sections: [
      section("water", "Water", figureBlock(answers, units)),
      section("from", "Worked out from", figureBlock([...from, plan.dough, plan.heatMade, ...below], units)),
      section("cross-check", "Cross-check", byRule && figureBlock([friction, byRule, apart], units)),
    ],
    figures,
    units,
    notes,
  });
}
