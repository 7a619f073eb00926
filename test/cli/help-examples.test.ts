import { copyFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { alkaliCommands } from "#cli/commands/alkali/alkali.ts";
import { calibrateGroup } from "#cli/commands/calibrate.ts";
import { replaceCommand } from "#cli/commands/replace.ts";
import type { Group } from "#cli/shared/command.ts";
import { folderFor } from "./folder.ts";
import { runHere } from "./in-process.ts";

const cwd = folderFor();
copyFileSync("examples/school-noodle.yaml", join(cwd, "noodle.yaml"));
copyFileSync("examples/harbour-store.yaml", join(cwd, "harbour-store.yaml"));

const groups: Readonly<Record<string, Group>> = { alkali: alkaliCommands, calibrate: calibrateGroup };
const lines = Object.values(groups).flatMap(({ commands }) =>
  commands.flatMap(({ command }) => command.examples.map(([line]) => line)),
);
const listed = Object.entries(groups).map(([usage, group]) => ({ usage, describe: "", load: async () => group }));

/** The words of a line as a shell takes them: apart at blanks, together within single quotes. */
function wordsOf(line: string): readonly string[] {
  return [...line.matchAll(/'([^']*)'|(\S+)/gu)].map(([, quoted, plain = ""]) => quoted ?? plain);
}

describe("the examples of the help", () => {
  test("are there for every command of a group", () => {
    for (const { commands } of Object.values(groups)) {
      for (const { usage, command } of commands) expect(command.examples.length, usage).toBeGreaterThan(0);
    }
  });

  test.each(lines)("%s", async (line) => {
    const [name, ...args] = wordsOf(line);
    expect(name).toBe("noodlewright");
    const { status, stdout, stderr } = await runHere(args, { cwd, commands: listed });
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(stdout).not.toBe("");
  });
});

describe("replace", () => {
  const folder = folderFor();
  const spec = {
    name: "two flours and an egg",
    flours: [
      { name: "bread flour", amount: "80 %" },
      { name: "rye flour", amount: "20 %" },
    ],
    shelf: { "vital wheat gluten": {}, "all-purpose flour": {}, "whole wheat flour": {} },
    ingredients: [{ name: "whole egg", amount: "6 %" }],
    water: { added: "34 %" },
  };
  writeFileSync(join(folder, "noodle.yaml"), JSON.stringify(spec));
  const commands = [{ usage: "replace <spec>", describe: "", load: async () => replaceCommand }];
  const ask = (args: readonly string[]) => runHere(args, { cwd: folder, commands });

  test.each(replaceCommand.examples.map(([line]) => line))("%s", async (line) => {
    const { status, stderr } = await ask(wordsOf(line).slice(1));
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
  });

  test("a flour on the shelf that nobody knows is wrong at the flag", async () => {
    const { status, stderr } = await ask([
      "replace",
      "noodle.yaml",
      "--missing",
      "rye flour",
      "--shelf",
      "harbour flour",
    ]);
    expect(status).toBe(2);
    expect(stderr).toContain("--shelf");
    expect(stderr).not.toContain("noodle.yaml:1");
  });

  test("a number of bowls below zero is told the least", async () => {
    const { stderr } = await runHere(["batch", "noodle.yaml", "--bowls", "-3"], { cwd: folder });
    expect(stderr).toContain("at least 1");
    expect(stderr).not.toContain("plain number");
  });
});
