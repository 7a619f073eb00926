import { type State, stateSchema } from "./state.ts";

/** What is kept on the device for a noodle. Tabs of the same noodle share it. */
export interface Memory {
  /** What was kept when the page was opened; nothing where there was none or it is none of ours. */
  readonly opened: State | undefined;
  /**
   * Keeps what was entered. `elsewhere` where another tab has kept something since, which stays; `refused` where the browser
   * does not let it.
   */
  readonly keep: (state: State) => "kept" | "elsewhere" | "refused";
  /** Tells when another tab keeps something. */
  readonly onOther: (tell: () => void) => void;
}

/** Opens what is kept under a key. */
export function openMemory(key: string): Memory {
  const place = `noodlewright ${key}`;
  let own = "";
  try {
    own = localStorage.getItem(place) ?? "";
  } catch {}
  return {
    opened: readState(own),
    keep: (state) => {
      try {
        const kept = localStorage.getItem(place) ?? "";
        if (kept !== own && kept !== "") return "elsewhere";
        const text = JSON.stringify(state);
        localStorage.setItem(place, text);
        own = text;
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

function readState(text: string): State | undefined {
  try {
    const reading = stateSchema.safeParse(JSON.parse(text));
    return reading.success ? reading.data : undefined;
  } catch {
    return undefined;
  }
}
