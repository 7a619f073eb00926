import { describe, expect, test } from "vitest";
import { folderFor } from "./folder.ts";
import { runHere } from "./in-process.ts";
import { readProblems } from "./read-problems.ts";

const lines = (count: number, line: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => `${line(index)}\n`).join("");

const plain = "name: a\nflours: [{ name: bread flour, amount: 100 % }]\nwater: { added: 36 % }\n";
const batch = "batch: { bowls: 10, rawWeight: 100 g }\n";
const unknown = (amount: string) => (index: number) => `  - { name: unknown floor ${index}, amount: ${amount} }`;
const ownNames = `materials:\n${lines(1800, (index) => `  mill flour number ${index} x: { moisture: 13 % }`)}`;

const rows: readonly {
  readonly what: string;
  readonly command: string;
  readonly content: string;
  readonly codes: readonly string[];
  readonly count: number;
}[] = [
  {
    what: "thousands of names on the shelf, none of them known",
    command: "blend",
    content: `${plain}wanted: { protein: 11 % }\nshelf:\n${lines(3900, (index) => `  flower name ${index} bread: {}`)}`,
    codes: ["shelf.too-many"],
    count: 1,
  },
  {
    what: "as many names on the shelf as it takes, none of them known",
    command: "blend",
    content: `${plain}wanted: { protein: 11 % }\nshelf:\n${lines(40, (index) => `  flower name ${index} bread: {}`)}`,
    codes: ["materials.unknown"],
    count: 40,
  },
  {
    what: "as many unknown flours as a spec takes, beside thousands of the kitchen's own",
    command: "cost",
    content: `name: a\nflours:\n${lines(40, unknown("2.5 %"))}water: { added: 36 % }\n${batch}${ownNames}`,
    codes: ["materials.unknown"],
    count: 40,
  },
  {
    what: "thousands of unknown keys",
    command: "cost",
    content: `${plain}${batch}${lines(3900, (index) => `unknown key ${index}: 1`)}`,
    codes: ["spec.unknown-key"],
    count: 3900,
  },
  {
    what: "thousands of prices of nothing in the formula",
    command: "cost",
    content: `${plain}${batch}prices:\n${lines(3900, (index) => `  unknown floor ${index}: 1 EUR/kg`)}`,
    codes: ["cost.no-prices"],
    count: 1,
  },
  {
    what: "thousands of machines whose gap is not told",
    command: "sheet",
    content: `${plain}${batch}sheet: { machine: none, thickness: 1.5 mm }\nmachines:\n${lines(1900, (index) => `  rolls ${index}: { width: 13 mm }`)}`,
    codes: ["machine.gaps-stated"],
    count: 1900,
  },
  {
    what: "thousands of errors of syntax",
    command: "formula",
    content: "}\n".repeat(20_000),
    codes: ["file.syntax"],
    count: 20_000,
  },
  ...["[", "\t- x\n", "&a ", "!!x ", "? ", "{", "- ", "*a ", "a: b: c\n", "---\n"].map((mark) => ({
    what: `a file of nothing but ${JSON.stringify(mark)}`,
    command: "formula",
    content: mark.repeat(240_000 / mark.length),
    codes: ["file.too-large"],
    count: 1,
  })),
];

const folder = folderFor(Object.fromEntries(rows.map(({ content }, index) => [`${index}.yaml`, content])));

/**
 * Seconds of the processor that one run may take; what other processes take does not count. The slowest takes 1.5 on a small
 * machine of two processors; what grows with the square of its size takes tens.
 */
const most = 4;

describe("within the limits of size, no file takes long", () => {
  test.each(rows.map((row, index) => ({ ...row, file: `${index}.yaml` })))("$what", async (row) => {
    const before = process.cpuUsage();
    const { status, stderr } = await runHere([row.command, row.file], { cwd: folder });
    const { user, system } = process.cpuUsage(before);
    expect((user + system) / 1e6).toBeLessThan(most);
    expect(status).toBe(2);
    expect([...new Set(readProblems(stderr).map(({ code }) => code))]).toEqual(row.codes);
    expect(stderr).toContain(row.count === 1 ? "1 problem;" : `${row.count} problems`);
  });
});
