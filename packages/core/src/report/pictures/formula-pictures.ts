import type { Formula } from "../../formula/formula.ts";
import { barPicture } from "./bar.ts";
import type { Picture } from "./svg.ts";

/** The flours of the blend as one bar. */
export function blendPicture(formula: Formula): Picture | undefined {
  const flours = formula.lines.filter((line) => line.role === "flour");
  const parts = flours.map((line) => ({ words: line.name, value: line.parts.value }));
  return barPicture({ id: "blend-picture", title: "Flour blend" }, parts, "%", 1);
}

/** Where the water of the dough comes from, as one bar. */
export function waterPicture(formula: Formula): Picture | undefined {
  const parts = [
    { words: "in the flour", value: formula.water.flour.value },
    { words: "tap water", value: formula.water.tap.value },
    ...formula.lines.flatMap(({ role, name }, index) => {
      const value = formula.table.lines[index]?.water.value;
      return role === "flour" || role === "water" || value === undefined ? [] : [{ words: `in ${name}`, value }];
    }),
  ];
  return barPicture({ id: "water-picture", title: "Water of the dough, parts on 100 of flour" }, parts, "", 2);
}
