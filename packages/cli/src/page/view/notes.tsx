import { useBench } from "../bench.ts";
import { dayOf } from "../clock.ts";
import { printPage, saveFile } from "../files.ts";
import { noted, readNoted } from "../numbers.ts";
import { degrees, noteLabel } from "../page-data.ts";
import type { Dough } from "../state.ts";
import { words } from "../words.ts";
import { OtherDay } from "./anew.tsx";
import { Button, Labelled, Loads, Part } from "./parts.tsx";

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
  const { data, ask, state, load, change } = useBench();
  const { notes } = words;
  const dough = state.doughs[load] ?? {};
  const put = (key: keyof Dough, value: string) =>
    change(
      (now) => ({ ...now, doughs: { ...now.doughs, [load]: { ...now.doughs[load], [key]: value } } }),
      `${load} ${key}`,
    );
  const field = (key: keyof Dough) => {
    const typed = dough[key] ?? "";
    const reading = typed !== "" && isNumber(key) ? readNoted(key, typed, degrees(data)) : undefined;
    const wrong = reading?.ok === false ? [{ found: `"${typed}"`, expected: reading.needs }] : [];
    return (
      <Labelled key={key} label={noteLabel(key, data)} wrong={wrong}>
        {(tied) => (
          <input
            {...tied}
            type="text"
            inputMode={isNumber(key) ? "decimal" : "text"}
            autoComplete="off"
            value={typed}
            onInput={({ currentTarget: { value } }) => put(key, value)}
          />
        )}
      </Labelled>
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
        <OtherDay />
        <div class="fields">{keys.map(field)}</div>
      </Part>
      <Part heading={notes.export}>
        <div class="buttons">
          <Button on={withText("rows", (text, name) => saveFile(`${name}.csv`, "text/csv", text))}>{notes.csv}</Button>
          <Button on={withText("record", (text, name) => saveFile(`${name}-record.html`, "text/html", text))}>
            {notes.record}
          </Button>
          <Button on={withText("record", printPage)}>{notes.print}</Button>
        </div>
      </Part>
    </>
  );
}
