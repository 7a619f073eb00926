import type { Problem } from "@noodlewright/core";
import type { Override } from "../input/overrides.ts";
import type { PlacedProblem } from "../input/placed-problem.ts";
import type { Asked, Flag } from "./command.ts";

/** A flag that says one value of the spec, or of what a command asks for. */
export interface ValueFlag extends Flag {
  readonly placeholder: string;
  readonly path: readonly string[];
  /** A plain number, without a unit. */
  readonly plainNumber?: true;
}

/** A group of such flags, by their names: a command lists them among its own. */
export type ValueFlags = Readonly<Record<string, ValueFlag>>;

/** Makes flags of values that stand beside each other, each from its key, what it says, and an example. */
export function flagsAt(...section: readonly string[]) {
  return (key: string, describe: string, placeholder: string): ValueFlag => ({
    describe,
    placeholder,
    path: [...section, key],
  });
}

/** The parts of a spec that flags say. */
export function overridesOf(values: ValueFlags, asked: Asked): readonly Override[] {
  return Object.entries(values).flatMap(([name, { path, placeholder, plainNumber }]) => {
    const text = asked.text(name);
    if (text === undefined) return [];
    const value = plainNumber === true && /^-?\d+(\.\d+)?$/u.test(text.trim()) ? Number(text) : text;
    return [{ flag: `--${name}`, path, value, example: placeholder }];
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
    const [name, { placeholder }] = said;
    return { ...problem, flag: `--${name}`, example: placeholder };
  };
}
