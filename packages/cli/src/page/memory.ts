import { form, readKept } from "./saved.ts";
import type { State } from "./state.ts";

/** What is kept on the device for a noodle. Tabs of the same noodle share it. */
export interface Memory {
  /** What was kept when the page was opened; nothing where there was none. */
  readonly opened: State | undefined;
  /** What was there before the last change, so that it can be undone after a reload. */
  readonly before: State | undefined;
  /** What was kept and cannot be read: it is set aside until somebody lets go of it. */
  readonly unread: string;
  readonly letGo: () => void;
  /**
   * Keeps what was entered. `elsewhere` where another tab has kept something since, which stays; `refused` where the browser
   * does not let it.
   */
  readonly keep: (state: State, before: State | undefined) => "kept" | "elsewhere" | "refused";
  /** Tells when another tab keeps something. */
  readonly onOther: (tell: () => void) => void;
}

/** Opens what is kept under a key. What a page of a form before kept is read and stays where it is. */
export function openMemory(key: string): Memory {
  const place = `noodlewright ${form} ${key}`;
  const aside = `${place} aside`;
  const undo = `${place} undo`;
  let own = "";
  let last = "";
  let before: State | undefined;
  let unread = "";
  try {
    own = localStorage.getItem(place) ?? "";
    const earlier = ["3 ", "2 ", ""].map((of) => localStorage.getItem(`noodlewright ${of}${key}`) ?? "");
    last = [own, ...earlier].find((one) => one !== "") ?? "";
    before = readKept(localStorage.getItem(undo) ?? "");
    unread = localStorage.getItem(aside) ?? "";
  } catch {}
  const opened = readKept(last);
  if (opened === undefined && last !== "") {
    unread = last;
    try {
      localStorage.setItem(aside, last);
    } catch {}
  }
  return {
    opened,
    before,
    unread,
    letGo: () => localStorage.removeItem(aside),
    keep: (state, last) => {
      try {
        const kept = localStorage.getItem(place) ?? "";
        if (kept !== own && kept !== "") return "elsewhere";
        const text = JSON.stringify(state);
        localStorage.removeItem(undo);
        localStorage.setItem(place, text);
        own = text;
        keepBeside(undo, last);
        return "kept";
      } catch {
        return "refused";
      }
    },
    onOther: (tell) =>
      addEventListener("storage", ({ key: changed, newValue }) => {
        if (changed === place && newValue !== null && newValue !== own) tell();
      }),
  };
}

/** Keeps what a change can be undone to, where there is room for it. */
function keepBeside(place: string, state: State | undefined): void {
  try {
    if (state !== undefined) localStorage.setItem(place, JSON.stringify(state));
  } catch {}
}
