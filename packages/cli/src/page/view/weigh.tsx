import type { Figure } from "@noodlewright/core/figure";
import { printable, weightCell } from "@noodlewright/core/render";
import { addedUp, type OnScale, readScale, standingOf } from "@noodlewright/core/sheet";
import { useState } from "preact/hooks";
import { useBench } from "../bench.ts";
import { asNumber, weighedKey } from "../state.ts";
import { loadsOf } from "../take-along.ts";
import { asShown, type Item, itemsOfLoad } from "../today.ts";
import { words } from "../words.ts";
import { Mend } from "./mend.tsx";
import { FigureButton, Figures, Loads, Part, ReportSection } from "./parts.tsx";

/** Weighs one load, one ingredient at a time in large figures, with the whole load below. */
export function WeighPart() {
  const { state, today, change } = useBench();
  const { weigh } = words;
  const of = loadsOf(today);
  const load = Math.min(state.load, of);
  const standing = (item: Item) =>
    standingOf(item.mass.value, item.division, state.weighed[weighedKey(load, item.id)]?.grams);
  const items = itemsOfLoad(today, state, load);
  const [chosen, choose] = useState<string | undefined>(undefined);
  const next = items.find((item) => ["open", "short"].includes(standing(item).kind));
  const item = items.find(({ id }) => id === chosen) ?? next;
  const put = (one: Item, grams: string) => {
    change((now) => ({
      ...now,
      weighed: { ...now.weighed, [weighedKey(load, one.id)]: { grams, at: Date.now() } },
    }));
    choose(undefined);
  };
  const take = (one: Item) =>
    change((now) => ({
      ...now,
      weighed: Object.fromEntries(Object.entries(now.weighed).filter(([key]) => key !== weighedKey(load, one.id))),
    }));
  if (today.batch === undefined) return undefined;
  const { value: batch, report } = today.batch;
  const listed = batch.totalWithStock ?? batch.loadTotal;
  const masses = items.flatMap(({ kind, mass }) => (kind === "dusting" ? [] : [mass.value]));
  const total: Figure =
    state.mended[load] === undefined
      ? listed
      : { ...listed, value: addedUp(masses), working: { kind: "given", by: weigh.mendedBy } };
  const first = items[0];
  const remedies = report().sections.find(({ id }) => id === "remedies");
  return (
    <>
      {remedies && <ReportSection section={remedies} report={report()} heading={weigh.tooLittle} />}
      <Part heading={weigh.heading}>
        <Loads of={of} turn={() => choose(undefined)} />
        <Mend load={load} items={items} />
        {item === undefined ? (
          <p class="done" role="status">
            {weigh.done}
          </p>
        ) : (
          <Focus key={`${load.toString()} ${item.id}`} item={item} standing={standing(item)} put={put} />
        )}
        <h3>{weigh.list}</h3>
        <ul class="weights">
          {items.map((one) => {
            const where = standing(one);
            return (
              <li key={one.id} class={where.kind} aria-current={one.id === item?.id ? "step" : undefined}>
                <input
                  type="checkbox"
                  aria-label={weigh.tick(printable(one.name))}
                  checked={where.kind === "right"}
                  onChange={({ currentTarget: { checked } }) => (checked ? put(one, one.mass.value) : take(one))}
                />
                <button type="button" class="name" onClick={() => choose(one.id)}>
                  <span>{printable(one.name)}</span> <small>{standingWords(one, where)}</small>
                </button>
                <FigureButton
                  figure={one.mass}
                  graphs={[batch.graph]}
                  label={one.name}
                  text={`${asShown(one)} ${one.unit}`}
                />
              </li>
            );
          })}
          {first && (
            <li class="total">
              <span />
              <b>{weigh.total}</b>
              <FigureButton
                figure={total}
                graphs={[batch.graph]}
                label={weigh.total}
                text={`${weightCell(total, first.unit, finest(items)).text} ${first.unit}`}
              />
            </li>
          )}
        </ul>
      </Part>
      {today.water && (
        <Part heading={weigh.water}>
          <Figures figures={[today.water.value.plan.temperature]} graphs={[today.water.value.graph]} />
        </Part>
      )}
    </>
  );
}

function finest(items: readonly Item[]): string {
  return items
    .filter(({ kind }) => kind !== "dusting")
    .reduce((least, { division }) => (Number(division) < Number(least) ? division : least), "1000");
}

function standingWords(item: Item, standing: OnScale): string {
  const { weigh } = words;
  const { finer } = item;
  const beside = [
    ...(finer ? [weigh.tooCoarse(`${asShown({ ...item, mass: finer, division: finer.value })} ${item.unit}`)] : []),
    ...(item.ice ? [weigh.ice(`${asShown(item, item.ice.value)} ${item.unit}`)] : []),
    ...(item.kind === "stock" ? [weigh.stock] : []),
    ...(item.kind === "dusting" ? [weigh.dusting] : []),
  ];
  return [statusOf(item, standing), ...beside].join("; ");
}

function statusOf(item: Item, standing: OnScale): string {
  const { weigh } = words;
  if (!("by" in standing)) return standing.kind === "open" ? weigh.on(printable(item.scale)) : weigh.right;
  const by = `${asShown(item, standing.by)} ${item.unit}`;
  return standing.kind === "short" ? weigh.short(by) : weigh.over(by);
}

interface FocusProps {
  readonly item: Item;
  readonly standing: OnScale;
  readonly put: (item: Item, grams: string) => void;
}

/** One ingredient, to be read from a step away. */
function Focus({ item, standing, put }: FocusProps) {
  const { state, today, change } = useBench();
  const { weigh } = words;
  const [typed, type] = useState("");
  const [fault, setFault] = useState("");
  const enter = () => {
    const reading = readScale(asNumber(typed), item);
    if (reading.ok) {
      put(item, reading.mass);
      return;
    }
    const step = `${asShown(item, item.division)} ${item.unit}`;
    setFault(reading.why === "division" ? weigh.division(step) : weigh.unreadable(item.unit));
  };
  const graphs = today.batch ? [today.batch.value.graph] : [];
  return (
    <form
      class="focus"
      onSubmit={(event) => {
        event.preventDefault();
        enter();
      }}
    >
      <p class="what" aria-live="polite">
        <b>{printable(item.name)}</b> <small>{standingWords(item, standing)}</small>
      </p>
      <p class="large">
        <FigureButton figure={item.mass} graphs={graphs} label={item.name} text={`${asShown(item)} ${item.unit}`} />
      </p>
      <button type="button" class="main" onClick={({ detail }) => detail < 2 && put(item, item.mass.value)}>
        {weigh.asListed}
      </button>
      <span class="entry">
        <label for="shows">{weigh.shows(item.unit)}</label>
        <input
          id="shows"
          type="text"
          inputMode="decimal"
          autoComplete="off"
          enterKeyHint="done"
          value={typed}
          aria-invalid={fault !== ""}
          aria-describedby={fault === "" ? undefined : "shows-fault"}
          onInput={(event) => {
            type(event.currentTarget.value);
            setFault("");
          }}
        />
        <button type="submit">{weigh.enter}</button>
      </span>
      {fault !== "" && (
        <p id="shows-fault" role="alert" class="problem">
          {fault}
        </p>
      )}
      <span class="entry">
        <label for="lot">{weigh.lot}</label>
        <input
          id="lot"
          type="text"
          autoComplete="off"
          value={state.lots[item.id] ?? ""}
          onInput={({ currentTarget: { value } }) =>
            change((now) => ({ ...now, lots: { ...now.lots, [item.id]: value } }), `lot ${item.id}`)
          }
        />
      </span>
    </form>
  );
}
