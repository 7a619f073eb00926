import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, test } from "vitest";
import { runBuilt } from "../cli/built.ts";
import { consoleBlocks, splitWords, withOutputs } from "./console-blocks.ts";

const fileAt = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** A folder that holds the examples and nothing else, where commands are run one after the other. */
class Bench {
  readonly #folder = mkdtempSync(join(tmpdir(), "noodlewright-docs-"));

  constructor() {
    cpSync(fileAt("examples"), join(this.#folder, "examples"), { recursive: true });
  }

  /** What a reader sees on the terminal: the answer, or the problems. */
  shownBy(command: string): string {
    const [program, ...args] = splitWords(command);
    expect(program).toBe("noodlewright");
    const { status, stdout, stderr } = runBuilt(args, { cwd: this.#folder });
    // A flag or a spec that is no longer right would otherwise be shown as it is.
    expect(status === 2, stderr).toBe(command.includes("wrong-on-purpose"));
    return (stdout + stderr).replaceAll("\r\n", "\n");
  }

  clear(): void {
    rmSync(this.#folder, { recursive: true });
  }
}

describe.each(["README.md", "examples/README.md", "packages/cli/README.md"])("%s", (path) => {
  const file = fileAt(path);
  if (process.env["UPDATE_DOCS"] === "1") {
    const bench = new Bench();
    writeFileSync(
      file,
      withOutputs(readFileSync(file, "utf8"), (command) => bench.shownBy(command)),
    );
    bench.clear();
  }
  const blocks = consoleBlocks(readFileSync(file, "utf8"));
  const bench = new Bench();
  afterAll(() => bench.clear());

  test("has commands", () => expect(blocks.length).toBeGreaterThan(2));

  test.each(blocks)("$command", ({ command, output }) => {
    expect(output).toBe(bench.shownBy(command));
  });
});

test("the README is a page: 10 kB at most", () => {
  expect(readFileSync(fileAt("README.md")).length).toBeLessThanOrEqual(10_000);
});
