import { designBlend, type SpecBlend } from "../blend/spec-blend.ts";
import { blendSearchReport } from "../report/blend-search-report.ts";
import { type Answer, answered } from "./answer.ts";
import type { Noodle } from "./noodle.ts";
import { blendFragment } from "./spec-changes.ts";

/**
 * The blend that the spec asks for under `wanted:`, of its flours and those of its `shelf:`; the nearest, where none is.
 *
 * Problems: of the flours on the shelf, and of what is wanted.
 * @example askBlend(example("school-barley-noodle")).value.answer.kind // => "found"
 */
export function askBlend(noodle: Noodle): Answer<SpecBlend> {
  const { spec, formula, kitchen, notes: before } = noodle;
  return answered(designBlend(spec, formula, kitchen.materials), {
    notes: (own) => [...before, ...own],
    report: (design, notes) => {
      const { answer, water } = design;
      const [blend] = answer.kind === "found" && !answer.unchanged ? answer.blends : [];
      return blendSearchReport(formula, design, notes, noodle.units, blend && blendFragment(noodle, blend, water[0]));
    },
  });
}
