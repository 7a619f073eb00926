/**
 * What a cell is for, which a writer turns into its looks; a column is the heading of numbers; titles, notes, words and checks
 * go across to the next cell; a check is to be marked where it says anything but `fine`. Only an input can be changed without lifting the protection.
 */
export type CellRole =
  | "title"
  | "heading"
  | "column"
  | "text"
  | "note"
  | "unit"
  | "words"
  | "input"
  | "number"
  | "result"
  | "check";

/** Which numbers may be typed. */
export interface InputLimits {
  readonly least?: number;
  /** Every number has to lie above this one. */
  readonly above?: number;
  readonly most?: number;
  readonly whole?: true;
  /** Whether it may be left empty. */
  readonly optional?: true;
}

/** One cell of a workbook. */
export interface WorkbookCell {
  readonly role: CellRole;
  /** What it holds, or what its formula comes to; left out where it is empty. */
  readonly value?: string | number;
  /** Formula of a spreadsheet without the equals sign, in the English names of Office Open XML. */
  readonly formula?: string;
  /** Decimal places that a number is shown with; as many as it has where there are none. */
  readonly places?: number;
  /** What may be typed into an input. */
  readonly takes?: InputLimits;
}

/** One sheet of a workbook. */
export interface WorkbookSheet {
  readonly name: string;
  /** Widths of the columns, in characters. */
  readonly widths: readonly number[];
  /** Rows of cells, `null` where a cell is empty. */
  readonly rows: readonly (readonly (WorkbookCell | null)[])[];
  /** Rows at the top that are repeated on every page. */
  readonly headings: number;
}

/** A cell with a name of its own, for formulas that a reader adds. */
export interface DefinedName {
  readonly name: string;
  /** Cell with its sheet, such as `Noodle!$B$4`. */
  readonly refersTo: string;
}

/** A workbook as plain data; a writer makes the file of it. */
export interface Workbook {
  readonly title: string;
  readonly paper: "A4" | "letter";
  readonly sheets: readonly WorkbookSheet[];
  readonly names: readonly DefinedName[];
}

/** The letters of a column, counted from 0. @example columnLetters(27) // => "AB" */
export function columnLetters(column: number): string {
  const last = String.fromCharCode(65 + (column % 26));
  return column < 26 ? last : `${columnLetters(Math.floor(column / 26) - 1)}${last}`;
}

/** The address of a cell; row and column counted from 0. @example addressOf(2, 1) // => "B3" */
export function addressOf(row: number, column: number): string {
  return `${columnLetters(column)}${row + 1}`;
}

/** A sheet while its cells are put in, wherever they go. */
export class SheetDraft {
  readonly name: string;
  readonly #rows: (WorkbookCell | null)[][] = [];

  constructor(name: string) {
    this.name = name;
  }

  /** Rows so far. */
  get length(): number {
    return this.#rows.length;
  }

  /** Puts a cell and gives its address within the sheet. */
  put(row: number, column: number, cell: WorkbookCell): string {
    while (this.#rows.length <= row) this.#rows.push([]);
    const cells = this.#rows[row] ?? [];
    while (cells.length <= column) cells.push(null);
    cells[column] = cell;
    return addressOf(row, column);
  }

  /** Puts cells side by side from the first column on, below all that is there. */
  add(...cells: readonly (WorkbookCell | undefined)[]): number {
    this.#rows.push(cells.map((cell) => cell ?? null));
    return this.#rows.length - 1;
  }

  /** Characters of the longest text of a column that has a role. */
  longest(column: number, role: CellRole): number {
    const texts = this.#rows.map((cells) => (cells[column]?.role === role ? String(cells[column]?.value) : ""));
    return Math.max(0, ...texts.map(({ length }) => length));
  }

  done(widths: readonly number[], headings: number): WorkbookSheet {
    return { name: this.name, widths, rows: this.#rows, headings };
  }
}
