import { describe, expect, it } from "vitest";
import { resolveMaterial } from "#core/materials/own.ts";
import { materialFiguresSchema } from "#core/materials/schema.ts";
import { answered, codesOf, toldOf } from "../told-of.ts";

const flour = (figures: unknown, name = "flour of the bag", own = {}) =>
  resolveMaterial(name, ["flours", 0, "name"], materialFiguresSchema.parse(figures), own);

const usLabel = { protein: "4 g", serving: "30 g", rules: "US" };

describe("a flour with a nutrition label in place of its protein", () => {
  it("is taken at the middle, with the range that the rounding leaves", () => {
    // US 21 CFR 101.9: 4 g is 3.5 to below 4.5 g, so 11.67 to 15 % at factor 5.7, by hand
    const { protein, ranges, notes } = answered(
      flour({ moisture: "13.5 %", label: { ...usLabel, nitrogenFactor: 5.7 } }),
    );
    expect(Number(ranges?.protein?.low)).toBeCloseTo((3.5 / 30) * 100, 9);
    expect(Number(ranges?.protein?.high)).toBeCloseTo((4.5 / 30) * 100, 9);
    expect(Number(protein?.value)).toBeCloseTo((4 / 30) * 100, 9);
    expect(protein?.nitrogenFactor).toBe("5.7");
    expect(notes).toContainEqual(expect.objectContaining({ code: "label.rounding-only" }));
  });

  it("covers every factor where the label does not name it", () => {
    const { ranges } = answered(flour({ moisture: "13.5 %", label: usLabel }));
    expect(Number(ranges?.protein?.low)).toBeCloseTo(((3.5 / 30) * 100 * 5.7) / 6.25, 9);
    expect(Number(ranges?.protein?.high)).toBeCloseTo(15, 9);
  });

  it("takes a nitrogen factor beside the label as that of every label that does not say its own", () => {
    const within = (figures: object) => answered(flour({ moisture: "13.5 %", ...figures }));
    const beside = within({ nitrogenFactor: 6.25, label: usLabel });
    expect(beside.protein).toEqual(within({ label: { ...usLabel, nitrogenFactor: 6.25 } }).protein);
    expect(Number(beside.protein?.value)).toBeCloseTo(((4 / 30) * 100 * 5.7) / 6.25, 9);
    expect(beside.protein?.nitrogenFactor).toBe("5.7");
    expect(within({ nitrogenFactor: 6.25, label: { ...usLabel, nitrogenFactor: 5.7 } }).ranges).toEqual(
      within({ label: { ...usLabel, nitrogenFactor: 5.7 } }).ranges,
    );
  });

  it("narrows with a second label, and says when two cannot be of one flour", () => {
    const eu = { protein: "12 g", rules: "EU" };
    const both = answered(flour({ moisture: "13.5 %", label: [usLabel, eu] }));
    expect(Number(both.ranges?.protein?.high)).toBeCloseTo((12.5 * 5.7) / 6.25, 9);
    expect(codesOf(flour({ moisture: "13.5 %", label: [usLabel, { protein: "7 g", rules: "EU" }] }))).toEqual([
      "label.disagree",
    ]);
  });

  it("needs no moisture: a usual one is assumed with its range, and said", () => {
    const { moisture, ranges, notes, figureSources } = answered(flour({ label: usLabel }));
    expect([moisture, ranges?.moisture?.low, ranges?.moisture?.high]).toEqual(["13.5", "12", "15"]);
    expect(figureSources.moisture.cite).toBe("common practice, no source");
    expect(notes).toContainEqual(expect.objectContaining({ code: "materials.moisture-assumed" }));
    expect(codesOf(flour({ protein: "11 %" }))).toEqual(["materials.moisture-missing"]);
  });

  it("needs nothing of a flour that is said to be a flour and no more, or with its protein as sold", () => {
    const bag = [{ kind: "flour" }, { kind: "flour", protein: "12 %", proteinBasis: "as is" }].map((stated) =>
      answered(flour(stated, "strong flour")),
    );
    expect(bag.map(({ moisture, protein }) => [moisture, protein?.value])).toEqual([
      ["13.5", undefined],
      ["13.5", "12"],
    ]);
    for (const { notes } of bag)
      expect(notes).toContainEqual(expect.objectContaining({ code: "materials.moisture-assumed" }));
    expect(codesOf(flour({ kind: "flour", protein: "12 %" }, "strong flour"))).toEqual(["materials.moisture-missing"]);
  });

  it("stays as the label has it when the moisture comes to be known", () => {
    const own = { "bag flour": materialFiguresSchema.parse({ label: usLabel }) };
    const before = answered(flour({}, "bag flour", own));
    const after = answered(flour({ moisture: "10 %" }, "bag flour", own));
    expect(after.moisture).toBe("10");
    expect(after.protein).toEqual(before.protein);
    expect(after.ranges?.protein).toEqual(before.ranges?.protein);
  });

  it.each([
    [{ protein: "4 g", rules: "US" }, "label.serving", "flours.0.figures.label.serving"],
    [{ ...usLabel, protein: "much" }, "label.unreadable", "flours.0.figures.label.protein"],
    [{ ...usLabel, protein: "4.2 g" }, "label.not-by-the-book", "flours.0.figures.label.protein"],
  ])("says where the label is wrong: %j", (label, code, path) => {
    const outcome = flour({ moisture: "13 %", label });
    expect(toldOf(outcome).map((problem) => [problem.code, problem.path.join(".")])).toEqual([[code, path]]);
  });
});

describe("a stated uncertainty", () => {
  it("becomes a range as is, whatever the basis of the protein", () => {
    const { ranges } = answered(
      flour({ moisture: "13 %", moistureUncertainty: "0.2 %", protein: "12 %", proteinUncertainty: "0.3 %" }),
    );
    // stated at 14 % moisture; as is, times 87 over 86
    expect(Number(ranges?.protein?.low)).toBeCloseTo((11.7 * 87) / 86, 9);
    expect(Number(ranges?.protein?.high)).toBeCloseTo((12.3 * 87) / 86, 9);
    expect([ranges?.moisture?.low, ranges?.moisture?.high]).toEqual(["12.8", "13.2"]);
  });

  it("stays with a flour of which only the moisture is replaced, and goes with its figure", () => {
    const own = {
      "mill flour": materialFiguresSchema.parse({ moisture: "13 %", protein: "12 %", proteinUncertainty: "0.3 %" }),
    };
    const damp = answered(flour({ moisture: "15 %" }, "mill flour", own));
    expect(Number(damp.ranges?.protein?.high)).toBeCloseTo((12.3 * 85) / 86, 9);
    expect(answered(flour({ protein: "11 %" }, "mill flour", own)).ranges).toBeUndefined();
  });

  it("keeps a share between 0 and 100 %", () => {
    const { ranges } = answered(
      flour({ moisture: "1 %", moistureUncertainty: "3 %", protein: "0.2 %", proteinUncertainty: "1 %" }),
    );
    expect([ranges?.moisture?.low, ranges?.protein?.low]).toEqual(["0", "0"]);
  });
});
