import type { Report } from "@noodlewright/core";
import type { Card, CardRow } from "@noodlewright/core/answers";
import { fixedText } from "@noodlewright/core/figure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { planBatch } from "#core/batch/batch.ts";
import { type CardWishes, card } from "#core/card/card.ts";
import { groupDigits } from "#core/figure/in-system.ts";
import { formulaOf } from "#core/formula/formula.ts";
import { dec } from "#core/number/decimal.ts";
import { batchReport } from "#core/report/batch-report.ts";
import { planDay } from "#core/sheet/day/day-plan.ts";
import { loadWater } from "#core/sheet/water/dough-water.ts";
import { always } from "../../always.ts";
import { expectSound } from "../report/sound.ts";
import { answered } from "../told-of.ts";

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
  const { spec, formula } = answered(formulaOf(input));
  const batch = answered(planBatch(spec, formula));
  const water = spec.temperature && loadWater(spec, batch);
  const answers = water?.ok ? { water: water.value } : {};
  return {
    made: card(spec, formula, batch, { ...plain, ...answers, ...wishes }),
    report: batchReport(formula, batch, { notes: [] }),
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
    always(60, [random], ({ dough, water, alkali, division, dusting }) => {
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
      const inGrams = (row: CardRow): string =>
        row.unit === "kg" ? groupDigits(dec(row.weight).times(1000).toFixed()) : row.weight;
      const listed = made.weights.rows.filter(({ role }) => role !== "aside").map(inGrams);
      const direct = columnOf(report, "weights", "load");
      const asked = (stocks.length > 0 ? stocks : direct.slice(0, listed.length)).map((text, index) =>
        made.weights.rows[index]?.unit === "kg" ? groupDigits(fixedText(text.replaceAll(" ", ""), 0)) : text,
      );
      expect(listed).toEqual(asked);
      for (const { weight, unit } of made.weights.rows) {
        const value = dec(weight.replaceAll(" ", ""));
        expect(unit === "kg" ? value.gte(10) : value.lt(10_000)).toBe(true);
      }
      const aside = made.weights.rows.filter(({ role }) => role === "aside").map(({ weight }) => weight);
      expect(aside).toEqual(direct.slice(direct.length - aside.length));
      expect(aside.length).toBe(dusting ? 1 : 0);
      expectSound(made);
    });
  });

  test("have a box for every load, or for those asked for", () => {
    always(30, [fc.integer({ min: 5, max: 90 }), fc.uniqueArray(fc.integer({ min: 1, max: 9 }))], (kg, asked) => {
      const { made } = cardOf({ ...spec, batch: { dough: `${kg} kg` } });
      const all = Array.from({ length: made.weights.of }, (_, index) => index + 1);
      expect(made.weights.loads).toEqual(all);
      const loads = asked.filter((load) => load <= made.weights.of);
      const chosen = cardOf({ ...spec, batch: { dough: `${kg} kg` } }, { loads }).made.weights;
      expect(chosen.loads).toEqual(loads.length === 0 ? all : loads);
      expect(chosen.rows).toEqual(made.weights.rows);
    });
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
    expect("withStock" in made || "makeUp" in made).toBe(false);
  });

  test("tell the water temperature, and the ice instead where the tap is too warm", () => {
    const shown = (tap: string): readonly string[] =>
      cardOf({ ...spec, batch, temperature: { ...warm, tap } }).made.bench.flatMap(({ blocks }) =>
        blocks.flatMap((block) =>
          block.kind === "figures" ? block.figures.map(({ id }) => id) : block.kind === "text" ? block.lines : [],
        ),
      );
    const assumed = ["dough.temperature", "room.temperature", "flour.temperature"];
    expect(shown("5 °C")).toEqual(["water.temperature", expect.stringContaining("this temperature too"), ...assumed]);
    expect(shown("25 °C")).toEqual([
      "water.ice-weighed",
      "water.from-tap-weighed",
      expect.stringContaining("Weigh the ice first"),
      expect.stringContaining("as cold as the tap water"),
      ...assumed,
      "tap.temperature",
    ]);
  });

  const coarse = fc.record({
    dough: fc.integer({ min: 1500, max: 30_000 }),
    tap: fc.integer({ min: 22, max: 32 }),
    division: fc.constantFrom("0.1 g", "1 g", "5 g", "0.1 oz", "0.25 oz"),
  });

  test("show ice and tap water in whole divisions that add up to the water of the list, which is named", () => {
    let iced = 0;
    always(60, [coarse], ({ dough, tap, division }) => {
      const { made } = cardOf({
        ...spec,
        batch: { dough: `${dough} g` },
        scales: [{ name: "scale", division }],
        temperature: { ...warm, tap: `${tap} °C` },
      });
      const blocks = made.bench.flatMap(({ blocks }) => blocks);
      const shown = blocks
        .flatMap((block) => (block.kind === "figures" ? block.figures : []))
        .filter(({ id }) => id === "water.ice-weighed" || id === "water.from-tap-weighed");
      const [ice, tapWater] = shown.map((figure) => dec(fixedText(figure.value, figure.places)));
      if (ice === undefined || tapWater === undefined) return;
      iced += 1;
      const [step = "", unit = ""] = division.split(" ");
      expect(shown.map((figure) => figure.unit)).toEqual([unit, unit]);
      expect([ice.mod(step).toString(), tapWater.mod(step).toString()]).toEqual(["0", "0"]);
      const listed = made.weights.rows.find(({ name }) => name === "tap water")?.weight ?? "";
      expect(ice.plus(tapWater).eq(listed.replaceAll(/\s/gu, ""))).toBe(true);
      const lines = blocks.flatMap((block) => (block.kind === "text" ? block.lines : []));
      if (!ice.isZero()) expect(lines[0]).toContain(`up to ${listed} ${unit}.`);
    });
    expect(iced).toBeGreaterThan(10);
  });

  test("say so where the stock solutions leave less water than the ice", () => {
    const { made } = cardOf({
      ...spec,
      batch: { dough: "1 kg" },
      scales: [{ name: "scale", division: "2 g" }],
      temperature: { ...warm, dough: "21 °C", flour: "53 °C", tap: "28 °C" },
    });
    const lines = made.bench.flatMap(({ blocks }) => blocks.flatMap((one) => (one.kind === "text" ? one.lines : [])));
    expect(lines).toEqual([expect.stringMatching(/^The dough needs \d+ g of ice, more than the list has water/u)]);
    expect(made.weights.rows.some(({ scale }) => scale.includes("ice"))).toBe(false);
  });

  test("name the finer scale in the row that needs it, and stocks in the rows that they are weighed in", () => {
    const { made, report } = cardOf({
      ...spec,
      ingredients: [{ name: "whole egg", amount: "3 %" }],
      batch: { dough: "1 kg" },
      scales: [{ name: "scale", division: "1 g" }],
    });
    const scaleOf = (start: string) => made.weights.rows.find(({ name }) => name.startsWith(start))?.scale;
    expect(scaleOf("stock solution of the salts")).toBe("scale; made up first, see below");
    expect(columnOf(report, "remedies", "what")).toContain("weigh whole egg on a scale to");
    // half of 0.1 g is within 1 % of some 20 g of egg, half of 0.5 g is not
    expect(scaleOf("whole egg")).toBe("scale: too coarse, weigh it to 0.1\u00a0g or finer");
    expect(made.weights.rows.some(({ name }) => name === "sodium carbonate")).toBe(false);
  });

  const plan = { serve: "19:30", weigh: "10 min", mix: "15 min", roll: "25 min", cut: "10 min", boil: "20 min" };

  function dayOf(kg: number, more: object = {}) {
    const written = { ...spec, batch: { dough: `${kg} kg` }, plan: { ...plan, ...more } };
    const { spec: read, formula } = answered(formulaOf(written));
    const whole = answered(planBatch(read, formula));
    const day = answered(planDay(read, formula, whole));
    const blocks = card(read, formula, whole, { ...plain, day }).bench.flatMap((one) => one.blocks);
    const tables = blocks.filter((block) => block.kind === "table");
    return {
      lines: blocks.flatMap((block) => (block.kind === "text" ? block.lines : [])),
      stages: tables[0]?.rows.map(({ cells }) => cells[0]?.text) ?? [],
      heads: tables.map(({ columns }) => columns.slice(1).map(({ label }) => label)),
      day,
      tables,
    };
  }

  test("tell a day of one load without a pace or a wait, and one of more with both", () => {
    const one = dayOf(5);
    expect(one.lines).toEqual([]);
    expect(one.stages).toEqual(["weigh", "mix", "roll", "cut", "boil", "done"]);
    const more = dayOf(30);
    expect(more.lines[0]).toContain("The pace is set by rolling and cutting.");
    expect(more.lines[0]).toMatch(/The load that is done first waits [1-9]\d* min for service\.$/u);
    expect(more.stages).toContain("waits, min");
  });

  test("have one column for each load of the day, at most seven beside each other, each time at its load", () => {
    const { heads, tables, day } = dayOf(130);
    expect(heads.flat()).toEqual(day.time.loads.map(({ load }) => `load ${load}`));
    expect(heads.length).toBeGreaterThan(1);
    expect(Math.max(...heads.map((list) => list.length))).toBeLessThanOrEqual(7);
    const rolls = tables.flatMap(({ rows }) => rows.filter(({ cells }) => cells[0]?.text === "roll"));
    expect(rolls.flatMap(({ cells }) => cells.slice(1).map(({ text }) => text))).toEqual(
      day.time.loads.map(({ stages }) => stages.find(({ name }) => name === "roll")?.start.text),
    );
  });

  test("tell a pot in litres, and the eggs and salts as warm as the room", () => {
    const pot = { basket: "1 kg", water: "40 L" };
    expect(dayOf(5, { pot }).lines).toEqual([expect.stringContaining("A pot: 40 L of water.")]);
    const { made } = cardOf({ ...spec, batch, temperature: warm });
    const figures = made.bench.flatMap(({ blocks }) =>
      blocks.flatMap((one) => (one.kind === "figures" ? one.figures : [])),
    );
    expect(figures.map(({ label }) => label)).toContain("eggs, salts and all else: as the room");
  });

  test("name the allergens in words and the cautions for what is in the dough", () => {
    const egg = { ...spec, batch, ingredients: [{ name: "whole egg", amount: "6 %" }] };
    const { made } = cardOf(egg);
    expect(made.allergens[0]).toBe("Contains: wheat, egg.");
    expect(made.cautions.some((text) => text.startsWith("Alkaline salts"))).toBe(true);
    expect(made.cautions.some((text) => text.startsWith("Raw egg"))).toBe(true);
    expect(cardOf({ ...spec, batch }).made.cautions.some((text) => text.startsWith("Raw egg"))).toBe(false);
  });

  test("tell of baked soda what it is taken for, the oven and what to take care of", () => {
    const oven = { ...spec, batch, alkali: [{ name: "baked soda", amount: "1 %" }] };
    const outcome = formulaOf(oven);
    const { made, report } = cardOf(oven, { notes: outcome.ok ? outcome.notes : [] });
    expect(made.notes.join(" ")).toMatch(/as if all bicarbonate had turned to carbonate.*120 to 150 °C/u);
    for (const { cautions } of [made, report]) expect(cautions.join(" ")).toContain("The tray and the powder are hot");
    // A composition that was measured needs no such assumption.
    const measured = { composition: { Na2CO3: "88 %", NaHCO3: "rest" } };
    const known = formulaOf({ ...oven, alkali: [{ name: "baked soda", amount: "1 %", figures: measured }] });
    expect(known.ok && known.notes.map(({ code }) => code)).not.toContain("alkali.product");
  });

  test("caution about the work of the spec, whether or not it could be worked out", () => {
    const dangers = (more: object): readonly string[] =>
      cardOf({ ...spec, batch, ...more }).made.cautions.map((text) => text.split(" ").slice(0, 2).join(" "));
    const sheet = { machine: "rolling pin", thickness: "2 mm", cutter: "2 mm", start: "8 mm" };
    expect(dangers({ sheet })).toEqual(expect.arrayContaining(["Rolls draw", "Cutters pull", "Flour and"]));
    const day = dangers({ plan: { roll: "20 min", cut: "10 min", boil: "20 min" } });
    expect(day).toEqual(expect.arrayContaining(["Rolls draw", "Cutters pull", "Boiling pots", "Raw flour"]));
    expect(dangers({})).not.toContain("Rolls draw");
  });

  test("take the words of the spec line by line", () => {
    expect(cardOf({ ...spec, batch }, { about: " one \n\n two" }).made.about).toEqual(["one", "two"]);
  });
});
