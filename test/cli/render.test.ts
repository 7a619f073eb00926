import { join } from "node:path";
import type { Report } from "@noodlewright/core";
import stringWidth from "string-width";
import { describe, expect, test } from "vitest";
import { ownProblem } from "#cli/input/problem.ts";
import { renderProblems } from "#cli/render/problems.ts";
import { renderReport } from "#cli/render/render.ts";
import { renderTerminal } from "#cli/render/terminal.ts";
import { reportSchema } from "#core/report/schema.ts";
import { reportOf as bareReport, cellsOf } from "../core/report/parts.ts";
import { folderFor } from "./folder.ts";
import { runHere } from "./in-process.ts";
import { readCsv } from "./read-csv.ts";

const reports = new Map<string, Promise<Report>>();

/** The report of a command line, worked out once. */
function reportOf(args: readonly string[], cwd = "."): Promise<Report> {
  const key = [cwd, ...args].join(" ");
  const known =
    reports.get(key) ??
    runHere([...args, "--format", "json"], { cwd }).then(({ stdout }) => reportSchema.parse(JSON.parse(stdout)));
  reports.set(key, known);
  return known;
}

async function rendered(report: Report, format: string): Promise<string> {
  const manner = { format, table: undefined, picture: undefined, width: 100, colour: false };
  const rendering = await renderReport(report, manner);
  return rendering.ok ? rendering.text : rendering.problem.code;
}

/** Words of all tables that no width has to break. */
function shortWordsOf(report: Report): readonly string[] {
  return cellsOf(report)
    .flatMap(({ text }) => text.split(/\s+|(?<=-)/u))
    .filter((word) => word.length <= 12);
}

describe("tables on a terminal", () => {
  const longName = join(
    folderFor({ "long.yaml": spec({ name: "Tuesday noodle of the upper school", flour: "flour" }) }),
    "long.yaml",
  );
  const commandLines = [
    ["formula", "examples/school-noodle.yaml"],
    ["batch", "examples/school-noodle.yaml"],
    ["batch", "examples/written-in-grams.yaml"],
    ["materials"],
    ["compare", "examples/school-noodle.yaml", "examples/friday-noodle.yaml", "examples/evening-class.yaml"],
    ["compare", "examples/friday-noodle.yaml", longName],
  ];

  test.each(commandLines.flatMap((args) => [60, 72, 80, 100, 120].map((width) => ({ args, width }))))(
    "$args in $width columns: no line is wider, and no number is cut",
    async ({ args, width }) => {
      const report = await reportOf(args);
      const text = renderTerminal(report, { width, colour: false });
      const wide = text.split("\n").filter((line) => stringWidth(line) > width);
      expect(wide).toEqual([]);
      for (const cell of cellsOf(report)) if (cell.value !== undefined) expect(text).toContain(cell.text);
      for (const word of shortWordsOf(report)) expect(text).toContain(word);
      expect(text).not.toContain("…");
    },
  );

  test("a table too wide for the terminal goes on below, every part with the names of its rows", () => {
    const columns = [
      ["what", "left"],
      ["one", "right"],
      ["other", "right"],
    ] as const;
    const report = bareReport(columns, ["protein", "11.99 to 12.66", "11.48 to 13.66"]);
    const [, ...lines] = renderTerminal(report, { width: 36, colour: false }).trimEnd().split("\n");
    expect(lines).toEqual([
      "",
      "Only",
      "  what                one",
      "  ───────  ──────────────",
      "  protein  11.99 to 12.66",
      "",
      "  what              other",
      "  ───────  ──────────────",
      "  protein  11.48 to 13.66",
    ]);
  });

  test("names of wide letters keep the columns in line (East Asian width W: Unicode Standard Annex 11)", async () => {
    const folder = folderFor({ "wide.yaml": spec({ name: "讃岐", flour: "中華麺用の強力小麦粉" }) });
    const text = renderTerminal(await reportOf(["formula", "wide.yaml"], folder), { width: 80, colour: false });
    const lines = text.split("\n");
    const rule = lines.findIndex((line) => line.startsWith("  ──"));
    const line = lines[rule + 1] ?? "";
    const end = "100.00";
    expect(stringWidth(line.slice(0, line.indexOf(end) + end.length))).toBe(secondEnd(lines[rule] ?? ""));
  });
});

/** Column at which the second rule of a line of rules ends. */
function secondEnd(rules: string): number {
  return [...rules.matchAll(/─+/gu)].map(({ index, 0: rule }) => index + rule.length)[1] ?? 0;
}

function spec({ name, flour }: { readonly name: string; readonly flour: string }): string {
  const figures = { kind: "flour", moisture: "12 %", protein: "10 %", allergens: ["wheat"], source: flour };
  return JSON.stringify({
    name,
    materials: { [flour]: figures },
    flours: [{ name: flour, amount: "100 %" }],
    water: { added: "36 %" },
  });
}

describe("names that mean harm", () => {
  /** Clears the screen, turns the direction of writing, rings, sets the title of the window, and the one-byte CSI. */
  const hostile = "\u001B[2J\u202Egnp\u0007\u001B]0;owned\u0007\u009B31m\u2066";
  const folder = folderFor({
    "hostile.yaml": spec({ name: `name ${hostile}`, flour: `flour ${hostile}` }),
    "unknown.yaml": spec({ name: "a", flour: "b" }).replace('"amount"', JSON.stringify(`key ${hostile}`)),
    "markup.yaml": spec({ name: "<script>alert(1)</script>", flour: "[x](javascript:y) | *b* `c` &lt;" }),
    "sheet.yaml": spec({ name: "a", flour: '=HYPERLINK("x","y")' }),
  });
  /** Control characters less the ends of lines, C1 controls (ISO/IEC 6429) and the bidirectional marks (UAX 9). */
  const obeyed = /(?![\r\n])[\p{Cc}\u061C\u200E\u200F\u2028-\u202E\u2066-\u2069]/u;

  test.each(["table", "csv", "markdown", "json", "html"])("reach no terminal as %s", async (format) => {
    const { status, stdout, stderr } = await runHere(["formula", "hostile.yaml", "--format", format], { cwd: folder });
    expect([status, stderr]).toEqual([0, ""]);
    expect(stdout).not.toMatch(obeyed);
    expect(stdout).toContain("gnp");
  });

  test("JSON loses nothing of them", async () => {
    expect((await reportOf(["formula", "hostile.yaml"], folder)).title).toBe(`name ${hostile}`);
  });

  test("nor do they as problems, in words or in JSON", async () => {
    for (const format of ["table", "json"]) {
      const { status, stdout, stderr } = await runHere(["formula", "unknown.yaml", "--format", format], {
        cwd: folder,
      });
      expect(status).toBe(2);
      expect(stdout + stderr).not.toMatch(obeyed);
    }
    const problem = ownProblem("cards.none", { folder: hostile });
    const placed = {
      ...problem,
      path: [hostile],
      file: hostile,
      lineText: hostile,
      place: { line: 1, column: 3, length: 2 },
    };
    expect(renderProblems([placed], { width: 80, colour: false })).not.toMatch(obeyed);
  });

  test("Markdown takes no markup from them", async () => {
    const text = await rendered(await reportOf(["formula", "markup.yaml"], folder), "markdown");
    expect(text).toContain("\\<script\\>alert(1)\\</script\\>");
    expect(text).toContain("\\[x\\](javascript:y) \\| \\*b\\* \\`c\\` \\&lt;");
    expect(text).not.toMatch(/(?<!\\)[<[`]/u);
  });

  test("HTML takes no markup from them", async () => {
    const text = await rendered(await reportOf(["formula", "markup.yaml"], folder), "html");
    expect(text).not.toContain("<script>alert");
    expect(text).toContain("&lt;script&gt;");
  });

  test("a spreadsheet takes no formula from them (OWASP, CSV Injection)", async () => {
    const { stdout } = await runHere(["formula", "sheet.yaml", "--format", "csv"], { cwd: folder });
    expect(readCsv(stdout)[1]?.[0]).toBe(`'=HYPERLINK("x","y")`);
    for (const first of ["=1+1", "+1", "-1+cmd", "@SUM(A1)", " =1", "\t=1", "-1", "＝1", "＋1", "－1", "＠A1"]) {
      const report = await reportOf(["formula", "sheet.yaml"], folder);
      const text = await rendered(
        JSON.parse(
          JSON.stringify(report).replaceAll(/=HYPERLINK\(\\"x\\",\\"y\\"\)/gu, JSON.stringify(first).slice(1, -1)),
        ),
        "csv",
      );
      expect(readCsv(text)[1]?.[0]).not.toMatch(/^\s*[=+\-@＝＋－＠]/u);
    }
  });

  test("numbers below zero stay numbers in CSV", async () => {
    const asked = ["batch", "examples/school-noodle.yaml", "--format", "csv", "--table", "rounding"];
    const { stdout } = await runHere(asked);
    const changes = readCsv(stdout)
      .slice(1)
      .map((record) => record.at(-1));
    expect(changes.some((change) => change?.startsWith("-"))).toBe(true);
    for (const change of changes) expect(Number.isFinite(Number(change))).toBe(true);
  });
});
