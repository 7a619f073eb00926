import { strFromU8, unzipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { workbookFile } from "#cli/render/workbook-file.ts";
import { beside } from "../core/workbook/beside.ts";
import { examples } from "../core/workbook/kit.ts";

/*
 * ISO/IEC 29500-1:2016 (ECMA-376), read in copies of its schema: the order of the elements of CT_Worksheet, CT_Stylesheet and
 * CT_Workbook (annex A, sml.xsd), the lengths of texts in CT_DataValidation. The limits of formulas (8192 characters, 64 levels,
 * 255 values), of the names of sheets (31) and of the formulas of validations (255) are those of the common programs: common
 * practice, no source.
 */
const order: Readonly<Record<string, string>> = {
  worksheet:
    "sheetPr dimension sheetViews sheetFormatPr cols sheetData sheetProtection mergeCells conditionalFormatting dataValidations pageMargins pageSetup headerFooter rowBreaks",
  styleSheet: "numFmts fonts fills borders cellStyleXfs cellXfs cellStyles dxfs",
  workbook: "workbookPr bookViews sheets definedNames calcPr",
  // a cell, a rule, a format and a border within these
  c: "f v is",
  dataValidation: "formula1 formula2",
  xf: "alignment protection",
  font: "b sz color name",
  patternFill: "fgColor bgColor",
  border: "left right top bottom diagonal",
};

/** The attributes of what is written here, and their kinds: numbers, truths, or words of a list. From memory of the schema. */
const whole = /^\d+$/u;
const number = /^\d+(?:\.\d+)?$/u;
const truth = /^[01]$/u;
const any = /^/u;
const attributes: Readonly<Record<string, Readonly<Record<string, RegExp>>>> = {
  pageSetUpPr: { fitToPage: truth },
  dimension: { ref: any },
  sheetView: { showGridLines: truth, workbookViewId: whole },
  pane: { ySplit: number, topLeftCell: any, activePane: /^bottomLeft$/u, state: /^frozen$/u },
  sheetFormatPr: { defaultColWidth: number, defaultRowHeight: number },
  col: { min: whole, max: whole, width: number, customWidth: truth },
  row: { r: whole, ht: number },
  c: { r: any, s: whole, t: /^(?:n|str|inlineStr)$/u },
  t: { "xml:space": /^preserve$/u },
  sheetProtection: { sheet: truth, objects: truth, scenarios: truth, formatColumns: truth, formatRows: truth },
  mergeCell: { ref: any },
  conditionalFormatting: { sqref: any },
  cfRule: { type: /^cellIs$/u, dxfId: whole, priority: /^[1-9]\d*$/u, operator: /^notEqual$/u },
  dataValidation: {
    type: /^(?:whole|decimal|custom)$/u,
    operator: /^(?:between|greaterThan|greaterThanOrEqual)$/u,
    allowBlank: truth,
    showErrorMessage: truth,
    errorTitle: any,
    error: any,
    sqref: any,
  },
  pageMargins: { left: number, right: number, top: number, bottom: number, header: number, footer: number },
  pageSetup: { paperSize: whole, scale: whole, fitToHeight: whole, orientation: /^(?:portrait|landscape)$/u },
  rowBreaks: { manualBreakCount: whole },
  brk: { id: whole, max: whole, man: truth },
  numFmt: { numFmtId: whole, formatCode: any },
  sz: { val: number },
  name: { val: any },
  color: { rgb: /^[0-9A-F]{8}$/u },
  fgColor: { rgb: /^[0-9A-F]{8}$/u },
  bgColor: { indexed: whole },
  patternFill: { patternType: /^(?:none|gray125|solid)$/u },
  ...Object.fromEntries(["left", "right", "top", "bottom"].map((side) => [side, { style: /^thin$/u }])),
  xf: {
    ...Object.fromEntries(["numFmtId", "fontId", "fillId", "borderId", "xfId"].map((id) => [id, whole])),
    ...Object.fromEntries(
      ["NumberFormat", "Font", "Fill", "Border", "Alignment", "Protection"].map((of) => [`apply${of}`, truth]),
    ),
    quotePrefix: truth,
  },
  alignment: { vertical: /^top$/u, horizontal: /^(?:left|right)$/u, wrapText: truth, indent: whole },
  protection: { locked: truth },
  cellStyle: { name: any, xfId: whole, builtinId: whole },
  sheet: { name: any, sheetId: whole, "r:id": any },
  definedName: { name: any, localSheetId: whole },
  calcPr: { fullCalcOnLoad: truth },
};

interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Element[];
  text: string;
}

/** The elements of a part, which has to be well formed: as strict as what is written here needs. */
function parsed(part: string): Element {
  const root: Element = { name: "", attributes: {}, children: [], text: "" };
  const open = [root];
  const plain = part.replace(/^<\?xml[^>]*\?>\s*/u, "").replace(/<!--.*?-->/gsu, "");
  let read = 0;
  for (const match of plain.matchAll(
    /<(\/?)([\w:]+)((?:\s+[\w:]+="[^"<&]*(?:&(?:amp|lt|gt|quot|#39|apos);[^"<&]*)*")*)\s*(\/?)>([^<]*)/gu,
  )) {
    const [whole, closing, name = "", written = "", empty, text = ""] = match;
    if (match.index !== read) throw new Error(`not well formed: ${plain.slice(read, read + 80)}`);
    read += whole.length;
    if (closing) {
      const closed = open.pop();
      if (closed?.name !== name) throw new Error(`${name} closes ${closed?.name}`);
    } else {
      const pairs = [...written.matchAll(/([\w:]+)="([^"]*)"/gu)].map(([, key = "", value = ""]) => [key, value]);
      const element: Element = { name, attributes: Object.fromEntries(pairs), children: [], text };
      if (pairs.length !== Object.keys(element.attributes).length) throw new Error(`${name} says something twice`);
      open.at(-1)?.children.push(element);
      if (!empty) open.push(element);
    }
  }
  const [element] = root.children;
  if (read !== plain.length || open.length !== 1 || element === undefined) throw new Error("not closed");
  return element;
}

function all(element: Element, name: string): readonly Element[] {
  return [...(element.name === name ? [element] : []), ...element.children.flatMap((child) => all(child, name))];
}

const unescaped = (text: string): string =>
  text
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&#39;", "'")
    .replaceAll("&amp;", "&");

/** Levels of brackets in a formula, and most values that one call has. */
function shapeOf(formula: string): { readonly levels: number; readonly values: number } {
  const open: number[] = [];
  let [levels, values] = [0, 0];
  for (const letter of formula.replace(/"[^"]*"/gu, "")) {
    if (letter === "(") open.push(1);
    if (letter === ",") open.push((open.pop() ?? 0) + 1);
    levels = Math.max(levels, open.length);
    if (letter === ")") values = Math.max(values, open.pop() ?? 0);
  }
  return { levels, values };
}

const books = [
  ...examples.map((name) => [name, "metric"] as const),
  ["evening-class", "us"] as const,
  ["school-noodle", "us"] as const,
];

test("units and names of scales have room in their columns, long ones too", () => {
  const scales = [{ name: "the old brass balance on the shelf", division: "1 g" }];
  for (const [name, more] of [
    ["friday-noodle", {}],
    ["friday-noodle", { scales }],
    ["evening-class", { wanted: { bowlPrice: "9 EUR" } }],
  ] as const) {
    const [sheet] = beside(name, "metric", more).workbook.sheets;
    const { rows = [], widths = [] } = sheet ?? {};
    const cut = rows.flatMap((cells) =>
      cells.flatMap((cell, column) => {
        const [length, width = 0] = [String(cell?.value).length, widths[column]];
        if (cell?.role === "unit") return length >= width ? [cell.value] : [];
        const rest = widths.slice(column).reduce((sum, one) => sum + one, 0);
        return cell?.role === "words" && length >= rest ? [cell.value] : [];
      }),
    );
    expect(cut).toEqual([]);
  }
});

describe("the file of a workbook keeps to the open standard", () => {
  test.for(books)("%s, %s", ([name, units]) => {
    const texts = Object.entries(unzipSync(workbookFile(beside(name, units).workbook))).map(
      ([part, bytes]) => [part, parsed(strFromU8(bytes))] as const,
    );
    const parts = new Map(texts);
    const part = (path: string): Element => parts.get(path) ?? parsed("");
    for (const [path, element] of parts) {
      const within = (one: Element): readonly Element[] => [one, ...one.children.flatMap(within)];
      for (const { name: of, attributes: own, children } of within(element)) {
        const wanted = order[of]?.split(" ") ?? [];
        const kinds = wanted.filter((kind) => children.some((child) => child.name === kind));
        if (wanted.length > 0) expect([path, of, children.map((child) => child.name)]).toEqual([path, of, kinds]);
        const { count = String(children.length), ...others } = own;
        expect([path, of, count]).toEqual([path, of, String(children.length)]);
        const isPackage = /\.rels$|^\[|^docProps/u.test(path);
        const written = Object.entries(others).filter(([key]) => !key.startsWith("xmlns"));
        const unknown = written.filter(([key, value]) => !attributes[of]?.[key]?.test(value));
        if (!isPackage) expect([path, of, unknown]).toEqual([path, of, []]);
      }
    }
    const types = part("[Content_Types].xml").children.filter((one) => one.name === "Override");
    const typed = types.map(({ attributes }) => attributes["PartName"]?.slice(1)).sort();
    expect(typed).toEqual([...parts.keys()].filter((path) => !/\.rels$|^\[/u.test(path)).sort());
    const relations = part("xl/_rels/workbook.xml.rels").children.map(({ attributes }) => attributes);
    expect(relations.filter(({ Target = "" }) => !parts.has(`xl/${Target}`))).toEqual([]);
    const sheets = all(part("xl/workbook.xml"), "sheet").map(({ attributes }) => attributes);
    const ids = new Set(relations.map(({ Id }) => Id));
    expect(
      sheets.filter((sheet) => !ids.has(sheet["r:id"] ?? "") || !/^[^\\/?*[\]:]{1,31}$/u.test(sheet["name"] ?? "")),
    ).toEqual([]);
    const names = all(part("xl/workbook.xml"), "definedName");
    expect(names.filter(({ attributes: { name: one = "" } }) => !/^[\p{L}_][\p{L}\p{N}_.]{0,254}$/u.test(one))).toEqual(
      [],
    );
    expect(
      names.filter(
        ({ text }) =>
          !sheets.some((one) => unescaped(text).replaceAll("'", "").startsWith(`${one["name"]}!`)) &&
          !text.startsWith("$"),
      ),
    ).toEqual([]);

    const styles = part("xl/styles.xml");
    const list = (of: string): readonly Element[] => all(styles, of)[0]?.children ?? [];
    const formats = list("cellXfs").map(({ attributes }) => attributes);
    for (const [key, of] of [
      ["fontId", "fonts"],
      ["fillId", "fills"],
      ["borderId", "borders"],
      ["xfId", "cellStyleXfs"],
    ] as const) {
      expect(formats.filter((format) => Number(format[key]) >= list(of).length)).toEqual([]);
    }
    const numbers = list("numFmts").map(({ attributes }) => attributes["numFmtId"]);
    expect(formats.filter(({ numFmtId = "" }) => numFmtId !== "0" && !numbers.includes(numFmtId))).toEqual([]);

    for (const [path, sheet] of parts) {
      if (sheet.name !== "worksheet") continue;
      const cells = all(sheet, "c");
      expect(cells.filter(({ attributes }) => Number(attributes["s"]) >= formats.length)).toEqual([]);
      expect(
        cells.filter(({ attributes, text }) => !/^(?:n|str|inlineStr)$/u.test(attributes["t"] ?? "n") || text !== ""),
      ).toEqual([]);
      const places = cells.map(({ attributes }) => /^([A-Z]+)(\d+)$/u.exec(attributes["r"] ?? "") ?? []);
      const along = places.map(
        ([, letters = "", row]) =>
          Number(row) * 1000 + 30 * (letters.length - 1) + letters.charCodeAt(letters.length - 1),
      );
      expect([path, along.filter((at, index) => at <= (along[index - 1] ?? 0))]).toEqual([path, []]);
      expect(all(sheet, "v").filter(({ text }) => /^(?:NaN|-?Infinity|undefined)$/u.test(text))).toEqual([]);
      const formulas = all(sheet, "f").map(({ text }) => unescaped(text));
      expect(
        formulas.filter(
          (formula) => formula.length > 8192 || shapeOf(formula).levels > 64 || shapeOf(formula).values > 255,
        ),
      ).toEqual([]);
      for (const { attributes, children } of all(sheet, "dataValidation")) {
        expect(
          [attributes["errorTitle"]?.length, attributes["error"]?.length].filter((length) => Number(length) > 255),
        ).toEqual([]);
        expect(Number(attributes["errorTitle"]?.length)).toBeLessThanOrEqual(32);
        expect(children.filter(({ text }) => unescaped(text).length > 255)).toEqual([]);
      }
      // Pages begin behind empty rows, and those of the first sheet hold what is between: no table is torn in print.
      const breaks = all(sheet, "brk").map(({ attributes }) => Number(attributes["id"]));
      const rows = all(sheet, "row");
      expect([path, breaks.filter((row) => rows[row - 1]?.children.length !== 0)]).toEqual([path, []]);
      const { scale, fitToHeight, orientation, paperSize } = all(sheet, "pageSetup")[0]?.attributes ?? {};
      if (path.endsWith("sheet1.xml") && fitToHeight !== "1") {
        const [high, wide] = paperSize === "9" ? [842, 595] : [792, 612];
        const room = (((orientation === "portrait" ? high : wide) - 72) * 100) / Number(scale);
        const heights = rows.map(({ attributes }) => Number(attributes["ht"] ?? 15));
        const pages = [0, ...breaks].map((from, index) => heights.slice(from, breaks[index]));
        expect(pages.filter((page) => page.reduce((sum, one) => sum + one, 0) > room)).toEqual([]);
      }
      const merged = all(sheet, "mergeCell").map(({ attributes }) => attributes["ref"]);
      expect(new Set(merged).size).toBe(merged.length);
    }
  });
});
