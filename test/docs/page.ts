import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { expect } from "vitest";

/** Holds a page that is made from the code to what the code says now; UPDATE_DOCS=1 writes it anew. */
export function expectPage(path: string, text: string): void {
  const file = new URL(`../../${path}`, import.meta.url);
  if (process.env["UPDATE_DOCS"] === "1") writeFileSync(file, text);
  expect(existsSync(file) ? readFileSync(file, "utf8") : "").toBe(text);
}

/** A row of a table in Markdown. */
export function row(...cells: readonly string[]): string {
  return `| ${cells.map((cell) => cell.replaceAll("|", "\\|").replaceAll("\n", " ")).join(" | ")} |`;
}

/** How a page of problems says what kind each is of. */
export const kinds = {
  input: "The input is wrong",
  "no-answer": "There is no such answer",
  note: "A note that goes with the answer",
} as const;
