import type { BatchTolerance } from "@noodlewright/core/answers";
import { describe, expect, test } from "vitest";
import { planBatch } from "#core/batch/batch.ts";
import { batchTolerance } from "#core/explore/spec-tolerance.ts";
import { toleranceReport } from "#core/report/tolerance-report.ts";
import { type Written, workedOut } from "../formula/worked-out.ts";
import { answered } from "../told-of.ts";

const certificate = { protein: "12.0 %", moisture: "14.2 %", ash: "0.5 %", nitrogenFactor: 5.7 };
const noodle: Written = {
  flours: [{ name: "house flour", amount: "100 %", figures: certificate }],
  water: { added: "36 %" },
  alkali: [{ name: "sodium carbonate", amount: "1 %" }],
  batch: { bowls: 20, rawWeight: "110 g" },
  losses: { sheeting: "4 %" },
  scales: [{ name: "fine scale", division: "0.001 g" }],
};

function tolerated(written: Written): BatchTolerance {
  const { spec, formula } = workedOut(written);
  return batchTolerance(spec, formula, answered(planBatch(spec, formula)), { draws: 100 });
}

function causeOf({ causes }: BatchTolerance, id: string) {
  const cause = causes.find((one) => one.id === id || one.id === `${id}-stated`);
  return cause && { plusMinus: Number(cause.plusMinus), assumed: cause.assumed };
}

function withFlour(flour: Written["flours"][number]): BatchTolerance {
  return tolerated({ ...noodle, flours: [flour] });
}

describe("errors that nobody stated", () => {
  test("are assumed from the last digit that was written, and marked", () => {
    const one = tolerated(noodle);
    // 12.0 and 14.2: half a tenth
    expect(causeOf(one, "flour.1.moisture")?.plusMinus).toBe(0.05);
    expect(causeOf(one, "flour.1.protein")?.plusMinus).toBeCloseTo(0.05, 12);
    expect(causeOf(one, "loss.sheeting")?.plusMinus).toBe(0.5);
    for (const id of ["flour.1.moisture", "flour.1.protein", "loss.sheeting"]) {
      expect(causeOf(one, id)?.assumed, id).toContain("last digit");
    }
    expect(one.exact).toEqual(["strength of sodium carbonate"]);
    const gluten = [
      { name: "bread flour", amount: "90 %" },
      { name: "vital wheat gluten", amount: "10 %" },
    ];
    expect(tolerated({ ...noodle, flours: gluten }).exact.slice(0, 3)).toEqual(
      ["moisture", "protein", "nitrogen factor"].map((what) => `${what} of vital wheat gluten`),
    );
  });

  test("are those of the table's samples for a flour of the catalogue", () => {
    const one = withFlour({ name: "bread flour", amount: "100 %" });
    // USDA SR28, 20083: 67 and 65 samples, standard errors 0.104 and 0.095; an even spread is √3 deviations wide
    expect(causeOf(one, "flour.1.moisture")?.plusMinus).toBeCloseTo(Math.sqrt(3 * 67) * 0.104, 9);
    expect(causeOf(one, "flour.1.protein")?.plusMinus).toBeCloseTo(Math.sqrt(3 * 65) * 0.095, 9);
  });

  test("are those between the least and the greatest sample where the table tells them", () => {
    const one = withFlour({ name: "whole wheat flour", amount: "100 %" });
    // USDA SR28, 20080: 9.19 to 12.47 % moisture, 10.84 to 14.40 % protein
    expect(causeOf(one, "flour.1.moisture")?.plusMinus).toBeCloseTo(1.64, 9);
    expect(causeOf(one, "flour.1.protein")?.plusMinus).toBeCloseTo(1.78, 9);
  });

  test("are those of an assumed moisture, marked as such", () => {
    const label = { label: { protein: "3 g", serving: "30 g", rules: "US" } } as const;
    const one = withFlour({ name: "shop flour", amount: "100 %", figures: { kind: "flour", ...label } });
    expect(causeOf(one, "flour.1.moisture")).toMatchObject({ plusMinus: 1.5 });
    expect(causeOf(one, "flour.1.moisture")?.assumed).toContain("nobody states it");
  });

  test("give way to those that are stated", () => {
    const stated = { ...certificate, moistureUncertainty: "0.2 %", proteinUncertainty: "0.3 %" };
    const one = withFlour({ name: "house flour", amount: "100 %", figures: stated });
    for (const id of ["flour.1.moisture", "flour.1.protein"]) expect(causeOf(one, id)?.assumed).toBeUndefined();
    expect(causeOf(one, "flour.1.moisture")?.plusMinus).toBeCloseTo(0.2, 12);
  });

  test("have bars of their own and words of their own, whatever the flours are called", () => {
    const flour = (amount: string, more: object = {}) => ({
      name: "weighing of rye (error assumed) flour",
      amount,
      figures: { ...certificate, ...more },
    });
    const flours = [flour("80 %", { proteinUncertainty: "1 %", moistureUncertainty: "0.1 %" }), flour("20 %")];
    const written = { ...noodle, flours };
    const report = toleranceReport(workedOut(written).formula, tolerated(written), { notes: [] });
    const causes = report.sections.find(({ id }) => id === "protein-causes")?.blocks[0];
    if (causes?.kind !== "table") throw new Error("no table");
    const protein = causes.rows
      .map(({ cells }) => cells.map(({ text }) => text))
      .filter(([cause]) => cause?.startsWith("protein of"));
    const name = "protein of weighing of rye (error assumed) flour at 14 % mb";
    // 0.8 × 1 and 0.2 × 0.05: nearly all of it and nothing that shows, so of the two only the first has a row
    expect(protein.map(([cause]) => cause)).toEqual([name]);
    expect(protein[0]?.[3]?.length).toBe(Math.round((Number(protein[0]?.[1]) * 32) / 100));
    const unstated = report.sections[0]?.blocks[0];
    const cells = unstated?.kind === "table" ? unstated.rows.map((row) => row.cells[0]?.text) : [];
    expect(cells).toContain(name);
  });

  test("stand first in the report", () => {
    const report = toleranceReport(workedOut(noodle).formula, tolerated(noodle), { notes: [] });
    expect(report.sections[0]?.id).toBe("unstated");
    expect(JSON.stringify(report.sections[0])).toContain("strength of sodium carbonate");
  });
});

describe("errors on which nothing rests that is told", () => {
  test.each([
    { dough: "42 kg" },
    { flour: "5 kg" },
    { load: "largest" } as const,
    { have: { name: "house flour", amount: "5 kg" } },
  ])("are left out: losses where no bowls are told, but %j", (batch) => {
    const one = tolerated({ ...noodle, batch, mixer: { largest: "6 kg" } });
    expect(one.causes.map(({ id }) => id)).not.toContain("loss.sheeting");
    expect(one.outputs.map(({ figure }) => figure.id)).toContain("tolerance.dough.water");
  });

  test("are left out: the protein of a flour beside one of which none is known", () => {
    const plain = { kind: "flour", moisture: "14 %" } as const;
    const flours = [
      { name: "house flour", amount: "80 %", figures: certificate },
      { name: "hill flour", amount: "20 %", figures: plain },
    ];
    const one = tolerated({ ...noodle, flours });
    expect(one.causes.map(({ id }) => id).filter((id) => id.includes("protein"))).toEqual([]);
  });
});

describe("a spread of nothing", () => {
  const sure = { ...certificate, moistureUncertainty: "0 %", proteinUncertainty: "0 %" };
  const flours = [
    { name: "house flour", amount: "70 %", figures: sure },
    { name: "other flour", amount: "30 %", figures: sure },
  ];

  test("has no cause: two flours of one protein leave no rounding noise", () => {
    const protein = tolerated({ ...noodle, flours }).outputs.find(({ figure }) => figure.id.includes("protein"));
    expect(protein?.shares.map(({ reach }) => Number(reach.value)).filter((reach) => reach !== 0)).toEqual([]);
  });

  test("is told as none, and not as shares of it", () => {
    const exact: Written = { ...noodle, flours, losses: {} };
    const report = toleranceReport(workedOut(exact).formula, tolerated(exact), { notes: [] });
    const matters = JSON.stringify(report.sections.find(({ id }) => id === "matters"));
    expect(matters).toContain("no error");
    expect(report.sections.map(({ id }) => id)).not.toContain("protein-causes");
  });
});

/**
 * 600 g of flour with 12 % protein as is and 13 % moisture, 400 g with 10 % protein at 14 % moisture and 15 % moisture, 360 g of
 * water, 10 g of sodium carbonate (18.870061 meq/g by 105.988 g/mol): 1370 g, of which sheeting leaves 96 % for 11 bowls.
 */
test("what a load comes to, and what errors do to it, worked out by hand", () => {
  const sure = { moistureUncertainty: "0 %", proteinUncertainty: "0 %", ash: "0.5 %", nitrogenFactor: 5.7 };
  const { outputs } = tolerated({
    flours: [
      {
        name: "first flour",
        amount: "60 %",
        figures: { ...sure, protein: "12 %", proteinBasis: "as is", moisture: "13 %", proteinUncertainty: "0.3 %" },
      },
      {
        name: "second flour",
        amount: "40 %",
        figures: { ...sure, protein: "10 %", proteinBasis: "14 % mb", moisture: "15 %" },
      },
    ],
    water: { added: "36 %" },
    alkali: [{ name: "sodium carbonate", amount: "1 %", figures: { strengthUncertainty: "2 %" } }],
    batch: { flour: "1 kg", rawWeight: "110 g" },
    losses: { sheeting: "4 %", uncertainty: "0.5 %" },
    scales: [{ name: "fine scale", division: "0.001 g", error: "0.000001 g" }],
  });
  // the microgram that the scale is off does not count at four places
  const ends = outputs.map(({ figure: { id, value, range } }) => [
    id,
    ...[value, range?.low, range?.high].map((one) => Number(one).toFixed(4)),
  ]);
  expect(ends).toEqual([
    // 0.6 × 12 + 0.4 × 10 × 85 / 86 = 11.153488 as is at 13.8 % moisture, times 86 / 86.2; 0.6 × 0.3 × 86 / 86.2 = 0.179582
    ["tolerance.blend.protein.14", "11.1276", "10.9480", "11.3072"],
    // (78 + 60 + 360) / 1370
    ["tolerance.dough.water", "36.3504", "36.3504", "36.3504"],
    ["tolerance.alkali.alkalinity-m", "18.8701", "18.4927", "19.2475"],
    // 1370 × 0.96 / 11, and 0.955 and 0.965 in place of 0.96
    ["tolerance.raw-weight", "119.5636", "118.9409", "120.1864"],
  ]);
  // rectangular errors: half the width by √3
  const deviations = outputs.map(({ deviation }) => Number(deviation.value).toFixed(4));
  expect(deviations).toEqual(["0.1037", "0.0000", "0.2179", "0.3595"]);
});
