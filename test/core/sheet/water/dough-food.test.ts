import { graphOf, recalculated } from "@noodlewright/core/figure";
import { expect, it } from "vitest";
import { compositionOf } from "#core/sheet/water/dough-food.ts";
import { workedOut } from "../../formula/worked-out.ts";

const { lines, graph } = workedOut({
  flours: [{ name: "mill flour", amount: "100 %", figures: { moisture: "13 %", protein: "12 %", source: "the mill" } }],
  water: { added: "36 %" },
}).formula;
const { protein } = compositionOf(lines).composition;
if (typeof protein !== "object") throw new Error("the protein is no figure");
const whole = graphOf([protein], graph);

it("follows a flour that is drier or wetter than it was", () => {
  // 12 % at 14 % moisture: 12 × 87 / 86 of it at 13 %, and 12 itself at 14 %
  expect(Number(protein.value)).toBeCloseTo((12 * 87) / 86, 12);
  const wetter = recalculated(whole, { "flour.1.moisture": "14" });
  expect(wetter.ok && wetter.value["food.protein"]?.value).toBe("12");
});

it("says who stated the protein of a flour", () => {
  expect(whole["flour.1.protein"]?.sources.map(({ cite }) => cite)).toContain("the mill");
  expect(whole["flour.1.protein-stated"]?.sources).toEqual([{ cite: "the mill", standing: "user" }]);
});
