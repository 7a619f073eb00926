import type { Substitution } from "../blend/substitute.ts";
import { shown } from "../figure/figure.ts";
import type { Formula } from "../formula/formula.ts";
import type { Lot } from "../spec/blend-schema.ts";
import {
  type BlendFragment,
  blendParts,
  checksTable,
  fragmentSection,
  outOfReachSections,
  sharesTable,
  waterSection,
} from "./blend-blocks.ts";
import { report, section } from "./build.ts";
import { formulaCautions } from "./cautions.ts";
import { lotsSection } from "./recorded.ts";
import type { Report, Telling } from "./schema.ts";

/** Tells a blend without a flour that is missing, or with a new lot, beside the blend before and the lot before. */
export function substituteReport(
  command: "replace" | "lot",
  title: string,
  formula: Formula,
  substitution: Substitution,
  { notes, units = "metric" }: Telling,
  fragment?: BlendFragment,
  lot?: Lot,
): Report {
  const { answer, changes, totals, rows } = substitution;
  const [first] = rows;
  const waters = rows.map(({ water }) => water);
  const { blend, comesTo, others, figures, notes: own } = blendParts(substitution, waters, units);
  const found = answer.kind === "found";
  const moved = (first?.notHeld ?? []).map(({ label, before: old, after }) =>
    [`${label}:`, old && `from ${shown(old)}`, after && `to ${shown(after)}.`].filter(Boolean).join(" "),
  );
  return report({
    command,
    title,
    main: "blend",
    sections: [
      ...(found ? [] : outOfReachSections(answer, units)),
      section("blend", found ? "Before and now" : "The nearest blend", blend && sharesTable(changes, totals)),
      section("not-held", "Not held, and moved", moved),
      comesTo,
      ...(found && blend ? [section("limits", "What is held", checksTable(blend.checks, units))] : []),
      waterSection(first?.water),
      ...(lot ? [lotsSection(formula, lot)] : []),
      section("alternatives", "Other blends that hold it", ...others.block),
      ...(fragment ? [fragmentSection(fragment)] : []),
    ],
    figures: [...figures, ...others.figures],
    from: [substitution, formula],
    units,
    notes: [...notes, ...own],
    cautions: formulaCautions(formula),
  });
}
