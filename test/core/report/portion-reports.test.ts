import type { Report } from "@noodlewright/core";
import { type Cell, renderCsv, type Table } from "@noodlewright/core/render";
import { describe, expect, it } from "vitest";
import { planBatch } from "#core/batch/batch.ts";
import { costOf } from "#core/batch/cost.ts";
import { nutritionOf } from "#core/batch/nutrition.ts";
import { dec, sum } from "#core/number/decimal.ts";
import { costReport } from "#core/report/cost-report.ts";
import { nutritionReport } from "#core/report/nutrition-report.ts";
import { always } from "../../always.ts";
import { formulas, kitchens } from "../formula/random-spec.ts";
import { type Written, workedOut } from "../formula/worked-out.ts";
import { answered } from "../told-of.ts";
import { figuresIn } from "./figures-in.ts";
import { linesOf, tableOf, textsOf } from "./parts.ts";
import { expectOneFigureAnId, expectWhole as expectSoundReport } from "./sound.ts";

const rich: Written = {
  flours: [
    { name: "bread flour", amount: "80 %" },
    { name: "house flour", amount: "rest", figures: { moisture: "13 %", protein: "11 %" } },
  ],
  water: { added: "37 %" },
  alkali: [{ name: "sodium carbonate", amount: "0.9 %" }],
  salt: "1 %",
  ingredients: [{ name: "whole egg", amount: "5 %" }],
  dusting: { name: "cornstarch", amount: "2 %" },
  batch: { bowls: 40, rawWeight: "130 g" },
  mixer: { largest: "3 kg" },
  prices: { "bread flour": "23 EUR per 25 kg", salt: "0.60 EUR/kg", cornstarch: "1.85 EUR per 1 kg" },
  stock: { "bread flour": "9 kg", cornstarch: "50 g" },
};

function costOfWritten(written: Written): Report {
  const { spec, formula } = workedOut(written);
  const batch = answered(planBatch(spec, formula));
  const cost = costOf(spec, formula, batch);
  return costReport(formula, batch, answered(cost), { notes: cost.ok ? cost.notes : [] });
}

function nutritionOfWritten(written: Written, rules: "US" | "EU" | "JP" = "EU"): Report {
  const { spec, formula } = workedOut(written);
  const nutrition = nutritionOf(spec, formula, { rules });
  return nutritionReport(formula, answered(nutrition), { notes: nutrition.ok ? nutrition.notes : [] });
}

function columnOf(
  { columns, rows }: Table,
  id: string,
): { readonly items: readonly Cell[]; readonly total: Cell | undefined } {
  const index = columns.findIndex((column) => column.id === id);
  const cells = (role: string): readonly Cell[] =>
    rows.flatMap((row) => (row.role === role && row.cells[index] ? [row.cells[index]] : []));
  return { items: cells("item"), total: cells("total")[0] };
}

const shown = (cell: Cell | undefined) =>
  dec(/^[\d ]+(?:\.\d+)?/u.exec(cell?.text ?? "")?.[0].replaceAll(" ", "") || "0");

function expectWhole(report: Report): void {
  expectSoundReport(report);
  expectOneFigureAnId(figuresIn(report));
}

describe("the report of costs", () => {
  it("is whole, its columns add up as printed", () => {
    const report = costOfWritten(rich);
    expectWhole(report);
    const cost = tableOf(report, "cost");
    for (const id of ["batch", "load", "bowl"]) {
      const { items, total } = columnOf(cost, id);
      expect(sum(items.map(shown)).eq(shown(total))).toBe(true);
    }
    const pay = columnOf(tableOf(report, "shopping"), "pay");
    expect(sum(pay.items.map(shown)).eq(shown(pay.total))).toBe(true);
    const bowls = columnOf(tableOf(report, "shares"), "together").items.slice(-2);
    expect(sum(bowls.map(shown)).eq(shown(columnOf(cost, "batch").total))).toBe(true);
  });

  it("says what has no price, what to buy and what runs out first", () => {
    const texts = (id: string) => textsOf(costOfWritten(rich), id);
    expect(
      texts("cost")
        .filter((row) => row[1] === "no price")
        .map(([name]) => name),
    ).toEqual(["house flour", "sodium carbonate", "whole egg"]);
    expect(texts("cost").at(-1)?.[0]).toBe("what is priced of them");
    expect(texts("shopping").at(0)).toEqual(["bread flour", "2968", "9000", "nothing", "0.00", "6032"]);
    expect(texts("stock")[0]).toEqual(["cornstarch", "50", "37", "1.3", "runs out first"]); // 50 g for loads of 37 g are 1.35 loads, and no more than 1.3 of them whole
    expect(renderCsv(costOfWritten(rich), "stock")).toMatchObject({ text: expect.stringMatching(/^[^\r]*,first\r/u) });
  });

  it("is whole for any formula with the salt that has a price, in any kitchen", () => {
    const salted = formulas.filter(({ salt }) => salt !== "0 %"); // without salt, no ingredient has a price, which is refused
    always(10, [salted, kitchens], (written, kitchen) => {
      expectWhole(
        costOfWritten({
          ...written,
          ...kitchen,
          prices: { "table salt": "0.60 EUR/kg" },
          stock: { "table salt": "1 kg" },
        }),
      );
    });
  });
});

describe("the report of nutrition", () => {
  it("is whole, tells what is open as a range and says that it is no label", () => {
    const report = nutritionOfWritten(rich);
    expectWhole(report);
    const { items } = columnOf(tableOf(report, "nutrition"), "raw");
    expect(items.filter(({ text }) => / to /u.test(text))).not.toEqual([]);
    expect(columnOf(tableOf(report, "declared"), "raw-declared").items.some(({ text }) => / to /u.test(text))).toBe(
      true,
    );
    expect(report.cautions.join(" ")).toContain("not a label");
  });

  it("tells allergens apart: contained, up to the supplier, unknown", () => {
    const lines = (written: Written) => linesOf(nutritionOfWritten(written), "allergens").join(" ");
    const text = lines(rich);
    expect(text).toContain("Contains: wheat (cereal containing gluten), in bread flour; eggs, in whole egg.");
    expect(text).toContain("Depends on the supplier, ask for the certificate: barley");
    expect(text).toContain("Not stated, and not to be taken as free of any: house flour.");
    const nothing = lines({
      ...rich,
      flours: [{ name: "house flour", amount: "100 %", figures: { moisture: "13 %" } }],
      ingredients: [],
    });
    expect(nothing).toContain("Contains: not stated.");
  });

  it.each(["US", "EU", "JP"] as const)("is whole for any formula by the rules of %s", (rules) => {
    always(8, [formulas, kitchens], (written, kitchen) => {
      expectWhole(nutritionOfWritten({ ...written, ...kitchen }, rules));
    });
  });
});
