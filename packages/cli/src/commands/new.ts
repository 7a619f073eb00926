import { printable } from "@noodlewright/core/render";
import { starterSpec } from "../input/starter-spec.ts";
import { exit } from "../io.ts";
import type { Command } from "../shared/command.ts";
import { writeFiles } from "../shared/write-output.ts";

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
    const status = await writeFiles([{ path: file, text: starterSpec }], "nothing", asked, io);
    if (status === exit.done) io.err(printable(`Wrote ${file}. Next: noodlewright formula ${file}`).concat("\n"));
    return status;
  },
};
