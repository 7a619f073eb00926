import type { Batch } from "../batch/batch.ts";
import type { WeighedLine } from "../batch/weighing.ts";
import { exact, type Figure } from "../figure/figure.ts";
import { section } from "../report/build.ts";
import type { Block, Report, Section } from "../report/schema.ts";
import { asScaleShows, massText } from "../report/show.ts";
import { type WeighedIce, weighedIce } from "../sheet/water/iced-water.ts";

/** The tap water of a load, part of it as ice, in whole divisions of the scale that weighs it. Masses in g. */
export interface IcedWater extends WeighedIce {
  readonly line: WeighedLine;
}

/** Rounds the ice of an answer about the water to the scale; nothing where the answer has no ice. */
export function icedWater(answer: Report | undefined, batch: Batch): IcedWater | undefined {
  const asked = answer?.figures["water.ice"];
  const line = batch.lines.find((one) => one.line.role === "water");
  if (asked === undefined || line === undefined) return undefined;
  const listed = batch.withStock?.find(({ weighed }) => weighed?.line.id === line.line.id)?.mass ?? line.load;
  const { ice, tapWater } = weighedIce(asked, listed, line);
  return {
    line,
    listed,
    ice: { ...ice, id: "water.ice" },
    tapWater: { ...tapWater, id: "water.from-tap", label: line.line.name },
  };
}

/** What the card says of the water: its temperature, or how to weigh it with its ice; last, what was assumed for it. */
export function waterSection(answer: Report, batch: Batch, iced: IcedWater | undefined): Section | undefined {
  const stated = answer.sections.find(({ id }) => id === "water");
  if (stated === undefined) return undefined;
  const stock = batch.remedies.stock !== undefined;
  const blocks = iced === undefined ? plainBlocks(stated, stock) : icedBlocks(iced, stock);
  return section(stated.id, stated.heading, ...blocks, { kind: "figures", figures: assumed(answer) });
}

function plainBlocks({ blocks }: Section, stock: boolean): readonly Block[] {
  const figures = figuresOf(blocks).filter(({ id }) => id === "water.temperature");
  const lines = stock ? ["What is made up with water is to have this temperature too."] : [];
  return [
    { kind: "figures", figures },
    { kind: "text", lines },
  ];
}

/** What has a temperature of its own, but for ice. */
const bodies = /^(?!ice\.|water\.).*\.temperature$/u;

/** The wanted dough, and what was assumed for it, in a word or two each. */
function assumed({ sections }: Report): readonly Figure[] {
  return figuresOf(sections.filter(({ id }) => id === "from").flatMap(({ blocks }) => blocks))
    .filter(({ id }) => bodies.test(id))
    .map((figure) => ({ ...figure, label: figure.label.replace(/^temperature of (?:the )?/u, "") }));
}

function figuresOf(blocks: readonly Block[]): readonly Figure[] {
  return blocks.flatMap((block) => (block.kind === "figures" ? block.figures : []));
}

function icedBlocks({ line, listed, ice, tapWater }: IcedWater, stock: boolean): readonly Block[] {
  if (exact(tapWater).isNegative()) {
    const need = `The dough needs ${massText(ice, line)} of ice, more than the list has water`;
    return [{ kind: "text", lines: [`${need}: weigh what is made up with water on a finer scale instead.`] }];
  }
  const how = exact(ice).isZero()
    ? "Take the water as it comes from the tap: it needs less ice than the scale shows."
    : `Weigh the ice first, and pour ${line.line.name} on it up to ${massText(listed, line)}.`;
  const lines = stock ? [how, "What is made up with water is to be as cold as the tap water."] : [how];
  return [
    { kind: "figures", figures: [ice, tapWater].map((figure) => asScaleShows(figure, line)) },
    { kind: "text", lines },
  ];
}
