/** Where the solving ended: with the smallest cost, without anything within the bounds, or before either was known. */
export type Solved = "smallest" | "none" | "open";

/** Rows come with a largest coefficient of one, and columns go up to a thousand: this is far above what rounding does. */
const tolerance = 1e-9;
const mostPivots = 200;
/** After so many pivots the table is written anew, so that rounding does not add up. */
const freshAfter = 100;

/**
 * Linear programs over the same columns and rows (sums of coefficients times columns), one after the other: bounds and costs
 * change, and each starts where the last one ended.
 *
 * The dual simplex method with steps past bounds. All bounds are finite, so that whatever stands at a bound stands at the
 * end that costs least: every table is a start, there is no first phase, and it is safe to stop anywhere. What is said in
 * the end does not rest on the table that was reached on the way: `bound` and "none" are worked out anew from the
 * coefficients as they were given, with the multipliers of the rows that the table leaves; any multipliers give a true bound.
 * Method: C. E. Lemke 1954, for bounds H. M. Wagner 1958, both from memory.
 */
export class Linear {
  /** Bounds of the columns, then of the rows: all finite, to be set before solving. */
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** What the cost cannot go below. */
  bound = 0;
  /** Value of each column, where the solving ended with the smallest cost. */
  readonly values: Float64Array;
  /** What one more of each column adds to `bound`: it stands at its low bound where that is above zero, at its high below. */
  readonly slopes: Float64Array;
  /** Multiplications so far, about. */
  work = 0;
  readonly #columns: number;
  readonly #rows: number;
  readonly #coefficients: Float64Array;
  readonly #costs: Float64Array;
  /** Every row, and last the costs, in the columns that are free. */
  readonly #table: Float64Array;
  /** Which columns, or rows by the number after the columns, are free, and which each row of the table stands for. */
  readonly #free: number[];
  readonly #tied: number[];
  readonly #stands: Float64Array;
  readonly #multipliers: Float64Array;
  readonly #order: number[];
  readonly #ratios: Float64Array;
  #pivots = freshAfter;

  /** @param coefficients - row after row */
  constructor(coefficients: Float64Array, columns: number) {
    const rows = coefficients.length / columns;
    this.#columns = columns;
    this.#rows = rows;
    this.#coefficients = coefficients;
    this.low = new Float64Array(columns + rows);
    this.high = new Float64Array(columns + rows);
    this.values = new Float64Array(columns);
    this.slopes = new Float64Array(columns);
    this.#costs = new Float64Array(columns);
    this.#table = new Float64Array((rows + 1) * columns);
    this.#free = Array.from({ length: columns }, (_, at) => at);
    this.#tied = Array.from({ length: rows }, (_, at) => columns + at);
    this.#stands = new Float64Array(columns);
    this.#multipliers = new Float64Array(rows);
    this.#order = [...this.#free];
    this.#ratios = new Float64Array(columns);
  }

  /** Changes the coefficients of a row. */
  setRow(row: number, coefficients: Float64Array): void {
    this.#coefficients.set(coefficients, row * this.#columns);
    this.#pivots = freshAfter;
  }

  /** Changes the cost of each column. */
  setCosts(costs: Float64Array): void {
    this.#costs.set(costs);
    if (this.#pivots < freshAfter) this.#writeCosts();
  }

  /** The costs in the columns that are free. */
  #writeCosts(): void {
    const columns = this.#columns;
    const start = this.#rows * columns;
    for (let at = 0; at < columns; at += 1) {
      const name = this.#free[at] ?? 0;
      this.#table[start + at] = name < columns ? (this.#costs[name] ?? 0) : 0;
    }
    for (let row = 0; row < this.#rows; row += 1) {
      const name = this.#tied[row] ?? 0;
      const cost = name < columns ? (this.#costs[name] ?? 0) : 0;
      if (cost !== 0) this.#add(start, cost, row * columns);
    }
  }

  #writeAnew(): void {
    this.#table.set(this.#coefficients);
    for (let at = 0; at < this.#columns; at += 1) this.#free[at] = at;
    for (let row = 0; row < this.#rows; row += 1) this.#tied[row] = this.#columns + row;
    this.#pivots = 0;
    this.#writeCosts();
  }

  /** @param enough - stops once the cost cannot stay below this */
  solve(enough: number): Solved {
    if (this.#pivots >= freshAfter) this.#writeAnew();
    const { low, high } = this;
    const columns = this.#columns;
    const costs = this.#rows * columns;
    const table = this.#table;
    const stands = this.#stands;
    for (let at = 0; at < columns; at += 1)
      stands[at] = ((table[costs + at] ?? 0) < 0 ? high : low)[this.#free[at] ?? 0] ?? 0;
    for (let pivots = 0; ; pivots += 1) {
      this.work += 2 * columns * (this.#rows + 1);
      if (pivots === mostPivots || this.#value(costs) >= enough) return this.#end("open");
      let row = -1;
      let missing = tolerance;
      let isLow = true;
      for (let at = 0; at < this.#rows; at += 1) {
        const value = this.#value(at * columns);
        const name = this.#tied[at] ?? 0;
        const under = (low[name] ?? 0) - value;
        const over = value - (high[name] ?? 0);
        if (under <= missing && over <= missing) continue;
        row = at;
        isLow = under > over;
        missing = isLow ? under : over;
      }
      if (row < 0) return this.#end("smallest");
      const start = row * columns;
      const count = this.#rank(start, isLow ? 1 : -1);
      let entering = -1;
      for (let rank = 0; rank < count; rank += 1) {
        entering = this.#order[rank] ?? 0;
        const column = this.#free[entering] ?? 0;
        missing -= Math.abs(table[start + entering] ?? 0) * ((high[column] ?? 0) - (low[column] ?? 0));
        if (missing <= 0) break;
        // a step past it: it goes over to its other end
        if (rank < count - 1) stands[entering] = (low[column] ?? 0) + (high[column] ?? 0) - (stands[entering] ?? 0);
      }
      if (missing > tolerance && this.#cannotReach(row, isLow)) return "none";
      if (entering < 0) return this.#end("open");
      const name = this.#tied[row] ?? 0;
      this.#exchange(row, entering);
      stands[entering] = (isLow ? low : high)[name] ?? 0;
    }
  }

  /** Puts the columns that can bring a row of the table to its bound in order, the one that costs least for it first. */
  #rank(start: number, sign: 1 | -1): number {
    const costs = this.#rows * this.#columns;
    let count = 0;
    for (let at = 0; at < this.#columns; at += 1) {
      const slope = sign * (this.#table[start + at] ?? 0);
      if (Math.abs(slope) < tolerance) continue;
      const name = this.#free[at] ?? 0;
      const stand = this.#stands[at] ?? 0;
      if ((slope > 0 ? (this.high[name] ?? 0) - stand : stand - (this.low[name] ?? 0)) <= 0) continue;
      const ratio = Math.abs((this.#table[costs + at] ?? 0) / slope);
      let place = count;
      for (; place > 0 && (this.#ratios[this.#order[place - 1] ?? 0] ?? 0) > ratio; place -= 1)
        this.#order[place] = this.#order[place - 1] ?? 0;
      this.#ratios[at] = ratio;
      this.#order[place] = at;
      count += 1;
    }
    return count;
  }

  #end(kind: Solved): Solved {
    const columns = this.#columns;
    this.#multiply(this.#rows, 1);
    this.bound = this.#lowest(this.#costs);
    for (let at = 0; at < columns; at += 1) {
      const name = this.#free[at] ?? 0;
      if (name < columns) this.values[name] = this.#stands[at] ?? 0;
    }
    for (let row = 0; row < this.#rows; row += 1) {
      const name = this.#tied[row] ?? 0;
      if (name < columns) this.values[name] = this.#value(row * columns);
    }
    return kind;
  }

  /** Whether a row of the table misses its bound with everything at its best end: then nothing is within the bounds. */
  #cannotReach(row: number, isLow: boolean): boolean {
    this.#multiply(row, isLow ? -1 : 1);
    const name = (this.#tied[row] ?? 0) - this.#columns;
    if (name >= 0) this.#multipliers[name] = isLow ? 1 : -1;
    return this.#lowest(undefined) > tolerance;
  }

  /** Reads the multipliers of the rows from a row of the table. */
  #multiply(row: number, sign: 1 | -1): void {
    this.#multipliers.fill(0);
    for (let at = 0; at < this.#columns; at += 1) {
      const name = (this.#free[at] ?? 0) - this.#columns;
      if (name >= 0) this.#multipliers[name] = sign * (this.#table[row * this.#columns + at] ?? 0);
    }
  }

  /** What the costs, or nothing, plus the multipliers times what each row differs from its sum, cannot go below. */
  #lowest(costs: Float64Array | undefined): number {
    const columns = this.#columns;
    this.work += 2 * columns * (this.#rows + 1);
    const slopes = this.slopes;
    if (costs === undefined) slopes.fill(0);
    else slopes.set(costs);
    let lowest = 0;
    for (let row = 0; row < this.#rows; row += 1) {
      const multiplier = this.#multipliers[row] ?? 0;
      if (multiplier === 0) continue;
      const start = row * columns;
      for (let at = 0; at < columns; at += 1)
        slopes[at] = (slopes[at] ?? 0) - multiplier * (this.#coefficients[start + at] ?? 0);
      lowest += multiplier * ((multiplier > 0 ? this.low : this.high)[columns + row] ?? 0);
    }
    for (let at = 0; at < columns; at += 1) {
      const slope = slopes[at] ?? 0;
      lowest += slope * ((slope > 0 ? this.low : this.high)[at] ?? 0);
    }
    return lowest;
  }

  /** A row of the table with everything where it stands. */
  #value(start: number): number {
    let total = 0;
    for (let at = 0; at < this.#columns; at += 1) total += (this.#table[start + at] ?? 0) * (this.#stands[at] ?? 0);
    return total;
  }

  #add(to: number, factor: number, from: number): void {
    for (let at = 0; at < this.#columns; at += 1)
      this.#table[to + at] = (this.#table[to + at] ?? 0) + factor * (this.#table[from + at] ?? 0);
  }

  /** A row and a column change places: the row is solved for the column, and put into every other row. */
  #exchange(row: number, column: number): void {
    const columns = this.#columns;
    const table = this.#table;
    const start = row * columns;
    const pivot = table[start + column] ?? 1;
    for (let at = 0; at < columns; at += 1) table[start + at] = -(table[start + at] ?? 0) / pivot;
    table[start + column] = 1 / pivot;
    for (let other = 0; other < table.length; other += columns) {
      const factor = table[other + column] ?? 0;
      if (other === start || factor === 0) continue;
      table[other + column] = 0;
      this.#add(other, factor, start);
    }
    [this.#tied[row], this.#free[column]] = [this.#free[column] ?? 0, this.#tied[row] ?? 0];
    this.#pivots += 1;
    this.work += 2 * columns * (this.#rows + 1);
  }
}
