import { dec, roundToDivision } from "../../number/decimal.ts";
import type { WorkbookCell } from "./cells.ts";
import { literal, stepsOf } from "./formulas.ts";

/** A formula and what it comes to: a truth to 1 or 0, what no number tells to no end. */
export interface Worked {
  readonly text: string;
  readonly value: number;
}

type Part = Worked | number;

const signs = {
  "+": (a: number, b: number) => a + b,
  "-": (a: number, b: number) => a - b,
  "*": (a: number, b: number) => a * b,
  "/": (a: number, b: number) => a / b,
  "=": (a: number, b: number) => Number(a === b),
  "<": (a: number, b: number) => Number(a < b),
  ">": (a: number, b: number) => Number(a > b),
  "<=": (a: number, b: number) => Number(a <= b),
  ">=": (a: number, b: number) => Number(a >= b),
} as const;

/** What no number tells: an empty text, which counts for more than every number. */
export const never: Worked = { text: '""', value: Number.POSITIVE_INFINITY };

export function partOf(part: Part): Worked {
  return typeof part === "number" ? { text: literal(part), value: part } : part;
}

export function calc(left: Part, sign: keyof typeof signs, right: Part): Worked {
  const [a, b] = [partOf(left), partOf(right)];
  return { text: `(${a.text}${sign}${b.text})`, value: signs[sign](a.value, b.value) };
}

export function when(test: Worked, then: Part, otherwise: Part): Worked {
  const [a, b] = [partOf(then), partOf(otherwise)];
  return { text: `IF(${test.text},${a.text},${b.text})`, value: (test.value === 1 ? a : b).value };
}

export function every(...tests: readonly Worked[]): Worked {
  return { text: `AND(${tests.map(({ text }) => text).join(",")})`, value: Math.min(...tests.map(numberOf)) };
}

export function some(tests: readonly Worked[]): Worked {
  return { text: `OR(${tests.map(({ text }) => text).join(",")})`, value: Math.max(...tests.map(numberOf)) };
}

export function size(of: Worked): Worked {
  return { text: `ABS(${of.text})`, value: Math.abs(of.value) };
}

export function rounded({ text, value }: Worked, places: number): Worked {
  return { text: `ROUND(${text},${places})`, value: roundedTo(value, places) };
}

/** As `stepsOf`. */
export function stepsIn(value: Worked, step: Worked): Worked {
  return { text: stepsOf(value.text, step.text), value: roundedTo(roundedTo(value.value / step.value, 9), 0) };
}

function roundedTo(value: number, places: number): number {
  return Number.isFinite(value) ? roundToDivision(dec(value), dec(10).pow(-places)).toNumber() : value;
}

/** Cells beside or below each other. */
export type Cells = readonly Worked[];

function range(cells: Cells): string {
  return `${cells[0]?.text}:${cells.at(-1)?.text}`;
}

export function total(cells: Cells): Worked {
  return { text: `SUM(${range(cells)})`, value: cells.map(numberOf).reduce((sum, one) => sum + one, 0) };
}

export function greatest(cells: Cells): Worked {
  return { text: `MAX(${range(cells)})`, value: Math.max(...cells.map(numberOf)) };
}

/** The total of those with a 1 in another column. */
export function totalWhere(chosen: Cells, cells: Cells): Worked {
  const kept = cells.filter((_, index) => chosen[index]?.value === 1);
  return { text: `SUMIF(${range(chosen)},1,${range(cells)})`, value: total(kept).value };
}

/** The smallest number but for so many, where there is one. */
export function smallest(cells: Cells, place: Worked): Worked {
  const inOrder = cells.map(numberOf).toSorted((a, b) => a - b);
  const text = `IF(${place.text}>COUNT(${range(cells)}),"",SMALL(${range(cells)},${place.text}))`;
  return { text, value: inOrder[place.value - 1] ?? never.value };
}

function numberOf({ value }: Worked): number {
  return value;
}

export function cellOf({ text, value }: Worked): WorkbookCell {
  return { role: "number", formula: text, value: Number.isFinite(value) ? value + 0 : "" };
}
