import type { Report } from "@noodlewright/core";
import { type Figure, type Graph, writtenWorking } from "@noodlewright/core/figure";
import { expect } from "vitest";
import { feedsOf } from "#core/figure/figure.ts";
import { dec } from "#core/number/decimal.ts";
import { reportSchema } from "#core/report/schema.ts";
import { evaluateText } from "../figure/evaluate-text.ts";
import { everythingIn, figuresIn } from "./figures-in.ts";
import { tablesOf } from "./parts.ts";

const decimalText = /^-?\d+(\.\d+)?$/u;
/** What binary fractions or a lost last digit leave behind. */
const noise = /\.\d*(?:0{10,}\d{1,4}|9{10,}\d{0,4})$/u;
const lost = /NaN|Infinity|undefined|\[object/u;
const mayBeNegative = /^(?:rounding\.|convert\.water-off$)/u;

/** What is unsound in a result: anything but plain data, decimal text that is none, negative masses, lost digits. */
function complaintsAbout(result: unknown): readonly string[] {
  const parts = [...everythingIn(result)].flatMap(([key, value]) => {
    const fine =
      typeof value === "string"
        ? !lost.test(value)
        : typeof value === "number"
          ? Number.isFinite(value)
          : value === null || typeof value === "boolean" || typeof value === "object";
    return fine ? [] : [`${key}: ${String(value)}`];
  });
  const figures = figuresIn(result).flatMap(({ id, value, unit }) => {
    const negative = unit === "g" && value.startsWith("-") && !mayBeNegative.test(id);
    return decimalText.test(value) && !noise.test(value) && !negative ? [] : [`${id}: ${value} ${unit}`];
  });
  return [...parts, ...figures];
}

/** Fails unless a result is sound and survives JSON. */
export function expectSound(result: unknown): void {
  expect(complaintsAbout(result)).toEqual([]);
  expect(JSON.parse(JSON.stringify(result))).toEqual(result);
}

/** What a printed working gives with the numbers it shows; a step to whole numbers may turn on digits not shown. */
function workedAgain(numbers: string): { readonly value: ReturnType<typeof dec>; readonly slack: string } {
  const whole = /^(?:ceil|floor)\(/u;
  return whole.test(numbers)
    ? { value: evaluateText(numbers.replace(whole, "(")), slack: "1.0001" }
    : { value: evaluateText(numbers), slack: "0" };
}

/** Fails unless a printed working, worked out with the numbers it shows, gives the figure to the digits it shows. */
export function expectWorkingHolds(figure: Figure, graph?: Graph): void {
  const written = writtenWorking(figure, graph);
  if (written === undefined) return;
  const { value, slack } = workedAgain(written.numbers);
  const allowed = dec(10).pow(-figure.places).times("0.51").plus(slack);
  const holds = value.minus(figure.value).abs().lte(allowed);
  expect(holds ? "" : `${figure.id}: ${written.numbers} is not ${figure.value}`).toBe("");
}

/** Fails where one id stands for two figures. */
export function expectOneFigureAnId(figures: readonly Figure[]): void {
  const texts = new Map<string, string>();
  const twice = figures.filter((figure) => {
    const text = JSON.stringify(figure);
    const known = texts.get(figure.id);
    texts.set(figure.id, known ?? text);
    return known !== undefined && known !== text;
  });
  expect(twice.map(({ id }) => id)).toEqual([]);
}

/** The total of a table whose weights have their own figures. */
const unkept = "load.total-with-stocks";

/**
 * Fails unless a report is of the published form, with sections that say something, tables whose rows are as wide as their
 * columns, cells that show what stands behind them, every figure that it or a working names, and workings that hold.
 */
export function expectWhole(report: Report): void {
  expect(reportSchema.parse(report)).toEqual(report);
  expectSound(report);
  expect(report.sections.filter(({ heading, blocks }) => heading === "" || blocks.length === 0)).toEqual([]);
  const tables = tablesOf(report);
  for (const ids of [report.sections.map(({ id }) => id), tables.map(({ id }) => id)])
    expect([...new Set(ids)]).toEqual(ids);
  if (tables.length > 0) expect(tables.map(({ id }) => id)).toContain(report.main);
  for (const { columns, rows } of tables) {
    expect(rows.length).toBeGreaterThan(0);
    for (const { cells } of rows) expect(cells).toHaveLength(columns.length);
    for (const { figure = "", value, unit } of rows.flatMap(({ cells }) => cells)) {
      const behind = report.figures[figure];
      if (behind !== undefined && behind.unit === unit) expect(value, figure).toBe(behind.value);
    }
  }
  const named = [...everythingIn(report)].flatMap(([key, value]) => (key === "figure" ? [value] : []));
  const rests = Object.values(report.figures).flatMap((figure) => feedsOf(figure));
  const shown = figuresIn(report.sections).map(({ id }) => id);
  const kept = new Set(Object.values(report.figures).map(({ id }) => id)).add(unkept);
  expect([...named, ...rests, ...shown].filter((id) => !kept.has(String(id)))).toEqual([]);
  for (const figure of Object.values(report.figures)) expectWorkingHolds(figure, report.figures);
}
