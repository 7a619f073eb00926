import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parse, stringify } from "yaml";
import { starterSpec } from "#cli/input/starter-spec.ts";
import type { Command } from "#cli/shared/command.ts";
import { commands } from "#cli/table.ts";
import { splitWords } from "../docs/console-blocks.ts";
import { type Ended, runBuilt } from "./built.ts";
import { folderFor } from "./folder.ts";
import { runHere } from "./in-process.ts";

/** Every command with the words that lead to it. */
export const everyCommand: readonly { readonly usage: string; readonly command: Command }[] = (
  await Promise.all(
    commands.map(async ({ usage, load }) => {
      const command = await load();
      const members = "commands" in command ? command.commands : [{ usage: "", command }];
      return members.map((one) => ({ usage: `${usage} ${one.usage}`.trim(), command: one.command }));
    }),
  )
).flat();

/** The examples in the help of every command, and the flags that it takes. */
export const examples = everyCommand.map(({ usage, command }) => ({
  usage,
  lines: Object.keys(command.examples),
  flags: Object.keys(command.flags),
}));

const { dial: _dial, ...handCrank } = parse(starterSpec).machines["hand crank"];

/** A spec that has what any of the commands asks for. */
export const fittingSpec = {
  ...parse(starterSpec),
  flours: [
    { name: "bread flour", amount: "80 %" },
    { name: "rye flour", amount: "20 %" },
  ],
  shelf: { "vital wheat gluten": {}, "all-purpose flour": {}, "whole wheat flour": {} },
  ingredients: [{ name: "whole egg", amount: "6 %" }],
  prices: Object.fromEntries(
    ["bread flour", "rye flour", "vital wheat gluten", "all-purpose flour", "whole wheat flour"].map((name, index) => [
      name,
      `${1 + index / 10} EUR/kg`,
    ]),
  ),
  wanted: { within: "0.3 %", protein: "at least 11 %", saltInDough: "0.7 %" },
  salt: "find",
  machines: {
    "hand crank": { ...handCrank, gap: { least: "1 mm", greatest: "5 mm" }, cutters: [{ size: "2 mm" }, { size: 22 }] },
  },
  lot: { of: "bread flour", figures: { protein: "11.8 %", moisture: "14 %" } },
  batch: { bowls: 80, rawWeight: "130 g" },
};

/** A spec of the folder of examples, without the scales that it names. */
export function withoutScales(name: string): string {
  const file = new URL(`../../examples/${name}`, import.meta.url);
  const { scales: _scales, ...spec } = parse(readFileSync(file, "utf8"));
  return stringify(spec);
}

interface Surroundings {
  readonly spec?: object;
  /** Files beside the fitting spec. */
  readonly files?: Readonly<Record<string, string>>;
  readonly flags?: readonly string[];
  readonly width?: number;
}

/** Runs a line of the help in a folder that has what it asks for. */
export async function runExample(
  line: string,
  { spec = fittingSpec, files = {}, flags = [], width = 100 }: Surroundings = {},
): Promise<Ended> {
  const specs = {
    "noodle.yaml": stringify(spec),
    "noodle.json": JSON.stringify(spec),
    "summer.yaml": stringify({ ...spec, name: "summer" }),
    "winter.yaml": stringify({ ...spec, name: "winter", salt: "1.2 %" }),
    ...files,
  };
  const fresh = !line.startsWith("noodlewright new");
  const folder = folderFor({ "handwritten.txt": "bread flour 1 kg\nwater 360 g\n", ...(fresh && specs) });
  for (const name of ["specs", "cards"]) mkdirSync(join(folder, name));
  writeFileSync(join(folder, "specs", "noodle.yaml"), specs["noodle.yaml"]);
  const [asked = ""] = line.split(/ [<>] /u);
  const [, ...args] = splitWords(asked);
  // The page is read from beside the bundle.
  if (args[0] === "page") return runBuilt(args, { cwd: folder });
  return runHere([...args, ...flags], { cwd: folder, input: specs["noodle.json"], width });
}
