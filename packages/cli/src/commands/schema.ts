import { jsonSchema, schemaNames } from "@noodlewright/core/spec";
import { exit } from "../io.ts";
import type { Command } from "../shared/command.ts";

/** `noodlewright schema`: the JSON Schema of what goes in and what comes out. */
export const schemaCommand: Command = {
  positionals: { of: "spec, kitchen, report or problems; spec unless stated" },
  flags: {},
  examples: {
    "noodlewright schema > noodle.schema.json": "for an editor that completes and checks the spec",
    "noodlewright schema report": "the form of --format json",
  },
  run: async (asked, io) => {
    const name = asked.text("of") ?? "spec";
    const known = schemaNames.find((one) => one === name);
    if (known === undefined) {
      io.err(`noodlewright: no schema "${name}"; there are: ${schemaNames.join(", ")}\n`);
      return exit.wrongInput;
    }
    io.out(`${JSON.stringify(jsonSchema(known), undefined, 2)}\n`);
    return exit.done;
  },
};
