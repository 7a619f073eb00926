import { readFileSync } from "node:fs";
import { jsonSchema } from "@noodlewright/core/spec";
import { expect, test } from "vitest";
import { expectPage } from "./page.ts";

const heading = "## What may be wanted\n";

interface Described {
  readonly description?: string;
  readonly examples?: readonly unknown[];
  readonly properties?: Readonly<Record<string, Described>>;
}

test("every key of what may be wanted is told as the schema tells it", () => {
  const { definitions } = jsonSchema("spec") as { readonly definitions?: Readonly<Record<string, Described>> };
  const keys = Object.entries(definitions?.["Wanted"]?.properties ?? {});
  expect(keys.length).toBeGreaterThan(15);
  const rows = keys.map(
    ([key, { description = "", examples = [] }]) =>
      `| \`${key}\` | ${description} | ${examples.map((one) => `\`${String(one)}\``).join(", ")} |`,
  );
  const page = readFileSync(new URL("../../examples/spec.md", import.meta.url), "utf8");
  const [before = ""] = page.split(heading);
  const table = ["| key of `wanted` | what it asks for | such as |", "| --- | --- | --- |", ...rows];
  expectPage("examples/spec.md", `${before}${heading}\n${table.join("\n")}\n`);
});
