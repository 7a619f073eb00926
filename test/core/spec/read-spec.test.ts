import { pathText } from "@noodlewright/core/figure";
import { readKitchenFile, readSpec } from "@noodlewright/core/spec";
import { describe, expect, it } from "vitest";
import { codesOf, toldOf } from "../told-of.ts";

const good = { name: "plain", flours: [{ name: "bread flour", amount: "100 %" }], water: { added: "36 %" } };

function nested(depth: number): unknown {
  return depth === 0 ? 1 : [nested(depth - 1)];
}

/** Code, place, what is written, and what the advice or the expectation must name. */
const wrong: readonly (readonly [code: string, place: string, written: unknown, says: string])[] = [
  ["spec.unknown-key", "flour", { ...good, flour: [] }, "`flours`"],
  ["spec.unknown-key", "water.aded", { ...good, water: { added: "36 %", aded: "1 %" } }, "`added`"],
  ["spec.unknown-key", '"wa\u200Bter"', { ...good, "wa\u200Bter": { added: "36 %" } }, "cannot be seen"],
  ["spec.unknown-key", "qqqq", { ...good, qqqq: 1 }, "`notes`"],
  ["spec.missing", "name", { ...good, name: undefined }, "name"],
  ["spec.missing", "flours", { ...good, flours: undefined }, "flours"],
  ["spec.missing", "water", { ...good, water: undefined }, "stated in one way"],
  ["spec.missing", "flours[0].amount", { ...good, flours: [{ name: "bread flour" }] }, "amount: 70 %"],
  ["spec.missing", "mixer.largest", { ...good, mixer: {} }, "largest: 10 kg"],
  ["spec.type", "name", { ...good, name: 3 }, "a text"],
  ["spec.type", "flours", { ...good, flours: "bread flour" }, "a list"],
  ["spec.type", "water", { ...good, water: "36 %" }, "a section with keys"],
  ["spec.type", "salt", { ...good, salt: null }, "a quantity with its unit"],
  ["spec.type", "salt", { ...good, salt: ["1 %"] }, "a quantity with its unit"],
  ["spec.type", "batch.bowls", { ...good, batch: { bowls: "many" } }, "number"],
  ["spec.type", "", "a text", "a section with keys"],
  ["spec.type", "", null, "a section with keys"],
  [
    "spec.choice",
    "alkali[0].as",
    { ...good, alkali: [{ name: "x", amount: "1 %", as: "anhydrous" }] },
    "anhydrous salts",
  ],
  ["spec.choice", "mixer.of", { ...good, mixer: { largest: "1 kg", of: "dow" } }, "dough"],
  ["spec.choice", "batch.load", { ...good, batch: { load: "biggest" } }, "largest"],
  [
    "spec.size",
    `materials.${"a".repeat(81)}`,
    { ...good, materials: { ["a".repeat(81)]: {} } },
    "at most 80 characters",
  ],
  ["spec.size", "name", { ...good, name: " " }, "at least 1 character"],
  ["spec.size", "flours", { ...good, flours: [] }, "at least 1 entry"],
  ["spec.size", "batch.bowls", { ...good, batch: { bowls: 0 } }, "at least 1"],
  ["spec.size", "batch.bowls", { ...good, batch: { bowls: 1e21 } }, "at most 1000000"],
  ["spec.size", "batch.cookGain", { ...good, batch: { cookGain: 9 } }, "at most 5"],
  ["spec.size", "batch.cookGain", { ...good, batch: { cookGain: 0.5 } }, "more than 0.5"],
  ["spec.too-deep", `notes${"[0]".repeat(20)}`, { ...good, notes: nested(30) }, "20 levels"],
  ["quantity.unreadable", "salt", { ...good, salt: "1" }, '"1 %"'],
  ["quantity.unreadable", "salt", { ...good, salt: 1 }, '"1 %"'],
  ["quantity.unreadable", "flours[0].amount", { ...good, flours: [{ name: "x", amount: "most" }] }, "rest"],
  ["quantity.unreadable", "water.added", { ...good, water: { added: "-3 %" } }, "zero or more"],
  ["quantity.unreadable", "batch.dough", { ...good, batch: { dough: "3 L" } }, "measures volume"],
  ["quantity.out-of-range", "salt", { ...good, salt: "21 %" }, "20 %"],
  ["quantity.out-of-range", "water.dough", { ...good, water: { dough: "71 %" } }, "70 %"],
  ["quantity.out-of-range", "losses.cutting", { ...good, losses: { cutting: "91 %" } }, "90 %"],
  ["quantity.out-of-range", "weighingTolerance", { ...good, weighingTolerance: "0 %" }, "above 0"],
  ["quantity.out-of-range", "batch.dough", { ...good, batch: { dough: "0 kg" } }, "above zero"],
  [
    "quantity.out-of-range",
    "flours[0].amount",
    { ...good, flours: [{ name: "x", amount: "2000 tonne" }] },
    "1000 tonne",
  ],
  ["basis.unreadable", "materials.house.proteinBasis", own({ proteinBasis: "as bought" }), "as is"],
  ["price.unreadable", "materials.house.price", own({ price: "cheap" }), "EUR/kg"],
  ["spec.choice", "materials.house.allergens[0]", own({ allergens: ["weat"] }), "wheat"],
  ["spec.choice", "materials.house.label.rules", own({ label: { protein: "11.4 g" } }), "US, EU, JP"],
  ["spec.choice", "materials.house.label[0].rules", own({ label: [{ protein: "11.4 g" }] }), "US, EU, JP"],
  [
    "spec.unknown-key",
    "materials.house.label.servng",
    own({ label: { protein: "4 g", rules: "US", servng: "30 g" } }),
    "`serving`",
  ],
  ["spec.unknown-key", "materials.house.waterAbsorption", own({ waterAbsorption: "61 %" }), "`farinographAbsorption`"],
  ["spec.unknown-key", "materials.house.wetGluten", own({ wetGluten: "29 %" }), "under `recorded:`"],
  ["spec.unknown-key", "materials.house.protien", own({ protien: "12 %" }), "`protein`"],
];

function own(figures: object): unknown {
  return { ...good, materials: { house: { moisture: "14 %", ...figures } } };
}

describe("readSpec says what is wrong, where, and what would be right", () => {
  it.each(wrong)("%s at %s", (code, place, written, says) => {
    const outcome = readSpec(written);
    if (outcome.ok) throw new Error("was read");
    expect(outcome.problems.map((problem) => [problem.code, pathText(problem.path)])).toEqual([[code, place]]);
    const [problem] = toldOf(outcome);
    expect(`${problem?.expected}; ${problem?.advice}`).toContain(says);
    expect(problem?.kind).toBe("input");
    expect(problem?.found).not.toBe("");
  });

  it("says everything in one go", () => {
    expect(
      codesOf(readSpec({ flours: [{ name: "", amount: "x" }], water: { added: 36 }, salt: "90 %", x: 1 })),
    ).toEqual(
      expect.arrayContaining([
        "spec.missing",
        "spec.size",
        "quantity.unreadable",
        "quantity.out-of-range",
        "spec.unknown-key",
      ]),
    );
  });

  it("shortens a long text that it found", () => {
    const outcome = readSpec({ ...good, salt: "x".repeat(500) });
    expect(toldOf(outcome)[0]?.found.length).toBeLessThan(70);
  });
});

describe("readSpec brings quantities to base units", () => {
  it("and keeps what was written", () => {
    const outcome = readSpec({ ...good, salt: " 10 g ", batch: { dough: "1 lb 4 oz", cookGain: 1.85 } });
    expect(outcome.ok && outcome.value.salt).toEqual({ text: "10 g", dimension: "mass", value: "10", unit: "g" });
    expect(outcome.ok && outcome.value.batch).toMatchObject({ dough: { value: "566.9904625" }, cookGain: "1.85" });
  });
});

describe("readKitchenFile", () => {
  it("reads the kitchen's own materials", () => {
    const outcome = readKitchenFile({ materials: { "house flour": { moisture: "13.8 %" } } });
    expect(outcome.ok && outcome.value.materials["house flour"]?.moisture?.value).toBe("13.8");
  });

  it.each([
    [[], "spec.type"],
    [{ materials: [] }, "spec.type"],
    [{ materials: { house: "flour" } }, "spec.type"],
    [{ materials: { ["x".repeat(81)]: {} } }, "spec.size"],
    [{ materials: {}, flours: [] }, "spec.unknown-key"],
  ])("refuses %j", (written, code) => {
    expect(codesOf(readKitchenFile(written))).toEqual([code]);
  });
});

describe("a cutter", () => {
  const machine = (cutter: object) => ({
    machines: { rolls: { width: "220 mm", sticks: { one: "2 mm" }, cutters: [cutter] } },
  });

  it("with another key for its size is told of once, with the line to write", () => {
    const outcome = readKitchenFile(machine({ width: "2 mm" }));
    expect(toldOf(outcome)).toMatchObject([{ code: "spec.unknown-key", advice: "write `size: 2 mm`" }]);
  });

  it("without a size says what is expected", () => {
    expect(toldOf(readKitchenFile(machine({})))[0]?.expected).toMatch(
      /^a cutter number .*the width of a strand such as 2 mm/u,
    );
    const wide = toldOf(readKitchenFile(machine({ wide: "very" })));
    expect(wide.map(({ code }) => code).sort()).toEqual(["spec.unknown-key"]);
  });
});
