import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { parse, stringify } from "yaml";
import { starterSpec } from "#cli/input/starter-spec.ts";
import { commands } from "#cli/table.ts";
import { splitWords } from "../docs/console-blocks.ts";
import { runBuilt } from "./built.ts";
import { folderFor } from "./folder.ts";
import { runHere } from "./in-process.ts";

const examples = await Promise.all(
  commands.map(async ({ usage, load }) => {
    const command = await load();
    const members = "commands" in command ? command.commands : [{ usage: "", command }];
    return members.map((one) => ({
      usage: `${usage} ${one.usage}`,
      lines: one.command.examples.map(([line]) => line),
    }));
  }),
);

const { dial: _dial, ...handCrank } = parse(starterSpec).machines["hand crank"];

/** A spec that has what any of the commands asks for. */
const spec = {
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
const inTheFolder = {
  "noodle.yaml": stringify(spec),
  "noodle.json": JSON.stringify(spec),
  "summer.yaml": stringify({ ...spec, name: "summer" }),
  "winter.yaml": stringify({ ...spec, name: "winter", salt: "1.2 %" }),
  "handwritten.txt": "bread flour 1 kg\nwater 360 g\n",
};

test.each(examples.flat())("every example in the help of $usage works on a fitting spec", async ({ lines }) => {
  expect(lines.length).toBeGreaterThan(0);
  for (const line of lines) {
    const fresh = !line.startsWith("noodlewright new");
    const { "handwritten.txt": notes, ...specs } = inTheFolder;
    const folder = folderFor({ "handwritten.txt": notes, ...(fresh && specs) });
    for (const name of ["specs", "cards"]) mkdirSync(join(folder, name));
    writeFileSync(join(folder, "specs", "noodle.yaml"), inTheFolder["noodle.yaml"]);
    const [asked = ""] = line.split(/ [<>] /u);
    const [name, ...args] = splitWords(asked);
    expect(name).toBe("noodlewright");
    // The page is read from beside the bundle.
    const { status, stdout, stderr } =
      args[0] === "page"
        ? runBuilt(args, { cwd: folder })
        : await runHere(args, { cwd: folder, commands, input: inTheFolder["noodle.json"] });
    const wrote = /^(?:Wrote|Nothing was written)/mu.test(stderr);
    expect({ line, status, stderr: wrote ? "" : stderr }).toEqual({ line, status: 0, stderr: "" });
    expect(stdout + stderr).not.toBe("");
  }
});
