import { expect, test } from "vitest";
import { examples, runExample } from "./every-example.ts";

test.each(examples)("every example in the help of $usage works on a fitting spec", async ({ lines }) => {
  expect(lines.length).toBeGreaterThan(0);
  for (const line of lines) {
    expect(line).toMatch(/^noodlewright /u);
    const { status, stdout, stderr } = await runExample(line);
    const wrote = /^(?:Wrote|Nothing was written)/mu.test(stderr);
    expect({ line, status, stderr: wrote ? "" : stderr }).toEqual({ line, status: 0, stderr: "" });
    expect(stdout + stderr).not.toBe("");
  }
});
