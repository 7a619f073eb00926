import * as z from "zod/mini";
import { type ReplacedIngredient, replaceIngredient } from "../blend/spec-product.ts";
import { correctForLot, readHeld, replaceFlour } from "../blend/spec-substitute.ts";
import type { Substitution } from "../blend/substitute.ts";
import { type Hold, usualHold, usualLotHold } from "../blend/substitute-question.ts";
import type { Published } from "../figure/graph.ts";
import type { Outcome } from "../figure/problem.ts";
import { readAs, refuseValue, section } from "../materials/fields.ts";
import { productReport } from "../report/product-report.ts";
import { substituteReport } from "../report/substitute-report.ts";
import type { Lot } from "../spec/blend-schema.ts";
import { type Answer, answered, type ChangingAnswer, changing } from "./answer.ts";
import { asRead, type Noodle } from "./noodle.ts";
import { blendChanges, blendFragment, foundPaths, ingredientChanges, lotChanges } from "./spec-changes.ts";
import { readWish, wishedText } from "./wishes.ts";

const missing = () => wishedText("What is missing", "bread flour");
const holdWish = (usual: readonly Hold[]) =>
  z._default(
    readAs(z.string(), heldIn, { description: "What the new blend keeps", examples: ["protein, ash or less"] }),
    [...usual],
  );
const flourWish = section({ description: "A flour to replace" }, () => ({
  missing: missing(),
  hold: holdWish(usualHold),
}));
const ingredientWish = section({ description: "An ingredient to replace" }, () => ({
  missing: missing(),
  by: wishedText("What takes its place", "dried whole egg"),
}));
const lotWish = section({ description: "A new lot" }, () => ({ hold: holdWish(usualLotHold) }));

/**
 * The blend without a flour that is missing, of the other flours of the spec and those of its `shelf:`.
 *
 * @param wish - what is missing; what the new blend keeps of the old one, such as `protein, ash or less`
 * Problems: of the wish; `hold.unknown`, `substitute.missing`; of the flours on the shelf, and of what is wanted.
 *
 * `changes()` put the first blend that was found in the place of the old one, and the flour that is missing goes.
 *
 * @example askFlourReplacement(example("school-barley-noodle"), { missing: "barley flour" }).value.answer.kind // => "found"
 * @example askFlourReplacement(example("school-barley-noodle"), { missing: "barley flour" }).changes().at(-1) // => { path: ["flours", 2] }
 */
export function askFlourReplacement(
  noodle: Noodle,
  wish: { readonly missing: string; readonly hold?: string | undefined },
): ChangingAnswer<Substitution> {
  const { spec, formula, kitchen } = asRead(noodle);
  const wished = readWish(flourWish, wish);
  if (!wished.ok) return wished;
  const { missing } = wished.value;
  const outcome = replaceFlour(spec, formula, wished.value, kitchen.materials, foundPaths(noodle));
  return changing(substituted(noodle, "replace", `${formula.name}, without ${missing}`, outcome), ({ rows: [row] }) =>
    blendChanges(noodle, row?.blend, row?.water, missing),
  );
}

/**
 * An ingredient that is missing, replaced by another of its kind with the same dry matter, and the water for it.
 *
 * Problems: of the wish; `replace.ingredient`, `replace.kind`, `replace.no-water`; a name that no material has.
 *
 * `changes()` put the other in its place, and the tap water for it where the spec states that.
 *
 * @example shown(askIngredientReplacement(example("barley-egg-noodle"), { missing: "whole egg", by: "dried whole egg" }).value.amount) // => "1.49 % of flour"
 * @example askIngredientReplacement(example("barley-egg-noodle"), { missing: "whole egg", by: "dried whole egg" }).changes()[0].value // => "dried whole egg"
 */
export function askIngredientReplacement(
  noodle: Noodle,
  wish: { readonly missing: string; readonly by: string },
): ChangingAnswer<Published<ReplacedIngredient>> {
  const { spec, formula, kitchen, units, notes: before } = asRead(noodle);
  const wished = readWish(ingredientWish, wish);
  if (!wished.ok) return wished;
  const { missing, by } = wished.value;
  const answer = answered(replaceIngredient(formula, missing, by, { ...kitchen.materials, ...spec.materials }), {
    notes: (own) => [...before, ...own],
    report: (replaced, notes) => productReport(formula, replaced, { notes, units }),
  });
  return changing(answer, (replaced) => ingredientChanges(noodle, replaced));
}

/**
 * The blend and the water for the new lot of a flour that the spec describes under `lot:`.
 *
 * @param wish - what the new blend keeps of the old one, such as `protein, ash or less`
 * Problems: of the wish; `hold.unknown`, `lot.none`, `substitute.lot`; of the flours on the shelf, and of what is wanted.
 *
 * `changes()` make the new lot the flour that is in use: its figures beside the name, and the blend and the water for it.
 *
 * @example askLot(example("new-lot")).value.answer.kind // => "found"
 * @example askLot(example("new-lot")).changes().some(({ path }) => path[2] === "figures") // => true
 */
export function askLot(
  noodle: Noodle,
  wish: { readonly hold?: string | undefined } = {},
): ChangingAnswer<Substitution> {
  const { spec, formula, kitchen } = asRead(noodle);
  const wished = readWish(lotWish, wish);
  if (!wished.ok) return wished;
  const title = `${formula.name}, with the new lot of ${spec.lot?.of ?? "flour"}`;
  const outcome = correctForLot(spec, formula, wished.value.hold, kitchen.materials, foundPaths(noodle));
  return changing(substituted(noodle, "lot", title, outcome, spec.lot), (substitution) =>
    lotChanges(noodle, substitution),
  );
}

/** The answer of a blend in the place of another. */
function substituted(
  noodle: Noodle,
  command: "replace" | "lot",
  title: string,
  outcome: Outcome<Substitution>,
  lot?: Lot,
): Answer<Substitution> {
  const { formula, units } = noodle;
  return answered(outcome, {
    notes: (own) => [...noodle.notes, ...own],
    report: (found, notes) => {
      const [row] = found.rows;
      const fragment = row && blendFragment(noodle, row.blend, row.water, lot);
      return substituteReport(command, title, formula, found, { notes, units }, fragment, lot);
    },
  });
}

function heldIn(text: string, context: z.core.ParsePayload): Hold[] {
  const hold = readHeld(text);
  if (hold.ok) return [...hold.value];
  for (const one of hold.problems) refuseValue(context, one);
  return z.NEVER;
}
