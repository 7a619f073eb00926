import { Fragment } from "preact";
import { useState } from "preact/hooks";
import { textAt, valueAt } from "../../input/put.ts";
import type { Kitchen } from "../answers.ts";
import { useBench } from "../bench.ts";
import { scaleName } from "../differences.ts";
import { asShown } from "../items.ts";
import { degrees } from "../page-data.ts";
import { entryAt, isFound } from "../state.ts";
import { words } from "../words.ts";
import { Field, FigureButton, Labelled, Part, wrongAt } from "./parts.tsx";

/** Another flour, alkaline product, scale or temperature than the spec has, and what follows from it. */
export function TodayPart() {
  const { data, first, state, today: answers, change } = useBench();
  const { today } = words;
  const { flours, alkali } = first.kitchen;
  const scales = valueAt(data.spec, ["scales"]);
  const listed: readonly unknown[] = Array.isArray(scales) ? scales : [];
  const [weighed] = first.answers.loads?.items ?? [];
  const us = data.units === "us";
  // What follows stands below what was changed last.
  const changed = state.entries.at(-1)?.path[0];
  const last = (["flours", "alkali", "scales"] as const).find((group) => group === changed) ?? "temperature";
  const wetter = state.entries.some(({ path }) => path[0] === "flours" && path.at(-1) === "moisture");
  const isKept = ["added", "tap", "dough"].every((way) => !isFound(valueAt(data.spec, ["water", way])));
  return (
    <Part heading={today.heading}>
      <h3>{today.flours}</h3>
      {flours.map(({ name, path, basis, moisture, protein }) => (
        <fieldset key={path.join(" ")}>
          <legend>{name}</legend>
          <div class="fields">
            <Field path={[...path, "figures", "moisture"]} label={today.moisture} units={["%"]} usual={moisture} />
            <Field path={[...path, "figures", "protein"]} label={today.protein(basis)} units={["%"]} usual={protein} />
          </div>
        </fieldset>
      ))}
      {wetter && isKept && (
        <label class="choice">
          <input
            type="checkbox"
            checked={state.keepWet}
            onChange={({ currentTarget: { checked } }) => change((now) => ({ ...now, keepWet: checked }))}
          />
          {today.keepWet}
        </label>
      )}
      {last === "flours" && <Follows />}
      {alkali.length > 0 && <h3>{today.alkali}</h3>}
      <div class="fields">
        {alkali.map((one) => (
          <Fragment key={one.place.join(" ")}>
            <Product {...one} />
            {one.strength && <Field path={one.strength} label={today.strength(one.name)} units={["%"]} />}
          </Fragment>
        ))}
      </div>
      {last === "alkali" && <Follows />}
      <h3>{today.scales}</h3>
      <div class="fields">
        {(listed.length === 0 ? [undefined] : listed).map((scale, index) => {
          const name = scaleName(textAt(scale, ["name"]), index);
          return (
            <Field
              key={name}
              path={["scales", index, "division"]}
              label={today.division(name)}
              units={us ? ["oz", "lb"] : ["g", "kg"]}
              usual={weighed && asShown(weighed, weighed.division)}
            />
          );
        })}
      </div>
      {last === "scales" && <Follows />}
      <h3>{today.temperatures}</h3>
      <div class="fields">
        {(["flour", "room", "tap", "dough"] as const).map((key) => (
          <Field key={key} path={["temperature", key]} label={today[key]} units={[degrees(data)]} />
        ))}
      </div>
      {valueAt(answers.spec, ["temperature", "dough"]) === undefined && <p class="hint">{today.noDough}</p>}
      {last === "temperature" && <Follows />}
    </Part>
  );
}

function Product({ name, place, written, products }: Kitchen["alkali"][number]) {
  const bench = useBench();
  const { state, enter } = bench;
  const { today } = words;
  const [other, beOther] = useState(false);
  const entered = entryAt(state, place)?.text;
  const isOther = other || (entered !== undefined && !products.includes(entered));
  const put = (text: string) => enter({ path: [...place], text: text === written ? "" : text, unit: "" });
  return (
    <Labelled label={today.product(name)} wrong={wrongAt(bench, place)}>
      {({ id, ...told }) => (
        <>
          <select
            id={id}
            {...told}
            value={isOther ? today.other : (entered ?? written)}
            onChange={({ currentTarget: { value } }) => {
              beOther(value === today.other);
              put(value === today.other ? "" : value);
            }}
          >
            <option value="">{today.asWritten}</option>
            {[...products, today.other].map((one) => (
              <option key={one}>{one}</option>
            ))}
          </select>
          {isOther && (
            <>
              <input
                {...told}
                type="text"
                inputMode="text"
                aria-label={today.label(name)}
                autoComplete="off"
                value={entered ?? ""}
                onInput={({ currentTarget: { value } }) => put(value)}
              />
              <p class="hint">{today.such}</p>
            </>
          )}
        </>
      )}
    </Labelled>
  );
}

/** What follows from what is different, each with its reason in a line. */
function Follows() {
  const { today } = useBench();
  if (today.loads === undefined) return undefined;
  return (
    <section class="following" aria-label={words.today.follows}>
      <h3>{words.today.follows}</h3>
      {today.follows.length === 0 && <p>{words.today.nothing}</p>}
      <ul class="follows">
        {today.follows.map(({ now, why }) => (
          <li key={now.id}>
            <b>{now.label}</b> <FigureButton figure={now} />
            {why !== "" && <p>{why}</p>}
          </li>
        ))}
      </ul>
    </section>
  );
}
