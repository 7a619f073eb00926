import { basename, extname, join } from "node:path";
import { escapeMarkup } from "@noodlewright/core";
import { cardFlags, dateOf, paperOf } from "../card/card-flags.ts";
import { makeCard } from "../card/make-card.ts";
import { printProblems } from "../command/answer.ts";
import type { Command } from "../command/command.ts";
import { type PlacedProblem, parseFile } from "../input/document.ts";
import { readTextFile } from "../input/read-file.ts";
import { type ExitStatus, exit, type Io } from "../io.ts";
import { checksumOf, renderCard } from "../render/card-html.ts";
import { page } from "../render/html.ts";

interface Entry {
  readonly file: string;
  readonly title: string;
  readonly checksum: string;
  readonly spec: string;
}

/** `noodlewright cards`: the cards of a folder of specs, with a page that lists them. */
export const cardsCommand: Command = {
  positionals: { folder: "Folder of specs in YAML or JSON; kitchen files in it are passed over" },
  flags: {
    out: { describe: "Folder to write the cards and index.html to", kind: "text", placeholder: "cards", letter: "o" },
    ...cardFlags,
  },
  examples: [["noodlewright cards specs -o cards", "a card for every spec that states a batch, and an index"]],
  run: async (asked, io) => {
    const folder = asked.text("folder") ?? ".";
    const out = asked.text("out");
    const date = dateOf(asked, io);
    if (!date.ok) return printProblems([date.problem], asked, io);
    if (out === undefined) return printProblems([missingOut], asked, io);
    const files = await specFiles(folder, io);
    if (!files.ok) return printProblems([files.problem], asked, io);
    const problems: PlacedProblem[] = [];
    const passedOver: string[] = [];
    const entries: Entry[] = [];
    const cards: { readonly file: string; readonly html: string }[] = [];
    for (const name of files.names) {
      const path = join(folder, name);
      if (!(await isSpec(path, io))) continue;
      const units = asked.text("units") === "us" ? "us" : "metric";
      const making = await makeCard({ path, overrides: [], date: date.date, loads: undefined, units }, io);
      if (!making.ok) {
        if (making.problems.every(({ code }) => code === "batch.not-stated")) passedOver.push(name);
        else problems.push(...making.problems);
        continue;
      }
      const file = `${basename(name, extname(name))}.html`;
      cards.push({ file, html: renderCard(making.card, paperOf(asked)) });
      entries.push({ file, title: making.card.title, checksum: checksumOf(making.card), spec: name });
    }
    const status = await writeAll(out, [...cards, { file: "index.html", html: indexPage(entries, date.date) }], io);
    if (passedOver.length > 0) io.err(`Passed over, no batch stated: ${passedOver.join(", ")}.\n`);
    return problems.length > 0 ? printProblems(problems, asked, io) : status;
  },
};

const missingOut: PlacedProblem = {
  code: "cards.out-missing",
  kind: "input",
  path: [],
  found: "no folder to write to",
  expected: "a folder, such as -o cards",
  advice: "name it with --out",
  flag: "--out",
};

type Files =
  | { readonly ok: true; readonly names: readonly string[] }
  | { readonly ok: false; readonly problem: PlacedProblem };

async function specFiles(folder: string, io: Io): Promise<Files> {
  try {
    const names = await io.listFolder(folder);
    return { ok: true, names: [...names].filter((name) => /\.(ya?ml|json)$/iu.test(name)).sort() };
  } catch {
    const expected = "a folder that can be read";
    return {
      ok: false,
      problem: {
        code: "file.unreadable",
        kind: "input",
        path: [],
        found: `no folder ${folder}`,
        expected,
        advice: "check its name",
      },
    };
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

async function writeAll(
  folder: string,
  files: readonly { readonly file: string; readonly html: string }[],
  io: Io,
): Promise<ExitStatus> {
  try {
    await io.makeFolder(folder);
    for (const { file, html } of files) await io.writeFile(join(folder, file), html);
  } catch {
    io.err(`noodlewright: ${folder}: the cards cannot be written there. Name another folder.\n`);
    return exit.wrongInput;
  }
  io.err(`Wrote ${files.length - 1} cards and index.html to ${folder}.\n`);
  return exit.done;
}

function indexPage(entries: readonly Entry[], date: string): string {
  const rows = entries.map(
    ({ file, title, checksum, spec }) =>
      `<tr><th scope="row"><a href="${encodeURIComponent(file)}">${escapeMarkup(title)}</a></th><td>${escapeMarkup(spec)}</td><td>${escapeMarkup(checksum)}</td></tr>`,
  );
  const body = `<main><h1>Noodle cards</h1><p>${escapeMarkup(date)}</p>
<table><thead><tr><th scope="col">noodle</th><th scope="col">spec</th><th scope="col">checksum</th></tr></thead>
<tbody>${rows.join("\n")}</tbody></table></main>`;
  return page({ title: "Noodle cards", style: "a { color: inherit; }", body });
}
