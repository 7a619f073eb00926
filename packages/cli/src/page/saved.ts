import * as z from "zod/mini";
import type { PageData } from "./page-data.ts";
import { type State, stateSchema } from "./state.ts";
import { words } from "./words.ts";

/** The form that this page writes. The first kept no load and no true end with a timer, and is read as well. */
export const form = 2;

const savedSchema = z.strictObject({
  noodlewright: z.literal("bench"),
  version: z.literal([1, form]),
  key: z.string(),
  state: stateSchema,
});

/** What a file of any form has. */
const anySchema = z.looseObject({ noodlewright: z.literal("bench"), version: z.number() });

/** What was entered as a file that the page opens again. */
export function savedText({ key }: PageData, state: State): string {
  return `${JSON.stringify({ noodlewright: "bench", version: form, key, state }, undefined, 2)}\n`;
}

export type Opening = { readonly ok: true; readonly state: State } | { readonly ok: false; readonly why: string };

/** Reads a saved file. One of a form that this page does not know is refused by name. */
export function openSaved({ key }: PageData, text: string): Opening {
  const data = parsed(text);
  const any = anySchema.safeParse(data);
  if (!any.success) return { ok: false, why: words.take.wrongFile };
  const reading = savedSchema.safeParse(data);
  if (!reading.success) {
    const known = any.data.version === 1 || any.data.version === form;
    return { ok: false, why: known ? words.take.damaged : words.take.otherForm(any.data.version, form) };
  }
  if (reading.data.key !== key) return { ok: false, why: words.take.otherSpec };
  return { ok: true, state: reading.data.state };
}

/** Reads what is kept on the device; nothing where it is none of ours. */
export function readKept(text: string): State | undefined {
  const reading = stateSchema.safeParse(parsed(text));
  return reading.success ? reading.data : undefined;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
