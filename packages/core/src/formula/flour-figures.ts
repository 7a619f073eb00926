import { type Figure, given } from "../figure/figure.ts";
import { type Note, note } from "../figure/problem.ts";
import { fromSpec } from "../figure/source.ts";
import { flourFactor, flourRule, labelFactor, labelRule } from "../materials/nitrogen.ts";
import { nutrients } from "../materials/nutrients.ts";
import type { KitchenMaterial, StatedShare } from "../materials/own.ts";
import { type DecimalText, dec, decimalText } from "../number/decimal.ts";
import type { FormulaLine } from "./line.ts";
import { toAsIs } from "./made-of.ts";
import type { Content } from "./mix.ts";
import { withRange } from "./ranges.ts";

/** The protein of a flour; nothing, and a note, where it is not stated. */
export function proteinFigures(line: FormulaLine, notes: Note[]): Content | undefined {
  const { material } = line;
  const value = shareAsIs(line, "protein");
  if (value === undefined) {
    notes.push(note("blend.protein-missing", line.path, { name: line.name }));
    return undefined;
  }
  if (material.protein?.nitrogenFactor === undefined) {
    const percent = dec(flourFactor).div(labelFactor).times(100).toFixed(1);
    const facts = { name: line.name, taken: flourFactor, other: labelFactor, percent };
    notes.push(note("blend.factor-unknown", line.path, facts));
  }
  return { value, factor: nitrogenFactor(line) };
}

/** The nitrogen factor of a protein; the usual one where nobody states it. */
export function nitrogenFactor({ id, name, role, material }: FormulaLine): Figure {
  const { kind, protein, figureSources } = material;
  const grain = role === "flour" || kind === "flour" || kind === "gluten" || kind === "bran";
  const stated = protein?.nitrogenFactor;
  const naming = { id: `${id}.nitrogen-factor`, label: `nitrogen factor of ${name}`, unit: "", places: 2 };
  if (stated !== undefined) return given(naming, stated, "as stated for the material", figureSources.protein);
  const by = "assumed, since nobody states it";
  return grain ? given(naming, flourFactor, by, flourRule) : given(naming, labelFactor, by, labelRule);
}

/** The ash of a flour as is, %; nothing, and a note, where it is not stated. */
export function ashFigure(line: FormulaLine, notes: Note[]): Figure | undefined {
  const ash = shareAsIs(line, "ash");
  if (ash === undefined) notes.push(note("blend.ash-missing", line.path, { name: line.name }));
  return ash;
}

/**
 * What a material holds as is, worked out from the moisture that it is stated on; nothing where it is not stated. In %, and
 * in mg of 100 g what is told in mg.
 */
export function shareAsIs(line: FormulaLine, what: StatedShare): Figure | undefined {
  const { material } = line;
  const value = what === "protein" ? material.protein?.value : material[what];
  if (value === undefined) return undefined;
  const stated = material.stated[what];
  const inMg = what !== "ash" && nutrients[what].unit === "mg";
  const naming = {
    id: `${line.id}.${what}`,
    label: `${what} of ${line.name} as is`,
    ...(inMg ? { unit: "mg/100 g", places: 0 } : { unit: "%", places: what === "ash" ? 3 : 2 }),
  };
  const { figureSources, nutrientSources, source } = material;
  const sources = [what === "protein" || what === "ash" ? figureSources[what] : (nutrientSources?.[what] ?? source)];
  const by = (what === "protein" ? material.by?.protein : undefined) ?? "as stated for the material";
  const figure =
    stated === undefined || stated.basis.kind === "as is"
      ? given(naming, value, by, ...sources)
      : toAsIs(naming, { ...stated, basis: stated.basis.moisture }, line, sources);
  return what === "protein" ? withRange(figure, material.ranges?.protein) : figure;
}

/** 1 for a wholegrain flour, 0 for another. */
export function wholegrainFigure(line: FormulaLine): Figure {
  return given(
    {
      id: `${line.id}.wholegrain`,
      label: `whether ${line.name} is wholegrain`,
      unit: "",
      places: 0,
      bounds: { most: "1" },
    },
    line.material.wholegrain ? 1 : 0,
    "as stated for the material",
    line.material.source,
  );
}

/** The kitchen's own figure of the added water that a dough of a flour alone takes, with its range. */
export function absorptionFigure({
  id,
  name,
  material: { absorption },
}: Pick<FormulaLine, "id" | "name"> & {
  readonly material: { readonly absorption?: KitchenMaterial["absorption"] | undefined };
}): Figure | undefined {
  if (absorption === undefined) return undefined;
  const { percent, plusMinus } = absorption;
  const naming = { id: `${id}.absorption`, label: `water ${name} takes`, unit: "% of it", places: 1 };
  const by = "the kitchen's own figure";
  const end = (sign: 1 | -1): DecimalText => decimalText(dec(plusMinus).times(sign).plus(percent));
  const range = dec(plusMinus).isZero() ? undefined : { low: end(-1), high: end(1), why: by };
  return withRange(given(naming, percent, by, fromSpec), range);
}
