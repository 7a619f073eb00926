import type { Report } from "@noodlewright/core";
import { convert, convertReport, pure } from "@noodlewright/core/chemistry";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planBatch } from "#core/batch/batch.ts";
import { formulaOf } from "#core/formula/formula.ts";
import { knownProducts } from "#core/materials/known-products.ts";
import { alkaliListReport } from "#core/report/alkali-list-report.ts";
import { batchReport } from "#core/report/batch-report.ts";
import { formulaReport } from "#core/report/formula-report.ts";
import { always } from "../../always.ts";
import { answered } from "../told-of.ts";
import { linesOf, tablesOf } from "./parts.ts";

const spec = {
  name: "School noodle",
  flours: [{ name: "bread flour", amount: "100 %" }],
  water: { added: "36 %" },
  alkali: [{ name: "sodium carbonate", amount: "1 %" }],
  salt: "1 %",
};

const labelsOf = ({ sections }: Report): readonly string[] =>
  sections.flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.kind === "figures" ? block.figures.map(({ label }) => label) : [])),
  );
const formulaFor = (flours: readonly object[]): Report =>
  formulaReport(answered(formulaOf({ ...spec, flours })).formula, { notes: [] });

describe("alkalinity M and P", () => {
  const product = (name: "Na2CO3" | "K2CO3") => ({ name, composition: pure(name) });
  const swap = { from: { ...product("Na2CO3"), mass: "10" }, to: [product("K2CO3")], hold: "M" } as const;

  it.each([
    ["formula", () => formulaFor(spec.flours)],
    ["alkali convert", () => convertReport(swap, answered(convert(swap)), [])],
    ["alkali list", () => alkaliListReport(knownProducts("carbonate"), "carbonate")],
  ])("are called so and explained once: %s", (_, report) => {
    const text = JSON.stringify(report());
    expect(text).toContain("alkalinity M");
    expect(text).not.toMatch(/\b[MP] alkalinity/u);
    expect(linesOf(report()).filter((line) => line.includes("to the end of bicarbonate"))).toHaveLength(1);
  });
});

describe("the protein of the other flours", () => {
  const rye = { name: "rye", amount: "rest", figures: { moisture: "9 %", protein: "8 %", glutenForming: false } };
  it("is told where there are such flours, and only there", () => {
    const wanted = "protein of the other flours at 14 % mb";
    expect(labelsOf(formulaFor(spec.flours))).not.toContain(wanted);
    expect(labelsOf(formulaFor([{ name: "bread flour", amount: "80 %" }, rye]))).toContain(wanted);
  });
});

describe("what rounding to the scale does", () => {
  it("shows changes that are what was weighed less what was asked, as shown", () => {
    let compared = 0;
    always(100, [fc.integer({ min: 900, max: 9000 })], (flour) => {
      const { spec: read, formula } = answered(formulaOf({ ...spec, batch: { flour: `${flour} g` } }));
      const report = batchReport(formula, answered(planBatch(read, formula)), { notes: [] });
      const rows = tablesOf(report)
        .filter(({ id }) => id === "rounding")
        .flatMap((table) => table.rows);
      for (const { cells } of rows) {
        const [asked = "", weighed = "", change = ""] = cells.slice(1).map(({ text }) => text.replace("−", "-"));
        const places = change.split(".")[1]?.length ?? 0;
        compared += 1;
        // after three more places the last digit may still be off by one
        if (places < 6) expect((Number(weighed) - Number(asked)).toFixed(places)).toBe(zeroless(change));
        else expect(Math.abs(Number(weighed) - Number(asked) - Number(change))).toBeLessThan(2e-6);
      }
    });
    expect(compared).toBeGreaterThan(100);
  });
});

const zeroless = (text: string): string => (Number(text) === 0 ? text.replace("-", "") : text);
