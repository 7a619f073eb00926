import { useEffect, useRef, useState } from "preact/hooks";
import { useBench } from "../bench.ts";
import { timeOf } from "../clock.ts";
import { readTyped } from "../numbers.ts";
import { latestOf, loadOf, running, type State, type Timer, withTimer } from "../state.ts";
import { words } from "../words.ts";
import { Button, Labelled, Loads, Part } from "./parts.tsx";

type Timed = Pick<Timer, "label" | "minutes" | "most">;

function timedWords({ label, minutes, most }: Timed): string {
  const { roll } = words;
  const what = roll.lasts(label, minutes);
  return most === undefined ? what : roll.most(what, most);
}

/** Timers that end at a time of day, whether or not somebody looks. */
export function Timers() {
  const { today, state, last: of, change } = useBench();
  const { roll } = words;
  const timers = running(state);
  const now = useNow(timers);
  const [own, setOwn] = useState("10");
  const stages = today.stages.map(({ stage, least, most }) => {
    return { label: roll.stages[stage], minutes: least, ...(most !== undefined && { most }) };
  });
  const reading = readTyped(own, 3);
  const ownMinutes = reading.ok ? Number(reading.number) : 0;
  const valid = ownMinutes > 0 && ownMinutes <= 1440;
  const start = (timed: Timed) => {
    speaker();
    change((before) => withTimer(before, Math.min(before.load, of), timed, Date.now()));
  };
  const button = (timed: Timed) => (
    <Button key={timed.label} on={() => start(timed)}>
      {roll.start(timedWords(timed))}
    </Button>
  );
  const end = (timer: Timer) =>
    change((before) => ({
      ...before,
      timers: before.timers.map((one) => (one === timer ? { ...one, ended: Date.now() } : one)),
    }));
  return (
    <Part heading={roll.timers}>
      <Loads />
      <ul class="timers">
        {timers.map((timer) => (
          <li key={keyOf(timer)} class={timer.end <= now ? "over" : undefined}>
            <span>{nameOf(timer, of)}</span>
            <b role="timer">{leftOf(timer, now)}</b>
            <span>{endWords(timer, now)}</span>
            <Button on={() => end(timer)}>{roll.end(nameOf(timer, of))}</Button>
          </li>
        ))}
      </ul>
      <div class="buttons">{stages.map(button)}</div>
      <details open={stages.length === 0}>
        <summary>{roll.ownTimer}</summary>
        <Labelled label={roll.minutes} wrong={valid ? [] : [{ found: `"${own}"`, expected: words.number.minutes }]}>
          {(tied) => (
            <input
              {...tied}
              type="text"
              inputMode="decimal"
              autoComplete="off"
              value={own}
              onInput={({ currentTarget: { value } }) => setOwn(value)}
            />
          )}
        </Labelled>
        {valid && button({ label: roll.own, minutes: ownMinutes })}
      </details>
      <Awake />
      {timers.length > 0 && <p class="hint">{roll.honest}</p>}
    </Part>
  );
}

/** The timers that run, in a line for the other parts of the page. */
export function Running() {
  const { state, last } = useBench();
  const timers = running(state);
  const now = useNow(timers);
  return timers.map((timer) => (
    <p key={keyOf(timer)} class={timer.end <= now ? "running over" : "running"}>
      {nameOf(timer, last)} <b role="timer">{leftOf(timer, now)}</b>
    </p>
  ));
}

/** What a timer times, and of which load where there are several. */
function nameOf(timer: Timer, of: number): string {
  const name = words.roll.lasts(timer.label, timer.minutes);
  return of > 1 ? words.roll.of(loadOf(timer), name) : name;
}

/** When a timer ends; when it has to be over, as soon as it rang. */
function endWords(timer: Timer, now: number): string {
  const latest = latestOf(timer);
  const { roll } = words;
  if (latest === undefined || now < timer.end) return roll.ends(timeOf(new Date(timer.end)));
  return roll.latest(timeOf(new Date(latest)));
}

function keyOf({ label, end, load = 1 }: Timer): string {
  return `${load} ${label} ${end}`;
}

function leftOf(timer: Timer, now: number): string {
  const latest = latestOf(timer);
  const { end } = timer;
  if (latest !== undefined && now >= latest) return words.roll.late(timeOf(new Date(latest)));
  return end > now ? words.roll.left(clock(end - now)) : words.roll.over(timeOf(new Date(end)));
}

/** The time, and another look at it twice a second as long as a timer runs. */
function useNow(timers: readonly Timer[]): number {
  const [, look] = useState(0);
  useEffect(() => {
    if (timers.length === 0) return;
    const tick = setInterval(() => look(Date.now()), 500);
    return () => clearInterval(tick);
  }, [timers.length]);
  return Date.now();
}

function clock(milliseconds: number): string {
  const seconds = Math.ceil(milliseconds / 1000);
  const [hours, minutes] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60];
  const rest = String(seconds % 60).padStart(2, "0");
  return hours === 0 ? `${minutes}:${rest}` : `${hours}:${String(minutes).padStart(2, "0")}:${rest}`;
}

/** Rings at the end of each timer, and when it has to be over, whichever part of the page is open. */
export function useRings(state: Pick<State, "timers">): void {
  const seen = useRef(Date.now());
  useEffect(() => {
    const timers = running(state);
    const rings = timers.flatMap((timer) => [timer.end, latestOf(timer) ?? timer.end]);
    const look = (): void => {
      const now = Date.now();
      if (rings.some((end) => end > seen.current && end <= now)) ring();
      seen.current = now;
    };
    look();
    if (timers.length === 0) return;
    // The tick also hears a clock that jumped; a page out of sight ticks late, and a wait of its own does not.
    const tick = setInterval(look, 500);
    const waits = rings.map((end) => setTimeout(look, Math.max(0, end - Date.now())));
    return () => {
      clearInterval(tick);
      for (const one of waits) clearTimeout(one);
    };
  }, [state.timers]);
}

let opened: AudioContext | undefined;

/** What makes sound. A browser lets it do so after a tap: a start of a timer is one. */
function speaker(): AudioContext {
  opened ??= new AudioContext();
  void opened.resume();
  return opened;
}

/** Three short tones, and a shake where the device can; neither before the page was touched. */
function ring(): void {
  if (!navigator.userActivation?.hasBeenActive) return;
  navigator.vibrate?.([400, 200, 400]);
  const sound = speaker();
  for (const start of [0, 0.4, 0.8]) {
    const tone = sound.createOscillator();
    tone.frequency.value = 880;
    tone.connect(sound.destination);
    tone.start(sound.currentTime + start);
    tone.stop(sound.currentTime + start + 0.2);
  }
}

/** Keeps the screen on as long as it is wanted and seen: a browser lets go of it when the page is out of sight. */
export function useAwake(wanted: boolean): void {
  useEffect(() => {
    if (!wanted) return;
    let lock: WakeLockSentinel | undefined;
    let gone = false;
    const hold = (): void => {
      if (document.visibilityState === "hidden") return;
      navigator.wakeLock.request("screen").then(
        (held) => {
          lock = held;
          if (gone) void held.release();
        },
        () => undefined,
      );
    };
    hold();
    document.addEventListener("visibilitychange", hold);
    return () => {
      gone = true;
      document.removeEventListener("visibilitychange", hold);
      void lock?.release();
    };
  }, [wanted]);
}

/** The wish that the screen stays on, where the browser can do that. */
export function Awake() {
  const { awake, stayAwake } = useBench();
  if (!("wakeLock" in navigator)) return undefined;
  return (
    <label class="choice">
      <input type="checkbox" checked={awake} onChange={({ currentTarget: { checked } }) => stayAwake(checked)} />
      {words.roll.awake}
    </label>
  );
}
