import { textAt, valueAt } from "../../input/put.ts";
import { changesOf, useAnswer, useBench } from "../bench.ts";
import { dayOf, onDay, secondOf } from "../clock.ts";
import { bowlOf, itemsOfLoad, mendOf } from "../items.ts";
import { startOf, stepsOf, weighedKey } from "../state.ts";
import { words } from "../words.ts";
import { Labelled, Minded, Part, Problems, ReportSection, ReportTable } from "./parts.tsx";
import { Timers } from "./timers.tsx";

/** The passes, the cut, the timers and the times of the loads. */
export function RollPart() {
  const { today, enter, state, listed } = useBench();
  const { roll } = words;
  const { answer } = useAnswer("roll", changesOf(state));
  const serve = textAt(today.spec, ["plan", "serve"]);
  const mended = Object.keys(state.mended).filter((load) => mendOf(listed, state, Number(load)) === "holds");
  const planned = valueAt(today.spec, ["plan"]) !== undefined;
  return (
    <>
      <Timers />
      {mended.length > 0 && <p class="notice">{roll.mended(mended.join(", "))}</p>}
      {(answer === undefined || answer.sheet.length === 0) && (
        <Part heading={roll.heading}>
          <p>{answer === undefined ? words.wait : answer.sheetProblems.length === 0 ? roll.none : roll.inSpec}</p>
          <Problems of={answer?.sheetProblems ?? []} />
        </Part>
      )}
      {answer?.sheet.map((section) => (
        <ReportSection key={section.id} section={section} />
      ))}
      {planned && (
        <Part heading={roll.day}>
          <Labelled label={roll.serve}>
            {({ id }) => (
              <input
                id={id}
                type="time"
                value={serve}
                onInput={({ currentTarget: { value } }) => enter({ path: ["plan", "serve"], text: value, unit: "" })}
              />
            )}
          </Labelled>
          {serve === "" && <p>{roll.noDay}</p>}
          <Problems of={answer?.dayProblems ?? []} />
        </Part>
      )}
      {answer?.day.map((section) => (
        <ReportSection key={section.id} section={section} />
      ))}
      <AsItWent />
      {answer && <Minded {...answer} />}
    </>
  );
}

/** When each load was weighed, and what was timed of it. */
function AsItWent() {
  const { state, listed, last } = useBench();
  const { roll, record } = words;
  const day = dayOf(new Date());
  const rows = Array.from({ length: last }, (_, index) => index + 1).flatMap((load) => {
    const items = itemsOfLoad(listed, state, load);
    const times = items.flatMap(({ id }) => state.weighed[weighedKey(load, id)]?.at ?? []);
    const { inAll } = bowlOf(items, state, load);
    const all = items.every((item) => inAll(item) !== undefined) ? Math.max(...times) : undefined;
    const weighing = times.length === 0 ? [] : [{ what: roll.weighing, from: Math.min(...times), to: all }];
    const steps = stepsOf(state, load).map((step) => {
      return { what: roll.lasts(step.label, step.minutes), from: startOf(step), to: step.ended };
    });
    return [...weighing, ...steps].map(({ what, from, to }) => {
      const ended = to === undefined ? roll.runs : onDay(day, to, secondOf);
      return [String(load), what, onDay(day, from, secondOf), ended];
    });
  });
  if (rows.length === 0) return undefined;
  const heads = [record.load, record.step, roll.began, roll.ended];
  const table = {
    kind: "table" as const,
    id: "went",
    columns: heads.map((label) => ({ id: label, label, align: "left" as const })),
    rows: rows.map((texts) => ({ role: "item" as const, cells: texts.map((text) => ({ text })) })),
  };
  return (
    <Part heading={roll.went}>
      <ReportTable table={table} from="day" label={roll.went} />
    </Part>
  );
}
