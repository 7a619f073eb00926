import { renderHtml } from "@noodlewright/core/render";
import { useBench } from "../bench.ts";
import { printPage, saveFile } from "../files.ts";
import type { Dough } from "../state.ts";
import { batchRecord, dayOf, doughRows, loadsOf } from "../take-along.ts";
import { words } from "../words.ts";
import { Loads, Part } from "./parts.tsx";

const numbers = ["temperature", "thickness", "cooked", "score"] as const satisfies readonly (keyof Dough)[];
const texts = ["note", "initials"] as const satisfies readonly (keyof Dough)[];

/** What is measured and noted of each dough, and its export. */
export function NotesPart() {
  const { data, state, today, change } = useBench();
  const { notes } = words;
  const of = loadsOf(today);
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
  const occasion = { data, state, today, now: new Date() };
  const record = () => renderHtml(batchRecord(occasion));
  const name = `noodle-${dayOf(occasion.now)}`;
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
          <button type="button" onClick={() => saveFile(`${name}.csv`, "text/csv", doughRows(occasion))}>
            {notes.csv}
          </button>
          <button type="button" onClick={() => saveFile(`${name}-record.html`, "text/html", record())}>
            {notes.record}
          </button>
          <button type="button" onClick={() => printPage(record())}>
            {notes.print}
          </button>
        </div>
      </Part>
    </>
  );
}
