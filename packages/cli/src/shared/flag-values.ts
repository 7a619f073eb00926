import type { Problem } from "@noodlewright/core";
import type { Override } from "../input/overrides.ts";
import type { PlacedProblem } from "../input/placed-problem.ts";
import type { Asked, Flag } from "./command.ts";

/** A flag that says one value of the spec, or of what a command asks for. */
export interface ValueFlag extends Flag {
  readonly path: readonly string[];
  /** What its text stands for, where that is no text. */
  readonly read?: (text: string) => unknown;
}

/** A group of such flags, by their names: a command lists them among its own. */
export type ValueFlags = Readonly<Record<string, ValueFlag>>;

/** Makes flags of values that stand beside each other, each from its key, what it says, and an example. */
export function flagsAt(...section: readonly string[]) {
  return (key: string, describe: string, placeholder: string, read?: ValueFlag["read"]): ValueFlag => ({
    describe,
    placeholder,
    path: [...section, key],
    ...(read && { read }),
  });
}

/** A plain number, which has no unit; it stays text where it is none, so that the schema can say what is wrong with it. */
export function plainNumber(text: string): unknown {
  return /^-?\d+(\.\d+)?$/u.test(text.trim()) ? Number(text) : text;
}

/** The parts of a spec that flags say. */
export function overridesOf(values: ValueFlags, asked: Asked): readonly Override[] {
  return Object.entries(values).flatMap(([name, { path, placeholder, choices, read }]) => {
    const text = asked.text(name);
    if (text === undefined) return [];
    return [{ flag: `--${name}`, path, value: read?.(text) ?? text, example: placeholder ?? choices?.[0] ?? "" }];
  });
}

/** What flags alone say, as plain data. */
export function dataOf(overrides: readonly Override[]): Readonly<Record<string, unknown>> {
  const data: Record<string, unknown> = {};
  for (const { path, value } of overrides) {
    const [key = "", inner] = path;
    data[key] = inner === undefined ? value : { ...(data[key] as object | undefined), [inner]: value };
  }
  return data;
}

/** The problem with the flag that it is about, given or not. */
export function placeAtFlag(values: ValueFlags): (problem: Problem) => PlacedProblem {
  return (problem) => {
    const said = Object.entries(values).find(([, { path }]) =>
      path.every((step, index) => problem.path[index] === step),
    );
    if (said === undefined) return problem;
    const [name, { placeholder = "" }] = said;
    return { ...problem, flag: `--${name}`, example: placeholder };
  };
}
