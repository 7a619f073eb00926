import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { askBatch, type UnitSystem } from "@noodlewright/core";
import { readHandwritten } from "@noodlewright/core/spec";
import fc from "fast-check";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { heldBack } from "#cli/input/workbook-held.ts";
import { linesOfWorkbook, sheetsOfWorkbook } from "#cli/input/workbook-lines.ts";
import { specOfWorkbook, specSheet } from "#cli/input/workbook-spec.ts";
import { writtenFormula, writtenOutsideBook, writtenRemarks } from "#cli/input/written-formula.ts";
import { workbookFile } from "#cli/render/workbook-file.ts";
import { notAlone } from "../core/workbook/beside.ts";
import {
  changedBy,
  commandGraph,
  Engine,
  exampleData,
  examples,
  inputsOf,
  noodleOf,
  same,
  workbookFor,
} from "../core/workbook/kit.ts";
import { runBuilt } from "./built.ts";
import { folderFor } from "./folder.ts";

/** The file of a workbook with the sheet of its spec, and what was typed into its inputs, by their labels. */
function fileOf(
  name: string,
  changes: Readonly<Record<string, unknown>> = {},
  typed: Readonly<Record<string, number | string | undefined>> = {},
  units: UnitSystem = "metric",
): Uint8Array {
  const data = { ...exampleData(name), ...changes };
  const noodle = noodleOf(data, units);
  if (noodle === undefined) throw new Error(`${name} is refused`);
  const { sheets, ...workbook } = workbookFor(noodle);
  const rows = (sheets[0]?.rows ?? []).map(([label = null, input = null, ...rest]) => {
    const text = String(label?.value);
    if (input?.role !== "input" || !Object.hasOwn(typed, text)) return [label, input, ...rest];
    const { value: _value, ...empty } = input;
    return [label, { ...empty, ...(typed[text] !== undefined && { value: typed[text] }) }, ...rest];
  });
  const changed = sheets.map((one, at) => (at === 0 ? { ...one, rows } : one));
  return workbookFile({ ...workbook, sheets: [...changed, specSheet(data)] });
}

function partsOf(file: Uint8Array): Readonly<Record<string, string>> {
  return Object.fromEntries(Object.entries(unzipSync(file)).map(([name, bytes]) => [name, strFromU8(bytes)]));
}

/** A workbook of several sheets, each with texts in its first two columns. */
function sheetsWorkbook(sheets: Readonly<Record<string, readonly (readonly [string, string])[]>>): Uint8Array {
  const cell = (role: "text", value: string) => ({ role, value });
  const all = Object.entries(sheets).map(([name, rows]) => ({
    name,
    widths: [],
    headings: 0,
    rows: rows.map((row) => row.map((value) => cell("text", value))),
  }));
  return workbookFile({ title: "", paper: "A4", names: [], sheets: all });
}

/** A workbook as another program writes one: shared texts, per cents by the format of the cell, units in the format. */
function plainWorkbook(
  rows: readonly string[],
  {
    formats = ['0.0" g"'],
    book = "",
    without = "none",
  }: Partial<Record<"book" | "without", string>> & {
    readonly formats?: readonly string[];
  } = {},
): Uint8Array {
  const quoted = formats.map((code) => code.replaceAll("&", "&amp;").replaceAll('"', "&quot;"));
  const texts = ["Ingredient", "Amount", "bread flour", "water", "salt &amp; nothing else", "sodium carbonate"];
  const parts = {
    "[Content_Types].xml": strToU8("<Types/>"),
    "xl/workbook.xml": strToU8(
      `<x:workbook xmlns:x="a" xmlns:r="b">${book}<x:sheets><x:sheet name="Kitchen" sheetId="3" r:id="rId7"/></x:sheets></x:workbook>`,
    ),
    "xl/_rels/workbook.xml.rels": strToU8(
      '<Relationships><Relationship Id="rId7" Target="/xl/worksheets/kitchen.xml"/></Relationships>',
    ),
    "xl/sharedStrings.xml": strToU8(
      `<sst>${texts.map((text) => `<si><r><t>${text.slice(0, 2)}</t></r><r><t xml:space="preserve">${text.slice(2)}</t></r><rPh><t>aid</t></rPh></si>`).join("")}</sst>`,
    ),
    "xl/styles.xml": strToU8(
      `<styleSheet><numFmts>${quoted.map((code, at) => `<numFmt numFmtId="${170 + at}" formatCode="${code}"/>`).join("")}</numFmts><cellStyleXfs><xf numFmtId="10"/></cellStyleXfs><cellXfs><xf numFmtId="0"/><xf numFmtId="9"/>${quoted.map((_, at) => `<xf numFmtId="${170 + at}"><alignment/></xf>`).join("")}<xf numFmtId="44"/></cellXfs></styleSheet>`,
    ),
    "xl/worksheets/kitchen.xml": strToU8(`<worksheet><sheetData>${rows.join("")}</sheetData></worksheet>`),
  };
  return zipSync(Object.fromEntries(Object.entries(parts).filter(([name]) => name !== without)));
}

/** A row of a sheet: texts in their cells, numbers by the number of their format, and anything else as it is. */
function sheetRow(
  row: number,
  cells: readonly (string | readonly [number: number, format: number])[],
  more = "",
): string {
  const written = cells.map((cell, at) => {
    const place = `r="${"ABCDEFGH"[at]}${row}"`;
    if (typeof cell !== "string") return `<c ${place} s="${cell[1]}"><v>${cell[0]}</v></c>`;
    return cell.startsWith("<")
      ? cell.replace("<c", `<c ${place}`)
      : `<c ${place} t="inlineStr"><is><t>${cell}</t></is></c>`;
  });
  return `<row r="${row}"${more}>${written.join("")}</row>`;
}

const flourAndWater = [sheetRow(1, ["flour", [1000, 2]]), sheetRow(2, ["water", [380, 2]])];

describe("a workbook of another program", () => {
  test.for<readonly [what: string, file: Uint8Array, text: string, remark?: string]>([
    [
      "cells without their addresses",
      plainWorkbook([
        '<row><c t="inlineStr"><is><t>flour</t></is></c><c s="2"><v>1000</v></c></row><row><c t="str"><v>water</v></c><c><v>380</v></c></row>',
      ]),
      "flour\t1000 g\nwater\t380",
    ],
    [
      "texts that cells share, per cents and units by their formats, and a formula",
      plainWorkbook([
        '<row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1" t="s"><v>1</v></c></row>',
        '<row r="2"><c r="A2" t="s"><v>2</v></c><c r="B2" s="2"><v>1000</v></c></row>',
        '<row r="3"><c r="A3" t="s"><v>3</v></c><c r="B3" s="1"><v>0.36</v></c></row>',
        '<row r="4"><c r="A4" t="inlineStr"><is><t>a &lt; b</t></is></c><c r="C4"><f>1/3</f><v>0.30000000000000004</v></c></row>',
      ]),
      "Ingredient\tAmount\nbread flour\t1000 g\nwater\t36 %\na < b\t\t0.3",
    ],
    [
      "no texts that cells share, and none that point to them",
      plainWorkbook(flourAndWater, { without: "xl/sharedStrings.xml" }),
      "flour\t1000 g\nwater\t380 g",
    ],
    [
      "days from 1904 on, and times",
      plainWorkbook(
        [
          ...flourAndWater,
          sheetRow(3, [
            [44000, 2],
            [0.0625, 3],
          ]),
        ],
        { formats: ["yyyy-mm-dd", "[h]:mm"], book: '<x:workbookPr date1904="1"/>' },
      ),
      "flour\t1906-09-27\nwater\t1905-01-15\n2024-06-19\t1:30 h",
    ],
    [
      "units and money in the formats of numbers",
      plainWorkbook(
        [
          sheetRow(1, ["flour", [1000, 2], [0.9, 4]]),
          sheetRow(2, ["water", [380, 3], [0, 5]]),
          sheetRow(3, ["salt", [0.01, 1], [0.5, 6]]),
        ],
        { formats: ['#,##0.0,\\ "kg"', "0\\ \\g", "_-* #,##0.00\\ [$€-407]_-;-* 0.00", '"EUR "0.00'] },
      ),
      "flour\t1 kg\t0.9 €\nwater\t380 g\tEUR 0\nsalt\t1 %\t$ 0.5",
    ],
    [
      "units beside a number of any form, and beside texts",
      plainWorkbook(
        [
          sheetRow(1, ["flour", [25, 2], [25, 3]]),
          sheetRow(2, ["water", [9.5, 4], [9.5, 5]]),
          sheetRow(3, ["salt", '<c s="4" t="str"><v>0.25</v></c>', '<c s="5" t="str"><v>0.25</v></c>']),
        ],
        { formats: ['General" kg"', 'General "kg"', '@" kg"', '0.00" kg"'] },
      ),
      "flour\t25 kg\t25 kg\nwater\t9.5 kg\t9.5 kg\nsalt\t0.25 kg\t0.25",
    ],
    [
      "three places behind the point, and a trace of a sum",
      plainWorkbook([...flourAndWater, sheetRow(3, ["salt", [1.125, 0]]), sheetRow(4, ["sugar", [1e-14, 0]])]),
      "flour\t1000 g\nwater\t380 g\nsalt\t1.1250\nsugar\t0.00000000000001",
    ],
    [
      "a hidden row",
      plainWorkbook([...flourAndWater, sheetRow(3, ["sugar", [20, 2]], ' hidden="1"')]),
      "flour\t1000 g\nwater\t380 g",
      "hidden rows and columns are left out: A3 (sugar), B3 (20 g)",
    ],
    [
      "a hidden column",
      plainWorkbook([
        '<cols><col min="2" max="2" hidden="1"/></cols>',
        sheetRow(1, ["flour", [900, 2], [1000, 2]]),
        sheetRow(2, ["water", "", [380, 2]]),
      ]),
      "flour\t\t1000 g\nwater\t\t380 g",
      "hidden rows and columns are left out: B1 (900 g)",
    ],
    [
      "cells with errors and answers of yes and no",
      plainWorkbook([...flourAndWater, sheetRow(3, ["salt", '<c t="e"><v>#REF!</v></c>', '<c t="b"><v>1</v></c>'])]),
      "flour\t1000 g\nwater\t380 g\nsalt\t#REF!\tTRUE",
      "errors stand in the cells B3 (#REF!)",
    ],
  ])("with %s is read as it shows it", ([, file, text, ...remarks]) => {
    expect(linesOfWorkbook(file)).toEqual({ text, remarks });
  });

  test.for<readonly [file: Uint8Array, facts: object, name?: string]>([
    [
      plainWorkbook([sheetRow(1, ['<c t="s"><v>2</v></c>', [1, 0]])], { without: "xl/sharedStrings.xml" }),
      { why: "part missing", at: "xl/sharedStrings.xml" },
    ],
    [
      plainWorkbook([], { without: "xl/worksheets/kitchen.xml" }),
      { why: "part missing", at: "xl/worksheets/kitchen.xml" },
    ],
    [
      plainWorkbook([], { without: "xl/_rels/workbook.xml.rels" }),
      { why: "part missing", at: "xl/_rels/workbook.xml.rels" },
    ],
    [plainWorkbook([], { without: "xl/workbook.xml" }), { why: "another" }],
    [plainWorkbook([sheetRow(1, ["flour", "<c><f>5*80</f></c>"])]), { why: "not worked out", at: "B1" }],
    [
      zipSync({ mimetype: [strToU8("application/vnd.oasis.opendocument.spreadsheet"), { level: 0 }] }),
      { why: "open document" },
    ],
    [
      Uint8Array.from([
        0xd0,
        0xcf,
        0x11,
        0xe0,
        ...[..."EncryptedPackage"].flatMap((letter) => [letter.charCodeAt(0), 0]),
      ]),
      { why: "locked" },
    ],
    [Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, ...new Uint8Array(300_000)]), { why: "older" }],
    [new Uint8Array(20_000_001), { why: "too large" }],
    [new Uint8Array(250_001).fill(0x61), { of: "bytes", most: "250 kB" }],
    [zipSync({ "word/document.xml": strToU8("<a/>") }), { why: "another" }],
    [zipSync({ "xl/workbook.xml": new Uint8Array(30_000_000), "xl/styles.xml": strToU8("<a/>") }), { why: "another" }],
    [plainWorkbook(["<!--".repeat(200_000)]), { why: "damaged" }],
    [plainWorkbook(['<c r="A1"/>'.repeat(700_000)]), { why: "too large" }],
    [plainWorkbook([`<c r="A1" t="inlineStr"><is><t>${"A".repeat(9_000_000)}</t></is></c>`]), { why: "too large" }],
    [fileOf("evening-class").subarray(0, 900), { why: "damaged" }],
    [strToU8("lost"), { why: "damaged" }, "formula.xlsx"],
    [strToU8("x\nBatch,change here,unit,in the spec,,,Batch\n"), { why: "cells alone" }],
  ])("that lacks what it needs is refused with what that is: %#", async ([file, facts, name]) => {
    const read = await writtenFormula(file, name);
    expect(typeof read === "object" && read.facts).toEqual(facts);
  });

  test("may be larger than a text, in a file and from standard input", () => {
    const parts = unzipSync(plainWorkbook(flourAndWater));
    const picture = Uint8Array.from({ length: 400_000 }, (_, at) => (at * at * 31 + (at >> 3)) % 251);
    const file = zipSync({ ...parts, "xl/media/image1.png": [picture, { level: 0 }] });
    const path = join(folderFor(), "large.xlsx");
    writeFileSync(path, file);
    expect(file.length).toBeGreaterThan(300_000);
    for (const [from, input] of [
      [path, undefined],
      ["-", file],
    ] as const) {
      const { status, stdout } = runBuilt(["new", "-", "--from", from], { ...(input && { input }) });
      expect([status, stdout.includes("tap: 380 g")]).toEqual([0, true]);
    }
  });
});

describe("the file of a workbook", () => {
  test("keeps names that look like formulas, markup or the code of a character as they are", () => {
    const name = '=HYPERLINK("a") <b>&_x0041_';
    const file = fileOf("evening-class", { name, notes: "@sum+1" });
    const sheets = sheetsOfWorkbook(file);
    const [sheet] = "why" in sheets ? [] : sheets;
    const parts = partsOf(file);
    expect(sheet?.cells.get("A1")).toBe(name);
    expect(parts["xl/worksheets/sheet1.xml"]).not.toContain("<f>HYPERLINK");
    expect(parts["xl/styles.xml"]).toContain('quotePrefix="1"');
  });

  test("says what an input takes in words that are its limits", () => {
    const sheet = partsOf(fileOf("school-noodle"))["xl/worksheets/sheet1.xml"] ?? "";
    expect(sheet).not.toMatch(/error="[^"]* on[.,]/u);
    expect(sheet).toMatch(/above 4 and at most 7\." sqref="(\w+)"><formula1>AND\(ISNUMBER\(\1\),\1&gt;4,\1&lt;=7\)/u);
  });

  test("has no macros, no links and nothing outside itself", () => {
    const parts = partsOf(fileOf("school-noodle"));
    expect(Object.keys(parts).filter((part) => !/^(?:xl\/|docProps\/app|_rels\/|\[Content)/u.test(part))).toEqual([]);
    const all = Object.values(parts).join("");
    expect(all).not.toMatch(/TargetMode|<hyperlink|<oleObject/u);
    const called = [...all.matchAll(/<f>(.*?)<\/f>/gu)].flatMap(
      ([, formula = ""]) => formula.match(/[A-Z]+(?=\()/gu) ?? [],
    );
    const known = [
      "ABS",
      "AND",
      "COUNT",
      "COUNTIF",
      "IF",
      "IFERROR",
      "ISNUMBER",
      "MAX",
      "MIN",
      "OR",
      "ROUND",
      "ROWS",
      "SMALL",
      "SUM",
      "SUMIF",
    ];
    expect([...new Set(called)].filter((name) => !known.includes(name))).toEqual([]);
  });

  test("lets the inputs alone be changed, and is protected without a password", () => {
    const parts = partsOf(fileOf("school-noodle"));
    for (const [name, part] of Object.entries(parts)) {
      if (name.startsWith("xl/worksheets/")) expect(part).toMatch(/<sheetProtection sheet="1"(?![^>]*password)/u);
    }
    const formats = [...(parts["xl/styles.xml"] ?? "").matchAll(/<xf [^>]*applyProtection="1".*?<\/xf>/gu)].map(String);
    const open = formats.flatMap((format, index) => (format.includes('locked="0"') ? [`s="${index}"`] : []));
    const unlocked = [...(parts["xl/worksheets/sheet1.xml"] ?? "").matchAll(/<c r="([A-Z]+)\d+" (s="\d+")/gu)];
    const columns = new Set(unlocked.filter(([, , style = ""]) => open.includes(style)).map(([, column]) => column));
    expect([...columns]).toEqual(["B"]);
  });

  test("names cells in the words of the kitchen, each name once and none like the address of a cell", () => {
    const noodle = noodleOf(exampleData("school-noodle"));
    const names = noodle === undefined ? [] : workbookFor(noodle).names.map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining(["raw_strands_in_a_bowl", "loss_at_sheeting", "dough_water"]));
    expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(names.length);
    expect(names.filter((name) => !/^[\p{L}_][\p{L}\p{Nd}_]*$/u.test(name) || /^[A-Z]{1,3}\d+$/iu.test(name))).toEqual(
      [],
    );
  });

  test("has formulas of a length that every reader takes, for the longest spec", () => {
    const many = (count: number, of: string) =>
      Array.from({ length: count }, () => ({ name: of, amount: `${of === "bread flour" ? 100 / count : 0.5} %` }));
    const file = fileOf("evening-class", {
      flours: many(40, "bread flour"),
      alkali: many(20, "alkali powder 6 to 4").map((one) => ({ ...one, amount: "0.05 %" })),
      ingredients: many(60, "whole egg"),
    });
    const formulas = Object.values(partsOf(file)).flatMap((part) =>
      [...part.matchAll(/<f>(.*?)<\/f>/gu)].map(([, formula = ""]) => formula.length),
    );
    // Office Open XML as the common programs read it: 8192 characters in a formula
    expect(Math.max(...formulas)).toBeLessThan(8192);
  });
});

function textIn(read: unknown): string {
  if (typeof read !== "string") throw new Error("not read as text");
  return read;
}

describe("a workbook read back", () => {
  test("gives the weights of a load of one that was written here", () => {
    const lines = linesOfWorkbook(fileOf("pin-and-sticks"));
    const { understood, notUnderstood, questions } = readHandwritten("why" in lines ? "" : lines.text);
    expect(understood.map(({ name, amount }) => `${name}: ${amount}`)).toEqual([
      "bread flour: 400 g",
      "water: 168 g",
      "sodium carbonate monohydrate: 4 g",
      "salt: 4 g",
    ]);
    expect(notUnderstood).toEqual([]);
    expect(questions).toEqual([]);
  });

  test.for([
    ["a letter of which is another", 0, (file: Buffer) => file.write("flouR", file.indexOf("flour"))],
    [
      "that holds more than it tells",
      9,
      (file: Buffer) => file.writeUInt32LE(20, file.lastIndexOf("kitchen.xml") - 36),
    ],
    [
      "that holds less than it tells",
      9,
      (file: Buffer) => file.writeUInt32LE(9999, file.lastIndexOf("kitchen.xml") - 36),
    ],
  ] as const)("a part of a workbook %s is damaged", async ([, level, damage]) => {
    const parts = Object.entries(unzipSync(plainWorkbook(flourAndWater)));
    const file = Buffer.from(zipSync(Object.fromEntries(parts.map(([name, part]) => [name, [part, { level }]]))));
    expect(await writtenFormula(Uint8Array.from(file))).toContain("flour");
    damage(file);
    expect(await writtenFormula(file)).toMatchObject({ facts: { why: "damaged" } });
  });
});

describe("a workbook that was written here, read back", () => {
  test.for(examples)("gives the whole spec of %s as it was written", (name) => {
    expect(specOfWorkbook(fileOf(name))).toMatchObject({ data: exampleData(name), changed: [], open: [] });
  });

  test("keeps what no cell of it shows: what is wanted and accepted, errors, replacements, odd texts", () => {
    const changes = {
      name: "  a name that is set in: yes",
      notes: "  set in\n\n- y\n# no comment\n",
      accept: ["high alkali"],
      wanted: { protein: "at least 9 %", addedWater: "30 to 40 %" },
      style: "yellow alkaline",
      alkali: [{ name: "sodium carbonate", amount: "6 %", replaceWith: "potassium carbonate" }],
      losses: { sheeting: "3 %", uncertainty: "0.5 %" },
    };
    const { data } = specOfWorkbook(fileOf("school-noodle", changes)) ?? {};
    expect(data).toEqual({ ...exampleData("school-noodle"), ...changes });
  });

  test("puts in what was typed, says which cells, and leaves all else, with packs and units as they were", () => {
    const typed = { bowls: 300, cornstarch: 2.125, "price of potassium carbonate": 16 };
    for (const units of ["metric", "us"] as const) {
      const { data, changed, open } = specOfWorkbook(fileOf("school-noodle", {}, typed, units)) ?? {};
      const before = exampleData("school-noodle");
      expect(data).toMatchObject({ ...before, batch: {}, dusting: {}, prices: {} });
      expect(data).toMatchObject({
        dusting: { name: "cornstarch", amount: "2.125 %" },
        batch: { bowls: 300, rawWeight: "110 g" },
        prices: { "sodium carbonate": "5.20 EUR per 1 kg" },
      });
      expect(changed?.map((line) => line.replace(/^B\d+, /u, ""))).toEqual(
        expect.arrayContaining([
          "bowls: 300, where the spec had 320",
          expect.stringMatching(/^cornstarch: 2\.125 (%.*), where the spec had [\d.]+ \1$/u),
        ]),
      );
      expect([changed?.length, open]).toEqual([3, []]);
      const noodle = noodleOf(data ?? {});
      const price = noodle && commandGraph(noodle)?.["shopping.alkali.2.pay"];
      // 16 EUR/kg or EUR/lb by packs of 500 g: 8 EUR each, or 17.64 EUR
      const packs = Number(price?.value) / (units === "us" ? (500 * 16) / 453.59237 : 8);
      expect(packs).toBeGreaterThan(0);
      expect(Math.abs(packs - Math.round(packs))).toBeLessThan(0.001);
    }
  });

  test("says of a cell that was empty that the spec had none", () => {
    const { changed } = specOfWorkbook(fileOf("barley-egg-noodle", {}, { "price of whole egg": 3 })) ?? {};
    expect(changed).toEqual([expect.stringMatching(/: 3 .*, where the spec had none$/u)]);
  });

  test("names each cell that is empty or holds nothing that a spec takes, and guesses nothing for it", () => {
    const typed = {
      bowls: "hundred",
      "loss at sheeting": "three",
      "loss at cutting": -5,
      "table salt": undefined,
      "sodium carbonate": undefined,
      "capacity of bench scale": undefined,
    };
    const { data, open } = specOfWorkbook(fileOf("school-noodle", {}, typed)) ?? {};
    expect(open?.map((line) => line.replace(/^B\d+, /u, ""))).toEqual([
      'bowls: "hundred" is no number; the spec had 320',
      'loss at sheeting: "three" is no number; the spec had 3 %',
      "loss at cutting: -5 is not taken; the spec had 1 %",
      "sodium carbonate: the cell is empty; the spec had 0.6 % of flour",
      "table salt: the cell is empty; the spec had 1 % of flour",
      "capacity of bench scale: the cell is empty; the spec had 5000 g",
    ]);
    expect(data).toMatchObject({ batch: { bowls: "hundred" }, losses: { sheeting: "three %" }, salt: "? %" });
    expect(JSON.stringify(data)).not.toContain("NaN");
  });

  test("is read whatever its sheets are called, and takes a day or a per cent by its format for no number", async () => {
    const parts = partsOf(fileOf("school-noodle", {}, { "loss at sheeting": 46000, "table salt": 0.38 }));
    const renamed = (text: string): string =>
      text
        .replaceAll("Noodle!", "'It''s ours'!")
        .replace('name="Noodle"', 'name="It\'s ours"')
        .replace('name="Spec"', 'name="S"');
    const formats = (parts["xl/styles.xml"] ?? "").split("<cellXfs")[1]?.match(/<xf /gu)?.length ?? 0;
    const files = Object.entries(parts).map(([name, part]) => {
      const anew = name.endsWith("styles.xml")
        ? part.replace("</cellXfs>", '<xf numFmtId="14"/><xf numFmtId="10"/></cellXfs>')
        : renamed(part)
            .replace(/(<c r="B\d+" )s="\d+"(><v>46000)/u, `$1s="${formats}"$2`)
            .replace(/(<c r="B\d+" )s="\d+"(><v>0.38<)/u, `$1s="${formats + 1}"$2`);
      return [name, strToU8(anew)] as const;
    });
    const { open } = specOfWorkbook(zipSync(Object.fromEntries(files))) ?? {};
    expect(open?.map((line) => line.replace(/^B\d+, /u, ""))).toEqual([
      'loss at sheeting: "2025-12-09" is no number; the spec had 3 %',
      'table salt: "38 %" is no number; the spec had 1 % of flour',
    ]);
  });

  test("says what somebody wrote into its spec that no spec takes", () => {
    const parts = Object.entries(partsOf(fileOf("school-noodle")));
    const spoilt = parts.map(([name, part]) => [name, strToU8(part.replace("added: 35 %", "added: 35 % {"))]);
    const { open } = specOfWorkbook(zipSync(Object.fromEntries(spoilt))) ?? {};
    expect(open).toEqual([expect.stringMatching(/^sheet Spec, water\.added: "35 % \{"; right would be /u)]);
  });

  test("is read where another program saved it without the values of its formulas", async () => {
    const parts = Object.entries(partsOf(fileOf("school-noodle", {}, { bowls: 300 })));
    const bare = parts.map(([name, part]) => [name, strToU8(part.replace(/(<\/f>)<v>[^<]*<\/v>/gu, "$1"))]);
    const file = zipSync(Object.fromEntries(bare) as Record<string, Uint8Array>);
    expect(await writtenOutsideBook(file)).toBe("");
    expect(specOfWorkbook(file)?.data).toMatchObject({ batch: { bowls: 300, rawWeight: "110 g" } });
  });
});

test("a table in UTF-16, marked or not, and a cell with a line break in it, are read as they were meant", async () => {
  const table = 'ingredient,amount\n"whole wheat\nflour",200 g\nbread flour,800 g\nwater,360 g\n';
  const bytes = new Uint8Array(new Uint16Array([0xfeff, ...[...table].map((letter) => letter.charCodeAt(0))]).buffer);
  const swapped = bytes.map((_, index) => bytes[index ^ 1] ?? 0);
  for (const one of [bytes, swapped, bytes.subarray(2), swapped.subarray(2), strToU8(table)]) {
    const { understood } = readHandwritten(textIn(await writtenFormula(one)));
    expect(understood.map(({ name, amount }) => `${name}: ${amount}`)).toEqual([
      "whole wheat flour: 200 g",
      "bread flour: 800 g",
      "water: 360 g",
    ]);
  }
});

test("a table in Windows-1252 is read with a word on it, and what is in no known letters is not", async () => {
  const table = Uint8Array.from(Buffer.from("Zutat;g;Gr\xf6\xdfe \x80\nMehl;1000;\n", "latin1"));
  expect(await writtenFormula(table)).toBe("Zutat;g;Größe €\nMehl;1000;\n");
  expect(await writtenRemarks(table)).toEqual([expect.stringContaining("Windows-1252")]);
  for (const odd of ["a\xe4\x01", "a\xe4\x81", "\x96\xce\x95\xb2;1000"])
    expect(await writtenFormula(Buffer.from(odd, "latin1"))).toBeUndefined();
});

test("a workbook of several sheets gives the one with the formula, and says which were left out", async () => {
  const formula = [
    ["bread flour", "1000 g"],
    ["water", "360 g"],
  ] as const;
  const file = sheetsWorkbook({ Cover: [["My noodles 2026", ""]], Formula: formula, Empty: [] });
  expect(await writtenFormula(file)).toBe("bread flour\t1000 g\nwater\t360 g");
  expect(await writtenRemarks(file)).toEqual(['read from the sheet "Formula"; not read: "Cover"']);
});

test("a column of notes stays out of the names, and is kept as notes", async () => {
  const table = 'Ingredient,g,Notes\nBread flour,1000,"mill A, ""new"""\nWater,360,\nSalt,10,sea\n';
  const { understood, notes, notUnderstood, remarks } = readHandwritten(textIn(await writtenFormula(strToU8(table))));
  expect(understood.map(({ name, amount }) => `${name}: ${amount}`)).toEqual([
    "Bread flour: 1000 g",
    "water: 360 g",
    "salt: 10 g",
  ]);
  expect(notes.map(({ text }) => text)).toEqual(['Bread flour: mill A, "new"', "Salt: sea"]);
  expect(notUnderstood).toEqual([]);
  expect(remarks).toEqual(['the column "Notes" is kept as notes']);
});

describe("weights that come back", () => {
  test("are those that the workbook shows, or are told with the reason, whatever was changed", async () => {
    const wide = fc.record({
      name: fc.constantFrom(...examples),
      at: fc.array(fc.nat(), { minLength: 1, maxLength: 3 }),
      by: fc.integer({ min: -15, max: 25 }),
    });
    const kinds = new Set<string>();
    for (const { name, at, by } of fc.sample(wide, 10)) {
      const [store, own] = [exampleData("harbour-store"), exampleData(name)];
      const merged = ["materials", "machines"].map((key) => [key, Object.assign({}, store[key], own[key])] as const);
      const data = { ...own, ...Object.fromEntries(merged) };
      const noodle = noodleOf(data);
      if (noodle === undefined) throw new Error(`${name} is refused`);
      const workbook = workbookFor(noodle);
      const inputs = inputsOf(workbook).filter(({ id }) => !notAlone.test(id));
      const typed = new Map(
        at
          .map((one) => inputs[one % inputs.length])
          .flatMap((one) => (one ? [[one, changedBy(by, one)] as const] : [])),
      );
      const engine = new Engine(workbook);
      engine.type([...typed].map(([{ place }, { value }]) => [place, value]));
      const sheets = workbook.sheets.map((sheet) => ({
        ...sheet,
        rows: sheet.rows.map((row, line) =>
          row.map((cell, column) =>
            cell?.formula !== undefined || cell?.role === "input"
              ? { ...cell, value: engine.value({ sheet: sheet.name, row: line, column }) }
              : cell,
          ),
        ),
      }));
      const book = specOfWorkbook(workbookFile({ ...workbook, sheets: [...sheets, specSheet(data)] }));
      if (book === undefined) throw new Error(`the workbook of ${name} is not read`);
      const told = await heldBack(book);
      const back = noodleOf(book.data);
      const batch = back && askBatch(back);
      const rows = sheets[0]?.rows ?? [];
      const top = rows.findIndex((cells) => cells[6]?.value === "Weights");
      const end = rows.findIndex((cells, line) => line > top && cells[6]?.value === "dough");
      const shown = new Map(rows.slice(top + 1, end).map((cells) => [cells[6]?.value, cells[7]?.value]));
      kinds.add(!batch?.ok ? "refused" : told.length > 0 ? "told" : "same");
      if (!batch?.ok) continue;
      const unlike = batch.value.lines.filter(
        ({ line, load }) => !same(Number(shown.get(line.name)), Number(load.value)) && shown.get(line.name) !== "",
      );
      const untold = unlike.filter(({ line }) => !told.some((one) => one.startsWith(`${line.name}: `)));
      expect([name, [...typed].map(([{ id }, { value }]) => [id, value]), untold.map(({ line }) => line.name)]).toEqual(
        [name, expect.anything(), []],
      );
    }
    expect(kinds.has("same")).toBe(true);
  });

  test("name the amounts that are found anew, and where the workbook was not worked out since, those that may be", async () => {
    const changes = { salt: "find", wanted: { saltInDough: "1 %" } };
    const book = specOfWorkbook(fileOf("evening-class", changes, { bowls: 9 }));
    expect(book && (await heldBack(book))).toEqual(["found anew when it is worked out: salt"]);
  });
});

describe("the command", () => {
  test("keeps the line ends of a spec, and the comments of the kitchen file that it takes in", () => {
    const spec =
      "name: ours # quick\r\ninclude: [store.yaml]\r\nflours:\r\n  - { name: mill flour, amount: 100 % }\r\nwater: { added: 36 % }\r\nbatch: { flour: 2 kg }\r\n";
    const store =
      "# the store\nmaterials:\n  mill flour: # lot 7\n    kind: flour\n    moisture: 13.6 %\n    protein: 12 %\n    allergens: [wheat]\n";
    const folder = folderFor({ "own.yaml": spec, "store.yaml": store });
    const [own = "", book = ""] = ["own.yaml", "own.xlsx"].map((name) => join(folder, name));
    expect(runBuilt(["workbook", own, "-o", book])).toMatchObject({ status: 0 });
    const whole = `${spec.replace("include: [store.yaml]\r\n", "")}\r\n${store.replaceAll("\n", "\r\n")}`;
    expect(runBuilt(["new", "-", "--from", book]).stdout).toBe(whole);
  });

  test("writes a workbook, reads it back into a spec, and writes it anew over its own", () => {
    const folder = folderFor();
    const file = join(folder, "noodle.xlsx");
    for (const bowls of ["300", "320"]) {
      const { status, stderr } = runBuilt(["workbook", "examples/school-noodle.yaml", "-o", file, "--bowls", bowls]);
      expect([status, stderr]).toEqual([0, `Wrote ${file}.\n`]);
    }
    const { stdout } = runBuilt(["new", "-", "--from", file, "--bowls", "80"]);
    expect(stdout).toContain("  amount: 85 %");
    expect(stdout).toContain("  bowls: 80\n  rawWeight: 110 g");
  });

  test("keeps the comments of a spec, and changes in it nothing but what was typed", () => {
    const text = [
      "# ours since the spring",
      "name: evening noodle # quick",
      "",
      "flours:",
      "  - { name: bread flour, amount: 100 % } # from the mill",
      'water: { added: "36 %" }',
      "salt: 1 %   # by taste",
      "batch: { flour: 2 kg }",
      "notes: |",
      "  first",
      "",
      "  second",
      "",
    ].join("\n");
    const folder = folderFor({ "own.yaml": text });
    const [own, book, changed] = ["own.yaml", "own.xlsx", "changed.xlsx"].map((name) => join(folder, name));
    expect(runBuilt(["workbook", own ?? "", "-o", book ?? ""]).status).toBe(0);
    expect(runBuilt(["new", "-", "--from", book ?? ""]).stdout).toBe(text);
    const parts = partsOf(readFileSync(book ?? ""));
    const sheet = parts["xl/worksheets/sheet1.xml"] ?? "";
    const cell = /<t xml:space="preserve">table salt<\/t><\/is><\/c><c r="B\d+" s="\d+"><v>1</u;
    const typed = sheet.replace(cell, (whole) => whole.replace(/1<$/u, "1.2<"));
    // Other programs leave out the rows that are empty.
    const last = Object.keys(parts).findLast((name) => name.startsWith("xl/worksheets/")) ?? "";
    const bare = (parts[last] ?? "").replace(/<c [^>]*><is><t xml:space="preserve"><\/t><\/is><\/c>/gu, "");
    const files = Object.entries({ ...parts, "xl/worksheets/sheet1.xml": typed, [last]: bare });
    writeFileSync(changed ?? "", zipSync(Object.fromEntries(files.map(([name, part]) => [name, strToU8(part)]))));
    expect(runBuilt(["new", "-", "--from", changed ?? ""]).stdout).toBe(text.replace("salt: 1 %", "salt: 1.2 %"));
  });

  test("reads the sheet that is shown before a hidden one", () => {
    const parts = unzipSync(
      sheetsWorkbook({
        Old: [
          ["flour", "900 g"],
          ["water", "300 g"],
        ],
        Now: [
          ["flour", "1000 g"],
          ["water", "380 g"],
        ],
      }),
    );
    const book = strFromU8(parts["xl/workbook.xml"] ?? new Uint8Array());
    const hidden = book.replace(/<sheet (?=name="Old")/u, '<sheet state="hidden" ');
    expect(hidden).not.toBe(book);
    const lines = linesOfWorkbook(zipSync({ ...parts, "xl/workbook.xml": strToU8(hidden) }));
    expect("why" in lines ? lines : lines.text).toBe("flour\t1000 g\nwater\t380 g");
  });

  test("needs a file to write, writes over no other, and nothing of a wrong spec", () => {
    const folder = folderFor({ "mine.xlsx": "mine" });
    const mine = join(folder, "mine.xlsx");
    const spec = "examples/school-noodle.yaml";
    for (const args of [
      [spec],
      [spec, "-o", "-"],
      [spec, "-o", mine],
      ["examples/wrong-on-purpose.yaml", "-o", mine, "--force"],
    ]) {
      const { status, stdout } = runBuilt(["workbook", ...args]);
      expect([status, stdout]).toEqual([2, ""]);
    }
    expect(readFileSync(mine, "utf8")).toBe("mine");
  });
});
