import { readFileSync, writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { runBuilt } from "../cli/built.ts";
import { consoleBlocks, splitWords, withOutputs } from "./console-blocks.ts";

const readme = new URL("../../README.md", import.meta.url);

/** What a reader sees on the terminal: the answer, or the problems. */
function shownBy(command: string): string {
  const [program, ...args] = splitWords(command);
  expect(program).toBe("noodlewright");
  const { stdout, stderr } = runBuilt(args);
  return (stdout + stderr).replaceAll("\r\n", "\n");
}

describe("the README's tour", () => {
  if (process.env["UPDATE_README"] === "1") {
    writeFileSync(readme, withOutputs(readFileSync(readme, "utf8"), shownBy));
  }
  const blocks = consoleBlocks(readFileSync(readme, "utf8"));

  test("has commands", () => expect(blocks.length).toBeGreaterThan(5));

  test.each(blocks)("$command", ({ command, output }) => {
    expect(output).toBe(shownBy(command));
  });
});
