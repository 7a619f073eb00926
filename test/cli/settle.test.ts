import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { parse } from "yaml";
import { blendCommand } from "#cli/commands/blend.ts";
import { settleCommand } from "#cli/commands/settle.ts";
import { withValues } from "#cli/input/written-values.ts";
import { folderFor } from "./folder.ts";
import { runHere } from "./in-process.ts";
import { readProblems } from "./read-problems.ts";

const commands = [{ usage: "settle <spec>", describe: "", job: "adapt", load: async () => settleCommand } as const];

function changed(
  text: string,
  ...values: readonly { readonly path: readonly (string | number)[]; readonly text: string }[]
) {
  return withValues({ name: "noodle.yaml", text, bytes: new TextEncoder().encode(text) }, values);
}

test.each([
  {
    what: "a comment behind it",
    before: "salt: find   # as the class likes it\n",
    after: "salt: 0.9 %   # as the class likes it\n",
  },
  {
    what: "line ends of two signs",
    before: "name: a\r\nsalt: find\r\nnotes: b\r\n",
    after: "name: a\r\nsalt: 0.9 %\r\nnotes: b\r\n",
  },
  { what: "no line end at all", before: "salt: find", after: "salt: 0.9 %" },
  { what: "single quotes", before: "salt: 'find'\n", after: "salt: '0.9 %'\n" },
  { what: "JSON", before: '{ "salt" : "find" }', after: '{ "salt" : "0.9 %" }' },
  { what: "an anchor that nobody else uses", before: "salt: &salt find\n", after: "salt: &salt 0.9 %\n" },
  { what: "a key in quotes", before: '"salt":   find\n', after: '"salt":   0.9 %\n' },
  { what: "a value on the next line", before: "salt:\n      find\nname: b\n", after: "salt:\n      0.9 %\nname: b\n" },
  { what: "an alias in its place", before: "x: &x find\nsalt: *x\n", after: "x: &x find\nsalt: 0.9 %\n" },
])("a value is written with $what as before", ({ before, after }) => {
  expect(changed(before, { path: ["salt"], text: "0.9 %" })).toBe(after);
});

test("values of lists in odd indents and on one line are written, and nothing else", () => {
  const before =
    "flours:\n    -   name: bread flour   # strong\n        amount:    find\n    - { name: rye flour, amount: find }\n\n\nsalt: 1 %\n";
  const after =
    "flours:\n    -   name: bread flour   # strong\n        amount:    60 %\n    - { name: rye flour, amount: 40 % }\n\n\nsalt: 1 %\n";
  const values = [
    { path: ["flours", 1, "amount"], text: "40 %" },
    { path: ["flours", 0, "amount"], text: "60 %" },
  ];
  expect(changed(before, ...values)).toBe(after);
});

test.each([
  { what: "an anchor would carry it elsewhere", text: "salt: &x find\nnotes: *x\n" },
  { what: "the key is not there", text: "name: a\n" },
  { what: "it is a list", text: "salt: [find]\n" },
  { what: "it stands in lines of text", text: "salt: >-\n  find\n  it\n" },
])("nothing is written where $what", ({ text }) => {
  expect(changed(text, { path: ["salt"], text: "0.9 %" })).toBeUndefined();
});

const spec =
  "\ufeffname: class noodle   # for Friday\r\nflours: [{ name: bread flour, amount: 100 % }]\r\nwater: { added: find }\r\nwanted: { doughWater: 36 % }\r\n";

test("--write changes the amounts of the spec, and without it nothing is written", async () => {
  const folder = folderFor({ "noodle.yaml": spec });
  const path = join(folder, "noodle.yaml");
  const shown = await runHere(["settle", path], { commands });
  expect([shown.status, shown.stderr, readFileSync(path, "utf8")]).toEqual([0, "", spec]);
  const written = await runHere(["settle", path, "--write"], { commands });
  expect([written.status, written.stderr]).toEqual([0, `Wrote ${path}: 1 amount.\n`]);
  const text = readFileSync(path, "utf8");
  expect(text.replace(/added: [\d.]+ %/u, "added: find")).toBe(spec);
  expect(Number.parseFloat(parse(text).water.added)).toBeGreaterThan(30);
  const again = await runHere(["settle", path], { commands });
  expect(again.stdout).toContain("The spec leaves nothing to be found.");
});

test("-o writes a new file and no other, and what --set says is not mixed in", async () => {
  const folder = folderFor({ "noodle.yaml": spec, "there.yaml": "name: another\n" });
  const path = join(folder, "noodle.yaml");
  const made = await runHere(["settle", path, "-o", join(folder, "new.yaml")], { commands });
  expect([made.status, readFileSync(path, "utf8")]).toEqual([0, spec]);
  expect(parse(readFileSync(join(folder, "new.yaml"), "utf8")).water.added).toMatch(/^\d/u);
  const there = await runHere(["settle", path, "-o", join(folder, "there.yaml")], { commands });
  expect([there.status, readProblems(there.stderr).map(({ code }) => code)]).toEqual([2, ["file.there"]]);
  const set = await runHere(["settle", path, "--write", "--set", "wanted.doughWater=37 %"], { commands });
  expect([set.status, readProblems(set.stderr).map(({ code }) => code)]).toEqual([2, ["write.set"]]);
  expect(readFileSync(path, "utf8")).toBe(spec);
});

test("blend --write puts the blend that was found into the flours, and refuses one that brings a new flour", async () => {
  const blended = [{ usage: "blend <spec>", describe: "", job: "adapt", load: async () => blendCommand } as const];
  const mixed =
    "name: b # x\nflours:\n  - { name: bread flour, amount: rest } # strong\n  - { name: cake flour, amount: 10 % }\nshelf: { rice flour: {} }\nwater: { added: 36 % }\n";
  const folder = folderFor({ "noodle.yaml": mixed });
  const path = join(folder, "noodle.yaml");
  const written = await runHere(["blend", path, "--protein", "at most 10 %", "--shelf", "rice flour=0 %", "--write"], {
    commands: blended,
  });
  expect([written.status, written.stderr]).toEqual([0, `Wrote ${path}: 2 amounts.\n`]);
  const text = readFileSync(path, "utf8");
  const [bread, cake] = parse(text).flours.map(({ amount }: { readonly amount: string }) => Number.parseFloat(amount));
  expect(bread + cake).toBe(100);
  expect(cake).toBeGreaterThan(10);
  expect(text.replace(`amount: ${bread} %`, "amount: rest").replace(`amount: ${cake} %`, "amount: 10 %")).toBe(mixed);
  const fresh = await runHere(["blend", path, "--protein", "at most 7 %", "--prefer", "most rice flour", "--write"], {
    commands: blended,
  });
  expect([fresh.status, readProblems(fresh.stderr).map(({ code }) => code)]).toEqual([2, ["write.new-flour"]]);
  expect(readFileSync(path, "utf8")).toBe(text);
});
