import { useBench } from "../bench.ts";
import { dayOf } from "../clock.ts";
import { printPage, saveFile } from "../files.ts";
import { loadCount } from "../items.ts";
import type { Dough } from "../state.ts";
import { words } from "../words.ts";
import { Loads, Part } from "./parts.tsx";

const numbers = ["temperature", "thickness", "cooked", "score"] as const satisfies readonly (keyof Dough)[];
const texts = ["note", "initials"] as const satisfies readonly (keyof Dough)[];

/** What is measured and noted of each dough, and its export. */
export function NotesPart() {
  const { ask, state, today, change } = useBench();
  const { notes } = words;
  const of = loadCount(today);
  const load = Math.min(state.load, of);
  const dough = state.doughs[load] ?? {};
  const put = (key: keyof Dough, value: string) =>
    change(
      (now) => ({ ...now, doughs: { ...now.doughs, [load]: { ...now.doughs[load], [key]: value } } }),
      `${load} ${key}`,
    );
  const field = (key: keyof Dough, mode: "decimal" | "text") => (
    <div class="field" key={key}>
      <label for={`note-${key}`}>{notes[key]}</label>
      <input
        id={`note-${key}`}
        type="text"
        inputMode={mode}
        autoComplete="off"
        value={dough[key] ?? ""}
        onInput={({ currentTarget: { value } }) => put(key, value)}
      />
    </div>
  );
  const withText = (question: "rows" | "record", use: (text: string, name: string) => void) => () => {
    const now = new Date();
    void ask(question, { state, now: now.getTime() }).then((text) => use(text, `noodle-${dayOf(now)}`));
  };
  return (
    <>
      <Part heading={notes.heading}>
        <Loads of={of} />
        <div class="fields">
          {numbers.map((key) => field(key, "decimal"))}
          {texts.map((key) => field(key, "text"))}
        </div>
      </Part>
      <Part heading={notes.export}>
        <div class="buttons">
          <button type="button" onClick={withText("rows", (text, name) => saveFile(`${name}.csv`, "text/csv", text))}>
            {notes.csv}
          </button>
          <button
            type="button"
            onClick={withText("record", (text, name) => saveFile(`${name}-record.html`, "text/html", text))}
          >
            {notes.record}
          </button>
          <button type="button" onClick={withText("record", printPage)}>
            {notes.print}
          </button>
        </div>
      </Part>
    </>
  );
}
