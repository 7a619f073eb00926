import { isSection } from "../input/put.ts";
import { isNumber } from "./checks.ts";
import type { PageData } from "./page-data.ts";
import { isState, type State } from "./state.ts";
import { words } from "./words.ts";

/**
 * The form that this page writes. The first kept no load and no true end with a timer, the second no list with a weight,
 * the third neither what differed from the spec when it was weighed nor what a stock holds, the fourth not what was found for it;
 * they are read as well.
 */
export const form = 5;

/** What was entered as a file that the page opens again. */
export function savedText({ key }: PageData, state: State): string {
  return `${JSON.stringify({ noodlewright: "bench", version: form, key, state }, undefined, 2)}\n`;
}

export type Opening = { readonly ok: true; readonly state: State } | { readonly ok: false; readonly why: string };

/** Reads a saved file. One of a form that this page does not know is refused by name. */
export function openSaved({ key }: PageData, text: string): Opening {
  const data = tried((): unknown => JSON.parse(text));
  if (!isSection(data) || data["noodlewright"] !== "bench" || !isNumber(data["version"])) {
    return { ok: false, why: words.take.wrongFile };
  }
  const { version, state } = { version: data["version"], state: data["state"] };
  if (![1, 2, 3, 4, form].includes(version)) return { ok: false, why: words.take.otherForm(version, form) };
  if (!isState(state)) return { ok: false, why: words.take.damaged };
  return data["key"] === key ? { ok: true, state } : { ok: false, why: words.take.otherSpec };
}

/** Reads what is kept on the device; nothing where it is none of ours. */
export function readKept(text: string): State | undefined {
  const data = tried((): unknown => JSON.parse(text));
  return isState(data) ? data : undefined;
}

/** What something comes to; nothing where it fails. */
export function tried<T>(what: () => T): T | undefined {
  try {
    return what();
  } catch {
    return undefined;
  }
}
