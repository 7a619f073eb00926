import { useBench } from "../bench.ts";
import { dayOf } from "../clock.ts";
import { printPage, saveFile } from "../files.ts";
import { lastLoad } from "../items.ts";
import { noted, readNoted } from "../numbers.ts";
import { degrees } from "../page-data.ts";
import type { Dough } from "../state.ts";
import { words } from "../words.ts";
import { OtherDay } from "./anew.tsx";
import { Loads, Part, ProblemText } from "./parts.tsx";

const keys = [
  "temperature",
  "thickness",
  "cooked",
  "score",
  "note",
  "initials",
] as const satisfies readonly (keyof Dough)[];
const isNumber = (key: keyof Dough): key is keyof typeof noted => Object.hasOwn(noted, key);

/** What is measured and noted of each dough, and its export. */
export function NotesPart() {
  const { data, ask, state, today, change } = useBench();
  const { notes } = words;
  const load = Math.min(state.load, lastLoad(today, state));
  const dough = state.doughs[load] ?? {};
  const put = (key: keyof Dough, value: string) =>
    change(
      (now) => ({ ...now, doughs: { ...now.doughs, [load]: { ...now.doughs[load], [key]: value } } }),
      `${load} ${key}`,
    );
  const field = (key: keyof Dough) => {
    const typed = dough[key] ?? "";
    const reading = typed !== "" && isNumber(key) ? readNoted(key, typed) : undefined;
    const wrong = reading?.ok === false ? { found: `"${typed}"`, expected: reading.needs } : undefined;
    return (
      <div class="field" key={key}>
        <label for={`note-${key}`}>{key === "temperature" ? notes.temperature(degrees(data)) : notes[key]}</label>
        <input
          id={`note-${key}`}
          type="text"
          inputMode={isNumber(key) ? "decimal" : "text"}
          autoComplete="off"
          value={typed}
          aria-invalid={wrong !== undefined}
          aria-describedby={wrong && `note-${key}-problem`}
          onInput={({ currentTarget: { value } }) => put(key, value)}
        />
        {wrong && (
          <div id={`note-${key}-problem`} role="alert">
            <ProblemText problem={wrong} />
          </div>
        )}
      </div>
    );
  };
  const withText = (question: "rows" | "record", use: (text: string, name: string) => void) => () => {
    const now = new Date();
    void ask(question, { state, now: now.getTime() }).then((text) => use(text, `noodle-${dayOf(now)}`));
  };
  return (
    <>
      <Part heading={notes.heading}>
        <Loads />
        <OtherDay load={load} />
        <div class="fields">{keys.map(field)}</div>
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
