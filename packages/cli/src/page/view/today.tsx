import type { Noodle } from "@noodlewright/core";
import { listSalts } from "@noodlewright/core/chemistry";
import { type Figure, type graphOf, shownValue } from "@noodlewright/core/figure";
import { printable } from "@noodlewright/core/render";
import { isSection, textAt, valueAt } from "../../input/put.ts";
import { useBench } from "../bench.ts";
import { entryAt } from "../state.ts";
import { keptWater, proteinBasis, proteinPlace, type Today } from "../today.ts";
import { words } from "../words.ts";
import { Field, FigureButton, Part } from "./parts.tsx";

/** Another flour, alkaline product, scale or temperature than the spec has, and what follows from it. */
export function TodayPart() {
  const { data, state, before, change } = useBench();
  const { today } = words;
  const lines = before.noodle?.formula.lines ?? [];
  const flours = lines.filter(({ role }) => role === "flour");
  const alkali = lines.filter(({ role }) => role === "alkali");
  const scales = valueAt(data.spec, ["scales"]);
  const listed: readonly unknown[] = Array.isArray(scales) ? scales : [];
  const us = data.units === "us";
  const warm = us ? ["°F"] : ["°C"];
  const wetter = state.entries.some(({ path }) => path[0] === "flours" && path.at(-1) === "moisture");
  return (
    <>
      <Part heading={today.heading}>
        <h3>{today.flours}</h3>
        {flours.map((line) => {
          const { id, name, path, material } = line;
          const basis = proteinBasis(data.spec, line);
          return (
            <fieldset key={id}>
              <legend>{printable(name)}</legend>
              <div class="fields">
                <Field
                  path={[...path, "figures", "moisture"]}
                  label={today.moisture}
                  units={["%"]}
                  usual={number(material.written?.moisture ?? material.moisture)}
                />
                <Field
                  path={[...path, ...proteinPlace]}
                  label={today.protein(basis)}
                  units={["%"]}
                  usual={number(material.written?.protein ?? "")}
                />
              </div>
            </fieldset>
          );
        })}
        {wetter && (
          <label class="choice">
            <input
              type="checkbox"
              checked={state.keepWet}
              onChange={({ currentTarget: { checked } }) => change((now) => ({ ...now, keepWet: checked }))}
            />
            {today.keepWet}
          </label>
        )}
        {alkali.length > 0 && <h3>{today.alkali}</h3>}
        {alkali.map(({ id, name, path }) => (
          <Product key={id} name={name} path={path} />
        ))}
        <h3>{today.scales}</h3>
        <div class="fields">
          {listed.length === 0 ? (
            <p>{before.batch?.value.lines[0]?.scale}</p>
          ) : (
            listed.map((scale, index) => (
              <Field
                key={scaleName(scale, index)}
                path={["scales", index, "division"]}
                label={today.division(scaleName(scale, index))}
                units={us ? ["oz", "lb"] : ["g", "kg"]}
              />
            ))
          )}
        </div>
        <h3>{today.temperatures}</h3>
        <div class="fields">
          {(["flour", "room", "tap", "dough"] as const).map((key) => (
            <Field key={key} path={["temperature", key]} label={today[key]} units={warm} />
          ))}
        </div>
      </Part>
      <Part heading={today.follows}>
        <Follows />
      </Part>
    </>
  );
}

function number(text: string): string {
  return text.replace(/\s*%$/u, "").slice(0, 6);
}

function scaleName(scale: unknown, index: number): string {
  const name = isSection(scale) ? scale["name"] : undefined;
  return typeof name === "string" ? printable(name) : `${words.today.assumedScale} ${index + 1}`;
}

function Product({ name, path }: { readonly name: string; readonly path: readonly (string | number)[] }) {
  const { data, state, enter } = useBench();
  const place = [...path, "replaceWith"];
  const entry = entryAt(state, place);
  const salts = listSalts("");
  const names = salts.ok ? salts.value.filter(({ alkaline }) => alkaline).map((salt) => salt.name) : [];
  const written = valueAt(data.spec, place);
  if (written !== undefined && typeof written !== "string") return undefined;
  const id = `product-${path.join("-")}`;
  return (
    <div class="field">
      <label for={id}>{words.today.product(printable(textAt(data.spec, [...path, "name"]) || name))}</label>
      <select
        id={id}
        value={entry?.text ?? written ?? ""}
        onChange={({ currentTarget: { value } }) => enter({ path: place, text: value, unit: "" })}
      >
        <option value="">{words.today.asWritten}</option>
        {names.map((one) => (
          <option key={one}>{one}</option>
        ))}
      </select>
    </div>
  );
}

interface Following {
  readonly before: Figure | undefined;
  readonly after: Figure;
  readonly graph: ReturnType<typeof graphOf>;
  readonly why: string;
}

/** What follows from what is different, each with its reason in a line. */
function Follows() {
  const { before, today, state, written } = useBench();
  if (today.batch === undefined) return undefined;
  const kept = written === undefined ? "" : keptWater(written);
  const all = following(before, today, kept, (...sections) =>
    state.entries.some(({ path }) => sections.includes(path[0] ?? "")),
  ).filter((one) => one.before === undefined || shownValue(one.before) !== shownValue(one.after));
  if (all.length === 0) return <p>{words.today.nothing}</p>;
  return (
    <ul class="follows">
      {all.map(({ before: was, after, graph, why }) => (
        <li key={after.id}>
          <b>{printable(after.label)}</b>{" "}
          <FigureButton
            figure={after}
            graphs={[graph]}
            text={words.today.from(was === undefined ? "–" : shownValue(was), `${shownValue(after)} ${after.unit}`)}
          />
          {why !== "" && <p>{why}</p>}
        </li>
      ))}
    </ul>
  );
}

function following(
  before: Today,
  today: Today,
  kept: string,
  entered: (...sections: readonly (string | number)[]) => boolean,
): readonly Following[] {
  const { because } = words.today;
  const batch = today.batch?.value;
  const formula = today.noodle?.formula;
  if (batch === undefined || formula === undefined) return [];
  const was = before.noodle?.formula;
  const graph = batch.graph;
  const blend = [formula.blend.protein?.at14, formula.blend.moisture].filter((figure) => figure !== undefined);
  const wasOf = (id: string) => was?.graph[id];
  const differs = (now: Figure) => state(now, wasOf(now.id));
  const moved = differs(formula.blend.moisture);
  const { added, tap, doughWater } = formula.water;
  const replaced = formula.lines.some(({ id, name, role }) => role === "alkali" && nameOf(was, id) !== name);
  const wetness = !moved ? undefined : differs(doughWater) ? because.flour : because.water(kept);
  const product = replaced && because.product;
  const flour = blend.map((after) => ({ before: wasOf(after.id), after, graph, why: because.flour }));
  const water = [added, tap, doughWater].map((after) => ({
    before: wasOf(after.id),
    after,
    graph,
    why: reasons(wetness, product),
  }));
  const doses = formula.lines
    .filter(({ role }) => role === "alkali")
    .map(({ id, name, parts, path }) => {
      const old = was?.lines.find((line) => line.id === id);
      const holding = valueAt(today.spec, [...path, "holding"]);
      const held = typeof holding === "string" ? holding : "alkalinity M";
      const other = old?.name !== name;
      return {
        before: other ? undefined : old?.parts,
        after: { ...parts, label: name },
        graph,
        why: other ? because.alkali(name, held) : reasons(moved && because.flour),
      };
    });
  const size = entered("batch", "losses") && because.size;
  const whyWeights = reasons(size, entered("scales") && because.scale, product);
  const weights = today.items.flatMap(({ id, mass, name }) => {
    const old = before.items.find((item) => item.id === id)?.mass;
    return old === undefined ? [] : [{ before: old, after: { ...mass, label: name }, graph, why: whyWeights }];
  });
  const waterPlan = today.water?.value;
  const plan = waterPlan ? [waterPlan.plan.temperature, waterPlan.weighed.ice?.ice] : [];
  const oldPlan = before.water?.value;
  const temperatures = plan.flatMap((after) =>
    after === undefined || waterPlan === undefined
      ? []
      : [
          {
            before: after.id === oldPlan?.plan.temperature.id ? oldPlan.plan.temperature : oldPlan?.weighed.ice?.ice,
            after,
            graph: waterPlan.graph,
            why: reasons(entered("temperature") && because.temperature, size, (moved || replaced) && because.poured),
          },
        ],
  );
  return [...flour, ...water, ...doses, ...temperatures, ...(moved ? [] : weights)];
}

/** The reasons that hold, one after the other. */
function reasons(...all: readonly (string | false | undefined)[]): string {
  return all.filter((one) => typeof one === "string").join(" ");
}

function nameOf(formula: Noodle["formula"] | undefined, id: string): string | undefined {
  return formula?.lines.find((line) => line.id === id)?.name;
}

function state(now: Figure, then: Figure | undefined): boolean {
  return then !== undefined && shownValue(now) !== shownValue(then);
}
