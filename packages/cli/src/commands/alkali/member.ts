import {
  type Noodle,
  type Note,
  type Outcome,
  type Report,
  readStatedNoodle,
  told,
  type UnitSystem,
} from "@noodlewright/core";
import { newlyMissed } from "@noodlewright/core/answers";
import { toldNote } from "@noodlewright/core/render";
import { type OwnMaterials, readKitchenFile, type SpecChange } from "@noodlewright/core/spec";
import { beyond } from "../../input/beyond.ts";
import { parseFile } from "../../input/document.ts";
import type { Placed } from "../../input/placed-problem.ts";
import { ownProblem } from "../../input/problem.ts";
import { readTextFile, type TextFile } from "../../input/read-file.ts";
import { withChanges } from "../../input/written-values.ts";
import { exit, type Io } from "../../io.ts";
import { printProblems, printReport } from "../../shared/answer.ts";
import { loadNoodle, orderOf } from "../../shared/ask-noodle.ts";
import type { Asked, Command } from "../../shared/command.ts";
import { writeSpec, writes } from "../../shared/write-spec.ts";
import { type Asking, asking } from "./asking.ts";

/** The report of an answer, and what of it is written into the spec where a flag says so. */
type Answered = Outcome<Report> & { readonly changes?: readonly SpecChange[] };

/** A member of `alkali`: its words, and how it reads the flags. */
export interface Parts extends Omit<Command, "run"> {
  /**
   * Reads the flags; gives what works the answer out, which is done only where nothing is wrong with them.
   *
   * @param noodle - that of `--spec`, where the command has the flag and it was said
   */
  readonly read: (ask: Asking, noodle: Noodle | undefined) => () => Answered;
}

/** Makes a command of its parts: it reads everything, tells all that is wrong in one go, and prints the answer. */
export function member({ read, ...words }: Parts): Command {
  return {
    ...words,
    run: async (asked, io) => {
      const own = await ownMaterials(asked, io);
      if (!own.ok) return printProblems(own.problems, asked, io);
      const loading = await noodleOf(asked, io);
      if (loading?.ok === false) return printProblems(loading.problems, asked, io);
      const { noodle, files = [] } = loading?.loaded ?? {};
      const ask = asking(asked, { ...noodle?.kitchen.materials, ...noodle?.spec.materials, ...own.materials });
      const answer = read(ask, noodle);
      if (noodle === undefined && writes(asked)) {
        ask.wrong(asked.on("write") ? "--write" : "--out", ownProblem("write.no-file", {}));
      }
      if (ask.problems.length > 0) return printProblems(ask.problems, asked, io);
      const outcome = answer();
      if (!outcome.ok) return printProblems(outcome.problems, asked, io);
      const { changes = [] } = outcome;
      const missed = noodle === undefined ? [] : await missedThen(noodle, files[0], changes);
      const printed = await printReport(withNotes(outcome.value, [...ask.notes, ...missed], ask.units), asked, io);
      return printed === exit.done && writes(asked) ? writeSpec(files[0], changes, asked, io) : printed;
    },
  };
}

/** What the spec wants and no longer comes to once the changes are written into its file. */
async function missedThen(
  noodle: Noodle,
  file: TextFile | undefined,
  changes: readonly SpecChange[],
): Promise<readonly Note[]> {
  const text = file === undefined || changes.length === 0 ? undefined : withChanges(file, changes);
  if (file === undefined || text === undefined) return [];
  const parsing = parseFile({ name: file.name, text, bytes: new TextEncoder().encode(text) });
  if (!parsing.ok) return [];
  const { data } = parsing.parsed;
  const changed = readStatedNoodle(data, { kitchens: [noodle.kitchen] }, await beyond(data));
  return changed.ok ? newlyMissed(noodle, changed.value) : [];
}

/** The noodle that `--spec` names. */
export async function noodleOf(asked: Asked, io: Io, needs?: "machines") {
  return asked.text("spec") === undefined ? undefined : loadNoodle(orderOf(asked, [], needs), io);
}

/** A report with what is worth knowing of the products it was asked about; the cautions of a product join the others. */
function withNotes(report: Report, about: readonly Note[], units: UnitSystem): Report {
  const isCaution = ({ code }: Note): boolean => code.startsWith("caution.");
  const notes = about.filter((note) => !isCaution(note)).map((note) => toldNote(note, units));
  const texts = new Set(notes.map(({ text }) => text));
  return {
    ...report,
    notes: [...notes, ...report.notes.filter(({ text }) => !texts.has(text))],
    cautions: [...new Set([...about.filter(isCaution).map(told), ...report.cautions])],
  };
}

/** The materials of the file that --materials names. */
export async function ownMaterials(asked: Asked, io: Io): Promise<Placed<{ materials: OwnMaterials }>> {
  const path = asked.text("materials");
  if (path === undefined) return { ok: true, materials: {} };
  const reading = await readTextFile(path, io);
  if (!reading.ok) return { ok: false, problems: reading.problems.map((one) => ({ ...one, flag: "--materials" })) };
  const parsing = parseFile(reading.file);
  if (!parsing.ok) return parsing;
  const outcome = readKitchenFile(parsing.parsed.data);
  if (!outcome.ok) return { ok: false, problems: outcome.problems.map(parsing.parsed.place) };
  return { ok: true, materials: outcome.value.materials };
}
