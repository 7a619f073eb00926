import { type ReplacedIngredient, replaceIngredient } from "../blend/spec-product.ts";
import { correctForLot, readHeld, replaceFlour } from "../blend/spec-substitute.ts";
import type { Substitution } from "../blend/substitute.ts";
import { usualHold } from "../blend/substitute-question.ts";
import { frozen } from "../figure/frozen.ts";
import type { Published } from "../figure/graph.ts";
import { productReport } from "../report/product-report.ts";
import { substituteReport } from "../report/substitute-report.ts";
import type { Lot } from "../spec/blend-schema.ts";
import { type Answer, answered } from "./answer.ts";
import type { Noodle } from "./noodle.ts";
import { blendFragment } from "./spec-changes.ts";

/**
 * The blend without a flour that is missing, of the other flours of the spec and those of its `shelf:`.
 *
 * @param wish - what is missing; what the new blend keeps of the old one, such as `protein, ash or less`
 * Problems: `hold.unknown`, `substitute.missing`; of the flours on the shelf, and of what is wanted.
 * @example askFlourReplacement(example("school-barley-noodle"), { missing: "barley flour" }).value.answer.kind // => "found"
 */
export function askFlourReplacement(
  noodle: Noodle,
  { missing, hold: held = usualHold.join(", ") }: { readonly missing: string; readonly hold?: string },
): Answer<Substitution> {
  const { spec, formula, kitchen, notes: before } = noodle;
  const hold = readHeld(held);
  if (!hold.ok) return frozen(hold);
  const title = `${formula.name}, without ${missing}`;
  return answered(replaceFlour(spec, formula, { missing, hold: hold.value }, kitchen.materials), {
    notes: (own) => [...before, ...own],
    report: (substitution, notes) =>
      substituteReport("replace", title, formula, substitution, notes, noodle.units, firstRow(noodle, substitution)),
  });
}

/**
 * An ingredient that is missing, replaced by another of its kind with the same dry matter, and the water for it.
 *
 * Problems: `replace.ingredient`, `replace.kind`, `replace.no-water`; a name that no material has.
 * @example shown(askIngredientReplacement(example("barley-egg-noodle"), { missing: "whole egg", by: "dried whole egg" }).value.amount) // => "1.49 % of flour"
 */
export function askIngredientReplacement(
  { spec, formula, kitchen, units, notes: before }: Noodle,
  { missing, by }: { readonly missing: string; readonly by: string },
): Answer<Published<ReplacedIngredient>> {
  return answered(replaceIngredient(formula, missing, by, { ...kitchen.materials, ...spec.materials }), {
    notes: (own) => [...before, ...own],
    report: (replaced, notes) => productReport(formula, replaced, notes, units),
  });
}

/**
 * The blend and the water for the new lot of a flour that the spec describes under `lot:`.
 *
 * @param wish - what the new blend keeps of the old one, such as `protein, ash or less`
 * Problems: `hold.unknown`, `lot.none`, `substitute.lot`; of the flours on the shelf, and of what is wanted.
 * @example askLot(example("new-lot")).value.answer.kind // => "found"
 */
export function askLot(
  noodle: Noodle,
  { hold: held = usualHold.join(", ") }: { readonly hold?: string } = {},
): Answer<Substitution> {
  const { spec, formula, kitchen, notes: before } = noodle;
  const hold = readHeld(held);
  if (!hold.ok) return frozen(hold);
  const title = `${formula.name}, with the new lot of ${spec.lot?.of ?? "flour"}`;
  return answered(correctForLot(spec, formula, hold.value, kitchen.materials), {
    notes: (own) => [...before, ...own],
    report: (substitution, notes) =>
      substituteReport(
        "lot",
        title,
        formula,
        substitution,
        notes,
        noodle.units,
        firstRow(noodle, substitution, spec.lot),
        spec.lot,
      ),
  });
}

function firstRow(noodle: Noodle, { rows: [row] }: Substitution, lot?: Lot) {
  return row && blendFragment(noodle, row.blend, row.water, lot);
}
