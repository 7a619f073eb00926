import { type Figure, worked } from "../figure/figure.ts";
import { nitrogenFactor, shareAsIs } from "../formula/flour-figures.ts";
import type { FormulaLine } from "../formula/line.ts";
import { moistureFigure } from "../formula/made-of.ts";
import { labelFactor } from "../materials/nitrogen.ts";
import { eachStated } from "../materials/nutrients.ts";
import { dec } from "../number/decimal.ts";
import { naming } from "./composition-naming.ts";

/** What a food holds, as far as a table or the kitchen states it. */
export function foodContents(line: FormulaLine) {
  const { material } = line;
  const protein = shareAsIs(line, "protein");
  const factor = protein && nitrogenFactor(line);
  const stated = eachStated((name) => shareAsIs(line, name));
  const { fibre } = stated;
  const carbohydrate = carbohydrateOf(line, protein, stated);
  const labelProtein =
    protein &&
    factor &&
    worked(
      naming(line, "label-protein", `protein, N × ${labelFactor},`),
      "protein * to / factor",
      { protein, to: labelFactor, factor },
      { cite: "both are the nitrogen content times a factor", standing: "definition" },
    );
  const available =
    carbohydrate &&
    protein &&
    labelProtein &&
    fibre &&
    worked(
      naming(line, "available", "available carbohydrate"),
      "max(carbohydrate + protein - label - fibre, 0)",
      { carbohydrate, protein, label: labelProtein, fibre },
      { cite: "what is not water, protein, fat, ash or fibre", standing: "definition" },
    );
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
  const water = moistureFigure(line);
  const ash = shareAsIs(line, "ash");
  if (protein === undefined || fat === undefined || ash === undefined) return stated;
  return worked(
    naming(line, "carbohydrate", "carbohydrate by difference"),
    "max(100 - water - protein - fat - ash, 0)",
    { water, protein, fat, ash },
    { cite: "carbohydrate by difference", standing: "definition" },
  );
}
