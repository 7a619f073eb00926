import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { planBatch } from "../../../packages/core/src/batch/batch.ts";
import { formulaOf } from "../../../packages/core/src/formula/formula.ts";
import { batchReport } from "../../../packages/core/src/report/batch-report.ts";
import { type Card, type CardWishes, card } from "../../../packages/core/src/report/card.ts";
import type { Report } from "../../../packages/core/src/report/schema.ts";
import { temperatureReport } from "../../../packages/core/src/report/temperature-report.ts";
import { loadWater } from "../../../packages/core/src/sheet/dough-water.ts";
import { expectSound } from "./sound.ts";

const plain: CardWishes = {
  about: "",
  date: "2026-11-25",
  files: [{ name: "noodle.yaml", checksum: "0123abcd" }],
  said: "",
  loads: [],
  units: "metric",
  notes: [],
};

interface Both {
  readonly made: Card;
  readonly report: Report;
}

function cardOf(input: unknown, wishes: Partial<CardWishes> = {}): Both {
  const outcome = formulaOf(input);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  const { spec, formula } = outcome.value;
  const batch = planBatch(spec, formula);
  if (!batch.ok) throw new Error(JSON.stringify(batch.problems));
  const water = spec.temperature && loadWater(spec, batch.value);
  const answers = water?.ok ? { water: temperatureReport("Water", water.value, []) } : {};
  return {
    made: card(formula, batch.value, { ...plain, ...answers, ...wishes }),
    report: batchReport(formula, batch.value, []),
  };
}

/** Texts of a column of a table of a report. */
function columnOf(report: Report, table: string, column: string): readonly string[] {
  const found = report.sections
    .flatMap(({ blocks }) => blocks)
    .find((block) => block.kind === "table" && block.id === table);
  if (found?.kind !== "table") return [];
  const at = found.columns.findIndex(({ id }) => id === column);
  return found.rows.map(({ cells }) => cells[at]?.text ?? "");
}

const spec = {
  name: "Harbour noodle",
  flours: [{ name: "bread flour", amount: "100 %" }],
  water: { added: "36 %" },
  alkali: [{ name: "sodium carbonate", amount: "1 %" }],
  salt: "1 %",
  dusting: { name: "cornstarch", amount: "2 %" },
  mixer: { largest: "10 kg", of: "flour" },
};

const random = fc.record({
  dough: fc.integer({ min: 400, max: 60_000 }),
  water: fc.integer({ min: 28, max: 45 }),
  alkali: fc.integer({ min: 2, max: 20 }),
  division: fc.constantFrom("0.1 g", "1 g", "2 g", "5 g"),
  dusting: fc.boolean(),
});

describe("weights on the card", () => {
  test("are those of the batch, cell by cell, with and without stock solutions", () => {
    fc.assert(
      fc.property(random, ({ dough, water, alkali, division, dusting }) => {
        const { dusting: starch, ...without } = spec;
        const { made, report } = cardOf({
          ...without,
          ...(dusting && { dusting: starch }),
          water: { added: `${water} %` },
          alkali: [{ name: "sodium carbonate", amount: `${alkali / 10} %` }],
          batch: { dough: `${dough} g` },
          scales: [{ name: "scale", division }],
        });
        const stocks = columnOf(report, "stock-weights", "load");
        const listed = made.weights.rows.filter(({ role }) => role !== "aside").map(({ weight }) => weight);
        const direct = columnOf(report, "weights", "load");
        expect(listed).toEqual(stocks.length > 0 ? stocks : direct.slice(0, listed.length));
        const aside = made.weights.rows.filter(({ role }) => role === "aside").map(({ weight }) => weight);
        expect(aside).toEqual(direct.slice(listed.length));
        expectSound(made);
      }),
      { numRuns: 60 },
    );
  });

  test("have a box for every load, or for those asked for", () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 90 }), fc.uniqueArray(fc.integer({ min: 1, max: 9 })), (kg, asked) => {
        const { made } = cardOf({ ...spec, batch: { dough: `${kg} kg` } });
        const all = Array.from({ length: made.weights.of }, (_, index) => index + 1);
        expect(made.weights.loads).toEqual(all);
        const loads = asked.filter((load) => load <= made.weights.of);
        const chosen = cardOf({ ...spec, batch: { dough: `${kg} kg` } }, { loads }).made.weights;
        expect(chosen.loads).toEqual(loads.length === 0 ? all : loads);
        expect(chosen.rows).toEqual(made.weights.rows);
      }),
      { numRuns: 30 },
    );
  });

  test("that are too little for the scale come with what to make up, its masses those of the batch", () => {
    const { made, report } = cardOf({
      ...spec,
      batch: { dough: "1 kg" },
      scales: [{ name: "scale", division: "1 g" }],
    });
    const texts = made.makeUp?.blocks.flatMap((block) =>
      block.kind === "table" ? block.rows.map(({ cells }) => cells.map(({ text }) => text).join(" | ")) : [],
    );
    expect(texts?.length).toBeGreaterThan(0);
    const scales = made.weights.rows.map(({ scale }) => scale);
    const plainTexts = [...(texts ?? []), ...scales].join("\n").replaceAll("\u00a0", " ");
    const amounts = columnOf(report, "remedies", "amount").filter((text) => text !== "");
    expect(amounts.length).toBeGreaterThan(0);
    for (const amount of amounts) expect(plainTexts).toContain(amount);
  });
});

describe("sections of the card", () => {
  const warm = { dough: "25 °C", flour: "21 °C", room: "22 °C", friction: "8 K" };
  const batch = { dough: "5 kg" };

  test("are left out where the spec says nothing", () => {
    const { made } = cardOf({ ...spec, batch: { dough: "13 kg" } });
    expect([...made.bench, ...made.machine]).toEqual([]);
    expect(made.about).toEqual([]);
    expect(made.notes).toEqual([]);
    expect("withStocks" in made || "makeUp" in made).toBe(false);
  });

  test("tell the water temperature, and the ice instead where the tap is too warm", () => {
    const shown = (tap: string): readonly string[] =>
      cardOf({ ...spec, batch, temperature: { ...warm, tap } }).made.bench.flatMap(({ blocks }) =>
        blocks.flatMap((block) =>
          block.kind === "figures" ? block.figures.map(({ id }) => id) : block.kind === "text" ? block.lines : [],
        ),
      );
    expect(shown("5 °C")).toEqual(["water.temperature", expect.stringContaining("this temperature too")]);
    expect(shown("25 °C")).toEqual([
      "water.ice",
      "water.from-tap",
      expect.stringContaining("Weigh the ice first"),
      expect.stringContaining("as cold as the tap water"),
    ]);
  });

  test("name the allergens in words and the cautions for what is in the dough", () => {
    const egg = { ...spec, batch, ingredients: [{ name: "whole egg", amount: "6 %" }] };
    const { made } = cardOf(egg);
    expect(made.allergens[0]).toBe("Contains: wheat, egg.");
    expect(made.cautions.some((text) => text.startsWith("Alkaline salts"))).toBe(true);
    expect(made.cautions.some((text) => text.startsWith("Raw egg"))).toBe(true);
    expect(cardOf({ ...spec, batch }).made.cautions.some((text) => text.startsWith("Raw egg"))).toBe(false);
  });

  test("take the words of the spec line by line", () => {
    expect(cardOf({ ...spec, batch }, { about: " one \n\n two" }).made.about).toEqual(["one", "two"]);
  });
});
