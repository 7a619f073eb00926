import { printable } from "@noodlewright/core/render";
import { largest, readTextFile } from "./input/read-file.ts";
import type { Io } from "./io.ts";

/** Most files of the folder that are looked into. */
const mostFiles = 30;

/** What a spec can be asked, by the key that it needs; what needs none is asked of every spec. */
const questions: readonly (readonly [key: RegExp | undefined, command: string, meaning: string])[] = [
  [undefined, "formula", "the formula on 100 of flour"],
  [/^batch\s*:/mu, "batch", "the weights of the batch"],
  [/^sheet\s*:/mu, "sheet", "from dough to strands"],
  [/^plan\s*:/mu, "plan", "the day, backwards from service"],
  [/^prices\s*:/mu, "cost", "what it costs, and what to buy"],
  [/^batch\s*:/mu, "card", "a page to hang by the machine"],
];

/** What to do next: with the specs of this folder, or to get one. */
export async function nextSteps(io: Io): Promise<string> {
  const names = await io.listFolder(".").catch((): readonly string[] => []);
  const files = names.filter((name) => /\.(?:ya?ml|json)$/iu.test(name)).sort();
  const specs: { readonly name: string; readonly text: string }[] = [];
  for (const name of files.slice(0, mostFiles)) {
    const reading = await readTextFile(name, io, largest);
    if (reading.ok && /^[\s{]*"?flours"?\s*:/mu.test(reading.file.text)) specs.push({ name, text: reading.file.text });
  }
  const [first, ...others] = specs;
  const lines =
    first === undefined
      ? [
          "There is no spec in this folder. To get one:",
          ...columns([
            ["noodlewright new", "answer a few questions"],
            ["noodlewright new --from notes.txt", "or read a formula as you have it written"],
          ]),
        ]
      : [
          `Specs in this folder: ${specs.map(({ name }) => name).join(", ")}. ${others.length === 0 ? "Ask it" : "Ask one of them"}:`,
          ...columns(
            questions
              .filter(([key]) => key === undefined || key.test(first.text))
              .map(([, command, meaning]) => [`noodlewright ${command} ${quoted(first.name)}`, meaning]),
          ),
        ];
  return [...lines, "", "noodlewright --help lists every command, noodlewright words explains the words."]
    .map(printable)
    .join("\n");
}

function columns(rows: readonly (readonly [string, string])[]): readonly string[] {
  const width = Math.max(...rows.map(([line]) => line.length));
  return rows.map(([line, meaning]) => `  ${line.padEnd(width)}  ${meaning}`);
}

/** A name that a shell takes for one word. */
function quoted(name: string): string {
  return /^[\w./-]+$/u.test(name) ? name : `'${name.replaceAll("'", "'\\''")}'`;
}
