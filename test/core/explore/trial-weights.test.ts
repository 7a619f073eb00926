import { expect, test } from "vitest";
import { formulaTrial } from "#core/explore/spec-trial.ts";
import { weighTrial } from "#core/explore/trial-weights.ts";
import { feedsOf } from "#core/figure/figure.ts";
import { dec, sum } from "#core/number/decimal.ts";
import { trialReport } from "#core/report/trial-report.ts";
import { workedOut } from "../formula/worked-out.ts";
import { answered } from "../told-of.ts";

const home = (division: string) => {
  const { spec, formula } = workedOut({
    flours: [{ name: "bread flour", amount: "100 %" }],
    water: { tap: "36 %" },
    alkali: [{ name: "sodium carbonate", amount: "1.2 %" }],
    salt: "1 %",
    scales: [{ division }],
  });
  const weighed = answered(weighTrial(spec, formula, answered(formulaTrial(formula, {})), false));
  return { weights: weighed.weights, report: trialReport(formula, weighed, { notes: [] }) };
};

test("the doughs of a trial are weighed on the scales of the spec", () => {
  const { weights } = home("0.01 g");
  expect(weights.remedies.tooLittle).toEqual([]);
  // 200 g of flour, 2 g of water apart
  expect(weights.doughs.map((dough) => dough.map(({ mass }) => mass.value))).toEqual([
    ["200", "70", "2.4", "2"],
    ["200", "72", "2.4", "2"],
    ["200", "74", "2.4", "2"],
  ]);
});

test("what is too little for them comes from one stock for all three doughs", () => {
  const { weights, report } = home("1 g");
  const { stock } = weights.remedies;
  expect(dec(stock?.stock.lasts.value ?? 0).gte(3)).toBe(true);
  expect(weights.doughs.map((dough) => dough.map(({ mass }) => mass.value))).toEqual([
    ["200", "9", "65"],
    ["200", "11", "65"],
    ["200", "13", "65"],
  ]);
  const totals = weights.doughs.map((dough) => sum(dough.map(({ mass }) => dec(mass.value))).toString());
  // 274.4, 276.4 and 278.4 g
  expect(totals).toEqual(["274", "276", "278"]);
  expect(report.sections[0]?.blocks[0]).toMatchObject({
    columns: [{}, ...[1, 2, 3].map((dough) => ({ id: `dough-${dough}`, label: `dough ${dough}, g` }))],
  });
  const known = new Set(Object.keys(report.figures));
  const cells = report.sections.flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.kind === "table" ? block.rows.flatMap((one) => one.cells) : [])),
  );
  const rests = Object.values(report.figures).flatMap((figure) => feedsOf(figure));
  const named = [...cells.flatMap(({ figure }) => (figure === undefined ? [] : [figure])), ...rests];
  expect(named.filter((id) => !known.has(id))).toEqual([]);
});

test("a trial says which scale it takes where the spec names none", () => {
  const flours = [{ name: "bread flour", amount: "100 %" }];
  const notesOf = (more: object, us = false) => {
    const { spec, formula } = workedOut({ flours, water: { tap: "36 %" }, ...more });
    const outcome = weighTrial(spec, formula, answered(formulaTrial(formula, {})), us);
    return outcome.ok ? outcome.notes : [];
  };
  expect(notesOf({})).toEqual([expect.objectContaining({ code: "scales.assumed", facts: { us: false } })]);
  expect(notesOf({}, true)[0]?.facts).toEqual({ us: true });
  expect(notesOf({ scales: [{ division: "1 g" }] })).toEqual([]);
});
