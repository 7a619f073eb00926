import { exit } from "./io.ts";
import { run } from "./run.ts";
import { systemIo } from "./system-io.ts";
import { commands } from "./table.ts";

/** A reader that has seen enough closes the pipe: that is no failure. A full disk is. */
for (const stream of [process.stdout, process.stderr]) {
  stream.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code !== "EPIPE" && stream === process.stdout) {
      process.stderr.write(`noodlewright: the answer could not be written (${error.code ?? error.message})\n`);
    }
    process.exit(error.code === "EPIPE" ? process.exitCode : exit.wrongInput);
  });
}

run(process.argv.slice(2), commands, systemIo()).then(
  (status) => {
    process.exitCode = status;
  },
  (error: unknown) => stop(error),
);

/** The last resort: what comes here is a bug. */
function stop(error: unknown): void {
  const message = error instanceof Error ? error.message : String(error);
  process.stderr.write(
    `noodlewright: a bug stopped the work: ${message}\nPlease report it with the command line and the spec. NOODLEWRIGHT_TRACE=1 shows where it happened.\n`,
  );
  if (process.env["NOODLEWRIGHT_TRACE"] === "1" && error instanceof Error) process.stderr.write(`${error.stack}\n`);
  process.exitCode = exit.bug;
}
