/** Columns within bounds, and rows (sums of coefficients times columns) within theirs. */
export interface Linear {
  /** Coefficients, row after row, then the cost of each column; the solving works in it. */
  readonly table: Float64Array;
  readonly columns: number;
  /** Bounds of the columns, then of the rows: all finite. */
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** Where the solving ended: with the smallest cost, without anything within the bounds, or before either was known. */
export interface Solved {
  readonly kind: "smallest" | "none" | "open";
  /** What the cost cannot go below. */
  readonly bound: number;
  /** Value of each column. */
  readonly values: Float64Array;
  /** What one more of each column adds to `bound`: it stands at its low bound where that is above zero, at its high below. */
  readonly slopes: Float64Array;
  /** Multiplications, about. */
  readonly work: number;
}

/** Rows come with a largest coefficient of one: this is far above what rounding does. */
const tolerance = 1e-9;
const mostPivots = 200;

/**
 * The smallest cost of a linear program whose bounds are all finite, by the dual simplex method with steps past bounds.
 *
 * Whatever stands at a bound stands at the end that costs least, so every step gives a cost that nothing can go below: there
 * is no first phase, and it is safe to stop anywhere. "None" rests on one row that misses its bound with everything it
 * depends on at its best end. Method: C. E. Lemke 1954, for bounds H. M. Wagner 1958, both from memory.
 *
 * @param enough - stops once the cost cannot stay below this
 */
export function solveLinear({ table, columns, low, high }: Linear, enough: number): Solved {
  const rows = low.length - columns;
  const free = Int32Array.from({ length: columns }, (_, at) => at);
  const bound = Int32Array.from({ length: rows }, (_, at) => columns + at);
  const costs = table.subarray(rows * columns);
  const stands = Float64Array.from({ length: columns }, (_, at) => ((costs[at] ?? 0) < 0 ? high : low)[at] ?? 0);
  const order = Int32Array.from({ length: columns });
  const ratios = new Float64Array(columns);
  let work = 0;
  const end = (kind: Solved["kind"], cost: number): Solved => {
    const values = new Float64Array(low.length);
    const slopes = new Float64Array(low.length);
    for (const [at, column] of free.entries()) {
      values[column] = stands[at] ?? 0;
      slopes[column] = costs[at] ?? 0;
    }
    for (const [row, column] of bound.entries()) values[column] = dot(table, row * columns, stands);
    return { kind, bound: cost, values, slopes, work };
  };
  for (let pivots = 0; ; pivots += 1) {
    work += 2 * columns * (rows + 1);
    const cost = dot(costs, 0, stands);
    if (cost >= enough || pivots === mostPivots) return end("open", cost);
    let [row, missing] = [-1, tolerance];
    for (let at = 0; at < rows; at += 1) {
      const value = dot(table, at * columns, stands);
      const name = bound[at] ?? 0;
      const off = Math.max((low[name] ?? 0) - value, value - (high[name] ?? 0));
      if (off > missing) [row, missing] = [at, off];
    }
    if (row < 0) return end("smallest", cost);
    const start = row * columns;
    const name = bound[row] ?? 0;
    const isLow = dot(table, start, stands) < (low[name] ?? 0);
    // the columns that can bring the row to its bound, the one that costs least for it first
    let count = 0;
    let reach = 0;
    for (let at = 0; at < columns; at += 1) {
      const slope = (isLow ? 1 : -1) * (table[start + at] ?? 0);
      const [from, to] = [low[free[at] ?? 0] ?? 0, high[free[at] ?? 0] ?? 0];
      const room = slope > 0 ? to - (stands[at] ?? 0) : (stands[at] ?? 0) - from;
      if (slope === 0 || room <= 0) continue;
      reach += Math.abs(slope) * room;
      if (Math.abs(slope) < tolerance) continue;
      ratios[at] = Math.abs((costs[at] ?? 0) / slope);
      let place = count;
      for (; place > 0 && (ratios[order[place - 1] ?? 0] ?? 0) > (ratios[at] ?? 0); place -= 1)
        order[place] = order[place - 1] ?? 0;
      order[place] = at;
      count += 1;
    }
    if (reach < missing - tolerance) return end("none", Number.POSITIVE_INFINITY);
    let entering = -1;
    for (let rank = 0; rank < count; rank += 1) {
      entering = order[rank] ?? 0;
      const column = free[entering] ?? 0;
      missing -= Math.abs(table[start + entering] ?? 0) * ((high[column] ?? 0) - (low[column] ?? 0));
      if (missing <= 0) break;
      // a step past it: it goes over to its other end
      if (rank < count - 1) stands[entering] = (low[column] ?? 0) + (high[column] ?? 0) - (stands[entering] ?? 0);
    }
    if (entering < 0) return end("open", cost);
    exchange(table, columns, row, entering);
    bound[row] = free[entering] ?? 0;
    free[entering] = name;
    stands[entering] = (isLow ? low : high)[name] ?? 0;
    work += 2 * columns * (rows + 1);
  }
}

function dot(table: Float64Array, start: number, values: Float64Array): number {
  let total = 0;
  for (let at = 0; at < values.length; at += 1) total += (table[start + at] ?? 0) * (values[at] ?? 0);
  return total;
}

/** A row and a column change places: the row is solved for the column, and put into every other row. */
function exchange(table: Float64Array, columns: number, row: number, column: number): void {
  const start = row * columns;
  const pivot = table[start + column] ?? 1;
  for (let at = 0; at < columns; at += 1) table[start + at] = -(table[start + at] ?? 0) / pivot;
  table[start + column] = 1 / pivot;
  for (let other = 0; other < table.length; other += columns) {
    const factor = table[other + column] ?? 0;
    if (other === start || factor === 0) continue;
    table[other + column] = 0;
    for (let at = 0; at < columns; at += 1) {
      table[other + at] = (table[other + at] ?? 0) + factor * (table[start + at] ?? 0);
    }
  }
}
