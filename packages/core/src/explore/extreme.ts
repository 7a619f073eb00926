import { type Decimal, dec, ONE, ZERO } from "../number/decimal.ts";

/** Coefficients of amounts, and last that of what stands beside them: the constant of a sum. */
export type Sum = readonly Decimal[];

/** A quotient of two sums over amounts. The lower one is never below zero. */
export interface Quotient {
  readonly top: Sum;
  readonly bottom: Sum;
}

/** How far a quotient goes, and the amounts at which it does. */
interface Extreme {
  readonly value: Decimal;
  readonly amounts: readonly Decimal[];
}

/**
 * The least or the greatest that a quotient comes to, over amounts of zero or more at which no row is below zero; nothing
 * where there are no such amounts.
 *
 * Amounts and the one beside them are scaled together until the lower sum is one, which makes the quotient a sum (A. Charnes,
 * W. W. Cooper 1962); then the simplex method, with the rule against circles of R. G. Bland 1977. Both from memory.
 *
 * @param rows - sums that have to be zero or more; they have to bound the amounts
 * @example extreme({ top: [dec(1), dec(0)], bottom: [dec(1), dec(3)] }, "most", [[dec(-1), dec(2)]]).value.toString() // => "0.4"
 */
export function extreme({ top, bottom }: Quotient, side: "least" | "most", rows: readonly Sum[]): Extreme | undefined {
  const sign = side === "most" ? 1 : -1;
  const table = new Table([bottom.map((value) => value.negated()), top.map((value) => value.times(sign)), ...rows]);
  if (!table.climb("room") || !table.isFull()) return undefined;
  table.climb("goal");
  const scaled = table.values(top.length);
  const one = scaled.at(-1) ?? ZERO;
  return one.isZero()
    ? undefined
    : { value: table.goal().times(sign), amounts: scaled.slice(0, -1).map((value) => value.div(one)) };
}

/** Row 0: what is left until the lower sum is one; row 1: the goal; then the rows that stay at zero or more. */
class Table {
  readonly #cells: Decimal[][];
  /** What each row and each column stands for: columns from 0, rows after them; the last cell of a row is its constant. */
  readonly #ofRow: number[];
  readonly #ofColumn: number[];

  constructor(rows: readonly Sum[]) {
    const columns = rows[0]?.length ?? 0;
    this.#cells = rows.map((row, index) => [...row, index === 0 ? ONE : ZERO]);
    this.#ofColumn = Array.from({ length: columns }, (_, index) => index);
    this.#ofRow = rows.map((_, index) => columns + index);
  }

  /** Makes the room smaller, or then the goal greater, until it can be no more so; false where it never ends. */
  climb(what: "room" | "goal"): boolean {
    const sign = what === "room" ? -1 : 1;
    const room = this.#roomColumn();
    for (;;) {
      const goal = this.#cells[what === "room" ? 0 : 1] ?? [];
      const entering = this.#first(this.#ofColumn, (at) => at !== room && (goal[at] ?? ZERO).times(sign).gt(0));
      if (entering === undefined) return true;
      const leaving = this.#leaving(entering);
      if (leaving === undefined) return false;
      this.#pivot(leaving, entering);
      if (what === "room" && this.#roomColumn() !== undefined) return true;
    }
  }

  /** Whether the lower sum is one. */
  isFull(): boolean {
    return this.#roomColumn() !== undefined;
  }

  goal(): Decimal {
    return this.#cells[1]?.at(-1) ?? ZERO;
  }

  values(count: number): readonly Decimal[] {
    return Array.from({ length: count }, (_, index) => {
      const row = this.#ofRow.indexOf(index);
      return row < 0 ? ZERO : (this.#cells[row]?.at(-1) ?? ZERO);
    });
  }

  #roomColumn(): number | undefined {
    const at = this.#ofColumn.indexOf(this.#ofColumn.length);
    return at < 0 ? undefined : at;
  }

  /** Of those that may be chosen, the place of what comes first of all. */
  #first(names: readonly number[], may: (at: number) => boolean): number | undefined {
    const [first] = names.flatMap((name, at) => (may(at) ? [{ name, at }] : [])).toSorted((a, b) => a.name - b.name);
    return first?.at;
  }

  /** The row that is at zero first while a column grows. */
  #leaving(column: number): number | undefined {
    const steps = this.#cells.map((row, at) => {
      const slope = row[column] ?? ZERO;
      return at === 1 || !slope.isNegative() || slope.isZero() ? undefined : (row.at(-1) ?? ZERO).div(slope.negated());
    });
    const least = steps.reduce(
      (best, step) => (best === undefined || step?.lt(best) === true ? step : best),
      undefined,
    );
    return least && this.#first(this.#ofRow, (at) => steps[at]?.eq(least) === true);
  }

  #pivot(row: number, column: number): void {
    const old = this.#cells[row] ?? [];
    const lead = old[column] ?? ONE;
    const fresh = old.map((cell, at) => (at === column ? ONE.div(lead) : cell.negated().div(lead)));
    for (const [index, cells] of this.#cells.entries()) {
      const times = cells[column] ?? ZERO;
      if (index === row || times.isZero()) continue;
      this.#cells[index] = cells.map((cell, at) => {
        const added = times.times(fresh[at] ?? ZERO);
        return at === column ? added : settled(cell.plus(added));
      });
    }
    this.#cells[row] = fresh;
    const [leaving, entering] = [this.#ofRow[row] ?? 0, this.#ofColumn[column] ?? 0];
    this.#ofRow[row] = entering;
    this.#ofColumn[column] = leaving;
  }
}

/** A number below this is what rounding to 40 digits leaves of zero. */
const smallest = dec("1e-28");

function settled(value: Decimal): Decimal {
  return value.abs().lt(smallest) ? ZERO : value;
}
