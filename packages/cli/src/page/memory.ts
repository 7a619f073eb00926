import { type State, stateSchema } from "./state.ts";

const place = (key: string): string => `noodlewright ${key}`;

/** What is kept on the device for a noodle; nothing where there is none or it is none of ours. */
export function remembered(key: string): State | undefined {
  try {
    return readState(localStorage.getItem(place(key)) ?? "");
  } catch {
    return undefined;
  }
}

/** Keeps what was entered on the device. False where the browser does not let it. */
export function remember(key: string, state: State): boolean {
  try {
    localStorage.setItem(place(key), JSON.stringify(state));
    return true;
  } catch {
    return false;
  }
}

/** Tells when another tab keeps something else for the same noodle. */
export function onOtherTab(key: string, tell: () => void): void {
  addEventListener("storage", (event) => {
    if (event.key === place(key)) tell();
  });
}

function readState(text: string): State | undefined {
  if (text === "") return undefined;
  const reading = stateSchema.safeParse(JSON.parse(text));
  return reading.success ? reading.data : undefined;
}
