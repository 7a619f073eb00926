import { printable } from "@noodlewright/core/render";
import type { ComponentType } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import type { First } from "../answers.ts";
import type { Ask } from "../ask.ts";
import { BenchProvider, problemsAt, useNewBench } from "../bench.ts";
import { others } from "../differences.ts";
import { saveFile } from "../files.ts";
import type { PageData } from "../page-data.ts";
import { type Tab, words } from "../words.ts";
import { NotesPart } from "./notes.tsx";
import { Alert, Button, Minded, Problems, WorkingDialog } from "./parts.tsx";
import { RollPart } from "./roll.tsx";
import { SizePart } from "./size.tsx";
import { TakePart } from "./take.tsx";
import { Running, useAwake, useRings } from "./timers.tsx";
import { TodayPart } from "./today.tsx";
import { WeighPart } from "./weigh.tsx";

const parts: Readonly<Record<Tab, ComponentType>> = {
  size: SizePart,
  weigh: WeighPart,
  today: TodayPart,
  roll: RollPart,
  notes: NotesPart,
  take: TakePart,
};
const tabs = ["size", "today", "weigh", "roll", "notes", "take"] as const satisfies readonly Tab[];

function tabOf(hash: string): Tab {
  return tabs.find((tab) => `#${tab}` === hash) ?? "weigh";
}

interface AppProps {
  readonly data: PageData;
  readonly first: First;
  readonly ask: Ask;
  /** Whether the script runs where it is seen: before that, what can be entered is only to be read. */
  readonly begun: boolean;
}

/** The page of the bench. */
export function App({ data, first, ask, begun }: AppProps) {
  const bench = useNewBench(data, first, ask);
  const [tab, setTab] = useState(() => tabOf(location.hash));
  // What was told in full on one tab is folded on the next.
  const [told, setTold] = useState<readonly string[]>([]);
  const { today, state } = bench;
  const latest = useRef(today);
  latest.current = today;
  useEffect(() => {
    const turn = (): void => {
      setTold(latest.current.loud);
      setTab(tabOf(location.hash));
      scrollTo(0, 0);
    };
    // A key that is held down presses a button once.
    const once = (event: KeyboardEvent): void => {
      if (event.repeat && event.key === "Enter") event.preventDefault();
    };
    addEventListener("hashchange", turn);
    addEventListener("keydown", once);
    return () => {
      removeEventListener("hashchange", turn);
      removeEventListener("keydown", once);
    };
  }, []);
  const Shown = parts[tab];
  const folded = today.loud.filter((text) => told.includes(text));
  useRings(state);
  useAwake(bench.awake);
  const untold = today.problems.filter(
    (problem) => !state.entries.some(({ path }) => problemsAt([problem], path).length > 0),
  );
  const different = others(data.spec, state).length;
  const said = [
    words.spec(data.files[0]?.checksum ?? ""),
    ...(data.said === "" ? [] : [words.changed(printable(data.said))]),
    ...(different === 0 ? [] : [words.differs(different)]),
  ];
  return (
    <BenchProvider value={bench}>
      <header>
        <h1>{today.name}</h1>
        <p>{said.join(" · ")}</p>
      </header>
      {bench.elsewhere && (
        <div class="notice" role="alert">
          <p>{words.otherTab}</p>
          <Button class="main" on={() => location.reload()}>
            {words.takeOver}
          </Button>
        </div>
      )}
      <main aria-busy={bench.busy || !begun} inert={bench.elsewhere || !begun}>
        {!bench.kept && <p class="notice">{words.notKept}</p>}
        {bench.unread !== "" && (
          <div class="notice" role="alert">
            <p>{words.unread}</p>
            <div class="buttons">
              <Button on={() => saveFile("noodle-unread.json", "application/json", bench.unread)}>
                {words.saveUnread}
              </Button>
              <Button on={bench.letGo}>{words.letGo}</Button>
            </div>
          </div>
        )}
        {bench.broken && <Alert>{words.broken}</Alert>}
        {today.loud
          .filter((text) => !told.includes(text))
          .map((text) => (
            <p class="notice" key={text}>
              {text}
            </p>
          ))}
        {folded.length > 0 && (
          <details class="notice">
            <summary>{words.noticed(folded.length)}</summary>
            {folded.map((text) => (
              <p key={text}>{text}</p>
            ))}
          </details>
        )}
        {today.problems.length > 0 && (untold.length > 0 || tab === "weigh" || tab === "roll") && (
          <div class="notice" role="alert">
            <p>
              <b>{words.wrong}</b>
            </p>
            <Problems of={tab === "weigh" || tab === "roll" ? today.problems : untold} />
            <p>{words.backToSize}</p>
          </div>
        )}
        {tab !== "roll" && <Running />}
        <Shown />
        {tab === "weigh" && <Minded {...today} />}
      </main>
      <WorkingDialog />
      <nav aria-label={words.tabsLabel}>
        <p role="status">{bench.told}</p>
        {tabs.map((one) => (
          <a key={one} href={`#${one}`} aria-current={one === tab ? "page" : undefined}>
            {words.tabs[one]}
          </a>
        ))}
        <button type="button" disabled={!bench.canUndo} onClick={bench.undo}>
          {words.undo}
        </button>
      </nav>
    </BenchProvider>
  );
}
