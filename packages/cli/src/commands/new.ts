import type { Command } from "../command/command.ts";
import { starterSpec } from "../input/starter-spec.ts";
import { exit } from "../io.ts";

/** `noodlewright new`: a commented spec to start from. */
export const newCommand: Command = {
  positionals: { file: "Where to write it; noodle.yaml unless stated, - prints it" },
  flags: {},
  examples: [
    ["noodlewright new", "writes noodle.yaml"],
    ["noodlewright new evening-class.yaml", "writes that file"],
  ],
  run: async (asked, io) => {
    const file = asked.text("file") ?? "noodle.yaml";
    if (file === "-") {
      io.out(starterSpec);
      return exit.done;
    }
    try {
      await io.writeNewFile(file, starterSpec);
    } catch (error) {
      const code = error instanceof Error && "code" in error ? String(error.code) : "";
      const why =
        code === "EEXIST" ? "there is a file of this name, and it is kept as it is" : "the file cannot be written";
      io.err(`noodlewright: ${file}: ${why}. Name another file.\n`);
      return exit.wrongInput;
    }
    io.err(`Wrote ${file}. Next: noodlewright formula ${file}\n`);
    return exit.done;
  },
};
