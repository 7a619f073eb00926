import { potassiumShare, sodiumShare } from "../chemistry/composition.ts";
import { atomicWeightSource } from "../chemistry/elements.ts";
import { type Figure, given } from "../figure/figure.ts";
import { definition } from "../figure/source.ts";
import type { FormulaLine } from "../formula/line.ts";
import { dec } from "../number/decimal.ts";
import { naming } from "./composition-naming.ts";

/** What salts, alkaline products and water hold: sodium and potassium by chemistry, and nothing else by nature. */
export function mineralContents(line: FormulaLine) {
  const { material } = line;
  const none = (what: string, words: string): Figure =>
    given({ ...naming(line, what, words), value: 0, by: "none by nature", sources: [definition] });
  const element = (what: "sodium" | "potassium"): Figure => {
    const by = naming(line, what, what, "mg/100 g");
    const printed =
      material.kind === "salt" && material.figureSources.composition.standing !== "user" ? material[what] : undefined;
    if (printed !== undefined) return given({ ...by, value: printed, by: "table value", sources: [material.source] });
    const share = what === "sodium" ? sodiumShare : potassiumShare;
    const value = material.composition === undefined ? dec(0) : share(material.composition).times(1000);
    const said = material.composition === undefined ? "not counted in water" : "its composition and atomic weights";
    return given({
      ...by,
      value,
      by: said,
      sources: [material.composition === undefined ? definition : atomicWeightSource],
    });
  };
  return {
    protein: none("protein", "protein"),
    labelProtein: none("label-protein", "protein, N × 6.25,"),
    fat: none("fat", "fat"),
    carbohydrate: none("carbohydrate", "carbohydrate"),
    availableCarbohydrate: none("available", "available carbohydrate"),
    fibre: none("fibre", "fibre"),
    sodium: element("sodium"),
    potassium: element("potassium"),
    factorAssumed: false,
    figures: [],
  };
}
