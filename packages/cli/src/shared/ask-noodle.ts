import { type Answer, type Noodle, type Problem, readStatedNoodle, type UnitSystem } from "@noodlewright/core";
import type { ChangingAnswer } from "@noodlewright/core/answers";
import { beyond } from "../input/beyond.ts";
import { loadSpec } from "../input/load-spec.ts";
import type { Override } from "../input/overrides.ts";
import type { Placed, PlacedProblem } from "../input/placed-problem.ts";
import type { TextFile } from "../input/read-file.ts";
import { type ExitStatus, exit, type Io } from "../io.ts";
import { printProblems, printReport, unitsOf } from "./answer.ts";
import type { Asked, Command } from "./command.ts";
import { specFlags } from "./flags.ts";
import { writeSpec, writes } from "./write-spec.ts";

/** The noodle of a spec file, the files it was read from, and where in them a problem lies. */
export interface LoadedNoodle {
  readonly noodle: Noodle;
  /** Its spec as plain data, with the flags merged in. */
  readonly data: unknown;
  readonly files: readonly TextFile[];
  /** What flags say about it, and where. */
  readonly said: readonly Override[];
  readonly place: (problem: Problem) => PlacedProblem;
}

/** A spec file, and what flags say about it. */
export interface Order {
  readonly path: string;
  readonly overrides: readonly Override[];
  /** What `--set` says. */
  readonly sets: readonly string[];
  readonly units: UnitSystem;
  /** The machines of kitchen files are read only for what needs them. */
  readonly needs?: "machines";
}

/** Reads the noodle of a spec file, with the flags merged in. */
export async function loadNoodle(
  { path, overrides, sets, units, needs }: Order,
  io: Io,
): Promise<Placed<{ loaded: LoadedNoodle }>> {
  const loading = await loadSpec(path, { overrides, sets }, io, needs);
  if (!loading.ok) return loading;
  const { data, kitchens, files, place, overrides: said } = loading.spec;
  const noodle = readStatedNoodle(data, { kitchens, units }, await beyond(data, needs));
  return noodle.ok
    ? { ok: true, loaded: { noodle: noodle.value, data, files, said, place } }
    : { ok: false, problems: noodle.problems.map(place) };
}

/** One question of the noodle of a spec. */
export interface Question<T> {
  /** An answer that changes the spec is written there where a flag says so. */
  readonly ask: (noodle: Noodle) => Answer<T> | ChangingAnswer<T>;
  readonly overrides?: readonly Override[];
  readonly needs?: "machines";
  /** Whether the answer is the one that was asked for, not only the nearest. */
  readonly found?: (value: T) => boolean;
  /** Commands to go on with, and what they tell. */
  readonly next?: Readonly<Record<string, string>>;
  /** Tells the flag of a problem, where it lies in one and not in the spec. */
  readonly place?: (problem: Problem) => PlacedProblem;
}

/** The place of a spec among the words of a command. */
export const specPlace = { spec: "Spec file in YAML or JSON, or - for standard input" };

/** A command that asks the noodle of a spec one question. */
export function specCommand<T>({ flags, examples, question }: SpecWords<T>): Command {
  return {
    positionals: specPlace,
    flags: { ...flags, ...specFlags },
    examples,
    run: (asked, io) => printAnswer(question(asked), asked, io),
  };
}

interface SpecWords<T> extends Pick<Command, "examples">, Partial<Pick<Command, "flags">> {
  readonly question: (asked: Asked) => Question<T>;
}

/** The spec that was named, and what its flags say about it. */
export function orderOf(asked: Asked, overrides: readonly Override[], needs?: "machines"): Order {
  const path = asked.text("spec") ?? "-";
  return { path, overrides, sets: asked.list("set"), units: unitsOf(asked), ...(needs && { needs }) };
}

/** Reads the noodle of the spec that was named, asks it, and prints the answer. */
export async function printAnswer<T>(question: Question<T>, asked: Asked, io: Io): Promise<ExitStatus> {
  const { ask, overrides = [], needs, found, place, next } = question;
  const order = orderOf(asked, overrides, needs);
  const { path } = order;
  const loading = await loadNoodle(order, io);
  if (!loading.ok) return printProblems(loading.problems, asked, io);
  const { noodle, files, place: inSpec } = loading.loaded;
  const answer = ask(noodle);
  if (!answer.ok) {
    const placed = answer.problems.map((problem) => {
      const atFlag = place?.(problem);
      return atFlag?.flag === undefined ? inSpec(problem) : atFlag;
    });
    return printProblems(placed, asked, io);
  }
  const printed = await printReport(answer.report(), asked, io);
  if (printed !== exit.done) return printed;
  if (next && path !== "-" && io.stdinIsTerminal() && (asked.text("format") ?? "table") === "table") {
    const ways = Object.entries(next).map(([command, tells]) => `noodlewright ${command} ${path} (${tells})`);
    io.err(`Next: ${ways.join(", ")}\n`);
  }
  const status =
    "changes" in answer && writes(asked) ? await writeSpec(files[0], answer.changes(), asked, io) : printed;
  return status === exit.done && found?.(answer.value) === false ? exit.noAnswer : status;
}

/** Puts a problem of a question at the flag of the same name. */
export function atFlag(...flags: readonly string[]): (problem: Problem) => PlacedProblem {
  return (problem) => {
    const flag = flags.find((name) => problem.path[0] === name);
    return flag === undefined ? problem : { ...problem, path: [], flag: `--${flag}` };
  };
}
