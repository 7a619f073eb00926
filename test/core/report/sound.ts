import { type Figure, type Graph, writtenWorking } from "@noodlewright/core/figure";
import { expect } from "vitest";
import { dec } from "#core/number/decimal.ts";
import { evaluateText } from "../figure/evaluate-text.ts";
import { everythingIn, figuresIn } from "./figures-in.ts";

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
