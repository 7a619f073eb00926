import type * as z from "zod/mini";
import { problem } from "../figure/problem.ts";
import { materialName } from "./catalogue.ts";
import { refuseValue } from "./fields.ts";
import { plainName } from "./nearest.ts";

/** Refuses a material that a section by names has twice, in other capitals or with other blanks: only one of the two would count. */
export function namedOnce(context: z.core.ParsePayload<Readonly<Record<string, unknown>>>): void {
  refuseTwice(context, plainName);
}

/** The same where another name of a material of the catalogue is that material, too. */
export function materialOnce(context: z.core.ParsePayload<Readonly<Record<string, unknown>>>): void {
  refuseTwice(context, materialName);
}

function refuseTwice(
  context: z.core.ParsePayload<Readonly<Record<string, unknown>>>,
  nameOf: (name: string) => string,
): void {
  const known = new Map<string, string>();
  for (const [name, value] of Object.entries(context.value)) {
    const first = known.get(nameOf(name));
    if (first === undefined) known.set(nameOf(name), name);
    else {
      const [one, other] = [said(first, context.value[first]), said(name, value)];
      refuseValue(context, problem("materials.named-twice", [], { one, other }), [name]);
    }
  }
}

/** A name, with what is said of it where that is one text. */
function said(name: string, value: unknown): string {
  return typeof value === "object" && value !== null && "text" in value ? `${name}: ${String(value.text)}` : name;
}
