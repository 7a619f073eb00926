import type { Outcome, SpecInput } from "@noodlewright/core";
import type { Formula } from "@noodlewright/core/answers";
import type { Spec } from "@noodlewright/core/spec";
import { formulaOf } from "#core/formula/formula.ts";
import { dec } from "#core/number/decimal.ts";
import { answered } from "../told-of.ts";

/** A spec without a name is enough for a test. */
export type Written = Omit<SpecInput, "name">;

/** The codes of the notes of an outcome. */
export function noteCodesOf(outcome: Outcome<unknown>): readonly string[] {
  return outcome.ok ? outcome.notes.map(({ code }) => code) : [];
}

/** Reads a written spec and works it out. */
export function workedOut(written: Written): { readonly spec: Spec; readonly formula: Formula } {
  return answered(formulaOf({ name: "test", ...written }));
}

/** The parts of a line, to six places. */
export function partsOf(formula: Formula, id: string): string {
  const line = formula.lines.find((one) => one.id === id);
  if (line === undefined) throw new Error(`no line ${id}`);
  return dec(line.parts.value).toFixed(6);
}

/** Flour of a stated moisture and protein, for specs that want nothing else. */
export function flour(moisture: string, protein = "12 %") {
  return { moisture, protein, proteinBasis: "14 % mb", ash: "0.4 %" };
}

/** Flours, or alkaline products, by their names, each with its amount. */
export function listed(amounts: Readonly<Record<string, string>>): { name: string; amount: string }[] {
  return Object.entries(amounts).map(([name, amount]) => ({ name, amount }));
}
