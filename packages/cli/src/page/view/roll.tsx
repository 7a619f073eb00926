import { useEffect, useState } from "preact/hooks";
import { textAt, valueAt } from "../../input/put.ts";
import { changesOf, useAnswer, useBench } from "../bench.ts";
import { timeOf } from "../clock.ts";
import { splitQuantity } from "../state.ts";
import { words } from "../words.ts";
import { Part, ProblemText, ReportSection } from "./parts.tsx";

/** The passes, the cut, the timers and the times of the loads. */
export function RollPart() {
  const { today, enter, state } = useBench();
  const { roll } = words;
  const { answer } = useAnswer("roll", changesOf(state));
  const planned = valueAt(today.spec, ["plan"]) !== undefined;
  return (
    <>
      <Part heading={roll.heading}>
        {valueAt(today.spec, ["sheet"]) === undefined && <p>{roll.none}</p>}
        {answer === undefined && <p>{words.wait}</p>}
        {answer?.sheetProblems.map((one) => (
          <ProblemText key={one.found} problem={one} />
        ))}
      </Part>
      {answer?.sheet.map((section) => (
        <ReportSection key={section.id} section={section} />
      ))}
      <Timers />
      {planned && (
        <Part heading={roll.day}>
          <div class="field">
            <label for="serve">{roll.serve}</label>
            <input
              id="serve"
              type="time"
              value={textAt(today.spec, ["plan", "serve"])}
              onInput={({ currentTarget: { value } }) => enter({ path: ["plan", "serve"], text: value, unit: "" })}
            />
          </div>
          {valueAt(today.spec, ["plan", "serve"]) === undefined && <p>{roll.noDay}</p>}
          {answer?.dayProblems.map((one) => (
            <ProblemText key={one.found} problem={one} />
          ))}
        </Part>
      )}
      {answer?.day.map((section) => (
        <ReportSection key={section.id} section={section} />
      ))}
    </>
  );
}

/** Minutes of a time as a spec writes it. */
function minutesOf(value: unknown): number | undefined {
  const { text, unit } = splitQuantity(value);
  const factor = { min: 1, h: 60, s: 1 / 60 }[unit];
  return factor === undefined || text === "" ? undefined : Number(text) * factor;
}

/** Timers that end at a time of day, whether or not somebody looks. */
function Timers() {
  const { today, state, change } = useBench();
  const { roll } = words;
  const [now, setNow] = useState(() => Date.now());
  const [own, setOwn] = useState("10");
  const running = state.timers.length > 0;
  useEffect(() => {
    if (!running) return;
    const tick = setInterval(() => setNow(Date.now()), 500);
    return () => clearInterval(tick);
  }, [running]);
  useEffect(() => {
    const due = state.timers.map(({ end }) => end - Date.now()).filter((left) => left > 0);
    const rings = due.map((left) => setTimeout(ring, left));
    return () => {
      for (const one of rings) clearTimeout(one);
    };
  }, [state.timers]);
  const stages = (["rest", "mature", "mix", "boil"] as const).flatMap((stage) => {
    const value = valueAt(today.spec, ["plan", stage]);
    const minutes = minutesOf(typeof value === "object" ? valueAt(value, ["least"]) : value);
    return minutes === undefined ? [] : [{ label: roll.stages[stage], minutes }];
  });
  const ownMinutes = Number(own.replace(",", "."));
  const valid = ownMinutes > 0 && ownMinutes <= 1440;
  const all = [...stages, ...(valid ? [{ label: roll.own, minutes: ownMinutes }] : [])];
  const start = (label: string, minutes: number) =>
    change((before) => ({
      ...before,
      timers: [...before.timers, { label: `${label}, ${minutes} min`, minutes, end: Date.now() + minutes * 60_000 }],
    }));
  return (
    <Part heading={roll.timers}>
      <ul class="timers">
        {state.timers.map((timer) => (
          <li key={`${timer.label} ${timer.end.toString()}`} class={timer.end <= now ? "over" : undefined}>
            <span>{timer.label}</span>
            <b role="timer">
              {timer.end > now ? roll.left(clock(timer.end - now)) : roll.over(timeOf(new Date(timer.end)))}
            </b>
            <span>{roll.ends(timeOf(new Date(timer.end)))}</span>
            <button
              type="button"
              onClick={() => change((before) => ({ ...before, timers: before.timers.filter((one) => one !== timer) }))}
            >
              {roll.stop(timer.label)}
            </button>
          </li>
        ))}
      </ul>
      <div class="field">
        <label for="own-minutes">{roll.minutes}</label>
        <input
          id="own-minutes"
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={own}
          onInput={({ currentTarget: { value } }) => setOwn(value)}
        />
      </div>
      <div class="buttons">
        {all.map(({ label, minutes }) => (
          <button type="button" key={label} onClick={() => start(label, minutes)}>
            {roll.start(`${label}, ${minutes} min`)}
          </button>
        ))}
      </div>
      <Awake />
      <p class="hint">{roll.honest}</p>
    </Part>
  );
}

function clock(milliseconds: number): string {
  const seconds = Math.ceil(milliseconds / 1000);
  const [hours, minutes] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60];
  const rest = String(seconds % 60).padStart(2, "0");
  return hours === 0 ? `${minutes}:${rest}` : `${hours}:${String(minutes).padStart(2, "0")}:${rest}`;
}

/** Three short tones, and a shake where the device can. */
function ring(): void {
  navigator.vibrate?.([400, 200, 400]);
  const sound = new AudioContext();
  for (const start of [0, 0.4, 0.8]) {
    const tone = sound.createOscillator();
    tone.frequency.value = 880;
    tone.connect(sound.destination);
    tone.start(sound.currentTime + start);
    tone.stop(sound.currentTime + start + 0.2);
  }
}

/** Keeps the screen on where the browser can do that. */
function Awake() {
  const [lock, setLock] = useState<WakeLockSentinel | undefined>(undefined);
  if (!("wakeLock" in navigator)) return undefined;
  const turn = (on: boolean) => {
    if (!on) {
      void lock?.release();
      setLock(undefined);
      return;
    }
    navigator.wakeLock.request("screen").then(
      (held) => {
        held.addEventListener("release", () => setLock(undefined));
        setLock(held);
      },
      () => setLock(undefined),
    );
  };
  return (
    <label class="choice">
      <input
        type="checkbox"
        checked={lock !== undefined}
        onChange={({ currentTarget: { checked } }) => turn(checked)}
      />
      {words.roll.awake}
    </label>
  );
}
