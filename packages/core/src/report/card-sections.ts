import type { Block, Report, Section } from "./schema.ts";

/** What the card takes over from other answers: by command, the sections, and of their figures those to work by. */
const shownOfOthers: Readonly<Record<string, readonly string[]>> = {
  "water-temperature": ["water"],
  sheet: ["passes", "sheets"],
  plan: ["day", "loads"],
};

const shownFigures: ReadonlySet<string> = new Set([
  "water.temperature",
  "water.ice",
  "load.sheets",
  "sheet.mass",
  "sheet.length",
  "strand.width",
  "cut.length",
  "portion.mass",
  "portion.strands",
  "sheet.portions",
  "load.portions",
]);

/** The sections of another answer that belong on paper, less the figures that nobody works by. */
export function paperSections(report: Report): readonly Section[] {
  const shown = report.sections.filter(({ id }) => shownOfOthers[report.command]?.includes(id) === true);
  const paper = shown.map((section) => ({ ...section, blocks: section.blocks.flatMap(paperBlocks) }));
  return mergeDay(paper).filter(({ blocks }) => blocks.length > 0);
}

function paperBlocks(block: Block): readonly Block[] {
  if (block.kind !== "figures") return [block];
  const figures = block.figures.filter(({ id }) => shownFigures.has(id));
  const ice = figures.some(({ id }) => id === "water.ice");
  return [
    ...(figures.length > 0 ? [{ ...block, figures }] : []),
    ...(ice ? [{ kind: "text" as const, lines: [iceAdvice] }] : []),
  ];
}

const iceAdvice = "Weigh the ice first, and pour tap water on it up to the weight of the tap water in the list.";

/** Times and their summary under one heading, the picture of the passes before their table. */
function mergeDay(sections: readonly Section[]): readonly Section[] {
  const day = sections.find(({ id }) => id === "day");
  return sections.flatMap((section): readonly Section[] => {
    if (section.id === "day") return [];
    if (section.id === "loads" && day !== undefined) {
      const summary = day.blocks.map(
        (block): Block => (block.kind === "text" ? { ...block, lines: [block.lines.join(" ")] } : block),
      );
      return [{ ...section, heading: day.heading, blocks: [...summary, ...section.blocks] }];
    }
    const pictures = section.blocks.filter(({ kind }) => kind === "picture");
    return [{ ...section, blocks: [...pictures, ...section.blocks.filter(({ kind }) => kind !== "picture")] }];
  });
}
