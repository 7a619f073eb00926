import {
  addressOf,
  columnLetters,
  escapeMarkup,
  ownMark,
  printable,
  type Workbook,
  type WorkbookCell,
  type WorkbookSheet,
} from "@noodlewright/core/render";
import { strToU8, type Zippable, zipSync } from "fflate";

/**
 * Writes a workbook as a file of Office Open XML (ISO/IEC 29500-1, transitional): formulas with the values they come to,
 * so that a reader that works nothing out shows them too. Nothing in it runs when it is opened.
 */
export function workbookFile(workbook: Workbook): Uint8Array {
  const { sheets } = workbook;
  const looks = new Looks();
  const parts: Record<string, string> = {
    "docProps/app.xml": `${declaration}<!--${ownMark}--><Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties"><Application>noodlewright</Application></Properties>`,
    "[Content_Types].xml": contentTypes(sheets.length),
    "_rels/.rels": relations([
      ["officeDocument", "xl/workbook.xml"],
      ["extended-properties", "docProps/app.xml"],
    ]),
    "xl/workbook.xml": workbookPart(workbook),
    "xl/_rels/workbook.xml.rels": relations([
      ...sheets.map((_, index) => ["worksheet", `worksheets/sheet${index + 1}.xml`] as const),
      ["styles", "styles.xml"],
    ]),
  };
  for (const [index, sheet] of sheets.entries())
    parts[`xl/worksheets/sheet${index + 1}.xml`] = sheetPart(sheet, workbook.paper, looks);
  parts["xl/styles.xml"] = looks.part();
  const entries = Object.entries(parts).map(([name, text], index): [string, Zippable[string]] => [
    name,
    // The first part stays plain, so that the head of the file tells who wrote it.
    [strToU8(text), { level: index === 0 ? 0 : 6, mtime: new Date(1980, 0, 1) }],
  ]);
  return zipSync(Object.fromEntries(entries));
}

const declaration = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const mainSpace = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const relationSpace = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

function contentTypes(count: number): string {
  const override = (part: string, type: string): string => `<Override PartName="/${part}" ContentType="${type}"/>`;
  const sheet = "application/vnd.openxmlformats-officedocument.spreadsheetml";
  const overrides = [
    override("xl/workbook.xml", `${sheet}.sheet.main+xml`),
    override("xl/styles.xml", `${sheet}.styles+xml`),
    override("docProps/app.xml", "application/vnd.openxmlformats-officedocument.extended-properties+xml"),
    ...Array.from({ length: count }, (_, index) =>
      override(`xl/worksheets/sheet${index + 1}.xml`, `${sheet}.worksheet+xml`),
    ),
  ];
  return `${declaration}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/>${overrides.join("")}</Types>`;
}

function relations(targets: readonly (readonly [type: string, target: string])[]): string {
  const items = targets.map(
    ([type, target], index) =>
      `<Relationship Id="rId${index + 1}" Type="${relationSpace}/${type}" Target="${target}"/>`,
  );
  return `${declaration}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${items.join("")}</Relationships>`;
}

function workbookPart({ sheets, names }: Workbook): string {
  const list = sheets.map(
    ({ name }, index) => `<sheet name="${escapeMarkup(name)}" sheetId="${index + 1}" r:id="rId${index + 1}"/>`,
  );
  const printing = sheets.flatMap((sheet, index) => {
    const local = (name: string, area: string): string =>
      `<definedName name="_xlnm.${name}" localSheetId="${index}">${escapeMarkup(`'${sheet.name}'!${area}`)}</definedName>`;
    const { rows, columns } = sizeOf(sheet);
    return [
      local("Print_Area", `$A$1:$${columnLetters(columns - 1)}$${rows}`),
      ...(sheet.headings > 0 ? [local("Print_Titles", `$1:$${sheet.headings}`)] : []),
    ];
  });
  const own = names.map(
    ({ name, refersTo }) => `<definedName name="${escapeMarkup(name)}">${escapeMarkup(refersTo)}</definedName>`,
  );
  return `${declaration}<workbook xmlns="${mainSpace}" xmlns:r="${relationSpace}"><workbookPr/><bookViews><workbookView/></bookViews><sheets>${list.join("")}</sheets><definedNames>${[...printing, ...own].join("")}</definedNames><calcPr fullCalcOnLoad="1"/></workbook>`;
}

function sizeOf({ rows }: WorkbookSheet): { readonly rows: number; readonly columns: number } {
  return { rows: Math.max(1, rows.length), columns: Math.max(1, ...rows.map((row) => row.length)) };
}

function sheetPart(sheet: WorkbookSheet, paper: Workbook["paper"], looks: Looks): string {
  const { widths, rows, headings } = sheet;
  const { columns } = sizeOf(sheet);
  const cols = widths.map(
    (width, index) => `<col min="${index + 1}" max="${index + 1}" width="${width}" customWidth="1"/>`,
  );
  const [inputs, checks, merged]: [string[], string[], string[]] = [[], [], []];
  const data = rows.map((cells, row) => {
    const written = cells.map((cell, column) => {
      if (cell === null) return "";
      const address = addressOf(row, column);
      if (cell.role === "input") inputs.push(validation(address, cell.takes));
      if (cell.role === "check") checks.push(address);
      const across = columnsOf(cells, column, columns);
      if (across > 1) merged.push(`<mergeCell ref="${address}:${addressOf(row, column + across - 1)}"/>`);
      return cellPart(address, cell, looks);
    });
    return `<row r="${row + 1}"${heightOf(cells, widths)}>${written.join("")}</row>`;
  });
  const pages = pagesOf(sheet, paper);
  const pane =
    headings === 0
      ? ""
      : `<pane ySplit="${headings}" topLeftCell="A${headings + 1}" activePane="bottomLeft" state="frozen"/>`;
  return [
    `${declaration}<worksheet xmlns="${mainSpace}">`,
    // Programs that fit a sheet to a page pay no regard to breaks: a sheet with breaks has a scale instead.
    pages.breaks.length === 0 ? `<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>` : "",
    `<dimension ref="A1:${addressOf(Math.max(0, rows.length - 1), columns - 1)}"/>`,
    `<sheetViews><sheetView showGridLines="0" workbookViewId="0">${pane}</sheetView></sheetViews>`,
    `<sheetFormatPr defaultColWidth="${usualWidth}" defaultRowHeight="${lineHeight}"/>`,
    `<cols>${cols.join("")}</cols>`,
    `<sheetData>${data.join("")}</sheetData>`,
    `<sheetProtection sheet="1" objects="1" scenarios="1" formatColumns="0" formatRows="0"/>`,
    counted("mergeCells", merged),
    checks.length === 0
      ? ""
      : `<conditionalFormatting sqref="${checks.join(" ")}"><cfRule type="cellIs" dxfId="0" priority="1" operator="notEqual"><formula>"fine"</formula></cfRule></conditionalFormatting>`,
    counted("dataValidations", inputs),
    `<pageMargins left="0.4" right="0.4" top="0.4" bottom="0.6" header="0.3" footer="0.3"/>`,
    `<pageSetup paperSize="${paper === "A4" ? 9 : 1}" ${pages.breaks.length === 0 ? `fitToHeight="${pages.fits}"` : `scale="${pages.scale}"`} orientation="${pages.orientation}"/>`,
    `<headerFooter><oddFooter>&amp;L&amp;A&amp;R&amp;P / &amp;N</oddFooter></headerFooter>`,
    pages.breaks.length === 0
      ? ""
      : `<rowBreaks count="${pages.breaks.length}" manualBreakCount="${pages.breaks.length}">${pages.breaks.map((row) => `<brk id="${row}" max="16383" man="1"/>`).join("")}</rowBreaks>`,
    "</worksheet>",
  ].join("");
}

/** Over how many columns a cell goes: titles, notes, words and checks up to the next cell, or to the edge of the sheet. */
function columnsOf(cells: WorkbookSheet["rows"][number], column: number, columns: number): number {
  const role = cells[column]?.role;
  if (role === undefined || !lookOf[role].across) return 1;
  const next = cells.findIndex((cell, at) => at > column && cell !== null);
  return (next < 0 ? columns : next) - column;
}

/** A list with its length; nothing where it is empty, which no list may be. */
function counted(name: string, items: readonly string[]): string {
  return items.length === 0 ? "" : `<${name} count="${items.length}">${items.join("")}</${name}>`;
}

function validation(cell: string, { least = 0, above, most, whole, optional }: WorkbookCell["takes"] = {}): string {
  const number = `Write a ${whole ? "whole " : ""}number`;
  const rule = (type: string, error: string, limits: readonly (string | number)[]): string => {
    const formulas = limits.map((limit, index) => `<formula${index + 1}>${limit}</formula${index + 1}>`);
    return `<dataValidation type="${type}" allowBlank="${optional ? 1 : 0}" showErrorMessage="1" errorTitle="Another number" error="${number} ${error}." sqref="${cell}">${formulas.join("")}</dataValidation>`;
  };
  const type = whole ? "whole" : "decimal";
  if (above !== undefined && most !== undefined) {
    const limits = `AND(ISNUMBER(${cell}),${cell}&gt;${above},${cell}&lt;=${most})`;
    return rule("custom", `above ${above} and at most ${most}`, [limits]);
  }
  if (above !== undefined) return rule(`${type}" operator="greaterThan`, `above ${above}`, [above]);
  if (most !== undefined) return rule(`${type}" operator="between`, `from ${least} to ${most}`, [least, most]);
  return rule(`${type}" operator="greaterThanOrEqual`, `of ${least} or more`, [least]);
}

/** Height of a line, points. */
const lineHeight = 15;
/** Width of a column of which nothing is said, characters. */
const usualWidth = 13;
/** Width of a digit in print, points. */
const digitWidth = 5.6;
/** How much larger a title is. */
const titleHeight = 1.4;
/** Words are narrower than as many digits, by which widths are measured. */
const lettersToDigit = 1.1;

/** Sides of a page without its margins, points; the short one first. */
const pages = { A4: [537, 770], letter: [554, 720] } as const;
/** Part of a page that is surely there, whatever program measures its rows. */
const surely = 0.95;
/** Scale down to which a page can be read. */
const legible = 0.55;

/** How a sheet is printed: wholly on one page where it can be read so; otherwise on few pages, as large as they let it, so that no table is torn. */
function pagesOf(sheet: WorkbookSheet, paper: Workbook["paper"]) {
  const { widths, rows, headings } = sheet;
  const columns = Array.from({ length: sizeOf(sheet).columns }, (_, index) => widths[index] ?? usualWidth);
  const width = columns.reduce((sum, one) => sum + digitWidth * one, 0);
  const heights = rows.map((cells) => linesOf(cells, widths) * lineHeight);
  const heightOf = (from: number, to: number): number => heights.slice(from, to).reduce((sum, one) => sum + one, 0);
  const breaksFor = (room: number): readonly number[] => {
    const breaks: number[] = [];
    let [from, gap] = [headings, 0];
    for (const [row, cells] of rows.entries()) {
      if (heightOf(0, headings) + heightOf(from, row + 1) > room && gap > from) {
        breaks.push(gap);
        from = gap;
      }
      if (cells.every((cell) => cell === null)) gap = row + 1;
    }
    return breaks;
  };
  const [short, long] = pages[paper];
  const turned = [
    { orientation: "portrait", wide: short, high: long },
    { orientation: "landscape", wide: long, high: short },
  ].map((page) => ({ ...page, scale: Math.min(1, page.wide / width, page.high / heightOf(0, rows.length)) }));
  const [onOne] = turned.toSorted((one, other) => other.scale - one.scale);
  if (onOne !== undefined && onOne.scale >= legible) return { ...onOne, fits: 1, breaks: [] };
  const several = turned.flatMap(({ orientation, wide, high }) => {
    const largest = Math.floor(100 * Math.min(1, wide / width));
    const scales = Array.from({ length: Math.max(0, largest + 1 - 100 * legible) }, (_, less) => largest - less);
    return scales.map((scale) => ({ orientation, scale, breaks: breaksFor((surely * high * 100) / scale) }));
  });
  const [best = { orientation: "landscape", scale: 100 * legible, breaks: [] }] = several.toSorted(
    (one, other) => one.breaks.length - other.breaks.length || other.scale - one.scale,
  );
  return { ...best, fits: 0 };
}

/** Says the height of a row whose words wrap or are large. */
function heightOf(cells: WorkbookSheet["rows"][number], widths: WorkbookSheet["widths"]): string {
  const lines = linesOf(cells, widths);
  return lines === 1 ? "" : ` ht="${lines * lineHeight}"`;
}

function linesOf(cells: WorkbookSheet["rows"][number], widths: WorkbookSheet["widths"]): number {
  const lines = cells.map((cell, column) => {
    const length = cell !== null && lookOf[cell.role].wrap ? String(cell.value).length : 0;
    const across = columnsOf(cells, column, Math.max(widths.length, cells.length));
    const width = Array.from({ length: across }, (_, index) => widths[column + index] ?? usualWidth);
    const all = width.reduce((sum, one) => sum + one, 0) * lettersToDigit;
    return cell?.role === "title" ? titleHeight * Math.ceil((length * titleHeight) / all) : Math.ceil(length / all);
  });
  return Math.max(1, ...lines);
}

function cellPart(address: string, cell: WorkbookCell, looks: Looks): string {
  const { value, formula } = cell;
  const style = looks.of(cell);
  const formulaPart = formula === undefined ? "" : `<f>${escapeMarkup(formula)}</f>`;
  if (typeof value === "string") {
    if (formula !== undefined) {
      return `<c r="${address}" s="${style}" t="str">${formulaPart}<v>${escapeMarkup(plainText(value))}</v></c>`;
    }
    return `<c r="${address}" s="${style}" t="inlineStr"><is><t xml:space="preserve">${escapeMarkup(plainText(value))}</t></is></c>`;
  }
  return `<c r="${address}" s="${style}">${formulaPart}${value === undefined ? "" : `<v>${value}</v>`}</c>`;
}

/** A text as a cell holds it: tabs, and what would be read as the code of a character, are kept as they are. */
function plainText(text: string): string {
  return text
    .split("\t")
    .map(printable)
    .join("\t")
    .replace(/_(?=x[0-9A-Fa-f]{4}_)/gu, "_x005F_");
}

const fonts = {
  plain: `<font><sz val="11"/><name val="Calibri"/></font>`,
  bold: `<font><b/><sz val="11"/><name val="Calibri"/></font>`,
  large: `<font><b/><sz val="15"/><name val="Calibri"/></font>`,
  soft: `<font><sz val="11"/><color rgb="FF555555"/><name val="Calibri"/></font>`,
} as const;
const fills = {
  none: `<fill><patternFill patternType="none"/></fill>`,
  dotted: `<fill><patternFill patternType="gray125"/></fill>`,
  input: `<fill><patternFill patternType="solid"><fgColor rgb="FFFFF3C4"/><bgColor indexed="64"/></patternFill></fill>`,
  heading: `<fill><patternFill patternType="solid"><fgColor rgb="FFE4E9ED"/><bgColor indexed="64"/></patternFill></fill>`,
} as const;
const thin = (side: string): string => `<${side} style="thin"><color rgb="FF8A8A8A"/></${side}>`;
const borders = {
  none: "<border><left/><right/><top/><bottom/><diagonal/></border>",
  box: `<border>${["left", "right", "top", "bottom"].map(thin).join("")}<diagonal/></border>`,
} as const;

interface Look {
  readonly font: keyof typeof fonts;
  readonly fill?: keyof typeof fills;
  readonly border?: keyof typeof borders;
  /** Words that wrap within their width. */
  readonly wrap?: true;
  /** Words that go on over empty cells. */
  readonly across?: true;
  /** Words set in from numbers before them. */
  readonly indent?: true;
  readonly right?: true;
}

const lookOf: Readonly<Record<WorkbookCell["role"], Look>> = {
  title: { font: "large", wrap: true, across: true },
  heading: { font: "bold", fill: "heading", indent: true },
  column: { font: "bold", fill: "heading", right: true },
  text: { font: "plain", wrap: true, indent: true },
  note: { font: "soft", wrap: true, across: true },
  unit: { font: "soft", indent: true },
  words: { font: "soft", wrap: true, across: true, indent: true },
  input: { font: "plain", fill: "input", border: "box" },
  number: { font: "plain" },
  result: { font: "bold", right: true },
  check: { font: "plain", wrap: true, across: true },
};

/** The formats of cells, each written once. */
class Looks {
  readonly #formats: string[] = [];
  readonly #numbers: string[] = [];

  constructor() {
    this.of({ role: "number" });
  }

  /** The number of the format of a cell. */
  of({ role, places, value, formula }: WorkbookCell): number {
    const { font, fill = "none", border = "none", wrap, indent, right } = lookOf[role];
    const number = places === undefined ? 0 : this.#numberFormat(places);
    // What begins like a formula stays text when somebody edits it.
    const quoted = typeof value === "string" && formula === undefined && /^[=+\-@]/u.test(value);
    const format = [
      `<xf numFmtId="${number}" fontId="${Object.keys(fonts).indexOf(font)}" fillId="${Object.keys(fills).indexOf(fill)}"`,
      ` borderId="${Object.keys(borders).indexOf(border)}" xfId="0" applyNumberFormat="1" applyFont="1" applyFill="1"`,
      ` applyBorder="1" applyAlignment="1" applyProtection="1"${quoted ? ' quotePrefix="1"' : ""}>`,
      `<alignment vertical="top"${wrap ? ' wrapText="1"' : ""}${indent ? ' horizontal="left" indent="1"' : ""}${right ? ' horizontal="right"' : ""}/><protection locked="${role === "input" ? 0 : 1}"/></xf>`,
    ].join("");
    return indexIn(this.#formats, format);
  }

  /** The number of a format with so many decimal places; those up to 163 belong to the standard. */
  #numberFormat(places: number): number {
    return 164 + indexIn(this.#numbers, places === 0 ? "#,##0" : `#,##0.${"0".repeat(places)}`);
  }

  part(): string {
    const numbers = this.#numbers.map((code, index) => `<numFmt numFmtId="${164 + index}" formatCode="${code}"/>`);
    return [
      `${declaration}<styleSheet xmlns="${mainSpace}">`,
      counted("numFmts", numbers),
      counted("fonts", Object.values(fonts)),
      counted("fills", Object.values(fills)),
      counted("borders", Object.values(borders)),
      counted("cellStyleXfs", ['<xf numFmtId="0" fontId="0" fillId="0" borderId="0"/>']),
      counted("cellXfs", this.#formats),
      counted("cellStyles", ['<cellStyle name="Normal" xfId="0" builtinId="0"/>']),
      counted("dxfs", ['<dxf><font><b/><color rgb="FFB00020"/></font></dxf>']),
      "</styleSheet>",
    ].join("");
  }
}

function indexIn(list: string[], item: string): number {
  const known = list.indexOf(item);
  return known >= 0 ? known : list.push(item) - 1;
}
