import { describe, expect, test } from "vitest";
import { runBuilt } from "./built.ts";
import { folderFor } from "./folder.ts";
import { runHere } from "./in-process.ts";
import { readProblems, type SeenProblem } from "./read-problems.ts";

interface Row {
  readonly what: string;
  readonly content: string | Uint8Array;
  /** Code, line and column, and the text that the carets stand under. */
  readonly expected: readonly string[];
}

const flours = "flours:\n  - name: bread flour\n    amount: 100 %\n";
const water = "water:\n  added: 36 %\n";

const rows: Readonly<Record<string, Row>> = {
  "twice.yaml": {
    what: "keys that stand twice, with what else is wrong",
    content: `name: a\nname: b\nflours:\n  - name: bread flour\n    amount: 90 %\n${water}`,
    expected: ["file.duplicate-key 2:1 name", "flours.shares-total 3:1 flours"],
  },
  "twice.json": {
    what: "a key that stands twice in JSON",
    content:
      '{"name": "a", "name": "b", "flours": [{"name": "bread flour", "amount": "100 %"}], "water": {"added": "36 %"}}',
    expected: ['file.duplicate-key 1:15 "name"'],
  },
  "keys.yaml": {
    what: "unknown keys at the top and inside",
    content: `name: a\nwatr: 3\nflours:\n  - nam: bread flour\n    amount: 100 %\n${water}`,
    expected: ["spec.unknown-key 2:1 watr", "spec.unknown-key 4:5 nam"],
  },
  "shares.yaml": {
    what: "shares that do not total 100",
    content: `name: a\nflours:\n  - name: bread flour\n    amount: 80 %\n  - name: barley flour\n    amount: 25 %\n${water}`,
    expected: ["flours.shares-total 2:1 flours"],
  },
  "absurd.yaml": {
    what: "negative and absurd values",
    content: `name: a\n${flours}water:\n  added: -3 %\nsalt: 300 %\nbatch:\n  bowls: 0\n  rawWeight: 0 g\nlosses:\n  mixing: 150 %\nscales:\n  - division: 1e400 g\n`,
    expected: [
      "quantity.unreadable 6:10 -3 %",
      "quantity.out-of-range 7:7 300 %",
      "spec.size 9:10 0",
      "quantity.out-of-range 10:14 0 g",
      "quantity.out-of-range 12:11 150 %",
      "quantity.unreadable 14:15 1e400 g",
    ],
  },
  "infinite.yaml": {
    what: "numbers that are none",
    content: `name: a\n${flours}water:\n  added: .nan\nsalt: .inf\n`,
    expected: ["quantity.unreadable 6:10 .nan", "quantity.unreadable 7:7 .inf"],
  },
  "egg.yaml": {
    what: "less water than the egg brings",
    content: `name: a\n${flours}water:\n  added: 2 %\ningredients:\n  - name: whole egg\n    amount: 10 %\n`,
    expected: ["water.below-carried 6:10 2 %"],
  },
  "laughs.yaml": {
    what: "aliases that multiply (the billion laughs)",
    content: ["a: &a [x, x, x, x, x, x, x, x, x]"]
      .concat(["b", "c", "d", "e", "f", "g", "h", "i"].map((key, index) => laugh(key, "abcdefgh".charAt(index))))
      .join("\n"),
    expected: ["file.aliases 9:40 *h"],
  },
  "alias.yaml": {
    what: "an alias of nothing",
    content: "name: a\nflours: *store\n",
    expected: ["file.alias 2:9 *store"],
  },
  "ring.yaml": {
    what: "an alias of the list it stands in",
    content: `name: a\nflours: &ring [*ring, *ring]\n${water}`,
    expected: ["spec.too-deep 2:16 *ring"],
  },
  "empty.yaml": { what: "nothing", content: "", expected: ["file.empty"] },
  "blank.yaml": { what: "blanks", content: " \n\n", expected: ["file.empty"] },
  "comment.yaml": { what: "nothing but a comment", content: "# a noodle\n", expected: ["file.empty"] },
  "dashes.yaml": { what: "nothing between its marks", content: "---\n", expected: ["file.empty"] },
  "form.yaml": {
    what: "a form that nobody filled in",
    content: "name: {{ name }}\n",
    expected: ["file.syntax 1:8 { name }"],
  },
  "sixties.yaml": {
    what: "a number in sixties, as an older YAML reads it",
    content: `%YAML 1.1\n---\nname: a\n${flours}${water}batch:\n  bowls: 1:10\n  rawWeight: 130 g\n`,
    expected: ["spec.type 10:10 1:10"],
  },
  "picture.yaml": {
    what: "bytes that are no text",
    content: Uint8Array.from({ length: 2000 }, (_, index) => (index * 89 + 137) % 256),
    expected: ["file.not-text"],
  },
  "wide.yaml": {
    what: "UTF-16",
    content: Uint8Array.from([0xff, 0xfe, 0x6e, 0x00, 0x61, 0x00]),
    expected: ["file.not-text"],
  },
  "huge.yaml": { what: "10 MB", content: "a: 1\n".repeat(2_000_000), expected: ["file.too-large"] },
  "tabs.yaml": {
    what: "tabs for indents",
    content: `name: a\nflours:\n\t- name: bread flour\n${water}`,
    expected: ["file.tab 3:1 ·"],
  },
  "quote.yaml": {
    what: "an unclosed quote",
    content: 'name: "a\nsalt: 1 %\n',
    expected: ["file.syntax 3:1"],
  },
  "list.yaml": {
    what: "a list in place of a spec",
    content: "- a\n- b\n",
    expected: ["spec.type"],
  },
  "kinds.yaml": {
    what: "lists and sections in each other's place",
    content: "name: [a]\nflours: bread flour\nwater: [36 %]\nsalt: { a: 1 }\nbatch: big\nscales: { division: 1 g }\n",
    expected: [
      "spec.type 1:1 name",
      "spec.type 2:9 bread flour",
      "spec.type 3:1 water",
      "spec.type 4:1 salt",
      "spec.type 5:8 big",
      "spec.type 6:1 scales",
    ],
  },
  "deep.yaml": {
    what: "lists within lists, 30 deep",
    content: `name: ${"[".repeat(30)}${"]".repeat(30)}\n`,
    expected: ["spec.too-deep 1:27 [[[[[[[[[[]]]]]]]]]]"],
  },
  "keys-of-objects.yaml": {
    what: "keys that every object has",
    content: `name: a\n${flours}${water}__proto__: { name: b }\nconstructor: 1\ntoString: 2\n`,
    expected: ["spec.unknown-key 7:1 __proto__", "spec.unknown-key 8:1 constructor", "spec.unknown-key 9:1 toString"],
  },
  "proto.json": {
    what: "a prototype in JSON",
    content:
      '{ "flours": [{ "name": "bread flour", "amount": "100 %" }],\n  "water": { "added": "36 %" },\n  "__proto__": { "name": "b" } }',
    expected: ["spec.missing 1:1 {", 'spec.unknown-key 3:3 "__proto__"'],
  },
  "crlf.yaml": {
    what: "lines that end in CR LF",
    content: `name: a\nwatr: 3\n${flours}${water}`.replaceAll("\n", "\r\n"),
    expected: ["spec.unknown-key 2:1 watr"],
  },
  "bom.yaml": {
    what: "a byte order mark",
    content: `\u{FEFF}name: a\nwatr: 3\n${flours}${water}`,
    expected: ["spec.unknown-key 2:1 watr"],
  },
  "wrong.json": {
    what: "JSON with the same mistakes, from left to right on a line",
    content:
      '{ "name": "a", "flours": [{ "name": "bread flour", "amount": "80 %" }], "watr": 1,\n  "water": { "added": "36 %" }, "salt": -1 }',
    expected: ['flours.shares-total 1:16 "flours"', 'spec.unknown-key 1:73 "watr"', "quantity.unreadable 2:41 -1"],
  },
  "comma.json": {
    what: "JSON without a comma",
    content: '{"name": "a"\n"flours": 1}',
    expected: ['file.syntax 2:1 "'],
  },
  "two.yaml": {
    what: "two documents",
    content: "name: a\n---\nname: b\n",
    expected: ["file.several 2:1 ---"],
  },
  "name.yaml": {
    what: "a name that is none of the catalogue's",
    content: `name: a\nflours:\n  - name: bred flour\n    amount: 100 %\n${water}`,
    expected: ["materials.unknown 3:11 bred flour"],
  },
};

function laugh(key: string, before: string): string {
  return `${key}: &${key} [${Array.from({ length: 9 }, () => `*${before}`).join(", ")}]`;
}

const folder = folderFor({
  ...Object.fromEntries(Object.entries(rows).map(([file, { content }]) => [file, content])),
  "abyss.yaml": "[".repeat(50_000),
  "broken-kitchen.yaml": 'materials:\n  a: "b\n',
  "include.yaml": `name: a\ninclude: [none.yaml, quote.yaml, ., broken-kitchen.yaml]\n${flours}${water}watr: 1\n`,
  "foreign.yaml": `name: a\ninclude: [quote.yaml, picture.yaml, crlf.yaml]\n${flours}${water}`,
  "many.yaml": Array.from({ length: 4001 }, (_, index) => `k${index}: 1\n`).join(""),
  "stuffed.yaml": `name: a\ninclude: [half.yaml, half.yaml]\n${flours}${water}`,
  "half.yaml": `materials: {} #${"n".repeat(130_000)}\n`,
});

/** Runs the command on a file that is wrong; whatever is wrong with it, these hold. */
async function refused(file: string): Promise<readonly SeenProblem[]> {
  const { status, stdout, stderr } = await runHere(["formula", file], { cwd: folder });
  expect(status).toBe(2);
  expect(stdout).toBe("");
  expect(stderr).not.toMatch(/^ {4}at /mu);
  const seen = readProblems(stderr);
  for (const { found, expected, advice } of seen) {
    expect(found).not.toBe("");
    expect(expected).not.toBe("");
    expect(advice).not.toBe("");
  }
  return seen;
}

describe("a spec that is wrong", () => {
  test.each(Object.entries(rows).map(([file, row]) => ({ file, ...row })))("$what", async ({ file, expected }) => {
    const seen = await refused(file);
    const told = seen.map(({ code, where, pointed }) => [code, where.slice(file.length + 1), pointed].join(" ").trim());
    expect(told).toEqual(expected);
    expect(seen.filter(({ where }) => !where.startsWith(file))).toEqual([]);
  });

  test("lists within lists, 50 000 deep", async () => {
    const [problem, ...more] = await refused("abyss.yaml");
    expect(more).toEqual([]);
    expect(problem).toMatchObject({ code: "file.too-deep", pointed: "[" });
    expect(problem?.where).toMatch(/^abyss\.yaml:1:\d+$/u);
  });

  test("files included that are missing, no kitchen file, a folder or broken: each with its own place", async () => {
    const seen = (await refused("include.yaml")).map(({ code, where, pointed }) => [code, where, pointed]);
    expect(seen).toContainEqual(["file.unreadable", "include.yaml:2:11", "none.yaml"]);
    expect(seen).toContainEqual(["file.unreadable", "include.yaml:2:34", "."]);
    expect(seen).toContainEqual(["file.no-kitchen", "include.yaml:2:22", "quote.yaml"]);
    expect(seen).toContainEqual(["file.syntax", "broken-kitchen.yaml:3:1", ""]);
    expect(seen).toContainEqual(["spec.unknown-key", "include.yaml:8:1", "watr"]);
  });

  test("nothing of an included file that is no kitchen file is quoted", async () => {
    const { stderr } = await runHere(["formula", "foreign.yaml"], { cwd: folder });
    expect(readProblems(stderr).map(({ code, where }) => [code, where])).toEqual([
      ["file.no-kitchen", "foreign.yaml:2:11"],
      ["file.not-text", "foreign.yaml:2:23"],
      ["file.no-kitchen", "foreign.yaml:2:37"],
    ]);
    expect(stderr).not.toContain("watr");
  });

  test("more values, or more included text, than a spec has", async () => {
    expect(await refused("many.yaml")).toMatchObject([{ code: "file.too-large", found: "more than 4000 values" }]);
    const [problem, ...more] = await refused("stuffed.yaml");
    expect(more).toEqual([]);
    expect(problem).toMatchObject({ code: "file.too-large", where: "stuffed.yaml:2:22", pointed: "half.yaml" });
  });

  test("what was most likely meant is named", async () => {
    expect((await refused("crlf.yaml"))[0]?.advice).toBe("did you mean `water`?");
    expect((await refused("name.yaml"))[0]?.advice).toContain('did you mean "bread flour"');
    expect((await refused("shares.yaml"))[0]?.advice).toContain("5 %");
  });

  test("the example that is wrong on purpose shows all its mistakes at once", async () => {
    const { stderr } = await runHere(["formula", "examples/wrong-on-purpose.yaml"]);
    expect(readProblems(stderr).map(({ code, pointed }) => [code, pointed])).toEqual([
      ["flours.shares-total", "flours"],
      ["materials.unknown", "bred flour"],
      ["spec.unknown-key", "watr"],
      ["quantity.unreadable", "1"],
    ]);
  });
});

describe("a file that is none", () => {
  test.each([
    { what: "missing", path: "none.yaml", found: "no file of this name" },
    { what: "under a file", path: "crlf.yaml/none.yaml", found: "no file of this name" },
    { what: "a folder", path: ".", found: "a folder" },
  ])("$what", async ({ path, found }) => {
    expect(await refused(path)).toMatchObject([{ where: path, code: "file.unreadable", found }]);
  });

  test("thousands of problems are counted, and the first hundred shown", () => {
    const { stderr, status } = runBuilt(["formula", "-"], { input: "a: 1\n".repeat(3000) });
    expect(status).toBe(2);
    expect(readProblems(stderr)).toHaveLength(100);
    expect(stderr).toMatch(/\n\d{4} problems, the first 100 of them shown; nothing was worked out\.\n$/u);
  });
});

describe("the built command, as a process of its own", () => {
  const seconds = 10;

  test.each(["twice.yaml", "empty.yaml", "picture.yaml", "laughs.yaml", "abyss.yaml", "huge.yaml", ".", "none.yaml"])(
    "says the same of %s, within seconds",
    async (file) => {
      const started = performance.now();
      const built = runBuilt(["formula", file], { cwd: folder });
      expect(performance.now() - started).toBeLessThan(seconds * 1000);
      const here = await runHere(["formula", file], { cwd: folder });
      const withoutColumn = (text: string): string => text.replaceAll(/:\d+: /gu, ": ");
      expect({ ...built, stderr: withoutColumn(built.stderr) }).toEqual({
        ...here,
        stderr: withoutColumn(here.stderr),
      });
    },
  );
});

test.each([
  ["name: class\nwater 36 %\nsalt: 1 %\n", "2:1", "a line without a colon and a space behind its key"],
  ["name: class: one\n", "1:7", "a value with a colon in it, or with keys below it"],
  ["flours: [{ name: bread flour amount: 100 % }]\n", "1:18", "a key right behind a value, without a comma"],
  ["water: { added: 36 %\nsalt: 1 %\n", "2:1", "a bracket, `{` or `[`, that is not closed before this"],
  ["name: 'class\n", "2:1", "a quote that is not closed"],
  [
    "flours:\n  - name: bread flour\n   amount: 100 %\n",
    "3:1",
    "a line that begins in another column than those it goes with",
  ],
  ["name: @home\n", "1:7", "a value that begins with a sign that YAML keeps for itself"],
  ['{\n  // our noodle "name"\n  "name": "class"\n}\n', "2:3", "a comment after // or /*, taken for a key"],
])("a slip of writing in %j is told once, at its place", async (text, at, found) => {
  const { stderr } = await runHere(["formula", "-"], { input: text });
  expect(readProblems(stderr)).toMatchObject([{ code: "file.syntax", where: `standard input:${at}`, found }]);
});

test("commas within braces are told with the lines that would be right", async () => {
  const text =
    "name: class\nwater: { added: 36,5 % }\nprices: { bread flour: 1,20 EUR/kg }\n" +
    "flours: [{ name: bread flour, amount: 1,000 lb }]\nstock: { bread flour: 2,360.5 lb, rye flour: 1,000,000 g }\n";
  const { stdout } = await runHere(["formula", "-", "--format", "json"], { input: text });
  expect(
    JSON.parse(stdout).problems.map(({ code, lines }: { readonly code: string; readonly lines: unknown }) => [
      code,
      lines,
    ]),
  ).toEqual([
    ["file.decimal-comma", ["water: { added: 36.5 % }"]],
    ["file.decimal-comma", ["prices: { bread flour: 1.20 EUR/kg }"]],
    ["file.decimal-comma", ["1.000", "1000"].map((lb) => `flours: [{ name: bread flour, amount: ${lb} lb }]`)],
    ["file.decimal-comma", ["stock: { bread flour: 2360.5 lb, rye flour: 1,000,000 g }"]],
    ["file.decimal-comma", ["stock: { bread flour: 2,360.5 lb, rye flour: 1000000 g }"]],
  ]);
});
