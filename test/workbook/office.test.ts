import { execFile } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";
import { addressOf, type Workbook, type WorkbookCell } from "@noodlewright/core/render";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { linesOfWorkbook, sheetsOfWorkbook } from "#cli/input/workbook-lines.ts";
import { workbookFile } from "#cli/render/workbook-file.ts";
import { folderFor } from "../cli/folder.ts";
import { beside, notAlone } from "../core/workbook/beside.ts";
import { cellsOf, changedBy, examples, type Input, type Place, same, type Typed } from "../core/workbook/kit.ts";

const office = process.env["OFFICE"] ?? "soffice";

/** What a cell comes to. */
type Value = (place: Place) => string | number;

/** Opens workbooks in the office suite, in two of it side by side, and gives what the cells of each come to. */
async function workedOut(workbooks: readonly Workbook[]): Promise<readonly Value[]> {
  const folder = folderFor();
  const out = join(folder, "out");
  mkdirSync(out);
  const files = workbooks.map((workbook, index) => {
    const file = join(folder, `${index}.xlsx`);
    writeFileSync(file, workbookFile(workbook));
    return file;
  });
  const run = async (half: number): Promise<void> => {
    const profile = pathToFileURL(join(folder, `profile-${half}`));
    const mine = files.filter((_, index) => index % 2 === half);
    const to = [`-env:UserInstallation=${profile.href}`, "--headless", "--convert-to", "xlsx", "--outdir", out];
    if (mine.length > 0) await promisify(execFile)(office, [...to, ...mine]);
  };
  await Promise.all([run(0), run(1)]);
  return files.map((_, index): Value => {
    const read = sheetsOfWorkbook(readFileSync(join(out, `${index}.xlsx`)));
    const sheets = new Map("why" in read ? [] : read.map(({ name, cells }) => [name, cells] as const));
    return ({ sheet, row, column }) => {
      const text = sheets.get(sheet)?.get(addressOf(row, column)) ?? "";
      return text === "" || Number.isNaN(Number(text)) ? text : Number(text);
    };
  });
}

/** A workbook with nothing in its formulas that was worked out here, and other numbers in some inputs. */
function unworked(workbook: Workbook, typed: ReadonlyMap<string, number | string> = new Map()): Workbook {
  const plain = (cell: WorkbookCell, address: string): WorkbookCell => {
    const value = typed.get(address);
    if (cell.role === "input" && value !== undefined) return { ...cell, value };
    if (cell.formula === undefined) return cell;
    const { value: _value, ...rest } = cell;
    return rest;
  };
  return {
    ...workbook,
    sheets: workbook.sheets.map((sheet, index) => ({
      ...sheet,
      rows: sheet.rows.map((cells, row) =>
        cells.map((cell, column) => (cell === null ? null : plain(cell, index === 0 ? addressOf(row, column) : ""))),
      ),
    })),
  };
}

/** Changes of an example's inputs: each by itself, and all of them by random numbers, so many at once that most are answered. */
function changesOf(inputs: readonly Input[]): readonly ReadonlyMap<Input, Typed>[] {
  const by = (percent: number, input: Input) => [input, changedBy(percent, input)] as const;
  const each = inputs.map((input) => new Map([by(-5, input)]));
  const others = inputs.filter(({ id }) => !notAlone.test(id));
  const sizes = { minLength: others.length, maxLength: others.length };
  const [percents = []] = fc.sample(fc.array(fc.integer({ min: -9, max: 9 }), sizes), 1);
  const typed = others.map((input, index) => by(percents[index] ?? 0, input));
  const rounds = Math.ceil(typed.length / 10);
  return [
    ...each,
    ...Array.from({ length: rounds }, (_, round) => new Map(typed.filter((_, index) => index % rounds === round))),
  ];
}

describe("a workbook in an office suite", () => {
  test("comes to the values of the command, for every example and a change of every input", {
    timeout: 600_000,
  }, async () => {
    const books = [
      ...examples.map((name) => ({ name, ...beside(name) })),
      { name: "US", ...beside("pin-and-sticks", "us") },
    ];
    const asked = books.flatMap((book) =>
      [new Map(), ...changesOf(book.inputs)].map((changes) => ({ ...book, changes })),
    );
    const answers = await workedOut(
      asked.map(({ workbook, changes }) => {
        const typed = [...changes].map(
          ([{ place }, { value }]) => [addressOf(place.row, place.column), value] as const,
        );
        return unworked(workbook, new Map(typed));
      }),
    );
    for (const [index, { name, workbook, held, forCommand, changes }] of asked.entries()) {
      const value = answers[index] ?? (() => "");
      const ids = [...changes.keys()].map(({ id }) => id);
      if (ids.length === 0) {
        const told = cellsOf(workbook).filter(({ cell }) => cell.formula !== undefined);
        const different = told.filter((place) => !same(value(place), place.cell.value ?? ""));
        expect([name, different]).toEqual([name, []]);
        expect(told.length).toBeGreaterThan(150);
      }
      const { says, wrong } = held(changes, value);
      expect([name, ids, wrong]).toEqual([name, ids, []]);
      const alone = ids.length === 1 && !forCommand && !ids.some((id) => notAlone.test(id));
      if (alone) expect([name, ids, says]).toEqual([name, ids, "answered"]);
    }
  });

  test("says a plain word instead of the sign of an error, whatever is typed into any input of any example", {
    timeout: 600_000,
  }, async () => {
    const odd = [0, 1e12, "", "a cup"] as const;
    const books = examples.map((name) => ({ name, ...beside(name) }));
    const asked = books.flatMap(({ workbook, inputs }, book) =>
      inputs.map(({ id, place }, at) => ({ workbook, id, place, typed: odd[(book + at) % odd.length] ?? 0 })),
    );
    const answers = await workedOut(
      asked.map(({ workbook, place, typed }) =>
        unworked(workbook, new Map([[addressOf(place.row, place.column), typed]])),
      ),
    );
    const wrong = asked.flatMap(({ workbook, id, typed }, index) => {
      const value = answers[index] ?? (() => "#");
      const shown = cellsOf(workbook).filter(({ sheet, cell }) => sheet === "Noodle" && cell.formula !== undefined);
      const signs = shown.map((place) => String(value(place))).filter((text) => /^#|^Err:/u.test(text));
      return signs.length === 0 ? [] : [[workbook.title, id, typed, signs[0]]];
    });
    expect(wrong).toEqual([]);
  });

  test("keeps the weights of a load for the reader of formulas", () => {
    const lines = linesOfWorkbook(workbookFile(beside("school-noodle").workbook));
    expect("why" in lines ? lines.why : lines.text).toContain("mill strong flour\t7620 g");
  });
});
