import { addedUp, type OnScale, readScale, standingOf } from "@noodlewright/core/sheet";
import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Item, Shown } from "../answers.ts";
import { useBench } from "../bench.ts";
import { differences } from "../differences.ts";
import {
  asShown,
  asWeighed,
  type Bowl,
  bowlOf,
  doughOf,
  finest,
  isMissing,
  isPast,
  isPlain,
  itemsOfLoad,
  loadCount,
  mendOf,
  otherStock,
  reopened,
  withItem,
} from "../items.ts";
import { readTyped, splitTyped } from "../numbers.ts";
import { lotOf, weighedKey, without } from "../state.ts";
import { words } from "../words.ts";
import { OtherDay } from "./anew.tsx";
import { Mend } from "./mend.tsx";
import { Alert, Button, FigureButton, Figures, Loads, Part, ReportSection } from "./parts.tsx";
import { Awake } from "./timers.tsx";

/** Weighs one load, one ingredient at a time in large figures, with the whole load below. */
export function WeighPart() {
  const { data, state, today, listed, load, busy, change } = useBench();
  const { weigh } = words;
  const of = loadCount(today);
  const items = itemsOfLoad(listed, state, load);
  const past = isPast(listed, state, load);
  const plain = isPlain(listed, state, load);
  const stockOf = otherStock(items, state, load);
  const bowl = bowlOf(items, state, load);
  const { standing, foreign, counted } = bowl;
  const barred = new Map(foreign.flatMap((one) => bowl.barredBy(one).map(({ id }) => [id, one.name])));
  const [chosen, choose] = useState<string | undefined>(undefined);
  const tellOf = (item: Item) => {
    const by = barred.get(item.id);
    return by === undefined ? standingWords(item, bowl) : weigh.barred(by);
  };
  const free = items.filter(({ id }) => !barred.has(id));
  const missing = free.find((one) => isMissing(standing(one)));
  const isOver = items.some((one) => one.kind !== "dusting" && standing(one).kind === "over");
  // By the list as it is, nothing more is to go into a load that has too much of something.
  const item = free.find(({ id }) => id === chosen) ?? (isOver ? undefined : missing);
  const put = (one: Item, grams: string) => {
    const differs = differences(data.spec, today.spec, state);
    const { found } = today;
    change((now) =>
      withItem(listed, now, load, one, { grams, at: Date.now(), differs, ...(found.length > 0 && { found }) }),
    );
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
  return (
    <>
      {!plain &&
        remedies.map((section) => <ReportSection key={section.id} section={section} heading={weigh.tooLittle} />)}
      <Part heading={weigh.heading}>
        <Loads turn={() => choose(undefined)} />
        <OtherDay />
        <div class="bench">
          <div>
            {foreign.map((one) => (
              <Alert key={one.id}>{weigh.foreign(one.name, asWeighed(one), namesOf(bowl.barredBy(one)))}</Alert>
            ))}
            {counted.map((one) => (
              <Alert key={one.id}>{weigh.counted(one.name, asWeighed(one), partsOf(one, items))}</Alert>
            ))}
            {stockOf !== undefined && <Alert>{weigh.otherStock(stockOf)}</Alert>}
            {plain && !past && <p class="notice">{weigh.plain}</p>}
            {load > of && <p class="notice">{weigh.beyond(load, of)}</p>}
            {past && <p class="hint">{weigh.past}</p>}
            {foreign.length === 0 && !past && <Mend items={items} bowl={bowl} />}
            <div class={item && "focus"}>
              <p class={item ? "what" : "done"} aria-live="polite" tabIndex={-1} ref={live}>
                {item ? (
                  <>
                    <b>{item.name}</b>{" "}
                    <small>
                      {[tellOf(item), ...(standing(item).kind === "short" ? [weigh.allOf(asWeighed(item))] : [])].join(
                        "; ",
                      )}
                    </small>
                  </>
                ) : foreign.length > 0 ? (
                  weigh.doneForeign
                ) : isOver ? (
                  missing ? (
                    weigh.overFirst
                  ) : (
                    weigh.doneOver
                  )
                ) : (
                  weigh.done
                )}
              </p>
              {item && <Focus item={item} weighed={bowl.inAll(item)} where={standing(item)} put={put} />}
            </div>
          </div>
          <div>
            <h3>{weigh.list}</h3>
            <ul class="weights">
              {items.map((one) => {
                const where = standing(one);
                return (
                  <li
                    key={one.id}
                    class={barred.has(one.id) ? "over" : where.kind}
                    aria-current={one.id === item?.id ? "step" : undefined}
                  >
                    <label class="tick">
                      <input
                        type="checkbox"
                        aria-label={weigh.tick(one.name)}
                        checked={where.kind === "right"}
                        disabled={barred.has(one.id)}
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
              {[...counted, ...foreign].map((one) => (
                <li key={`off ${one.id}`} class={counted.includes(one) ? "right" : "over"}>
                  <label class="tick">
                    <input type="checkbox" aria-label={weigh.tick(one.name)} checked onChange={() => take(one)} />
                  </label>
                  <span class="name">
                    <span>{one.name}</span> <small>{counted.includes(one) ? weigh.offCounted : weigh.offList}</small>
                  </span>
                  <b class="figure">{asWeighed(one)}</b>
                </li>
              ))}
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

const namesOf = (items: readonly Item[]): readonly string[] => items.map(({ name }) => name);

/** What a stock holds, each to the step of its scale. */
function partsOf({ holds = [] }: Item, items: readonly Item[]): string {
  return holds
    .flatMap(({ id, name, grams }) => {
      const item = items.find((one) => one.id === id);
      return item ? [`${name} ${asWeighed(item, grams)}`] : [];
    })
    .join(", ");
}

function standingWords(item: Item, bowl: Bowl): string {
  const { weigh } = words;
  const { finer } = item;
  const where = bowl.standing(item);
  const beside = [
    ...(finer && isMissing(where) ? [weigh.tooCoarse(finer)] : []),
    ...(item.warm ? [item.warm] : []),
    // Of what is poured already, nothing tells how warm it was.
    ...(item.ice && where.kind !== "short" ? [weigh.ice(item.ice)] : []),
    ...(item.kind === "stock" ? [weigh.stock] : []),
    ...(item.kind === "dusting" ? [weigh.dusting] : []),
  ];
  return [statusOf(item, where), ...beside].join("; ");
}

function statusOf(item: Item, where: OnScale): string {
  const { weigh } = words;
  const lots = item.lots ? [weigh.lots(item.lots)] : [];
  if (!("by" in where)) return where.kind === "open" ? [weigh.on(item.scale), ...lots].join(", ") : weigh.right;
  const by = asWeighed(item, where.by);
  if (where.kind === "over") return weigh.over(by);
  return `${weigh.short(by)} ${weigh.on(item.scale)}`;
}

interface FocusProps {
  readonly item: Item;
  /** What is in of it, g. */
  readonly weighed: string | undefined;
  readonly where: OnScale;
  readonly put: (item: Item, grams: string) => void;
}

/** One ingredient, to be read from a step away. It stays through the ingredients, and so does the place on it. */
function Focus({ item, weighed, where, put }: FocusProps) {
  const { state, load, change } = useBench();
  const { weigh } = words;
  const [typed, type] = useState("");
  const [fault, setFault] = useState("");
  /** A mass that may be all that is in, or what was added to it, g. */
  const [doubt, setDoubt] = useState<string | undefined>(undefined);
  const both = addedUp([weighed ?? "0", doubt ?? "0"]);
  const clear = () => {
    type("");
    setFault("");
    setDoubt(undefined);
  };
  // Before anything can be typed: what comes late would clear what came first.
  useLayoutEffect(clear, [load, item.id]);
  const give = (grams: string) => {
    clear();
    put(item, grams);
  };
  const figure = where.kind === "short" ? { ...item.figure, text: `+${asWeighed(item, where.by)}` } : item.figure;
  /** Whether a mass may be what was added to what is in. */
  const mayBeMore = (mass: string): boolean =>
    where.kind === "short" &&
    (Number(mass) < Number(weighed) || standingOf(where.by, item.division, mass).kind === "right");
  const enter = () => {
    const { number, unit } = splitTyped(typed);
    const [, decimals = ""] = asShown(item, item.division).split(".");
    const read = readTyped(number, decimals.length);
    const reading = readScale(read.ok ? read.number : "", { ...item, unit: unit || item.unit });
    const most = String(Number(item.grams) * 100);
    if (reading.ok && Number(reading.mass) > Number(most)) setFault(words.needs(weigh.absurd(asWeighed(item, most))));
    else if (reading.ok && mayBeMore(reading.mass)) setDoubt(reading.mass);
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
          <FigureButton figure={figure} />
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
          <button type="submit" onClick={(event) => event.detail > 1 && event.preventDefault()}>
            {weigh.enter}
          </button>
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
              <Button on={() => give(both)}>{weigh.more(asWeighed(item, doubt), asWeighed(item, both))}</Button>
              <Button on={() => give(doubt)}>{weigh.only(asWeighed(item, doubt))}</Button>
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
