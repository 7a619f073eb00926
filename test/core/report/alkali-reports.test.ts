import type { Report } from "@noodlewright/core";
import {
  assayed,
  assayReport,
  bakeDose,
  bakedSalt,
  bakeReport,
  blendStocks as blend,
  convert,
  convertReport,
  correct,
  dilute,
  idealBakeReport,
  idealYield,
  makeUp,
  type Recipe,
  readHydrometer,
  readProduct,
  recipeReport,
  type Swap,
  severalStock,
  splitByEndPoints,
  stockReport,
  strengthOf,
  strengthReport,
} from "@noodlewright/core/chemistry";
import { type Published, shownValue, writtenWorking } from "@noodlewright/core/figure";
import { describe, expect, it } from "vitest";
import { planBatch } from "#core/batch/batch.ts";
import { saltsOfLoad } from "#core/batch/remedy.ts";
import { feedsOf } from "#core/figure/figure.ts";
import { formulaOf } from "#core/formula/formula.ts";
import { knownProducts } from "#core/materials/known-products.ts";
import { dec, decimalText, sum } from "#core/number/decimal.ts";
import { alkaliListReport } from "#core/report/alkali-list-report.ts";
import { batchReport } from "#core/report/batch-report.ts";
import { formulaReport } from "#core/report/formula-report.ts";
import { noteCodesOf } from "../formula/worked-out.ts";
import { answered, toldOf } from "../told-of.ts";
import { linesOf, tablesOf } from "./parts.ts";
import { expectWhole } from "./sound.ts";

const product = (text: string) => answered(readProduct(text, {}, {}, []));
const conditions = { temperature: "20", storage: "20", scale: "145", division: "0.1" } as const;
const twenty = { measure: "mass-percent", value: "20" } as const;
const powder = product("Na2CO3 58.8 %, K2CO3 39.2 %, water rest");
const [soda, potash] = [product("sodium carbonate"), product("potassium carbonate")] as const;
const bottle = product("K2CO3 6, Na2CO3 4 at 24 °Bé");

function swapReport(copy: Copying, swap: Swap, flour?: string): Report {
  const outcome = convert({ ...swap, flour });
  return convertReport({ ...swap, flour }, copy(answered(outcome)), outcome.ok ? outcome.notes : []);
}

it("says of sodium and potassium that their moles are held in sum", () => {
  const report = swapReport((one) => one, { from: { ...potash, mass: 10 }, to: [soda], hold: "cations" });
  expect(linesOf(report)).toContain("Held exactly: the moles of sodium and potassium in sum, not of each.");
});

function solution(recipe: Published<Recipe>): Report {
  return recipeReport(recipe, { command: "alkali make", title: "test" }, []);
}

const spec = {
  name: "harbour noodle",
  flours: [{ name: "bread flour", amount: "100 %" }],
  water: { tap: "34 %" },
  alkali: [
    {
      name: "bottle",
      amount: "3 %",
      figures: { solution: { salts: { K2CO3: 6, Na2CO3: 4 }, strength: "30 °Bé", modulus: 144.3 }, allergens: [] },
      replaceWith: ["sodium carbonate", "potassium carbonate sesquihydrate"],
    },
    { name: "sodium carbonate", amount: "0.2 %", replaceWith: "baking soda", holding: "sodium and potassium" },
  ],
  batch: { dough: "4 kg" },
};
/** An alkaline product of the spec without its replacement. */
function asWritten({ name, amount, figures }: (typeof spec.alkali)[number]) {
  return { name, amount, figures };
}

const { formula, spec: read } = answered(formulaOf(spec));
const batch = answered(planBatch(read, formula));

const baked = answered(bakedSalt({ salt: "NaHCO3", before: 500, after: 330, moisture: 3, assay: "99.5" }));
/** What copies a result: by itself, through JSON, or as a worker is handed it. */
type Copying = <T>(result: T) => T;
const copyings = {
  "through JSON": (result) => JSON.parse(JSON.stringify(result)),
  "to a worker": structuredClone,
} as const satisfies Readonly<Record<string, Copying>>;

const reports: Readonly<Record<string, (copy: Copying) => Report>> = {
  "powder to two salts": (copy) =>
    swapReport(
      copy,
      { from: { ...powder, mass: 45 }, to: [soda, potash], hold: "M", doughWater: 1700, doughSalt: 50 },
      "5000",
    ),
  "a ratio out of reach": (copy) =>
    swapReport(copy, { from: { ...potash, mass: 9 }, to: [soda, product("NaOH")], hold: "M" }),
  "bottle to bicarbonate": (copy) =>
    swapReport(copy, { from: { ...soda, mass: 9 }, to: [product("baking soda")], hold: "cations", doughWater: 360 }),
  make: (copy) =>
    solution(
      copy(
        answered(
          makeUp({
            products: [
              { ...potash, parts: 6 },
              { ...soda, parts: 4 },
            ],
            ratioBy: "anhydrous",
            target: twenty,
            amount: { millilitres: 2000 },
            ...conditions,
          }),
        ),
      ),
    ),
  dilute: (copy) =>
    solution(
      copy(answered(dilute({ stock: { ...bottle, mass: 500 }, target: { ...twenty, value: "8" }, ...conditions }))),
    ),
  blend: (copy) => {
    const stocks = [product("Na2CO3 15 %, water rest"), product("K2CO3 40 %, water rest")] as const;
    return solution(
      copy(
        answered(
          blend({
            stocks,
            target: { ...twenty, value: "15" },
            potassiumShare: 60,
            amount: { grams: 1000 },
            ...conditions,
            division: "1",
          }),
        ),
      ),
    );
  },
  correct: (copy) =>
    solution(
      copy(
        answered(
          correct({
            batch: { ...product("Na2CO3 9 %, water rest"), mass: 4200 },
            target: { ...twenty, value: "12" },
            salts: soda,
            ...conditions,
          }),
        ),
      ),
    ),
  stock: (copy) => {
    const products = saltsOfLoad(batch);
    const wish = { scales: [{ division: "1" }], tolerance: "1", loads: 10, ...conditions };
    return stockReport(copy(answered(severalStock({ ...wish, products }))), {}, []);
  },
  strength: (copy) => {
    const salts = product("K2CO3 6, Na2CO3 4").composition;
    const reading = answered(readHydrometer(salts, { measure: "degrees-baume", scale: "145", value: "20" }, "0.2"));
    const { composition, massPercent } = copy(reading);
    const strength = copy(answered(strengthOf(composition, "20", "145")));
    return strengthReport({ name: "bottle", composition, strength, reading: massPercent }, []);
  },
  bake: (copy) => bakeReport(copy(baked), [], copy(answered(bakeDose(baked, { ...soda, mass: 40 })))),
  "bake, ideal": (copy) => idealBakeReport("KHCO3", copy(idealYield("KHCO3"))),
  certificate: (copy) =>
    assayReport(copy(answered(assayed({ as: "Na2O", percent: "57" }, soda.composition, "0.6"))), []),
  titration: (copy) =>
    assayReport(
      copy(
        answered(
          splitByEndPoints({
            phenolphthalein: 17,
            total: "37.4",
            normality: 1,
            sample: "2.4",
            potassium: 10,
            water: "0.5",
          }),
        ),
      ),
      [],
    ),
  list: () => alkaliListReport(knownProducts(""), ""),
  "formula with a swap": () => formulaReport(formula, { notes: [] }),
  "batch with a swap": () => batchReport(formula, batch, { notes: [] }),
};

describe.each(Object.entries(reports))("%s", (_, build) => {
  const report = build((result) => result);

  it("is whole", () => {
    expectWhole(report);
  });

  it.each(Object.entries(copyings))("is the same of a result that was copied %s", (_, copy) => {
    expect(build(copy)).toStrictEqual(report);
  });

  it("means one number by one id: the working shows the numbers of the figures it names", () => {
    const worked = Object.values(report.figures).filter(({ working }) => working.kind === "formula");
    const astray = worked.flatMap((figure) => {
      const shown = writtenWorking(figure, report.figures)?.numbers.match(/\d+(?:\.\d+)?/gu) ?? [];
      const used = (text: string) =>
        shown.some((number) => dec(number).minus(dec(text).abs()).abs().lte(dec(number).times("1e-6")));
      return feedsOf(figure)
        .filter((from) => !used(report.figures[from]?.value ?? ""))
        .map((from) => `${figure.id}: ${from}`);
    });
    expect(astray).toEqual([]);
  });

  it("adds up the masses of a recipe", () => {
    for (const table of tablesOf(report).filter(({ id }) => id === "weigh")) {
      const masses = (role: string) =>
        table.rows.filter((row) => row.role === role).map((row) => dec((row.cells[1]?.text ?? "").replaceAll(" ", "")));
      if (masses("total").length > 0) expect(sum(masses("item")).toString()).toBe(sum(masses("total")).toString());
    }
  });
});

/** The texts of a section that is one table or a list of figures. */
const shownIn = (report: Report, id: string): readonly string[] =>
  report.sections
    .filter((one) => one.id === id)
    .flatMap(({ blocks }) => blocks)
    .flatMap((block) => {
      if (block.kind === "table") return block.rows.flatMap(({ cells }) => cells.slice(1).map(({ text }) => text));
      return block.kind === "figures" ? block.figures.map((figure) => `${shownValue(figure)} ${figure.unit}`) : [];
    });

describe("ounces", () => {
  // 1 oz = 28.349523125 g: international yard and pound agreement, 1959
  const ounces = (count: string) => decimalText(dec(count).times("28.349523125"));
  const tenth = { division: ounces("0.1"), divisionUnit: "oz" } as const;

  it("are what a scale of ounces weighs a solution in", () => {
    const recipe = answered(
      makeUp({
        products: [{ ...soda, parts: 1 }],
        ratioBy: "anhydrous",
        target: { ...twenty, value: "10" },
        amount: { grams: ounces("16") },
        ...conditions,
        division: tenth.division,
      }),
    );
    const report = recipeReport(recipe, { command: "alkali make", title: "test", divisionUnit: "oz" }, []);
    expect(shownIn(report, "weigh").slice(0, 3)).toEqual(["1.6", "14.4", "16.0"]);
  });

  it("are what a scale of ounces weighs a stock in, and not a scale of grams", () => {
    const products = [{ ...soda, mass: ounces("0.16") }] as const;
    const load = (scale: { readonly division: string; readonly divisionUnit?: string }) => {
      const wish = { scales: [scale], tolerance: "1", loads: 10, ...conditions };
      const stock = answered(severalStock({ ...wish, products }));
      return shownIn(stockReport(stock, { ...scale, units: "us" }, []), "load")[0];
    };
    // 1 % of 5 oz, and of 50 g, is half a division
    expect(load(tenth)).toBe("5.00 oz");
    expect(load({ division: "1" })).toMatch(/^5\d g$/u);
  });

  it("tell the dose of a baked salt", () => {
    // 40 g is 1.411 oz
    expect(shownIn(bakeReport(baked, [], answered(bakeDose(baked, { ...soda, mass: 40 })), "us"), "dose")[0]).toBe(
      "1.411 oz",
    );
  });
});

describe("a product replaced in a spec", () => {
  const plain = answered(formulaOf({ ...spec, alkali: spec.alkali.map(asWritten) })).formula;

  it("keeps the water of the dough, although the water is stated as poured", () => {
    expect(dec(formula.water.added.value).minus(plain.water.added.value).abs().lt("1e-20")).toBe(true);
    expect(formula.water.tap.value).not.toBe(plain.water.tap.value);
  });

  it("keeps what it was asked to hold", () => {
    const first = { ...spec, alkali: spec.alkali.slice(0, 1) };
    const held = answered(formulaOf(first)).formula.alkali;
    const before = answered(formulaOf({ ...first, alkali: first.alkali.map(asWritten) })).formula.alkali;
    for (const key of ["alkalinityM", "alkalinityP", "anhydrous", "potassiumShare"] as const) {
      expect(Number(held?.[key]?.value)).toBeCloseTo(Number(before?.[key]?.value), 12);
    }
  });

  it("says what is not kept", () => {
    expect(noteCodesOf(formulaOf(spec))).toEqual(
      expect.arrayContaining(["alkali.replaced", "convert.bicarbonate", "convert.not-kept"]),
    );
  });

  it.each([
    [{ amount: "1 %", replaceWith: "sodum carbonate" }, "materials.unknown"],
    [{ amount: "1 %", replaceWith: "bread flour" }, "alkali.no-composition"],
    [{ amount: "1 %", replaceWith: "baking soda", holding: "alkalinity P" }, "convert.cannot-hold"],
    [{ amount: "0 %", replaceWith: "baking soda" }, "convert.dose"],
  ])("refuses %j", (entry, code) => {
    const outcome = formulaOf({ ...spec, alkali: [{ name: "sodium carbonate", ...entry }] });
    expect(toldOf(outcome)).toMatchObject([{ code, path: ["alkali", 0, "replaceWith"] }]);
  });
});
