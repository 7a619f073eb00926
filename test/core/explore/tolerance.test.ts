import type { Cause, Output } from "@noodlewright/core/answers";
import { type Figure, graphOf } from "@noodlewright/core/figure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { tolerance } from "#core/explore/tolerance.ts";
import { isSpreadShown, shareBar, trialPicture } from "#core/explore/tolerance-picture.ts";
import { given, worked } from "#core/figure/figure.ts";
import { always } from "../../always.ts";

/** A figure for each cause, by name. */
function inputsFor(causes: readonly Cause[]): Readonly<Record<string, Figure>> {
  const figures = causes.map((cause) => given({ ...cause, label: cause.name, places: 2 }, cause.value, "test"));
  return Object.fromEntries(figures.map((figure) => [figure.id, figure]));
}

function made(id: string, formula: string, from: Readonly<Record<string, Figure>>): Figure {
  const used = Object.entries(from).filter(([name]) => new RegExp(`\\b${name}\\b`, "u").test(formula));
  return worked({ id, label: id, unit: "", places: 2 }, formula, Object.fromEntries(used));
}

/** The tolerance of one formula of its causes. */
function ofFormula(causes: readonly Cause[], formula: string, draws = 100) {
  const graph = graphOf([made("y", formula, inputsFor(causes))]);
  const outputs = [{ id: "y", figure: "y", label: "y" }];
  const [one] = tolerance({ graph, causes, outputs, draws });
  if (one === undefined) throw new Error("no result");
  return one;
}

/** A batch of noodle dough: two flours, tap water, stock solution, losses. */
const causes: readonly Cause[] = [
  { id: "strong", kind: "weighing", name: "strong flour", value: "6000", plusMinus: "5", unit: "g" },
  { id: "soft", kind: "weighing", name: "soft flour", value: "4000", plusMinus: "5", unit: "g" },
  { id: "strongProtein", kind: "protein", name: "strong flour", value: "12.6", plusMinus: "0.3", unit: "%" },
  { id: "softProtein", kind: "protein", name: "soft flour", value: "8.3", plusMinus: "0.3", unit: "%" },
  { id: "moisture", kind: "moisture", name: "the flours", value: "14.2", plusMinus: "0.5", unit: "%" },
  { id: "water", kind: "weighing", name: "tap water", value: "3000", plusMinus: "10", unit: "g" },
  { id: "stock", kind: "weighing", name: "stock solution", value: "500", plusMinus: "1", unit: "g" },
  { id: "strength", kind: "strength", name: "the stock", value: "20", plusMinus: "0.5", unit: "%" },
  { id: "loss", kind: "loss", name: "cutting", value: "2", plusMinus: "1", unit: "%" },
];
const formulas = {
  protein: "(strong * strongProtein + soft * softProtein) / (strong + soft)",
  doughWater:
    "100 * ((strong + soft) * moisture / 100 + water + stock * (1 - strength / 100)) / (strong + soft + water + stock)",
  alkali: "stock * strength / (strong + soft)",
  portion: "(strong + soft + water + stock) * (100 - loss) / 100 / 110",
};
const outputs: readonly Output[] = [
  { id: "protein", figure: "protein", label: "protein" },
  { id: "doughWater", figure: "doughWater", label: "dough water" },
  { id: "alkali", figure: "alkali", label: "alkali" },
  { id: "portion", figure: "portion", label: "portion" },
];
const inputs = inputsFor(causes);
const graph = graphOf(Object.entries(formulas).map(([id, formula]) => made(id, formula, inputs)));

/** The same sums in plain numbers. */
function plainly(output: string, of: Readonly<Record<string, number>>): number {
  const { strong = 0, soft = 0, strongProtein = 0, softProtein = 0, moisture = 0, water = 0 } = of;
  const { stock = 0, strength = 0, loss = 0 } = of;
  const [flour, dough, salts] = [strong + soft, strong + soft + water + stock, (stock * strength) / 100];
  switch (output) {
    case "protein":
      return (strong * strongProtein + soft * softProtein) / flour;
    case "doughWater":
      return (100 * ((flour * moisture) / 100 + water + stock - salts)) / dough;
    case "alkali":
      return (salts * 100) / flour;
    default:
      return (dough * (100 - loss)) / 100 / 110;
  }
}

const results = tolerance({ graph, causes, outputs, seed: 4711 });

describe("tolerance", () => {
  test("the exact range is that of all 512 corners", () => {
    for (const [index, { id }] of outputs.entries()) {
      const corners = Array.from({ length: 2 ** causes.length }, (_, bits) =>
        plainly(
          id,
          Object.fromEntries(
            causes.map((cause, at) => [
              cause.id,
              Number(cause.value) + Number(cause.plusMinus) * ((bits >> at) & 1 ? 1 : -1),
            ]),
          ),
        ),
      );
      expect(Number(results[index]?.figure.range?.low), id).toBeCloseTo(Math.min(...corners), 9);
      expect(Number(results[index]?.figure.range?.high), id).toBeCloseTo(Math.max(...corners), 9);
    }
  });

  test("the simulation lies inside the range, and its spread is that of the slopes within its sampling error", () => {
    for (const { figure, simulated, deviation } of results) {
      expect(Number(simulated.low), figure.label).toBeGreaterThanOrEqual(Number(figure.range?.low));
      expect(Number(simulated.high), figure.label).toBeLessThanOrEqual(Number(figure.range?.high));
      // four standard errors of a deviation from n trials, at most 1 / sqrt(2 n) each for spreads no longer-tailed than normal
      const error = 4 / Math.sqrt(2 * simulated.draws);
      expect(Number(simulated.deviation) / Number(deviation.value), figure.label).toBeGreaterThan(1 - error);
      expect(Number(simulated.deviation) / Number(deviation.value), figure.label).toBeLessThan(1 + error);
      const off = Math.abs(Number(simulated.mean) - Number(figure.value));
      expect(off, figure.label).toBeLessThan((4 * Number(deviation.value)) / Math.sqrt(simulated.draws));
      expect(simulated.classes.reduce((sum, { count }) => sum + count, 0)).toBe(simulated.draws);
    }
  });

  test("the shares add up and name the cause that matters", () => {
    for (const { shares } of results) {
      expect(shares.reduce((sum, { share }) => sum + Number(share.value), 0)).toBeCloseTo(100, 9);
    }
    expect(results.map(({ shares }) => shares[0]?.cause.id)).toEqual(["strongProtein", "moisture", "strength", "loss"]);
  });

  test("by hand: protein errors of 0.6 × 0.3 and 0.4 × 0.3 make 69 and 31 % of each other", () => {
    const [protein] = results;
    const reach = protein?.shares.slice(0, 2).map((share) => Number(share.reach.value));
    expect(reach?.[0]).toBeCloseTo(0.18, 12);
    expect(reach?.[1]).toBeCloseTo(0.12, 12);
  });

  test("affine models: the range is the sum of the reaches, whatever the numbers", () => {
    const small = fc.integer({ min: -50, max: 50 });
    always(100, [fc.array(fc.tuple(small, small, fc.nat(9)), { minLength: 1, maxLength: 5 })], (terms) => {
      const list = terms.map(([, middle, error], index) => {
        const name = `x${index}`;
        return { id: name, kind: "weighing" as const, name, value: `${middle}`, plusMinus: `${error}`, unit: "" };
      });
      const one = ofFormula(
        list,
        terms.map(([slope], index) => `(0 - ${-slope}) * x${index}`.replace("(0 - -", "(0 + ")).join(" + "),
      );
      const reach = terms.reduce((sum, [slope, , error]) => sum + Math.abs(slope) * error, 0);
      expect(Number(one.figure.range?.high) - Number(one.figure.value)).toBe(reach);
      expect(Number(one.figure.value) - Number(one.figure.range?.low)).toBe(reach);
    });
  });

  test("a product around zero: corners where the directions turn are all tried", () => {
    const zero = { kind: "weighing" as const, value: "0", plusMinus: "2", unit: "" };
    const around = ["a", "b"].map((id) => ({ ...zero, id, name: id }));
    const one = ofFormula(around, "a * b");
    expect([one.figure.range?.low, one.figure.range?.high]).toEqual(["-4", "4"]);
  });

  test("the classes are told apart with no more places than that takes, and a spread too small to show is none", () => {
    const spread = (plusMinus: string) =>
      ofFormula([{ id: "a", kind: "weighing", name: "a", value: "12", plusMinus, unit: "" }], "a", 2000);
    const labels = (plusMinus: string) => trialPicture(spread(plusMinus), 30).map(({ label }) => label.split(" to "));
    const placesOf = (plusMinus: string) => labels(plusMinus)[0]?.[0]?.split(".")[1]?.length;
    expect([placesOf("1"), placesOf("0.1"), placesOf("0.01")]).toEqual([2, 2, 3]);
    for (const [from, to] of labels("0.01")) expect(from).not.toBe(to);
    expect([isSpreadShown(spread("0.01")), isSpreadShown(spread("0.004"))]).toEqual([true, false]);
  });

  test("the picture has a bar for each class and each cause", () => {
    const [protein] = results;
    if (protein === undefined) throw new Error("no result");
    const bars = trialPicture(protein, 30).map(({ bar }) => bar.length);
    expect(Math.max(...bars)).toBe(30);
    const [share] = protein.shares;
    expect(share && shareBar(share, 40).length).toBe(Math.round((Number(share?.share.value) * 40) / 100));
  });
});
