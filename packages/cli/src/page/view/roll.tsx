import { textAt, valueAt } from "../../input/put.ts";
import { changesOf, useAnswer, useBench } from "../bench.ts";
import { timeOf } from "../clock.ts";
import { itemsOfLoad, loadCount } from "../items.ts";
import { weighedKey } from "../state.ts";
import { words } from "../words.ts";
import { Part, ProblemText, ReportSection } from "./parts.tsx";
import { Timers } from "./timers.tsx";

/** The passes, the cut, the timers and the times of the loads. */
export function RollPart() {
  const { today, enter, state } = useBench();
  const { roll } = words;
  const { answer } = useAnswer("roll", changesOf(state));
  const planned = valueAt(today.spec, ["plan"]) !== undefined;
  return (
    <>
      {(answer === undefined || answer.sheet.length === 0) && (
        <Part heading={roll.heading}>
          <p>{answer === undefined ? words.wait : answer.sheetProblems.length === 0 ? roll.none : roll.inSpec}</p>
          {answer?.sheetProblems.map((one) => (
            <ProblemText key={one.found} problem={one} />
          ))}
        </Part>
      )}
      {answer?.sheet.map((section) => (
        <ReportSection key={section.id} section={section} />
      ))}
      <Timers />
      {planned && (
        <Part heading={roll.day}>
          <div class="field">
            <label for="serve">{roll.serve}</label>
            <input
              id="serve"
              type="time"
              value={textAt(today.spec, ["plan", "serve"])}
              onInput={({ currentTarget: { value } }) => enter({ path: ["plan", "serve"], text: value, unit: "" })}
            />
          </div>
          {valueAt(today.spec, ["plan", "serve"]) === undefined && <p>{roll.noDay}</p>}
          {answer?.dayProblems.map((one) => (
            <ProblemText key={one.found} problem={one} />
          ))}
        </Part>
      )}
      {answer?.day.map((section) => (
        <ReportSection key={section.id} section={section} />
      ))}
      <AsItWent />
    </>
  );
}

/** When each load was weighed. */
function AsItWent() {
  const { state, today } = useBench();
  const { roll } = words;
  const loads = Array.from({ length: loadCount(today) }, (_, index) => index + 1).flatMap((load) => {
    const items = itemsOfLoad(today.loads?.items ?? [], state, load);
    const times = items.flatMap(({ id }) => state.weighed[weighedKey(load, id)]?.at ?? []);
    if (times.length === 0) return [];
    const [from, to] = [Math.min(...times), Math.max(...times)].map((at) => timeOf(new Date(at)));
    return [{ load, from, to: times.length === items.length ? to : roll.stillWeighing }];
  });
  if (loads.length === 0) return undefined;
  return (
    <Part heading={roll.went}>
      <table aria-label={roll.went}>
        <thead>
          <tr>
            {[words.record.load, roll.from, roll.to].map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {loads.map(({ load, from, to }) => (
            <tr key={load}>
              <th scope="row">{load}</th>
              <td>{from}</td>
              <td>{to}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Part>
  );
}
