import type { Noodle, Problem } from "@noodlewright/core";
import { type Figure, graphOf, type Path, pathText } from "@noodlewright/core/figure";
import { createContext } from "preact";
import { useCallback, useContext, useEffect, useMemo, useRef, useState } from "preact/hooks";
import { onOtherTab, remember, remembered } from "./memory.ts";
import type { PageData } from "./page-data.ts";
import { type Entry, freshState, type State, withEntry } from "./state.ts";
import { type Today, workOut } from "./today.ts";

type Graph = ReturnType<typeof graphOf>;

/** A figure whose working is asked for, and the figures it may rest on. */
export interface Asked {
  readonly figure: Figure;
  readonly graph: Graph;
}

/** What the parts of the page share. */
export interface Bench {
  readonly data: PageData;
  readonly state: State;
  /** The noodle as the spec has it, and as it is today. */
  readonly written: Noodle | undefined;
  readonly before: Today;
  readonly today: Today;
  /** Whether today is still being worked out. */
  readonly busy: boolean;
  readonly kept: boolean;
  readonly elsewhere: boolean;
  readonly asked: Asked | undefined;
  readonly canUndo: boolean;
  /** Changes what was entered; changes of one name that follow each other are undone in one. */
  readonly change: (how: (state: State) => State, name?: string) => void;
  readonly enter: (entry: Entry, instead?: readonly Path[]) => void;
  readonly undo: () => void;
  readonly ask: (asked: Asked | undefined) => void;
}

const BenchContext = createContext<Bench | undefined>(undefined);
export const BenchProvider = BenchContext.Provider;

/** The bench of the page. */
export function useBench(): Bench {
  const bench = useContext(BenchContext);
  if (bench === undefined) throw new Error("a part of the page stands outside of it");
  return bench;
}

/** Most changes that can be undone. */
const mostUndone = 100;

interface History {
  readonly state: State;
  readonly past: readonly State[];
  readonly last?: string | undefined;
}

/** Holds what was entered, keeps it on the device, and works the noodle out again when it changes. */
export function useNewBench(data: PageData): Bench {
  const [history, setHistory] = useState<History>(() => ({ state: remembered(data.key) ?? freshState, past: [] }));
  const { state } = history;
  const before = useMemo(() => workOut(data, freshState), [data]);
  const written = before.noodle;
  const [worked, setWorked] = useState(() => ({
    state,
    today: state.entries.length === 0 ? before : workOut(data, state, written),
  }));
  const busy = worked.state.entries !== state.entries || worked.state.keepWet !== state.keepWet;
  useEffect(() => {
    if (!busy) return;
    // After the digit is on the screen.
    const timer = setTimeout(() => setWorked({ state, today: workOut(data, state, written) }), 0);
    return () => clearTimeout(timer);
  }, [busy, state, data, written]);
  const [kept, setKept] = useState(true);
  const [elsewhere, setElsewhere] = useState(false);
  const first = useRef(true);
  useEffect(() => {
    if (first.current) first.current = false;
    else setKept(remember(data.key, state));
  }, [data, state]);
  useEffect(() => onOtherTab(data.key, () => setElsewhere(true)), [data]);
  const change = useCallback<Bench["change"]>((how, name) => {
    setHistory(({ state: now, past, last }) => {
      const next = how(now);
      const joined = name !== undefined && name === last;
      return { state: next, past: joined ? past : [...past.slice(-mostUndone), now], last: name };
    });
  }, []);
  const [asked, ask] = useState<Asked | undefined>(undefined);
  return {
    data,
    state,
    written,
    before,
    today: worked.today,
    busy,
    kept,
    elsewhere,
    asked,
    canUndo: history.past.length > 0,
    change,
    enter: (entry, instead) => change((now) => withEntry(now, entry, instead), pathText(entry.path)),
    undo: () =>
      setHistory(({ state: now, past }) => ({ state: past.at(-1) ?? now, past: past.slice(0, -1), last: undefined })),
    ask,
  };
}

/** The problems that lie at a place of the spec or within it. */
export function problemsAt(problems: readonly Problem[], path: Path): readonly Problem[] {
  return problems.filter((problem) => path.every((step, index) => problem.path[index] === step));
}

/** A figure with all that it rests on, of one id the first. */
export function askedOf(figure: Figure, ...graphs: readonly Graph[]): Asked {
  return { figure, graph: graphOf([figure], ...graphs) };
}
