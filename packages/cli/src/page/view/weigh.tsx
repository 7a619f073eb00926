import { addedUp, type OnScale, readScale, standingOf } from "@noodlewright/core/sheet";
import { useState } from "preact/hooks";
import type { Item, Shown } from "../answers.ts";
import { useBench } from "../bench.ts";
import { asWeighed, finest, itemsOfLoad, loadCount } from "../items.ts";
import { asNumber, weighedKey } from "../state.ts";
import { words } from "../words.ts";
import { Mend } from "./mend.tsx";
import { FigureButton, Figures, Loads, Part, ReportSection } from "./parts.tsx";
import { Awake } from "./timers.tsx";

/** Weighs one load, one ingredient at a time in large figures, with the whole load below. */
export function WeighPart() {
  const { state, today, busy, change } = useBench();
  const { weigh } = words;
  const of = loadCount(today);
  const load = Math.min(state.load, of);
  const standing = (item: Item) =>
    standingOf(item.grams, item.division, state.weighed[weighedKey(load, item.id)]?.grams);
  const items = itemsOfLoad(today.loads?.items ?? [], state, load);
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
  if (busy) return <p role="status">{words.wait}</p>;
  if (today.loads === undefined) return undefined;
  const { total: listed, remedies } = today.loads;
  const unit = items[0]?.unit ?? "g";
  const masses = items.flatMap(({ kind, grams }) => (kind === "dusting" ? [] : [grams]));
  const mended = { unit, division: finest(items), grams: addedUp(masses) };
  const said = state.mended[load] && { text: asWeighed(mended), said: weigh.mendedBy };
  const total: Shown = { ...listed, ...said };
  return (
    <>
      {remedies.map((section) => (
        <ReportSection key={section.id} section={section} heading={weigh.tooLittle} />
      ))}
      <Part heading={weigh.heading}>
        <Loads of={of} turn={() => choose(undefined)} />
        <div class="bench">
          <div>
            <Mend load={load} items={items} />
            {item === undefined ? (
              <p class="done" role="status">
                {weigh.done}
              </p>
            ) : (
              <Focus key={`${load.toString()} ${item.id}`} item={item} standing={standing(item)} put={put} />
            )}
          </div>
          <div>
            <h3>{weigh.list}</h3>
            <ul class="weights">
              {items.map((one) => {
                const where = standing(one);
                return (
                  <li key={one.id} class={where.kind} aria-current={one.id === item?.id ? "step" : undefined}>
                    <label class="tick">
                      <input
                        type="checkbox"
                        aria-label={weigh.tick(one.name)}
                        checked={where.kind === "right"}
                        onChange={({ currentTarget: { checked } }) => (checked ? put(one, one.grams) : take(one))}
                      />
                    </label>
                    <button type="button" class="name" onClick={() => choose(one.id)}>
                      <span>{one.name}</span> <small>{standingWords(one, where)}</small>
                    </button>
                    <FigureButton figure={one.figure} />
                  </li>
                );
              })}
              <li class="total">
                <span />
                <b>{weigh.total}</b>
                <FigureButton figure={total} />
              </li>
            </ul>
            <Awake />
          </div>
        </div>
      </Part>
      {today.water.length > 0 && (
        <Part heading={weigh.water}>
          <Figures figures={today.water} />
        </Part>
      )}
    </>
  );
}

function standingWords(item: Item, standing: OnScale): string {
  const { weigh } = words;
  const { finer } = item;
  const beside = [
    ...(finer ? [weigh.tooCoarse(finer)] : []),
    ...(item.warm ? [item.warm] : []),
    ...(item.ice ? [weigh.ice(item.ice)] : []),
    ...(item.kind === "stock" ? [weigh.stock] : []),
    ...(item.kind === "dusting" ? [weigh.dusting] : []),
  ];
  return [statusOf(item, standing), ...beside].join("; ");
}

function statusOf(item: Item, standing: OnScale): string {
  const { weigh } = words;
  if (!("by" in standing)) return standing.kind === "open" ? weigh.on(item.scale) : weigh.right;
  const by = asWeighed(item, standing.by);
  return standing.kind === "short" ? weigh.short(by) : weigh.over(by);
}

interface FocusProps {
  readonly item: Item;
  readonly standing: OnScale;
  readonly put: (item: Item, grams: string) => void;
}

/** One ingredient, to be read from a step away. */
function Focus({ item, standing, put }: FocusProps) {
  const { state, change } = useBench();
  const { weigh } = words;
  const [typed, type] = useState("");
  const [fault, setFault] = useState("");
  const enter = () => {
    const reading = readScale(asNumber(typed), item);
    if (reading.ok) {
      put(item, reading.mass);
      return;
    }
    const step = asWeighed(item, item.division);
    setFault(reading.why === "division" ? weigh.division(step) : weigh.unreadable(item.unit));
  };
  return (
    <form
      class="focus"
      onSubmit={(event) => {
        event.preventDefault();
        enter();
      }}
    >
      <p class="what" aria-live="polite">
        <b>{item.name}</b> <small>{standingWords(item, standing)}</small>
      </p>
      <p class="large">
        <FigureButton figure={item.figure} />
      </p>
      <button type="button" class="main" onClick={({ detail }) => detail < 2 && put(item, item.grams)}>
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
