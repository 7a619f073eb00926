import type { Report } from "@noodlewright/core";
import { onlyFigure, weightCell, withWorking } from "@noodlewright/core/render";
import { jsonSchema, schemaNames } from "@noodlewright/core/spec";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planBatch } from "#core/batch/batch.ts";
import { given } from "#core/figure/figure.ts";
import { groupDigits, inSystem, inUnit } from "#core/figure/in-system.ts";
import { formulaOf } from "#core/formula/formula.ts";
import { catalogue, searchMaterials } from "#core/materials/catalogue.ts";
import { dec } from "#core/number/decimal.ts";
import { batchReport } from "#core/report/batch-report.ts";
import { formulaCautions } from "#core/report/cautions.ts";
import { formulaReport } from "#core/report/formula-report.ts";
import { materialsReport } from "#core/report/materials-report.ts";
import { always } from "../../always.ts";
import { formulas, kitchens } from "../formula/random-spec.ts";
import type { Written } from "../formula/worked-out.ts";
import { listed } from "../formula/worked-out.ts";
import { everythingIn } from "./figures-in.ts";
import { cellsOf, linesOf } from "./parts.ts";
import { expectWhole } from "./sound.ts";

const rich: Written = {
  flours: listed({ "bread flour": "80 %", "whole wheat flour": "rest" }),
  water: { added: "37 %", onFlourMoisture: "14 %" },
  alkali: [{ name: "sodium carbonate", amount: "0.9 %" }],
  salt: "1 %",
  ingredients: [{ name: "whole egg", amount: "5 %" }],
  dusting: { name: "cornstarch", amount: "2 %" },
  batch: { bowls: 40, rawWeight: "130 g" },
  mixer: { largest: "3 kg" },
  losses: { sheeting: "3 %" },
};
const poor: Written = {
  flours: [{ name: "own", amount: "100 %", figures: { moisture: "14 %" } }],
  water: { tap: "35 %" },
  batch: { flour: "1 kg" },
};

function reportsOf(written: Written, units: "metric" | "us" = "metric"): readonly Report[] {
  const outcome = formulaOf({ name: "test", ...written });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  const { spec, formula } = outcome.value;
  const batch = planBatch(spec, formula, units === "us");
  if (!batch.ok) throw new Error(JSON.stringify(batch.problems));
  return [
    formulaReport(formula, { notes: outcome.notes }),
    batchReport(formula, batch.value, { notes: batch.notes, units }),
  ];
}

describe("reports", () => {
  it.each([
    ["a rich formula", rich],
    ["a poor formula", poor],
  ])("of %s are whole, and name no figure that they do not keep", (_, written) => {
    for (const report of reportsOf(written)) expectWhole(report);
  });

  it("leave out the sections that have nothing to say", () => {
    const [formula, batch] = reportsOf(poor);
    expect(formula?.sections.map(({ id }) => id)).not.toContain("alkali");
    expect(batch?.sections.map(({ id }) => id)).not.toContain("remedies");
    const [richFormula, richBatch] = reportsOf(rich);
    expect(richFormula?.sections.map(({ id }) => id)).toContain("alkali");
    expect(richBatch?.sections.map(({ id }) => id)).toContain("remedies");
  });

  it.each(["metric", "us"] as const)("tell in %s units what is too little as its scale shows it", (units) => {
    const [, batch] = reportsOf(
      {
        flours: [{ name: "bread flour", amount: "16 oz" }],
        water: { tap: "6 oz" },
        alkali: [{ name: "sodium carbonate", amount: "0.16 oz" }],
        salt: "0.16 oz",
        batch: { flour: "16 oz" },
        scales: [{ name: "kitchen scale", division: "0.1 oz" }],
      },
      units,
    );
    const amounts = batch?.sections
      .find(({ id }) => id === "remedies")
      ?.blocks.flatMap((block) => (block.kind === "table" ? block.rows.map(({ cells }) => cells[1]?.text) : []));
    // half of 0.1 oz is 1 % of 5 oz, the dose; 32 loads of 0.16 oz are 5.12 oz of each salt, and 160 oz of stock;
    // 1 % of 0.16 oz is half of 0.0032 oz
    expect(amounts).toEqual(["0.001 oz", "6.38 % by mass", "5.1 oz", "5.1 oz", "149.8 oz", "5.0 oz", "32"]);
  });

  it("of anything are whole", () => {
    always(15, [formulas, kitchens], (written, kitchen) => {
      for (const report of reportsOf({ ...written, ...kitchen })) expectWhole(report);
    });
  });

  it("print clean numbers", () => {
    always(15, [formulas, kitchens, fc.constantFrom("metric" as const, "us" as const)], (written, kitchen, units) => {
      const numbers = reportsOf({ ...written, ...kitchen }, units)
        .flatMap(cellsOf)
        .filter(({ value }) => value !== undefined);
      const odd = numbers.filter(({ text }) => !/^−?\d{1,3}(?: ?\d{3})*(?:\.\d{1,6})?(?: \D.*)?$/u.test(text));
      expect(odd).toEqual([]);
    });
  });

  it("warn of flours and eggs that bring salt of their own, and of no other row of the tables", () => {
    const warned = catalogue()
      .filter(({ kind }) => kind === "flour" || kind === "egg")
      .filter(({ name }) => {
        const written = { name: "test", flours: [{ name, amount: "100 %" }], water: { tap: "30 %" } };
        const outcome = formulaOf(written);
        return outcome.ok && formulaCautions(outcome.value.formula).some((text) => text.includes("mg of sodium"));
      });
    // USDA SR28: self-rising flour has 1193 mg of sodium in 100 g, soy protein isolate 1005 mg, salted yolk 3487 mg
    expect(warned.map(({ key }) => key)).toEqual(["usda 20082", "usda 16122", "usda 01160"]);
  });

  it("warn of an alkali whose hazard class is not known, and do not pass it over", () => {
    const cautionsWith = (composition: object): readonly string[] => {
      const alkali = [{ name: "phosphate", amount: "0.5 %", figures: { composition } }];
      const flours = [{ name: "bread flour", amount: "100 %" }];
      const outcome = formulaOf({ name: "test", flours, water: { tap: "30 %" }, alkali });
      return outcome.ok ? formulaCautions(outcome.value.formula).filter((text) => text.includes("not known")) : [];
    };
    expect(cautionsWith({ Na2HPO4: "100 %" })).toEqual([
      "The hazard class of disodium hydrogen phosphate is not known here: see the safety data sheet.",
    ]);
    expect(cautionsWith({ Na3PO4: "100 %" })).toEqual([]);
  });

  it("tell the allergens, and cautions for what is in the dough", () => {
    const [formula] = reportsOf(rich);
    expect(formula && linesOf(formula, "allergens").join()).toContain("wheat, egg");
    expect(formula?.cautions.join(" ")).toMatch(/safety data sheet.*Salmonella.*raw dough/u);
    expect(reportsOf(poor)[0]?.cautions.join(" ")).not.toMatch(/Salmonella|Alkaline/u);
  });

  it("say every note once", () => {
    for (const report of reportsOf(rich)) {
      expect(new Set(report.notes.map(({ text }) => text)).size).toBe(report.notes.length);
    }
  });
});

describe("working", () => {
  it("comes at the end, with every figure", () => {
    for (const report of reportsOf(rich)) {
      const section = withWorking(report).sections.at(-1);
      expect(section?.id).toBe("working");
      const [block] = section?.blocks ?? [];
      expect(block?.kind === "working" && block.figures).toEqual(Object.values(report.figures));
    }
    const empty = materialsReport(searchMaterials("bread flour"), "bread flour");
    expect(withWorking(empty)).toBe(empty);
  });

  it("of one figure brings all it rests on and no more", () => {
    const [report] = reportsOf(rich);
    if (report === undefined) throw new Error("no report");
    const only = onlyFigure(report, "water.tap");
    expect(Object.keys(only?.figures ?? {})).toEqual(expect.arrayContaining(["water.tap", "water.carried"]));
    expect(Object.keys(only?.figures ?? {})).not.toContain("blend.ash.dry");
    expect(onlyFigure(report, "water.fall")).toBeUndefined();
  });

  it("says first which units it is in where the answer is in US units", () => {
    const [report] = reportsOf(rich);
    if (report === undefined) throw new Error("no report");
    for (const told of [withWorking(report, "us"), onlyFigure(report, "water.tap", "us")])
      expect(told?.sections.at(-1)?.blocks.map(({ kind }) => kind)).toEqual(["text", "working"]);
  });
});

describe("materials", () => {
  it("are told in whole reports, one or all", () => {
    for (const words of ["", "bread flour", "sodium"]) expectWhole(materialsReport(searchMaterials(words), words));
  });
});

describe("JSON Schema", () => {
  it.each(schemaNames.map((name) => [name]))("of %s is draft 7, with its parts defined", (name) => {
    const schema = jsonSchema(name);
    expect(schema).toMatchObject({ $schema: expect.stringContaining("draft-07") });
    const references = [...everythingIn(schema)].flatMap(([key, value]) => (key === "$ref" ? [String(value)] : []));
    const defined = Object.keys("definitions" in schema ? (schema.definitions as object) : {});
    expect(references.filter((one) => !defined.includes(one.replace("#/definitions/", "")))).toEqual([]);
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
  });
});

describe("numbers as printed", () => {
  it.each([
    ["1234", "1234"],
    ["12345", "12 345"],
    ["-12345.678", "−12 345.678"],
    ["1234567", "1 234 567"],
    ["0.5", "0.5"],
    ["-0.5", "−0.5"],
  ])("%s as %s", (text, printed) => {
    expect(groupDigits(text)).toBe(printed);
  });

  const mass = (value: string) => given({ id: "m", label: "mass", unit: "g", places: 1 }, value, "test");

  it("in other units stay exact", () => {
    expect(inUnit(mass("453.59237"), "lb")).toMatchObject({ value: "1", unit: "lb" });
    expect(inUnit(mass("453.59237"), "mm")).toMatchObject({ value: "453.59237", unit: "g" });
    expect(inSystem(mass("453.59237"), "us")).toMatchObject({ value: "1", unit: "lb", places: 3 });
    expect(inSystem(mass("28.349523125"), "us")).toMatchObject({ value: "1", unit: "oz", places: 2 });
    expect(inSystem({ ...mass("100"), unit: "°C" }, "us")).toMatchObject({ value: "212", unit: "°F" });
    expect(inSystem({ ...mass("25.4"), unit: "mm" }, "us")).toMatchObject({ value: "1", unit: "in" });
    expect(inSystem(mass("5"), "metric")).toEqual(mass("5"));
  });

  it("show weights to the division of the scale", () => {
    const tenth = dec("28.349523125").div(10).toString();
    expect(weightCell(mass("2834.9523125"), "oz", tenth).text).toBe("100.0");
    expect(weightCell(mass("12345"), "g", "5").text).toBe("12 345");
    expect(weightCell(mass("12.5"), "g", "0.5").text).toBe("12.5");
    expect(weightCell(mass("961"), "oz", "1").text).toBe("33.898");
    expect(() => Reflect.apply(weightCell, undefined, [mass("961"), "stone", "1"])).toThrow(RangeError);
  });
});
