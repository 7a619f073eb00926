import { copyFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { alkaliCommands } from "#cli/commands/alkali/alkali.ts";
import { calibrateGroup } from "#cli/commands/calibrate.ts";
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
