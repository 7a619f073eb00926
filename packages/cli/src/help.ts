import { placesOf } from "./command-line.ts";
import { gridLines } from "./render/grid.ts";
import { textWidth } from "./render/text-width.ts";
import { wrapText } from "./render/wrap.ts";
import { type Command, type Flag, type Job, jobs, type Listed } from "./shared/command.ts";

/** Widest that help is printed. */
const widest = 100;

type Row = readonly [name: string, meaning: string];

const helpRow: Row = ["-h, --help", "Show help"];

const headings: Readonly<Record<Job, string>> = {
  start: "Start",
  adapt: "Adapt",
  make: "Make",
  shop: "Shop and label",
  measure: "Measure",
};

function rowOf({ usage, describe }: Listed): Row {
  return [usage, describe];
}

/** Help on all commands, job by job. */
export function mainHelp(commands: readonly Listed[], width: number): string {
  return page(width, [
    { text: "noodlewright: from a noodle spec to weights on the bench" },
    { text: "noodlewright <command>" },
    ...jobs.map((job) => ({ heading: headings[job], rows: commands.filter((one) => one.job === job).map(rowOf) })),
    { heading: "Flags", rows: [helpRow, ["    --version", "Show the version"]] },
    { text: "noodlewright <command> --help shows what a command takes, its flags, and examples." },
    { text: "Exit status: 0 done; 1 there is no such answer; 2 the spec or the flags are wrong; 70 a bug." },
  ]);
}

/** Help on the commands of a group. */
export function groupHelp(group: Listed, commands: readonly Listed[], width: number): string {
  return page(width, [
    { text: `noodlewright ${group.usage} <command>` },
    { text: group.describe },
    { heading: "Commands", rows: commands.map(({ usage, describe }): Row => [`${group.usage} ${usage}`, describe]) },
    { heading: "Flags", rows: [helpRow] },
  ]);
}

/** Help on one command. */
export function commandHelp(usage: string, describe: string, command: Command, width: number): string {
  const rowsAbout = (what?: Flag["about"]): readonly Row[] =>
    Object.entries(command.flags)
      .filter(([, { about }]) => about === what)
      .map(flagRow);
  return page(width, [
    { text: `noodlewright ${usage}` },
    { text: describe },
    { heading: "Arguments", rows: placesOf(usage).map(({ name }): Row => [name, command.positionals[name] ?? ""]) },
    { heading: "Flags", rows: rowsAbout() },
    { heading: "Flags of the batch", rows: rowsAbout("batch") },
    { heading: "Flags of the answer", rows: [...rowsAbout("answer"), helpRow] },
    {
      heading: "Examples",
      lines: Object.entries(command.examples).flatMap(([line, meaning]) => [line, `    ${meaning}`]),
    },
  ]);
}

function flagRow([name, { letter, describe, placeholder, choices, fallback }]: readonly [string, Flag]): Row {
  const example = placeholder === undefined || placeholder === fallback ? [] : [`such as "${placeholder}"`];
  const unless = fallback === undefined ? [] : [`${fallback} unless stated`];
  const said = [...(choices === undefined ? [] : [choices.join(", ")]), ...example, ...unless].join("; ");
  return [
    `${letter === undefined ? "    " : `-${letter}, `}--${name}`,
    said === "" ? describe : `${describe} (${said})`,
  ];
}

type Part =
  | { readonly text: string }
  | { readonly heading: string; readonly rows: readonly Row[] }
  /** Lines that stay whole, so that they can be copied. */
  | { readonly heading: string; readonly lines: readonly string[] };

function page(wished: number, parts: readonly Part[]): string {
  const width = Math.min(wished, widest);
  const blocks = parts.flatMap((part) => {
    if ("text" in part) return [wrapText(part.text, width).join("\n")];
    const lines = "lines" in part ? part.lines : rowLines(part.rows, width - 2);
    return lines.length === 0 ? [] : [`${part.heading}:\n${lines.map((line) => `  ${line}`).join("\n")}`];
  });
  return blocks.join("\n\n");
}

/** Two columns; the first takes half at most. */
function rowLines(rows: readonly Row[], width: number): readonly string[] {
  if (rows.length === 0) return [];
  const name = Math.min(Math.max(...rows.map(([text]) => textWidth(text))), Math.floor(width / 2));
  const columns = [
    { width: name, align: "left" as const },
    { width: width - name - 2, align: "left" as const },
  ];
  return rows.flatMap((row) => gridLines(row, columns).map((line) => line.trimEnd()));
}
