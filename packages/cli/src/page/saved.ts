import * as z from "zod/mini";
import type { PageData } from "./page-data.ts";
import { type State, stateSchema } from "./state.ts";
import { words } from "./words.ts";

/** What a saved file holds. */
const savedSchema = z.strictObject({
  noodlewright: z.literal("bench"),
  version: z.literal(1),
  key: z.string(),
  state: stateSchema,
});

/** What was entered as a file that the page opens again. */
export function savedText({ key }: PageData, state: State): string {
  return `${JSON.stringify({ noodlewright: "bench", version: 1, key, state }, undefined, 2)}\n`;
}

export type Opening = { readonly ok: true; readonly state: State } | { readonly ok: false; readonly why: string };

/** Reads a saved file. */
export function openSaved({ key }: PageData, text: string): Opening {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    return { ok: false, why: words.take.wrongFile };
  }
  const reading = savedSchema.safeParse(data);
  if (!reading.success) return { ok: false, why: words.take.wrongFile };
  if (reading.data.key !== key) return { ok: false, why: words.take.otherSpec };
  return { ok: true, state: reading.data.state };
}
