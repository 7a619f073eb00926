import { addedUp, type OnScale, readScale, standingOf } from "@noodlewright/core/sheet";
import { useEffect, useRef, useState } from "preact/hooks";
import type { Item, Shown } from "../answers.ts";
import { useBench } from "../bench.ts";
import { differences } from "../differences.ts";
import {
  asShown,
  asWeighed,
  doughOf,
  finest,
  isPast,
  itemsOfLoad,
  lastLoad,
  loadCount,
  mendOf,
  reopened,
  withItem,
} from "../items.ts";
import { readTyped, splitTyped } from "../numbers.ts";
import { lotOf, weighedKey, without } from "../state.ts";
import { words } from "../words.ts";
import { OtherDay } from "./anew.tsx";
import { Mend } from "./mend.tsx";
import { FigureButton, Figures, Loads, Part, ReportSection } from "./parts.tsx";
import { Awake } from "./timers.tsx";

/** Weighs one load, one ingredient at a time in large figures, with the whole load below. */
export function WeighPart() {
  const { data, state, today, busy, change } = useBench();
  const { weigh } = words;
  const of = loadCount(today);
  const load = Math.min(state.load, lastLoad(today, state));
  const weightOf = ({ id }: Item) => state.weighed[weighedKey(load, id)];
  const standing = (item: Item) => standingOf(item.grams, item.division, weightOf(item)?.grams);
  const listed = today.loads?.items ?? [];
  const items = itemsOfLoad(listed, state, load);
  const past = isPast(listed, state, load);
  // What is in of another product is not of the list.
  const others = items.flatMap((item) => {
    const { name = item.name } = weightOf(item) ?? {};
    return name === item.name ? [] : [{ item, name }];
  });
  const [chosen, choose] = useState<string | undefined>(undefined);
  const tellOf = (item: Item) => {
    const other = others.find((one) => one.item.id === item.id);
    return other ? weigh.other(other.name) : standingWords(item, standing(item));
  };
  const next = items.find((item) => ["open", "short"].includes(standing(item).kind));
  const item = items.find(({ id }) => id === chosen) ?? next;
  const put = (one: Item, grams: string) => {
    const differs = differences(data.spec, today.spec, state);
    change((now) => withItem(listed, now, load, one, { grams, at: Date.now(), differs }));
    choose(undefined);
  };
  const take = (one: Item) =>
    change((now) => reopened({ ...now, weighed: without(now.weighed, weighedKey(load, one.id)) }, load));
  const live = useRef<HTMLParagraphElement>(null);
  const opened = useRef(state);
  useEffect(() => {
    // A button that has done its work is gone: go on from what is next.
    if (opened.current !== state && document.activeElement === document.body) live.current?.focus();
  }, [state]);
  if (busy) return <p role="status">{words.wait}</p>;
  if (today.loads === undefined) return undefined;
  const { total: all, remedies } = today.loads;
  const unit = items[0]?.unit ?? "g";
  const mended = { unit, division: finest(items), grams: doughOf(items) };
  const isMended = mendOf(listed, state, load) === "holds";
  const said = past ? weigh.listThen : weigh.mendedBy;
  const total: Shown = { ...all, ...((isMended || past) && { text: asWeighed(mended), said }) };
  const isOver = items.some((one) => standing(one).kind === "over");
  return (
    <>
      {remedies.map((section) => (
        <ReportSection key={section.id} section={section} heading={weigh.tooLittle} />
      ))}
      <Part heading={weigh.heading}>
        <Loads turn={() => choose(undefined)} />
        <OtherDay load={load} />
        <div class="bench">
          <div>
            {others.map(({ item: { id, name }, name: was }) => (
              <p class="notice" role="alert" key={id}>
                {weigh.otherIn(was, name)}
              </p>
            ))}
            {load > of && <p class="notice">{weigh.beyond(load, of)}</p>}
            {past && <p class="hint">{weigh.past}</p>}
            {others.length === 0 && !past && <Mend load={load} items={items} />}
            <div class={item && "focus"}>
              <p class={item ? "what" : "done"} aria-live="polite" tabIndex={-1} ref={live}>
                {item ? (
                  <>
                    <b>{item.name}</b> <small>{tellOf(item)}</small>
                  </>
                ) : isOver ? (
                  weigh.doneOver
                ) : (
                  weigh.done
                )}
              </p>
              {item && <Focus load={load} item={item} weighed={weightOf(item)?.grams} put={put} />}
            </div>
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
                      <span>{one.name}</span> <small>{tellOf(one)}</small>
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
  const lots = item.lots ? [weigh.lots(item.lots)] : [];
  if (!("by" in standing)) return standing.kind === "open" ? [weigh.on(item.scale), ...lots].join(", ") : weigh.right;
  const by = asWeighed(item, standing.by);
  return standing.kind === "short" ? weigh.short(by) : weigh.over(by);
}

interface FocusProps {
  readonly load: number;
  readonly item: Item;
  /** What is in of it, g. */
  readonly weighed: string | undefined;
  readonly put: (item: Item, grams: string) => void;
}

/** One ingredient, to be read from a step away. It stays through the ingredients, and so does the place on it. */
function Focus({ load, item, weighed, put }: FocusProps) {
  const { state, change } = useBench();
  const { weigh } = words;
  const [typed, type] = useState("");
  const [fault, setFault] = useState("");
  /** A mass that may be all that is in, or what was added to it, g. */
  const [doubt, setDoubt] = useState<string | undefined>(undefined);
  const clear = () => {
    type("");
    setFault("");
    setDoubt(undefined);
  };
  useEffect(clear, [load, item.id]);
  const give = (grams: string) => {
    clear();
    put(item, grams);
  };
  const isShort = standingOf(item.grams, item.division, weighed).kind === "short";
  const enter = () => {
    const { number, unit } = splitTyped(typed);
    const [, decimals = ""] = asShown(item, item.division).split(".");
    const read = readTyped(number, decimals.length);
    const reading = readScale(read.ok ? read.number : "", { ...item, unit: unit || item.unit });
    const most = String(Number(item.grams) * 100);
    if (reading.ok && Number(reading.mass) > Number(most)) setFault(words.needs(weigh.absurd(asWeighed(item, most))));
    else if (reading.ok && isShort && Number(reading.mass) < Number(weighed)) setDoubt(reading.mass);
    else if (reading.ok) give(reading.mass);
    else if (reading.why === "division") setFault(weigh.division(asWeighed(item, item.division)));
    else setFault(words.needs(read.ok ? words.number.any : read.needs));
  };
  return (
    <>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          enter();
        }}
      >
        <p class="large">
          <FigureButton figure={item.figure} />
        </p>
        <button type="button" class="main" onClick={({ detail }) => detail < 2 && give(item.grams)}>
          {weigh.asListed}
        </button>
        <span class="entry">
          <label for="shows">{weighed === undefined ? weigh.shows(item.unit) : weigh.inAll(item.unit)}</label>
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
              clear();
              type(event.currentTarget.value);
            }}
          />
          <button type="submit">{weigh.enter}</button>
        </span>
        {fault !== "" && (
          <p id="shows-fault" role="alert" class="problem">
            {fault}
          </p>
        )}
        {doubt !== undefined && weighed !== undefined && (
          <div role="alert" class="notice">
            <p>{weigh.less(asWeighed(item, weighed))}</p>
            <div class="buttons">
              {[
                [
                  addedUp([weighed, doubt]),
                  weigh.more(asWeighed(item, doubt), asWeighed(item, addedUp([weighed, doubt]))),
                ],
                [doubt, weigh.only(asWeighed(item, doubt))],
              ].map(([grams = "", label]) => (
                <button type="button" key={grams} onClick={() => give(grams)}>
                  {label}
                </button>
              ))}
            </div>
          </div>
        )}
      </form>
      <span class="entry">
        <label for="lot">{weigh.lot}</label>
        <input
          id="lot"
          type="text"
          autoComplete="off"
          value={lotOf(state, load, item.id)}
          onInput={({ currentTarget: { value } }) => {
            const key = weighedKey(load, item.id);
            change((now) => ({ ...now, lots: { ...now.lots, [key]: value } }), `lot ${key}`);
          }}
        />
      </span>
    </>
  );
}
