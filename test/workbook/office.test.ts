import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { addressOf, type Workbook, type WorkbookCell } from "@noodlewright/core/render";
import { describe, expect, test } from "vitest";
import { linesOfWorkbook, sheetsOfWorkbook } from "#cli/input/workbook-lines.ts";
import { workbookFile } from "#cli/render/workbook-file.ts";
import { folderFor } from "../cli/folder.ts";
import { changedSpec } from "../core/workbook/changes.ts";
import {
  cellsOf,
  changedBy,
  commandGraph,
  exampleData,
  examples,
  figurePlaces,
  inputsOf,
  noodleOf,
  same,
  workbookFor,
} from "../core/workbook/kit.ts";

const office = process.env["OFFICE"] ?? "soffice";

/** Opens workbooks in the office suite, lets it work them out, and gives what each comes to. */
function workedOut(workbooks: Readonly<Record<string, Workbook>>) {
  const folder = folderFor();
  const out = join(folder, "out");
  mkdirSync(out);
  const files = Object.entries(workbooks).map(([name, workbook]) => {
    const file = join(folder, `${name}.xlsx`);
    writeFileSync(file, workbookFile(workbook));
    return file;
  });
  const profile = pathToFileURL(join(folder, "profile"));
  const { status, error, stderr } = spawnSync(
    office,
    [`-env:UserInstallation=${profile.href}`, "--headless", "--convert-to", "xlsx", "--outdir", out, ...files],
    { encoding: "utf8" },
  );
  if (error) throw error;
  if (status !== 0) throw new Error(stderr);
  return new Map(
    Object.keys(workbooks).map((name) => {
      const sheets = sheetsOfWorkbook(readFileSync(join(out, `${name}.xlsx`)));
      return [name, "why" in sheets ? [] : sheets];
    }),
  );
}

/** A workbook with nothing in its formulas that was worked out here, and other numbers in some inputs. */
function unworked(workbook: Workbook, typed: ReadonlyMap<string, number> = new Map()): Workbook {
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

function noodleNamed(name: string) {
  const noodle = noodleOf(exampleData(name));
  if (noodle === undefined) throw new Error(`${name} is refused`);
  return noodle;
}

describe("a workbook in an office suite", () => {
  test("comes to the values of the command, for every example", () => {
    const workbooks = Object.fromEntries(examples.map((name) => [name, workbookFor(noodleNamed(name))] as const));
    const answers = workedOut(
      Object.fromEntries(Object.entries(workbooks).map(([name, one]) => [name, unworked(one)] as const)),
    );
    for (const [name, workbook] of Object.entries(workbooks)) {
      const sheets = answers.get(name) ?? [];
      const told = cellsOf(workbook).filter(({ cell }) => cell.formula !== undefined && cell.value !== undefined);
      const different = told.flatMap(({ sheet, row, column, cell }) => {
        const text = sheets.find((one) => one.name === sheet)?.cells.get(addressOf(row, column)) ?? "";
        const { value = "" } = cell;
        const answer = typeof value === "number" && text !== "" ? Number(text) : text;
        return same(answer, value) ? [] : [`${sheet} ${addressOf(row, column)}: ${text}, the command ${value}`];
      });
      expect([name, different]).toEqual([name, []]);
      expect(told.length).toBeGreaterThan(150);
    }
  });

  test("answers a change of each input as the command does", () => {
    const data = exampleData("school-noodle");
    const noodle = noodleNamed("school-noodle");
    const workbook = workbookFor(noodle);
    const places = figurePlaces(workbook);
    const changes = inputsOf(workbook).map((input) => {
      const typed = changedBy(-5, input);
      const answer = noodleOf(changedSpec(data, commandGraph(noodle) ?? {}, new Map([[input.id, typed]])));
      const typedAt = new Map([[addressOf(input.place.row, input.place.column), typed.value]]);
      return { id: input.id, graph: answer && commandGraph(answer), workbook: unworked(workbook, typedAt) };
    });
    const answers = workedOut(Object.fromEntries(changes.map((one) => [one.id, one.workbook])));
    for (const { id, graph } of changes) {
      const figures = answers.get(id)?.find(({ name }) => name === "Figures");
      const different = Object.values(graph ?? {}).flatMap((figure) => {
        const place = places.get(figure.id);
        if (place === undefined) return [];
        const text = figures?.cells.get(addressOf(place.row, place.column)) ?? "";
        const answer = text === "" ? text : Number(text);
        return same(answer, Number(figure.value)) ? [] : [`${figure.id}: ${text}, the command ${figure.value}`];
      });
      expect([id, graph !== undefined, different]).toEqual([id, true, []]);
    }
  });

  test("keeps the weights of a load for the reader of formulas when the suite has saved it", () => {
    const folder = folderFor();
    const file = join(folder, "school.xlsx");
    const workbook = workbookFor(noodleNamed("school-noodle"));
    writeFileSync(file, workbookFile(workbook));
    expect(linesOfWorkbook(readFileSync(file))).toContain("mill strong flour\t7620 g");
  });
});
