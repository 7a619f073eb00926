import { batchCommand } from "./commands/batch.ts";
import type { Command } from "./commands/command.ts";
import { formulaCommand } from "./commands/formula.ts";
import { materialsCommand } from "./commands/materials.ts";
import { newCommand } from "./commands/new.ts";
import { schemaCommand } from "./commands/schema.ts";
import { exit } from "./io.ts";
import { run } from "./run.ts";
import { systemIo } from "./system-io.ts";

/** Every command, in the order of the help. */
const commands: readonly Command[] = [formulaCommand, batchCommand, materialsCommand, schemaCommand, newCommand];

/** A reader that has seen enough closes the pipe: that is no failure. */
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(exit.done);
  throw error;
});

try {
  process.exitCode = await run(process.argv.slice(2), commands, systemIo());
} catch (error) {
  const message = error instanceof Error ? error.message : String(error);
  process.stderr.write(
    `noodlewright: a bug stopped the work: ${message}\nPlease report it with the command line and the spec. NOODLEWRIGHT_TRACE=1 shows where it happened.\n`,
  );
  if (process.env["NOODLEWRIGHT_TRACE"] === "1" && error instanceof Error) process.stderr.write(`${error.stack}\n`);
  process.exitCode = exit.bug;
}
