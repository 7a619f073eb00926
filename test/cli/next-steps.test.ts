import { describe, expect, test } from "vitest";
import { runBuilt } from "./built.ts";
import { folderFor } from "./folder.ts";
import { runHere } from "./in-process.ts";

const formula = "name: class\nflours: [{ name: bread flour, amount: 100 % }]\nwater: { added: 36 % }\n";

describe("the command alone", () => {
  test("says how to get a spec where the folder has none", async () => {
    const cwd = folderFor({ "notes.txt": "flour 1 kg", "harbour-store.yaml": "materials: {}\n", "broken.yaml": ":::" });
    const { status, stdout, stderr } = await runHere([], { cwd });
    expect([status, stderr]).toEqual([0, ""]);
    expect(stdout).toContain("There is no spec in this folder.");
    expect(stdout).toContain("noodlewright new --from notes.txt");
  });

  test("names the specs of the folder, and what the first of them can be asked", async () => {
    const cwd = folderFor({ "a class.yaml": `${formula}batch: { dough: 5 kg }\n`, "b.json": '{ "flours": [] }' });
    const { status, stdout } = await runHere([], { cwd });
    expect(status).toBe(0);
    expect(stdout).toContain("Specs in this folder: a class.yaml, b.json. Ask one of them:");
    expect(stdout.match(/^ {2}noodlewright \S+ .*$/gmu)?.map((line) => line.trim().split(/ {2,}/u)[0])).toEqual([
      "noodlewright formula 'a class.yaml'",
      "noodlewright batch 'a class.yaml'",
      "noodlewright card 'a class.yaml'",
    ]);
  });
});

describe("the help", () => {
  test("lists every command under what it is for", () => {
    const { stdout } = runBuilt(["--help"]);
    expect(stdout.match(/^[A-Z][a-z ]+:$/gmu)).toEqual([
      "Start:",
      "Adapt:",
      "Make:",
      "Shop and label:",
      "Measure:",
      "Flags:",
    ]);
    expect(stdout).toMatch(/^Start:\n {2}new \[file\]/mu);
    for (const name of ["formula", "alkali", "water-temperature", "nutrition", "calibrate", "schema"]) {
      expect(stdout).toMatch(new RegExp(`^  ${name}\\b`, "mu"));
    }
  });

  test("of a command puts the flags of the question before those of the batch and of the answer", async () => {
    const { stdout } = await runHere(["batch", "--help"]);
    const places = [
      "Flags:",
      "--set",
      "Flags of the batch:",
      "--bowls",
      "Flags of the answer:",
      "--format",
      "--units",
    ].map((text) => stdout.indexOf(text));
    expect(places).not.toContain(-1);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });
});

describe("a spec of the wrong shape", () => {
  test.each([
    ["salt: 1", "  such as   salt: 1 %\n"],
    ["salt: [1]", "  such as   salt: 1 %\n"],
    [
      "batch: { bowls: 40, rawWeight: 130 }",
      "  such as   batch:\n              bowls: 320\n              rawWeight: 130 g\n",
    ],
    [
      "alkali: [{ name: soda ash }]",
      "  such as   alkali:\n              - name: sodium carbonate\n                amount: 0.9 %\n",
    ],
    ["scales: 1 g", "  such as   scales:\n              - division: 1 g\n"],
  ])("is answered with lines that would be right: %s", async (line, sample) => {
    const cwd = folderFor({ "spec.yaml": `${formula}${line}\n` });
    const { status, stderr } = await runHere(["formula", "spec.yaml"], { cwd });
    expect(status).toBe(2);
    expect(stderr).toContain(sample);
  });

  test("is not answered so where a flag said it", async () => {
    const cwd = folderFor({ "spec.yaml": formula });
    const { stderr } = await runHere(["batch", "spec.yaml", "--bowls", "many"], { cwd });
    expect(stderr).toContain("--bowls");
    expect(stderr).not.toContain("such as   ");
  });
});
