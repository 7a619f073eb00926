import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { SpecChange } from "@noodlewright/core/spec";
import { expect, test } from "vitest";
import { parse } from "yaml";
import { sharedValue, withChanges } from "#cli/input/written-values.ts";
import { folderFor } from "./folder.ts";
import { runHere } from "./in-process.ts";
import { readProblems } from "./read-problems.ts";

function changed(text: string, ...values: readonly SpecChange[]) {
  return withChanges({ name: "noodle.yaml", text, bytes: new TextEncoder().encode(text) }, values);
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
  expect(changed(before, { path: ["salt"], value: "0.9 %" })).toBe(after);
});

test("values of lists in odd indents and on one line are written, and nothing else", () => {
  const before =
    "flours:\n    -   name: bread flour   # strong\n        amount:    find\n    - { name: rye flour, amount: find }\n\n\nsalt: 1 %\n";
  const after =
    "flours:\n    -   name: bread flour   # strong\n        amount:    60 %\n    - { name: rye flour, amount: 40 % }\n\n\nsalt: 1 %\n";
  const values = [
    { path: ["flours", 1, "amount"], value: "40 %" },
    { path: ["flours", 0, "amount"], value: "60 %" },
  ];
  expect(changed(before, ...values)).toBe(after);
});

test.each([
  {
    what: "a list in lines",
    before: "a:\n  - b: 1 # c\n# d\ne: 2\n",
    after: "a:\n  - b: 1 # c\n  - x: 5 %\n# d\ne: 2\n",
  },
  { what: "a list of entries on one line", before: "a:\n- { b: 1 }", after: "a:\n- { b: 1 }\n- { x: 5 % }" },
  { what: "a list on one line", before: "a: [{ b: 1 }] # c\n", after: "a: [{ b: 1 }, { x: 5 % }] # c\n" },
  { what: "JSON", before: '{"a": [\n  {"b": 1}\n]}', after: '{"a": [\n  {"b": 1},\n  { "x": "5 %" }\n]}' },
])("an entry is put behind $what, and taken out again", ({ before, after }) => {
  const put = { path: ["a", 1], value: { x: "5 %" } };
  expect(changed(before, put)).toBe(after);
  expect(changed(before, put, { path: ["a", 1] })?.trimEnd()).toBe(before.trimEnd());
});

test.each([
  { at: 0, after: "a:\n  -\n    b: 2\n    c: 2\n  - - 3\n    - 4\n" },
  { at: 1, after: "a:\n  - # bin 4\n    b: 1\n  - - 3\n    - 4\n" },
  { at: 2, after: "a:\n  - # bin 4\n    b: 1\n  -\n    b: 2\n    c: 2\n" },
])("entry $at of a list is taken out with its dash, on whatever line that stands", ({ at, after }) => {
  const before = "a:\n  - # bin 4\n    b: 1\n  -\n    b: 2\n    c: 2\n  - - 3\n    - 4\n";
  expect(changed(before, { path: ["a", at] })).toBe(after);
});

test("an entry at the head of a list within a list leaves the dash of that list", () => {
  expect(changed("a:\n  - - 3\n    - 4\n", { path: ["a", 0, 0] })).toBe("a:\n  - - 4\n");
});

test.each([
  {
    what: "a list in lines",
    before: "a:\n  - b: 1 # c\n  - b: 2\ne: 2\n",
    after: "a:\n  - b: 1 # c\n  - x: 5 %\n  - b: 2\ne: 2\n",
  },
  { what: "a list on one line", before: "a: [{ b: 1 }, { b: 2 }]\n", after: "a: [{ b: 1 }, { x: 5 % }, { b: 2 }]\n" },
])("an entry is put in the middle of $what", ({ before, after }) => {
  expect(changed(before, { path: ["a", 1], value: { x: "5 %" }, before: true })).toBe(after);
});

test("a key is put in and taken out with its comment, and the only one of a section is not", () => {
  const before = "a: # of it\n    b: 1 # c\n    d: |\n      text\ne: 2\n";
  expect(changed(before, { path: ["a", "x"], value: 3 })).toBe(before.replace("e: 2", "    x: 3\ne: 2"));
  expect(changed(before, { path: ["a", "b"] })).toBe(before.replace("    b: 1 # c\n", ""));
  expect(changed("a: { b: 1 }\n", { path: ["a", "b"] })).toBeUndefined();
});

test.each([
  { what: "an anchor would carry it elsewhere", text: "salt: &x find\nnotes: *x\n" },
  { what: "there is no section", text: "- name: a\n" },
  { what: "it is a list", text: "salt: [find]\n" },
  { what: "it stands in lines of text", text: "salt: >-\n  find\n  it\n" },
])("nothing is written where $what", ({ text }) => {
  expect(changed(text, { path: ["salt"], value: "0.9 %" })).toBeUndefined();
});

const spec =
  "\ufeffname: class noodle   # for Friday\r\nflours: [{ name: bread flour, amount: 100 % }]\r\nwater: { added: find }\r\nwanted: { doughWater: 36 % }\r\n";

test("--write changes the amounts of the spec, and without it nothing is written", async () => {
  const folder = folderFor({ "noodle.yaml": spec });
  const path = join(folder, "noodle.yaml");
  const shown = await runHere(["settle", path]);
  expect([shown.status, shown.stderr, readFileSync(path, "utf8")]).toEqual([0, "", spec]);
  const written = await runHere(["settle", path, "--write"]);
  expect([written.status, written.stderr]).toEqual([0, `Wrote ${path}: 1 change.\n`]);
  const text = readFileSync(path, "utf8");
  expect(text.replace(/added: [\d.]+ %/u, "added: find")).toBe(spec);
  expect(Number.parseFloat(parse(text).water.added)).toBeGreaterThan(30);
  const again = await runHere(["settle", path]);
  expect(again.stdout).toContain("The spec leaves nothing to be found");
});

test("-o writes a new file and no other, and what --set says is not mixed in", async () => {
  const folder = folderFor({ "noodle.yaml": spec, "there.yaml": "name: another\n" });
  const path = join(folder, "noodle.yaml");
  const made = await runHere(["settle", path, "-o", join(folder, "new.yaml")]);
  expect([made.status, readFileSync(path, "utf8")]).toEqual([0, spec]);
  expect(parse(readFileSync(join(folder, "new.yaml"), "utf8")).water.added).toMatch(/^\d/u);
  const there = await runHere(["settle", path, "-o", join(folder, "there.yaml")]);
  expect([there.status, readProblems(there.stderr).map(({ code }) => code)]).toEqual([2, ["file.there"]]);
  const set = await runHere(["settle", path, "--write", "--set", "wanted.doughWater=37 %"]);
  expect([set.status, readProblems(set.stderr).map(({ code }) => code)]).toEqual([2, ["write.set"]]);
  expect(readFileSync(path, "utf8")).toBe(spec);
});

/** A spec with all that a hand leaves in one: comments, an anchor, odd indents and lists on one line. */
const handmade = `# from the class
name: b # x
flours:
    -   name: bread flour   # strong
        amount:    rest
    -   { name: "rye flour", amount: &some 20 % }   # from the mill


ingredients: [{ name: whole egg, amount: 6 % }] # fresh
alkali:
- name: sodium carbonate  # soda
  amount: '1 %'
salt: 1 %
water:
      tap: 30 %
shelf:
  "barley flour": { figures: { protein: 10 %, moisture: 13 %, proteinBasis: dry } }
  vital wheat gluten: {}
lot: { of: bread flour, figures: { protein: 11.8 %, moisture: 14 % } }
wanted: { within: 0.3 % }
`;

test.each([
  {
    args: ["replace", "--missing", "rye flour"],
    gone: ["amount: &some", "rye flour"],
    reads: { flours: [{ name: "bread flour" }, { name: "barley flour", figures: { proteinBasis: "dry" } }, {}] },
  },
  {
    args: ["replace", "--missing", "whole egg", "--with", "dried whole egg"],
    gone: ["whole egg, amount: 6 %"], // on one line with its amount
    reads: { ingredients: [{ name: "dried whole egg" }] },
  },
  {
    args: ["lot"],
    gone: [],
    reads: {
      flours: [{ name: "bread flour", figures: { protein: "11.8 %", moisture: "14 %" } }, { name: "rye flour" }],
    },
  },
  {
    args: ["alkali", "convert", "sodium carbonate", "sodium carbonate decahydrate", "--spec"],
    gone: ["- name: sodium carbonate  # soda", "amount: '1 %'"],
    reads: { alkali: [{ name: "sodium carbonate decahydrate", amount: "2.7 %" }], water: { tap: "28.3 %" } },
    kept: "- name: sodium carbonate decahydrate  # soda\n  amount: '2.7 %'\n",
  },
  {
    args: ["blend", "--protein", "at most 10 %", "--prefer", "most barley flour"],
    gone: ["bread flour", "rye flour"], // dropped, so taken out
    reads: { flours: [{ name: "barley flour", amount: "100 %" }] },
  },
])(
  "$args writes its answer into a spec made by hand, and leaves all else as it is",
  async ({ args, gone, reads, kept = "" }) => {
    for (const lineEnd of ["\n", "\r\n"]) {
      const before = handmade.replaceAll("\n", lineEnd);
      const folder = folderFor({ "noodle.yaml": before });
      const path = join(folder, "noodle.yaml");
      const { status, stderr } = await runHere([...args, path, "--write"]);
      expect([status, stderr]).toEqual([0, expect.stringMatching(/^Wrote .*: \d changes?\.\n$/u)]);
      const after = readFileSync(path, "utf8");
      expect(parse(after)).toMatchObject(reads);
      expect(after.replaceAll("\r\n", "\n")).toContain(kept);
      const lost = before.split(lineEnd).filter((line) => !after.split(lineEnd).includes(line));
      const amounts = lost.filter((line) => !gone.some((piece) => line.includes(piece)));
      for (const line of amounts)
        expect(line).toMatch(/^ +(?:amount: +|tap: |- {3}\{ name: "rye flour", amount: |- {3}name: bread)/u);
      expect(after.replaceAll("\r\n", "").includes("\r")).toBe(false);
      expect(after.includes("\n") && after.replaceAll("\r\n", "").includes("\n")).toBe(lineEnd === "\n");
      const again = await runHere(["settle", path]);
      expect([again.status, again.stderr]).toEqual([0, ""]);
    }
  },
);

test("a product that the spec has already takes the dose of the other, and what is wanted and then missed is said first", async () => {
  const text = `name: class noodle
flours: [{ name: bread flour, amount: 100 % }]
water: { added: 36 % }
alkali:
  - { name: potassium carbonate, amount: 0.6 % }   # bought
  - { name: "sodium carbonate", amount: 0.4 % }   # our own
wanted: { potassiumShare: 60 % }
`;
  const path = join(folderFor({ "noodle.yaml": text }), "noodle.yaml");
  const args = ["alkali", "convert", "potassium carbonate", "sodium carbonate", "--spec", path, "--write"];
  const { status, stdout, stderr } = await runHere(args);
  expect([status, stderr]).toEqual([0, expect.stringContaining("Wrote")]);
  expect(stdout.split("\n").slice(2, 5).join(" ")).toMatch(/potassium carbonate.*60 %/u);
  // 0.6 × 105.99 / 138.21 = 0.4601 % of the one salt by their molar masses, beside 0.4 %
  expect(parse(readFileSync(path, "utf8")).alkali).toEqual([{ name: "sodium carbonate", amount: "0.8601 %" }]);
  expect(readFileSync(path, "utf8")).toContain('  - { name: "sodium carbonate", amount: 0.8601 % }   # our own\n');
});

test("both products of a pair stand where the one stood, and a name of several lines is asked for by its place", async () => {
  const alkali = ["class powder", "baking soda", "class powder"];
  const text = `name: class noodle
flours: [{ name: bread flour, amount: 100 % }]
water: { added: 36 % }
alkali:
${alkali.map((name) => `  - { name: ${name}, amount: 0.4 % }\n`).join("")}
materials:
  class powder: { kind: alkali, composition: { Na2CO3: 60 %, K2CO3: 40 % } }
`;
  const path = join(folderFor({ "noodle.yaml": text }), "noodle.yaml");
  const convert = (from: string) =>
    runHere(["alkali", "convert", from, "sodium carbonate", "potassium carbonate", "--spec", path, "--write"]);
  const several = await convert("class powder");
  expect([several.status, readProblems(several.stderr).map(({ code }) => code)]).toEqual([2, ["convert.several"]]);
  expect(several.stderr).toContain("alkali[0] (0.40 % of flour), alkali[2] (0.40 % of flour)");
  expect((await convert("alkali[0]")).status).toBe(0);
  const names = parse(readFileSync(path, "utf8")).alkali.map(({ name }: { readonly name: string }) => name);
  expect(names).toEqual(["sodium carbonate", "potassium carbonate", "baking soda", "class powder"]);
});

test("a spec in JSON with its flours in g keeps both", async () => {
  const noodle = {
    name: "b",
    flours: [
      { name: "bread flour", amount: "400 g" },
      { name: "rye flour", amount: "100 g" },
    ],
    shelf: { "cake flour": {} },
    water: { added: "180 g" },
    wanted: { within: "0.5 %" },
  };
  const folder = folderFor({ "noodle.json": JSON.stringify(noodle, undefined, 2) });
  const path = join(folder, "noodle.json");
  const { status, stderr } = await runHere(["replace", path, "--missing", "rye flour", "--write"]);
  expect([status, stderr]).toEqual([0, expect.stringContaining("Wrote")]);
  const { flours } = JSON.parse(readFileSync(path, "utf8"));
  expect(flours.map(({ name }: { readonly name: string }) => name)).toEqual(["bread flour", "cake flour"]);
  const masses = flours.map(({ amount }: { readonly amount: string }) => Number.parseFloat(amount));
  expect(masses[0] + masses[1]).toBe(500);
});

test.each([
  ["blend"],
  ["replace", "--missing", "rye flour, light"],
  ["lot", "--of", "bread flour", "--protein", "11.8 %", "--moisture", "14.4 %"],
])("%s writes the flours and the water that it shows to go on with", async (...args) => {
  for (const total of [100, 500]) {
    const amount = (percent: number): string => (total === 100 ? `${percent} %` : `${(percent * total) / 100} g`);
    const noodle = {
      name: "class noodle",
      flours: [
        { name: "bread flour", amount: amount(80) },
        { name: "rye flour, light", amount: amount(20) },
      ],
      water: { added: amount(36) },
      wanted: { protein: "at least 12.5 %" },
      shelf: { "vital wheat gluten": { share: "at most 4 %" }, "whole wheat flour": { share: "at most 20 %" } },
    };
    const path = join(folderFor({ "noodle.json": JSON.stringify(noodle) }), "noodle.json");
    const { stdout } = await runHere([...args, path, "--write"]);
    const shown = parse(/To go on with, in the spec\n([\s\S]*?)\n\n/u.exec(stdout)?.[1] ?? "");
    const { flours, water } = JSON.parse(readFileSync(path, "utf8"));
    expect(water.added).not.toBe(noodle.water.added);
    expect({ flours, water }).toMatchObject(shown);
  }
});

test("a value that others share in an entry that is replaced as a whole is shown as well", () => {
  const text =
    "alkali:\n  - { name: sodium carbonate, amount: &dose 1 % }\n  - { name: potassium carbonate, amount: *dose }\n";
  const file = { name: "noodle.yaml", text, bytes: new TextEncoder().encode(text) };
  const change = { path: ["alkali", 0], value: { name: "washing soda", amount: "2.7 %" } };
  expect(withChanges(file, [change])).toBeUndefined();
  const shared = sharedValue(file, [change]);
  expect(shared).toMatchObject({ anchor: "dose", stands: "here", others: [text.indexOf("*dose")] });
  expect(text.slice(shared?.start, shared?.end)).toContain("1 %");
});

test("a change within what stands elsewhere says where that is", () => {
  const text = "base: &all\n  added: 36 %\nwater: *all\nother: *all\n";
  const file = { name: "noodle.yaml", text, bytes: new TextEncoder().encode(text) };
  const found = sharedValue(file, [{ path: ["water", "added"], value: "38 %" }]);
  expect(found).toMatchObject({ anchor: "all", stands: "elsewhere", start: text.indexOf("*all") });
  expect(found?.others).toHaveLength(1);
});
