import { join } from "node:path";
import { checksumOf, printable, renderCard } from "@noodlewright/core/render";
import { parseFile } from "../input/document.ts";
import type { Placed, PlacedProblem } from "../input/placed-problem.ts";
import { ownProblem } from "../input/problem.ts";
import { codeOf, largest, readTextFile } from "../input/read-file.ts";
import { type ExitStatus, exit, type Io, type OutFile } from "../io.ts";
import { printProblems } from "../shared/answer.ts";
import { orderOf } from "../shared/ask-noodle.ts";
import { cardFlags, dateOf, paperOf } from "../shared/card-flags.ts";
import { type CardEntry, cardIndex } from "../shared/card-index.ts";
import { cardNames } from "../shared/card-names.ts";
import type { Asked, Command } from "../shared/command.ts";
import { setFlag } from "../shared/flags.ts";
import { makeCard, tellOfCard } from "../shared/make-card.ts";
import { forceFlag, writeFiles, writeOver } from "../shared/write-output.ts";

/** `noodlewright cards`: the cards of a folder of specs, with a page that lists them. */
export const cardsCommand: Command = {
  positionals: { folder: "Folder of specs in YAML or JSON; kitchen files in it are passed over" },
  flags: {
    out: { describe: "Folder to write the cards and index.html to", placeholder: "cards", letter: "o" },
    ...forceFlag,
    ...cardFlags,
    ...setFlag,
  },
  examples: {
    "noodlewright cards specs -o cards": "a card for every spec that states a batch, and an index",
  },
  run: async (asked, outside) => {
    const io = readingOnce(outside);
    const folder = asked.text("folder") ?? ".";
    const out = asked.text("out");
    const date = dateOf(asked, io);
    if (!date.ok) return printProblems(date.problems, asked, io);
    if (out === undefined) return printProblems([missingOut], asked, io);
    const files = await specFiles(folder, io);
    if (!files.ok) return printProblems(files.problems, asked, io);
    const made = await makeAll(folder, files.names, { asked, date: date.date, out, io });
    if (made.passedOver.length > 0) io.err(`Passed over, no batch stated: ${made.passedOver.join(", ")}.\n`);
    if (made.cards.length === 0 && made.problems.length === 0)
      return printProblems([ownProblem("cards.none", { folder })], asked, io);
    const index = { path: join(out, "index.html"), text: cardIndex(made.cards, date.date) };
    const status = made.cards.length === 0 ? exit.done : await writeAll(out, [...made.cards, index], asked, io);
    if (made.problems.length > 0 && status !== exit.wrongInput) {
      const verdict = made.cards.length === 0 ? undefined : "the other cards were written";
      return printProblems(made.problems, asked, io, verdict);
    }
    return status === exit.done && made.cards.some(({ whole }) => !whole) ? exit.noAnswer : status;
  },
};

/** Reads each file once: a kitchen file stands behind every card, and a spec is looked at before its card is made. */
function readingOnce(io: Io): Io {
  const read = new Map<string, Promise<Uint8Array>>();
  const readFile = (path: string): Promise<Uint8Array> => {
    const bytes = read.get(path) ?? io.readFile(path, largest);
    read.set(path, bytes);
    return bytes;
  };
  return { ...io, readFile };
}

/** A card as the index has it and as it is written. */
interface MadeCard extends CardEntry, OutFile {
  /** False where an answer that the spec asks for cannot be had. */
  readonly whole: boolean;
}

interface Wishes {
  readonly asked: Asked;
  readonly date: string;
  readonly out: string;
  readonly io: Io;
}

async function makeAll(folder: string, names: readonly string[], { asked, date, out, io }: Wishes) {
  const problems: PlacedProblem[] = [];
  const passedOver: string[] = [];
  const cards: MadeCard[] = [];
  const fileOf = cardNames(names);
  const paper = paperOf(asked);
  for (const name of names) {
    const path = join(folder, name);
    if (!(await isSpec(path, io))) continue;
    const making = await makeCard({ ...orderOf(asked, []), path, date }, io);
    if (!making.ok) {
      if (making.problems.every(({ code }) => code === "batch.not-stated")) passedOver.push(printable(name));
      else problems.push(...making.problems);
      continue;
    }
    const { card, missing } = making.made;
    tellOfCard(making.made, paper, io);
    const file = fileOf.get(name) ?? `${name}.html`;
    const entry = { file, title: card.title, checksum: checksumOf(card), spec: name };
    cards.push({ ...entry, path: join(out, file), text: renderCard(card, paper), whole: missing.length === 0 });
  }
  return { cards, passedOver, problems };
}

const missingOut: PlacedProblem = { ...ownProblem("cards.out-missing", {}), flag: "--out" };

async function specFiles(folder: string, io: Io): Promise<Placed<{ names: readonly string[] }>> {
  try {
    const names = await io.listFolder(folder);
    return { ok: true, names: [...names].filter((name) => /\.(ya?ml|json)$/iu.test(name)).sort() };
  } catch (error) {
    return { ok: false, problems: [ownProblem("file.unreadable", { error: codeOf(error), folder })] };
  }
}

/** Only what has flours is a spec; a file that cannot be read is kept, so that its problem is told. */
async function isSpec(path: string, io: Io): Promise<boolean> {
  const reading = await readTextFile(path, io);
  if (!reading.ok) return true;
  const parsing = parseFile(reading.file);
  if (!parsing.ok) return true;
  const { data } = parsing.parsed;
  return typeof data === "object" && data !== null && "flours" in data;
}

async function writeAll(folder: string, files: readonly OutFile[], asked: Asked, io: Io): Promise<ExitStatus> {
  try {
    await io.makeFolder(folder);
  } catch (error) {
    const problem = { ...ownProblem("file.unwritable", { error: codeOf(error) }), file: folder };
    return printProblems([problem], asked, io, "nothing was written");
  }
  const status = await writeFiles(files, writeOver(asked), asked, io);
  if (status !== exit.done) return status;
  const count = files.length - 1;
  io.err(`Wrote ${count === 1 ? "1 card" : `${count} cards`} and index.html to ${printable(folder)}.\n`);
  return exit.done;
}
