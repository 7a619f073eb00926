import type { Batch } from "../batch/batch.ts";
import type { WeighedLine } from "../batch/weighing.ts";
import { exact, type Figure } from "../figure/figure.ts";
import type { Published } from "../figure/graph.ts";
import { inSystem, type UnitSystem } from "../figure/in-system.ts";
import { type Part, section } from "../report/build.ts";
import type { Section } from "../report/schema.ts";
import { asScaleShows, massText } from "../report/show.ts";
import { takenTemperatures } from "../report/temperature-report.ts";
import type { DoughWater } from "../sheet/water/dough-water.ts";
import { type WeighedIce, weighedIce } from "../sheet/water/iced-water.ts";

/** The tap water of a load, part of it as ice, in whole divisions of the scale that weighs it. Masses in g. */
export interface IcedWater extends WeighedIce {
  readonly line: WeighedLine;
}

/** Rounds the ice of a load's water to the scale; nothing where it needs none. */
export function icedWater(water: Published<DoughWater> | undefined, batch: Batch): IcedWater | undefined {
  const asked = water?.plan.ice?.ice;
  const line = batch.lines.find((one) => one.line.role === "water");
  if (asked === undefined || line === undefined) return undefined;
  const listed = batch.withStock?.find(({ weighed }) => weighed?.line.id === line.line.id)?.mass ?? line.load;
  return { line, ...weighedIce(asked, listed, line) };
}

/** What the card says of the water: its temperature, or how to weigh it with its ice; last, what was assumed for it. */
export function waterSection(
  water: Published<DoughWater>,
  batch: Batch,
  iced: IcedWater | undefined,
  units: UnitSystem,
): Section {
  const stock = batch.remedies.stock !== undefined;
  const blocks =
    iced === undefined ? plainBlocks(inSystem(water.plan.temperature, units), stock) : icedBlocks(iced, stock);
  return section("water", "Water", ...blocks, { kind: "figures", figures: assumed(water, units) });
}

function plainBlocks(temperature: Figure, stock: boolean): readonly Part[] {
  const lines = stock ? ["What is made up with water is to have this temperature too."] : [];
  return [{ kind: "figures", figures: [temperature] }, lines];
}

/** The wanted dough, and what was assumed for it, in a word or two each: of the tap where there is ice; that is as cold as ice is. */
function assumed(water: Published<DoughWater>, units: UnitSystem): readonly Figure[] {
  return takenTemperatures(water, units)
    .filter(({ id }) => !/^(?:ice|water)\./u.test(id) && (water.plan.ice !== undefined || id !== "tap.temperature"))
    .map((figure) => ({ ...figure, label: figure.label.replace(/^temperature of (?:the )?/u, "") }));
}

function icedBlocks({ line, listed, ice, tapWater }: IcedWater, stock: boolean): readonly Part[] {
  if (exact(tapWater).isNegative()) {
    const need = `The dough needs ${massText(ice, line)} of ice, more than the list has water`;
    return [[`${need}: weigh what is made up with water on a finer scale instead.`]];
  }
  const how = exact(ice).isZero()
    ? "Take the water as it comes from the tap: it needs less ice than the scale shows."
    : `Weigh the ice first, and pour ${line.line.name} on it up to ${massText(listed, line)}.`;
  const lines = stock ? [how, "What is made up with water is to be as cold as the tap water."] : [how];
  return [
    {
      kind: "figures",
      figures: [ice, { ...tapWater, label: line.line.name }].map((figure) => asScaleShows(figure, line)),
    },
    lines,
  ];
}
