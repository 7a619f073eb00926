import type { SpecBlend } from "../blend/spec-blend.ts";
import type { SquareAnswer } from "../blend/square.ts";
import type { Figure } from "../figure/figure.ts";
import type { Formula } from "../formula/formula.ts";
import {
  type BlendFragment,
  blendParts,
  checksTable,
  fragmentSection,
  outOfReachSections,
  sharesTable,
  unchangedSection,
  waterSection,
} from "./blend-blocks.ts";
import { report, section } from "./build.ts";
import { formulaCautions } from "./cautions.ts";
import type { Report, Telling } from "./schema.ts";
import { capital } from "./show.ts";

/** Tells the blend that was found, or why there is none and which is nearest. */
export function blendSearchReport(
  formula: Formula,
  design: SpecBlend,
  { notes, units = "metric" }: Telling,
  fragment?: BlendFragment,
): Report {
  const { answer, changes, totals, unchanged, water, square } = design;
  const { blend, comesTo, others, figures, notes: own } = blendParts(design, water, units);
  const found = answer.kind === "found";
  const order = found ? [`${capital(answer.order)}.`] : [];
  return report({
    command: "blend",
    title: `${formula.name}, the flours`,
    main: "blend",
    sections: [
      unchangedSection(unchanged, units),
      ...(found ? [] : outOfReachSections(answer, units)),
      section("blend", blendTitle(answer), blend && sharesTable(changes, totals), order),
      comesTo,
      ...(found && blend && !answer.unchanged
        ? [section("limits", "What was asked, and what is reached", checksTable(blend.checks, units))]
        : []),
      section("alternatives", "Other blends that meet it", ...others.block),
      squareSection(square),
      waterSection(water[0]),
      ...(fragment ? [fragmentSection(fragment)] : []),
    ],
    figures: [...figures, ...squareFigures(square), ...others.figures],
    from: [design, formula],
    units,
    notes: [...notes, ...own],
    cautions: formulaCautions(formula),
  });
}

function blendTitle(answer: SpecBlend["answer"]): string {
  if (answer.kind !== "found") return "The nearest blend";
  return answer.notProven === undefined ? "The blend" : "The best blend found (see the notes)";
}

function squareFigures(square: SquareAnswer | undefined): readonly Figure[] {
  return square === undefined ? [] : [...square.working, square.one, square.other];
}

function squareSection(square: SquareAnswer | undefined) {
  return section(
    "square",
    "The square rule, exactly",
    square && ["Each flour takes as many parts as the other is away from the target."],
    { kind: "figures", figures: squareFigures(square) },
  );
}
