import { type Figure, given, worked } from "../figure/figure.ts";
import { shareAsIs } from "../formula/flour-figures.ts";
import { type FormulaLine, moistureFigure } from "../formula/line.ts";
import { flourFactor, labelFactor } from "../materials/nitrogen.ts";
import { eachStated, type NutrientFigure, nutrients } from "../materials/nutrients.ts";
import { type DecimalInput, dec } from "../number/decimal.ts";
import { naming } from "./composition-naming.ts";

/** What a food holds, as far as a table or the kitchen states it. */
export function foodContents(line: FormulaLine) {
  const { material } = line;
  const protein = mainFigure(line, "protein");
  const factor = protein && factorFigure(line);
  const stated = eachStated((name) => statedFigure(line, name, material[name]));
  const { fibre } = stated;
  const carbohydrate = carbohydrateOf(line, protein, stated);
  const labelProtein =
    protein &&
    factor &&
    worked({
      ...naming(line, "label-protein", "protein, N × 6.25,"),
      formula: "protein * 6.25 / factor",
      from: { protein, factor },
      sources: [{ cite: "both are the nitrogen content times a factor", standing: "definition" }],
    });
  const available =
    carbohydrate &&
    protein &&
    labelProtein &&
    fibre &&
    worked({
      ...naming(line, "available", "available carbohydrate"),
      formula: "max(carbohydrate + protein - label - fibre, 0)",
      from: { carbohydrate, protein, label: labelProtein, fibre },
      sources: [{ cite: "what is not water, protein, fat, ash or fibre", standing: "definition" }],
    });
  return {
    protein,
    labelProtein,
    availableCarbohydrate: available,
    ...stated,
    carbohydrate,
    factorAssumed:
      protein !== undefined && material.protein?.nitrogenFactor === undefined && !dec(protein.value).isZero(),
  };
}

function statedFigure(line: FormulaLine, what: NutrientFigure, value: DecimalInput | undefined): Figure | undefined {
  if (value === undefined) return undefined;
  const { nutrientSources, source } = line.material;
  const sources = [nutrientSources?.[what] ?? source];
  return given({ ...naming(line, what, what, perHundred(what)), value, by: "as stated for the material", sources });
}

/** The unit of a content. @example perHundred("sodium") // => "mg/100 g" */
export function perHundred(what: "protein" | NutrientFigure): string {
  return `${nutrients[what].unit}/100 g`;
}

function factorFigure(line: FormulaLine): Figure {
  const { kind, protein } = line.material;
  const grain = kind === "flour" || kind === "gluten" || kind === "bran";
  const stated = protein?.nitrogenFactor;
  return given({
    ...naming(line, "nitrogen-factor", "nitrogen factor", ""),
    places: 2,
    value: stated ?? (grain ? flourFactor : labelFactor),
    by: stated === undefined ? "not stated: the usual one" : "as stated for the material",
    sources: [line.material.figureSources.protein],
  });
}

/** A content that the formula has as a share too, and that follows the moisture there; nothing where it is not stated. */
export function mainFigure(line: FormulaLine, what: "moisture" | "protein" | "ash"): Figure | undefined {
  const share = what === "moisture" ? moistureFigure(line) : shareAsIs(line, what);
  const sources = [line.material.figureSources[what]];
  return share && worked({ ...naming(line, what, what), formula: "share", from: { share }, sources });
}

function carbohydrateOf(
  line: FormulaLine,
  protein: Figure | undefined,
  { fat, carbohydrate: stated }: Readonly<Record<"fat" | "carbohydrate", Figure | undefined>>,
): Figure | undefined {
  const { material } = line;
  const { figureSources, nutrientSources = {} } = material;
  const besides = [figureSources.protein, figureSources.ash, nutrientSources.fat];
  const stale = besides.some((source) => source?.standing === "user") && nutrientSources.carbohydrate === undefined;
  if (stated !== undefined && !stale) return stated;
  const water = mainFigure(line, "moisture");
  const ash = mainFigure(line, "ash");
  if (protein === undefined || fat === undefined || water === undefined || ash === undefined) return stated;
  return worked({
    ...naming(line, "carbohydrate", "carbohydrate by difference"),
    formula: "max(100 - water - protein - fat - ash, 0)",
    from: { water, protein, fat, ash },
    sources: [{ cite: "carbohydrate by difference", standing: "definition" }],
  });
}
