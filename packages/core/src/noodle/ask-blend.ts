import { designBlend, type SpecBlend } from "../blend/spec-blend.ts";
import { blendSearchReport } from "../report/blend-search-report.ts";
import { answered, type ChangingAnswer, changing } from "./answer.ts";
import { asRead, type Noodle } from "./noodle.ts";
import { blendChanges, blendFragment, foundPaths } from "./spec-changes.ts";

/**
 * The blend that the spec asks for under `wanted:`, of its flours and those of its `shelf:`; the nearest, where none is.
 *
 * Problems: of the flours on the shelf, and of what is wanted.
 *
 * `changes()` put the first blend that was found into the spec: its flours, those that come from the shelf with their figures,
 * and the water that follows; none where no blend was found.
 *
 * @example askBlend(example("school-barley-noodle")).value.answer.kind // => "found"
 * @example askBlend(example("school-barley-noodle")).changes()[0] // => { path: ["flours", 0, "amount"], value: "68.6 %" }
 */
export function askBlend(noodle: Noodle): ChangingAnswer<SpecBlend> {
  const { spec, formula, kitchen, notes: before } = asRead(noodle);
  const answer = answered(designBlend(spec, formula, kitchen.materials, foundPaths(noodle)), {
    notes: (own) => [...before, ...own],
    report: (design, notes) => {
      const { answer: found, water } = design;
      const [blend] = found.kind === "found" && !found.unchanged ? found.blends : [];
      return blendSearchReport(
        formula,
        design,
        { notes, units: noodle.units },
        blend && blendFragment(noodle, blend, water[0]),
      );
    },
  });
  return changing(answer, ({ answer: found, water }) =>
    blendChanges(noodle, found.kind === "found" ? found.blends[0] : undefined, water[0]),
  );
}
