import { pure, sharesOf } from "../chemistry/composition.ts";
import { atomicWeightSource } from "../chemistry/elements.ts";
import { type Figure, given, worked } from "../figure/figure.ts";
import { definition } from "../figure/source.ts";
import { shareAsIs } from "../formula/flour-figures.ts";
import type { FormulaLine } from "../formula/line.ts";
import { contentFigure } from "../formula/made-of.ts";
import { eachStated, type NutrientFigure, nutrients } from "../materials/nutrients.ts";
import { naming } from "./composition-naming.ts";

/** What salts, alkaline products and water hold: sodium and potassium by chemistry, and nothing else by nature. */
export function mineralContents(line: FormulaLine) {
  const { material } = line;
  const none = (what: string, words: string): Figure =>
    given(naming(line, what, words), 0, "none by nature", definition);
  const held = (what: NutrientFigure): Figure => {
    const { inSalts } = nutrients[what];
    if (inSalts === "none") return none(what, what);
    const by = naming(line, what, what, `${nutrients[what].unit}/100 g`);
    const ofTable = material.kind === "salt" && material.figureSources.composition.standing !== "user";
    const printed = ofTable ? shareAsIs(line, what) : undefined;
    if (printed !== undefined) return printed;
    if (material.composition === undefined) return given(by, 0, "not counted in water", definition);
    const salts = sharesOf(material.composition).flatMap(([salt]) => {
      const share = inSalts(pure(salt));
      const inSalt = { id: `salt.${salt}.${what}`, label: `${what} in ${salt}`, unit: "%", places: 2 };
      return share.isZero()
        ? []
        : [{ content: contentFigure(line, salt), share: given(inSalt, share, "atomic weights", atomicWeightSource) }];
    });
    if (salts.length === 0) return given(by, 0, "its composition and atomic weights", atomicWeightSource);
    const from = { content: salts.map(({ content }) => content), share: salts.map(({ share }) => share) };
    return worked(by, "10 * sum(content * share)", from, atomicWeightSource);
  };
  return {
    protein: none("protein", "protein"),
    labelProtein: none("label-protein", "protein, N × 6.25,"),
    availableCarbohydrate: none("available", "available carbohydrate"),
    ...eachStated(held),
    factorAssumed: false,
  };
}
