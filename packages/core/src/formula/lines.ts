import { type Figure, given, worked } from "../figure/figure.ts";
import { answer, type Note, type Outcome, type Problem, problem, refuse } from "../figure/problem.ts";
import { fromSpec, type Source } from "../figure/source.ts";
import { dryRatio } from "../materials/moisture.ts";
import { type OwnMaterials, resolveMaterial } from "../materials/own.ts";
import { dec, HUNDRED } from "../number/decimal.ts";
import type { Spec } from "../spec/spec.ts";
import { amountPath, doseBeside, entryParts, type Scaling } from "./dose.ts";
import { otherEntries } from "./entries.ts";
import { flourShares } from "./flour-shares.ts";
import { tooMuch } from "./limits.ts";
import type { FormulaLine } from "./line.ts";
import { moistureFigure } from "./made-of.ts";
import { percent } from "./naming.ts";
import { namedOrWritten, type Replacement, replaceAlkali } from "./replace.ts";

/** The lines that a spec states: all but the tap water, which the balance gives. */
export interface StatedLines {
  readonly flours: readonly FormulaLine[];
  readonly others: readonly FormulaLine[];
  /** Alkaline products that the spec has replaced; `others` holds what takes their place. */
  readonly replacements: readonly Replacement[];
  readonly dusting?: FormulaLine;
  /** Flour of a formula written in masses, g. */
  readonly writtenFlour?: Figure;
  /** What amounts in % of flour are multiplied with because the formula was written on another flour moisture. */
  readonly referenceFactor?: Figure;
}

/**
 * Turns the amounts of a spec into parts on 100 of flour as weighed.
 *
 * Problems: `flours.no-dry-matter`, and those of `flourShares`, `entryParts`, `resolveMaterial` and `replaceAlkali`.
 */
export function statedLines(
  spec: Pick<Spec, "flours"> & Partial<Spec>,
  extra: OwnMaterials = {},
): Outcome<StatedLines> {
  const own = { ...extra, ...spec.materials };
  const problems: Problem[] = [];
  const collect = <T>(outcome: Outcome<T>): T | undefined => {
    if (outcome.ok) return outcome.value;
    problems.push(...outcome.problems);
    return undefined;
  };
  const shares = collect(flourShares(spec.flours));
  const flourMaterials = spec.flours.map((flour, index) =>
    collect(resolveMaterial(flour.name, ["flours", index, "name"], flour.figures, own)),
  );
  const flours = spec.flours.flatMap((flour, index): FormulaLine[] => {
    const material = flourMaterials[index];
    const parts = shares?.parts[index];
    if (material === undefined || parts === undefined) return [];
    const path = ["flours", index];
    return [{ id: `flour.${index + 1}`, role: "flour", name: flour.name, path, material, parts }];
  });
  for (const [index, material] of flourMaterials.entries()) {
    if (material !== undefined && dec(material.moisture).gte(HUNDRED)) {
      problems.push(problem("flours.no-dry-matter", ["flours", index], { name: spec.flours[index]?.name ?? "" }));
    }
  }
  const whole = problems.length === 0;
  const factor = whole ? referenceFactor(spec, flours) : undefined;
  const scale: Scaling = { flour: shares?.flour, factor };
  const notes: Note[] = [];
  const replacements: Replacement[] = [];
  const others = otherEntries(spec).map((entry): readonly FormulaLine[] | undefined => {
    const written = entry.role === "alkali" && entry.figures === undefined;
    const material = collect(
      written
        ? namedOrWritten(entry.name, entry.namePath, own, doseBeside(entry))
        : resolveMaterial(entry.name, entry.namePath, entry.figures, own, doseBeside(entry)),
    );
    if (material === undefined) return undefined;
    const amount = shares === undefined ? undefined : collect(entryParts(entry, material, scale));
    if (amount === undefined) return undefined;
    const much = entry.as === undefined ? tooMuch(entry.role, entry.name, amount, amountPath(entry)) : undefined;
    if (much !== undefined) problems.push(much);
    const line = { id: entry.id, role: entry.role, name: entry.name, path: entry.path, material, parts: amount };
    if (entry.replaced === undefined) return [line];
    const replacement = replaceAlkali(line, entry.replaced, own);
    const swapped = collect(replacement);
    if (replacement.ok) notes.push(...replacement.notes);
    if (swapped !== undefined) replacements.push(swapped);
    return swapped?.lines;
  });
  if (problems.length > 0) return refuse(...problems);
  const lines = others.flatMap((entry) => entry ?? []);
  const dusting = lines.find((line) => line.role === "dusting");
  const stated = {
    flours,
    others: lines.filter((line) => line.role !== "dusting"),
    replacements,
    ...(dusting && { dusting }),
    ...(shares?.flour && { writtenFlour: shares.flour }),
    ...(factor && { referenceFactor: factor }),
  };
  return answer(stated, notes);
}

/** Constant dry matter: what 100 of the flour at hand is worth in flour of the reference moisture, over 100. */
const dryMatter: Source = {
  cite: "constant flour dry matter, mass (100 − M) the same on both moistures",
  standing: "definition",
};

function referenceFactor(spec: Partial<Spec>, flours: readonly FormulaLine[]): Figure | undefined {
  const reference = spec.water?.onFlourMoisture;
  if (reference === undefined) return undefined;
  const stated = given(
    percent("flour.reference-moisture", "moisture of the flour that the spec is written on"),
    reference.value,
    `spec, ${reference.text}`,
    fromSpec,
  );
  return worked(
    { id: "flour.reference-factor", label: "flour at hand over flour of the stated moisture", unit: "", places: 5 },
    dryRatio("reference", "sum(share * moisture) / 100"),
    {
      share: flours.map((line) => line.parts),
      moisture: flours.map(moistureFigure),
      reference: stated,
    },
    dryMatter,
  );
}
