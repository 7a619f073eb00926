import { answer, type Note, note, type Outcome, type Path, problem, refuse } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import { bought } from "../formula/prices.ts";
import { nearestMaterials } from "../materials/catalogue.ts";
import { writtenFigures } from "../materials/fields.ts";
import { plainName } from "../materials/nearest.ts";
import { type OwnMaterials, ownByName, resolveMaterial } from "../materials/own.ts";
import type { MaterialFigures } from "../materials/schema.ts";
import type { Spec } from "../spec/spec.ts";
import { type FlourShelf, flourShelf, lineBeside, stocked } from "./flour-shelf.ts";
import {
  atSpec,
  candidatesOf,
  doughNow,
  type SharedQuestion,
  sharedQuestion,
  sharesNow,
  targetsOf,
  wantedBasis,
} from "./spec-question.ts";
import { newLot, type Substitution, substitute } from "./substitute.ts";
import type { Hold, SubstituteQuestion } from "./substitute-question.ts";

const holdable = ["protein", "ash", "gluten protein", "wholegrain share"] as const;

/**
 * Reads what a new blend shall keep of the old one: a figure alone is kept on both sides, `or more` and `or less` let it
 * move to one.
 *
 * Problems: `hold.unknown`.
 * @example readHeld("protein, gluten protein or more").value // => ["protein", "gluten protein or more"]
 */
export function readHeld(text: string): Outcome<readonly Hold[]> {
  const words = text.split(",").map((word) => word.trim().replaceAll(/[\s-]+/gu, " "));
  const all = holdable.flatMap((name): readonly Hold[] => [name, `${name} or more`, `${name} or less`]);
  const unknown = words.find((word) => !all.some((one) => one === word));
  if (unknown === undefined) return answer(words.flatMap((word) => all.filter((one) => one === word)));
  return refuse(problem("hold.unknown", ["hold"], { unknown, holdable }));
}

/**
 * Replaces a flour of a spec that is not to be had, by its other flours and those of its `shelf:`; what the spec says
 * under `wanted:` goes before what is held.
 *
 * @param extra - the kitchen's own materials from files that the spec includes
 * Problems: `substitute.missing`, those of `flourShelf`, `sharedQuestion` and `substitute`.
 */
export function replaceFlour(
  spec: Spec,
  formula: Formula,
  asked: { readonly missing: string; readonly hold: readonly Hold[] },
  extra: OwnMaterials = {},
  found: readonly Path[] = [],
): Outcome<Substitution> {
  const shelf = flourShelf(spec, formula, extra);
  if (!shelf.ok) return shelf;
  const shared = sharedQuestion(spec, formula, shelf.value);
  if (!shared.ok) return shared;
  const missing = flourNamed(asked.missing, shelf.value);
  if (missing === undefined) return refuse(notAFlour("substitute.missing", ["missing"], asked.missing, shelf.value));
  const question = questionOf(spec, formula, shelf.value, shared.value, asked.hold, found);
  const notes = [...shelf.notes, ...shared.notes].filter(({ facts }) => !("name" in facts && facts.name === missing));
  return placed(substitute({ ...question, missing }), shelf.value, notes);
}

/** The figures of a certificate, to show how they are written. */
const sampleLot = { moisture: "14.1 %", protein: "11.9 %" };

/**
 * Corrects the blend of a spec for the new lot under `lot:`.
 *
 * Problems: `lot.none`, `substitute.lot`, `shelf.protein-missing`, those of `flourShelf`, `resolveMaterial` and `newLot`.
 */
export function correctForLot(
  spec: Spec,
  formula: Formula,
  hold: readonly Hold[],
  extra: OwnMaterials = {},
  found: readonly Path[] = [],
): Outcome<Substitution> {
  const { lot } = spec;
  if (lot === undefined)
    return refuse(problem("lot.none", ["lot"], { meant: { of: spec.flours[0]?.name ?? "", figures: sampleLot } }));
  const old = flourShelf(spec, formula, extra);
  if (!old.ok) return old;
  const name = flourNamed(lot.of, old.value);
  if (name === undefined) return refuse(notAFlour("substitute.lot", ["lot", "of"], lot.of, old.value));
  const shelf = withoutStore(old.value, name);
  const shared = sharedQuestion(spec, formula, shelf);
  if (!shared.ok) return shared;
  const oldFigures = spec.flours.find((flour) => plainName(flour.name) === plainName(name))?.figures;
  const { figures, kept: asBefore } = lotStated(spec, name, lot.figures, extra);
  const material = lotMaterial(spec, name, [figures, oldFigures], extra);
  if (!material.ok) return material;
  const priced = lot.figures.price ? material.value : bought(name, material.value, spec);
  const fresh = stocked(lineBeside("lot", name, ["lot"], priced), [], spec);
  if (fresh === undefined) return refuse(notAFlour("substitute.lot", ["lot", "figures"], name, shelf));
  const { store: _store, ...lotFlour } = fresh;
  const question = questionOf(spec, formula, shelf, shared.value, hold, found);
  const kept = lot.figures.absorption === undefined && lotFlour.ownWater !== undefined;
  const keptNotes = [
    ...(asBefore.length > 0 ? [note("substitute.stated-kept", ["lot", "figures"], { name, stated: asBefore })] : []),
    ...(kept ? [note("substitute.absorption-kept", ["lot", "figures"], { name })] : []),
  ];
  return placed(newLot({ ...question, lot: lotFlour }), shelf, [...old.notes, ...shared.notes, ...keptNotes]);
}

/** What is left of the old lot does not limit the new one. */
function withoutStore(shelf: FlourShelf, name: string): FlourShelf {
  const flours = shelf.flours.map((one) => {
    const { store: _store, ...flour } = one.flour;
    return flour.name === name ? { ...one, flour } : one;
  });
  return { ...shelf, flours };
}

/** What a figure of a certificate is read by, where that is stated. */
const readBy = [
  ["protein", "proteinBasis"],
  ["protein", "nitrogenFactor"],
  ["ash", "ashBasis"],
] as const;

/**
 * The figures of a new lot, each read by what the old lot was read by where the new certificate does not say, and that in
 * words.
 */
export function lotStated(
  spec: Spec,
  name: string,
  fresh: MaterialFigures,
  extra: OwnMaterials,
): { readonly figures: MaterialFigures; readonly kept: readonly string[] } {
  const beside = spec.flours.find((flour) => plainName(flour.name) === plainName(name))?.figures;
  const layers = [beside, ownByName(name, { ...extra, ...spec.materials })];
  const kept = readBy.flatMap(([figure, by]) => {
    const value = layers.find((layer) => layer?.[figure] !== undefined)?.[by];
    return fresh[figure] === undefined || fresh[by] !== undefined || value === undefined ? [] : [[by, value] as const];
  });
  const words = { proteinBasis: "protein", nitrogenFactor: "nitrogen factor", ashBasis: "ash" };
  const figures = Object.fromEntries(kept);
  const told = kept.map(([by]) => `${words[by]} ${String(writtenFigures(figures)[by])}`);
  return { figures: { ...fresh, ...figures }, kept: told };
}

/** A lot of a flour: the figures that are stated of it, one over the other. */
export function lotMaterial(
  spec: Spec,
  name: string,
  figures: readonly (MaterialFigures | undefined)[],
  extra: OwnMaterials = {},
) {
  const layers = figures.filter((layer) => layer !== undefined);
  return resolveMaterial(name, ["lot", "of"], layers, { ...extra, ...spec.materials });
}

function questionOf(
  spec: Spec,
  formula: Formula,
  shelf: FlourShelf,
  shared: SharedQuestion,
  hold: readonly Hold[],
  found: readonly Path[],
): Omit<SubstituteQuestion, "missing"> {
  const within = spec.wanted?.within?.value;
  return {
    ...shared,
    blend: sharesNow(shelf),
    flours: candidatesOf(shelf, shared),
    hold,
    wanted: targetsOf(spec),
    basis: wantedBasis(spec),
    ...(within !== undefined && { within }),
    ...doughNow(spec, formula, found),
  };
}

function flourNamed(name: string, shelf: FlourShelf): string | undefined {
  const used = shelf.flours.filter(({ share }) => share !== "0");
  return used.find(({ flour }) => plainName(flour.name) === plainName(name))?.flour.name;
}

function notAFlour(
  code: "substitute.missing" | "substitute.lot",
  path: readonly string[],
  name: string,
  shelf: FlourShelf,
) {
  const names = shelf.flours.filter(({ share }) => share !== "0").map(({ flour }) => flour.name);
  return problem(code, path, { name, names, nearest: nearestMaterials(name, names, 1) });
}

function placed(outcome: Outcome<Substitution>, shelf: FlourShelf, notes: readonly Note[]): Outcome<Substitution> {
  return outcome.ok
    ? answer(outcome.value, [...notes, ...outcome.notes])
    : refuse(...outcome.problems.map(atSpec(shelf)));
}
