import { isSection } from "../input/put.ts";

// Checks of what was saved or kept. They start with the page, so they are few and small.

/** Whether data from outside is of a type. */
export type Check<T> = (value: unknown) => value is T;
export type Checked<C> = C extends Check<infer T> ? T : never;

type Checks<T> = { readonly [K in keyof T]: Check<T[K]> };

/** A text of so many letters at most. */
export function textOf(most: number): Check<string> {
  return (value): value is string => typeof value === "string" && value.length <= most;
}

/** A text of a pattern. */
export function textLike(pattern: RegExp): Check<string> {
  return (value): value is string => typeof value === "string" && pattern.test(value);
}

/** One of some texts. */
export function oneOf<T extends string>(...all: readonly T[]): Check<T> {
  return (value): value is T => all.some((one) => one === value);
}

/** A whole number within limits. */
export function wholeFrom(least: number, most: number): Check<number> {
  return (value): value is number => Number.isInteger(value) && Number(value) >= least && Number(value) <= most;
}

export function isNumber(value: unknown): value is number {
  return Number.isFinite(value);
}

export function isYesOrNo(value: unknown): value is boolean {
  return typeof value === "boolean";
}

/** What one of two checks lets in. */
export function either<A, B>(one: Check<A>, other: Check<B>): Check<A | B> {
  return (value) => one(value) || other(value);
}

/** A list of so many at most. */
export function listOf<T>(one: Check<T>, most: number): Check<readonly T[]> {
  return (value): value is readonly T[] => Array.isArray(value) && value.length <= most && value.every(one);
}

/** Values by texts that pass a check. */
export function recordOf<T>(key: Check<string>, one: Check<T>): Check<Readonly<Record<string, T>>> {
  return (value): value is Readonly<Record<string, T>> =>
    isSection(value) && Object.entries(value).every(([name, held]) => key(name) && one(held));
}

/** A section with all that is needed, what may be, and nothing else. */
export function shapeOf<T, U = object>(needed: Checks<T>, maybe?: Checks<U>): Check<Readonly<T & Partial<U>>> {
  const must = Object.entries<Check<unknown>>(needed);
  const may = Object.entries<Check<unknown>>(maybe ?? {});
  const all = new Map([...must, ...may]);
  return (value): value is Readonly<T & Partial<U>> =>
    isSection(value) &&
    must.every(([key]) => Object.hasOwn(value, key)) &&
    Object.entries(value).every(([key, held]) => all.get(key)?.(held) === true);
}
