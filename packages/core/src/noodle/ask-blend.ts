import { designBlend, type SpecBlend } from "../blend/spec-blend.ts";
import type { FoundAmount } from "../explore/settle-places.ts";
import { answer, type Outcome, problem, refuse } from "../figure/problem.ts";
import { dec, fixedText } from "../number/decimal.ts";
import { blendSearchReport } from "../report/blend-search-report.ts";
import { type Answer, answered, once } from "./answer.ts";
import type { Noodle } from "./noodle.ts";

/**
 * The blend that the spec asks for under `wanted:`, of its flours and those of its `shelf:`; the nearest, where none is.
 *
 * Problems: of the flours on the shelf, and of what is wanted.
 * @example askBlend(example("school-barley-noodle")).value.answer.kind // => "found"
 */
export function askBlend(noodle: Noodle): Answer<SpecBlend> {
  return answered(designed(noodle), {
    notes: (own) => [...noodle.notes, ...own],
    report: (design, notes) => blendSearchReport(noodle.formula, design, notes),
  });
}

const designed = once(({ spec, formula, kitchen }) => designBlend(spec, formula, kitchen.materials));

/**
 * The amounts of a spec that make its blend the first one that `askBlend` finds: its flours, and the added water where it is
 * known how that moves with them. Nothing where no blend is found; amounts that stay are left out.
 *
 * Problems: those of `askBlend`; `write.masses`, `write.new-flour`.
 *
 * @example blendAmounts(example("school-barley-noodle")).problems[0].code // => "write.new-flour"
 */
export function blendAmounts(noodle: Noodle): Outcome<readonly FoundAmount[]> {
  const design = designed(noodle);
  if (!design.ok) return design;
  const { spec } = noodle;
  const { answer: found, water } = design.value;
  const [blend] = found.kind === "found" ? found.blends : [];
  if (blend === undefined) return answer([]);
  const masses = spec.flours.findIndex(({ amount }) => amount !== "rest" && amount.dimension === "mass");
  if (masses >= 0) return refuse(problem("write.masses", ["flours", masses, "amount"], {}));
  const fresh = blend.shares.filter(({ name }) => !spec.flours.some((flour) => flour.name === name));
  if (fresh.length > 0) {
    return refuse(problem("write.new-flour", ["flours"], { names: fresh.map(({ name }) => name) }));
  }
  const flours = spec.flours.flatMap(({ name, amount }, index): readonly FoundAmount[] => {
    const share = blend.shares.find((one) => one.name === name)?.share.value ?? "0";
    if (amount !== "rest" && dec(amount.value).eq(share)) return [];
    return [{ path: ["flours", index, "amount"], name, text: `${share} %` }];
  });
  const [moved] = water;
  const { added, onFlourMoisture } = spec.water;
  const known = moved !== undefined && moved.notKnown.length === 0 && added?.dimension === "share";
  if (!known || onFlourMoisture !== undefined || dec(moved.added.value).eq(added.value)) return answer(flours);
  const text = `${fixedText(moved.added.value, 2)} %`;
  return answer([...flours, { path: ["water", "added"], name: "added water", text }]);
}
