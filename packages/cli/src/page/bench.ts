import { type Path, pathText } from "@noodlewright/core/figure";
import { createContext } from "preact";
import { useCallback, useContext, useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Answers, AnswerTo, Asked, Changes, First, Question, Shown, Told } from "./answers.ts";
import type { Ask } from "./ask.ts";
import { placeName } from "./differences.ts";
import { lastLoad } from "./items.ts";
import { openMemory } from "./memory.ts";
import type { PageData } from "./page-data.ts";
import { type Entry, freshState, keyOf, type State, withEntry } from "./state.ts";
import { undoneText } from "./undone.ts";

/** What the parts of the page share. */
export type Bench = ReturnType<typeof useNewBench>;

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
  readonly told: string;
  readonly undone: number;
}

/** What of a state the weights follow from. */
export function changesOf({ entries, keepWet }: State): Changes {
  return { entries, keepWet };
}

/** Holds what was entered, keeps it on the device, and has the noodle worked out again when it changes. */
export function useNewBench(data: PageData, first: First, ask: Ask) {
  const [memory] = useState(() => openMemory(data.key));
  const [unread, setUnread] = useState(memory.unread);
  const [history, setHistory] = useState<History>(() => {
    const past = memory.before === undefined ? [] : [memory.before];
    return { state: memory.opened ?? freshState, past, told: "", undone: 0 };
  });
  const { state } = history;
  const [worked, setWorked] = useState<{ readonly of: Changes; readonly today: Answers }>({
    of: freshState,
    today: { ...first.answers, spec: data.spec },
  });
  // What was entered when the core failed: another change, or an undo, is tried again.
  const [failed, setFailed] = useState<State | undefined>(undefined);
  const latest = useRef(state);
  latest.current = state;
  const answered = useCallback<Ask>(
    (question, asked) =>
      new Promise((resolve) => {
        ask(question, asked).then(resolve, () => setFailed(latest.current));
      }),
    [ask],
  );
  const busy = worked.of !== state && keyOf(worked.of) !== keyOf(state);
  // One question at a time: after a key that came meanwhile, the next question is of the last.
  const asking = useRef(false);
  const work = useCallback(
    (of: State) => {
      asking.current = true;
      ask("answers", changesOf(of))
        .then((today) => {
          asking.current = false;
          setWorked({ of, today });
        })
        .catch(() => {
          asking.current = false;
          setFailed(of);
        });
    },
    [ask],
  );
  useEffect(() => {
    if (busy && !asking.current && failed !== state) work(state);
  });
  useEffect(() => {
    // Starts the core when the first screen stands, and a first tap has been answered.
    setTimeout(() => asking.current || work(state), 300);
  }, []);
  const [keeping, setKeeping] = useState<ReturnType<typeof memory.keep>>("kept");
  const opened = useRef(state);
  // Before anything else can happen: the next moment may be a reload.
  useLayoutEffect(() => {
    if (opened.current !== state && keeping !== "elsewhere") setKeeping(memory.keep(state, history.past.at(-1)));
  }, [state]);
  useEffect(() => memory.onOther(() => setKeeping("elsewhere")), [memory]);
  /** Changes what was entered; changes of one name that follow each other are undone in one. */
  const change = useCallback((how: (state: State) => State, name?: string, told = "") => {
    setHistory(({ state: now, past, last, undone }) => {
      const next = how(now);
      const joined = name !== undefined && name === last;
      return { state: next, past: joined ? past : [...past.slice(-mostUndone), now], last: name, told, undone };
    });
  }, []);
  const { today } = worked;
  const last = lastLoad(today, state);
  const [awake, stayAwake] = useState(false);
  const [wanted, want] = useState<Shown | undefined>(undefined);
  return {
    data,
    first,
    /** Asks the core. Where that fails no answer comes, and the page is `broken`. */
    ask: answered,
    state,
    /** The noodle as it is today, as far as it is worked out; `busy` while it still is. */
    today,
    busy,
    /** What is weighed for a load of it, the load that is looked at, and the last there is. */
    listed: today.loads?.items ?? [],
    load: Math.min(state.load, last),
    last,
    kept: keeping !== "refused",
    /** What this browser kept and this page cannot read. */
    unread,
    letGo: () => {
      memory.letGo();
      setUnread("");
    },
    /** Whether another tab has gone on, so that nothing is entered here any more. */
    elsewhere: keeping === "elsewhere",
    broken: failed === state,
    canUndo: history.past.length > 0 && keeping !== "elsewhere",
    /** How often something was undone. */
    undone: history.undone,
    /** What was done last, where it may be out of sight. */
    told: history.told,
    change,
    enter: (entry: Entry, instead?: readonly Path[]) =>
      change((now) => withEntry(now, entry, instead), pathText(entry.path)),
    undo: () =>
      setHistory(({ state: now, past, undone }) => {
        const state = past.at(-1) ?? now;
        const told = undoneText(now, state, (path) => placeName(today.spec, data.spec, path));
        return { state, past: past.slice(0, -1), told, undone: undone + 1 };
      }),
    /** The figure whose working is asked for. */
    wanted,
    want,
    /** Whether the screen is to stay on. */
    awake,
    stayAwake,
  };
}

/** What the core says to a question of a part of the page; the last answer stays until the next, which is `fresh`. */
export function useAnswer<Q extends Question>(question: Q, asked: Asked<Q> | undefined) {
  const { ask } = useBench();
  const key = asked === undefined ? undefined : JSON.stringify(asked);
  const [got, set] = useState<{ readonly key: string; readonly answer: AnswerTo<Q> } | undefined>(undefined);
  useEffect(() => {
    if (key === undefined || asked === undefined) return;
    let gone = false;
    void ask(question, asked).then((answer) => gone || set({ key, answer }));
    return () => {
      gone = true;
    };
  }, [key]);
  return { answer: got?.answer, fresh: got?.key === key };
}

/** The problems that lie at a place of the spec or within it. */
export function problemsAt(problems: readonly Told[], path: Path): readonly Told[] {
  return problems.filter((problem) => path.every((step, index) => problem.path[index] === step));
}
