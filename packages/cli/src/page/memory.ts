import { form, readKept, tried } from "./saved.ts";
import type { State } from "./state.ts";

/** Opens what is kept on the device under the key of a noodle. What a page of a form before kept is read and stays where it is. */
export function openMemory(key: string) {
  const place = `noodlewright ${form} ${key}`;
  const aside = `${place} aside`;
  const undo = `${place} undo`;
  const read = (from: string): string => tried(() => localStorage.getItem(from)) ?? "";
  let own = read(place);
  const earlier = ["4 ", "3 ", "2 ", ""].map((of) => read(`noodlewright ${of}${key}`));
  const last = [own, ...earlier].find((one) => one !== "") ?? "";
  const opened = readKept(last);
  const lost = opened === undefined ? last : "";
  if (lost !== "") tried(() => localStorage.setItem(aside, lost));
  return {
    opened,
    /** What was there before the last change, so that it can be undone after a reload. */
    before: readKept(read(undo)),
    /** What was kept and cannot be read: it is set aside until somebody lets go of it. */
    unread: lost || read(aside),
    letGo: () => localStorage.removeItem(aside),
    /** Keeps what was entered: `elsewhere` where another tab has kept something since, which stays. */
    keep: (state: State, last: State | undefined): "kept" | "elsewhere" | "refused" => {
      try {
        const kept = localStorage.getItem(place) ?? "";
        if (kept !== own && kept !== "") return "elsewhere";
        const text = JSON.stringify(state);
        localStorage.removeItem(undo);
        localStorage.setItem(place, text);
        own = text;
        // What a change can be undone to is kept where there is room for it.
        if (last !== undefined) tried(() => localStorage.setItem(undo, JSON.stringify(last)));
        return "kept";
      } catch {
        return "refused";
      }
    },
    /** Tells when another tab keeps something. */
    onOther: (tell: () => void) =>
      addEventListener("storage", ({ key: changed, newValue }) => {
        if (changed === place && newValue !== null && newValue !== own) tell();
      }),
  };
}
