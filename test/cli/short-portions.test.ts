import { describe, expect, test } from "vitest";
import { runBuilt } from "./built.ts";

const short = /The sheets give 5 portions fewer than the 350 wanted/u;

describe("the sheets give fewer portions than are wanted", () => {
  test.each(["batch", "cost", "sheet"])("noodlewright %s says so", (command) => {
    const { status, stdout, stderr } = runBuilt([command, "examples/school-noodle.yaml", "--bowls", "350"]);
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(stdout.replace(/\s+/gu, " ")).toMatch(short);
  });

  test("what is wrong with the sheet is left to the sheet", () => {
    const input =
      "name: test\nflours: [{ name: bread flour, amount: 100 % }]\nwater: { added: 36 % }\nbatch: { bowls: 10, rawWeight: 130 g }\nsheet: { machine: no such machine, thickness: 1.4 mm, cutter: 20 }\n";
    const batch = runBuilt(["batch", "-"], { input });
    expect({ status: batch.status, stderr: batch.stderr }).toEqual({ status: 0, stderr: "" });
    const sheet = runBuilt(["sheet", "-"], { input });
    expect(sheet.status).toBe(2);
    expect(sheet.stderr).toContain("[machine.unknown]");
  });
});
