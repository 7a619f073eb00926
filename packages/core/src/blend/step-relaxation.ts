import { Linear } from "./step-linear.ts";
import { type Objective, type Reached, type StepProblem, weigh } from "./step-problem.ts";

/** Least and most steps of each flour, as the search narrows them. */
export interface Box {
  readonly least: number[];
  readonly most: number[];
}

/** A quantity as a sum over the columns, with a constant. */
interface Terms {
  readonly coefficients: Float64Array;
  readonly constant: number;
}

type Counted = Pick<Extract<Objective, { kind: "changed" }>, "from" | "perStep">;

/**
 * The question in fractions of a step, for one box of steps after the other.
 *
 * Where flours move away from a blend, each has two columns: its steps up to its share of that blend, and those above. What
 * is moved then costs less with every step of the one and more with every step of the other.
 */
export class Relaxation {
  /** What the objective cannot go below in the box solved last. */
  bound = 0;
  readonly #linear: Linear;
  readonly #flours: number;
  readonly #columns: number;
  readonly #total: number;
  /** Where the two columns of each flour meet. */
  readonly #meet: readonly number[] | undefined;
  #constant: number;
  /** Rows that count flours, whose coefficients are written for each box, by the most they may count. */
  readonly #counted: readonly { readonly row: number; readonly most: number; readonly what: Counted }[];
  readonly #countedAim: Counted | undefined;

  constructor(problem: StepProblem, objective: Objective | undefined, kept: readonly Reached[]) {
    const wanted = [objective, ...kept.map((reached) => reached.objective)];
    const away = wanted.find((one) => one?.kind === "moved") ?? wanted.find((one) => one?.kind === "changed");
    this.#meet = away?.from.map((start) => start / away.perStep);
    this.#total = problem.total;
    this.#flours = problem.least.length;
    const aside = wanted.map((one) => (one?.kind === "missed" ? one.rows.length : one?.kind === "off-zero" ? 2 : 0));
    let next = this.#flours * (this.#meet === undefined ? 1 : 2);
    this.#columns = aside.reduce((sum, count) => sum + count, next);
    const rows: { readonly terms: Float64Array; readonly low: number; readonly high: number }[] = [];
    const far = this.#total * this.#columns;
    /** The largest coefficient becomes one, and no bound is further off than the row can get. */
    const put = (terms: Float64Array, low: number, high: number): void => {
      const scale = 1 / largest(terms);
      for (let at = 0; at < terms.length; at += 1) terms[at] = (terms[at] ?? 0) * scale;
      rows.push({ terms, low: Math.max(-far, low * scale), high: Math.min(far, high * scale) });
    };
    put(this.#spread(problem.least.map(() => 1)), this.#total, this.#total);
    for (const { coefficients, constant } of problem.rows) put(this.#spread(coefficients), -constant, Infinity);
    const quantity = (one: Objective | undefined): Terms => {
      if (one?.kind === "weighted") return { coefficients: this.#spread(one.weights), constant: 0 };
      if (one?.kind === "moved") return this.#moved(one);
      const coefficients = new Float64Array(this.#columns);
      for (const row of one?.kind === "missed" ? one.rows : one?.kind === "off-zero" ? [one.weights] : []) {
        const line = this.#spread(row);
        const size = largest(row);
        for (const sign of one?.kind === "missed" ? [1] : [1, -1]) {
          line[next] = sign * size;
          coefficients[next] = size;
          next += 1;
        }
        put(line, 0, one?.kind === "missed" ? Infinity : 0);
      }
      return { coefficients, constant: 0 };
    };
    const aim = quantity(objective);
    const counted: { row: number; most: number; what: Counted }[] = [];
    const limit = (one: Objective, most: number): void => {
      const { coefficients, constant } = quantity(one);
      if (one.kind === "changed") counted.push({ row: rows.length, most, what: one });
      put(coefficients, -Infinity, most - constant);
    };
    for (const reached of kept) limit(reached.objective, reached.value);
    if (problem.mostFlours !== undefined)
      limit({ kind: "changed", from: problem.least.map(() => 0), perStep: 1 }, problem.mostFlours);
    this.#counted = counted;
    this.#countedAim = objective?.kind === "changed" ? objective : undefined;
    this.#constant = aim.constant;
    const coefficients = new Float64Array(rows.length * this.#columns);
    this.#linear = new Linear(coefficients, this.#columns);
    this.#linear.high.fill(this.#total, 0, this.#columns);
    for (const [at, { terms, low, high }] of rows.entries()) {
      coefficients.set(terms, at * this.#columns);
      this.#linear.low[this.#columns + at] = low;
      this.#linear.high[this.#columns + at] = high;
    }
    this.#linear.setCosts(aim.coefficients);
  }

  /** Multiplications so far, about. */
  get work(): number {
    return this.#linear.work;
  }

  /** Changes the objective to the least sum of weighted steps. */
  aim(weights: readonly number[]): void {
    this.#linear.setCosts(this.#spread(weights));
    this.#constant = 0;
  }

  /**
   * What a box comes to when steps need not be whole; "none" where not even fractions of a step hold.
   *
   * @param enough - whether the objective can come down to this is all that is asked
   */
  solve({ least, most }: Box, enough: number): "smallest" | "none" | "open" {
    const { low, high } = this.#linear;
    for (let at = 0; at < this.#flours; at += 1) {
      const meet = this.#meet?.[at] ?? this.#total;
      low[at] = Math.min(least[at] ?? 0, meet);
      high[at] = Math.min(most[at] ?? 0, meet);
      if (this.#meet === undefined) continue;
      low[this.#flours + at] = Math.max(0, (least[at] ?? 0) - meet);
      high[this.#flours + at] = Math.max(0, (most[at] ?? 0) - meet);
    }
    for (const { row, most: limit, what } of this.#counted) {
      const terms = this.#changed(what, { least, most });
      this.#linear.setRow(row, terms.coefficients);
      high[this.#columns + row] = limit - terms.constant;
    }
    if (this.#countedAim !== undefined) {
      const terms = this.#changed(this.#countedAim, { least, most });
      this.#linear.setCosts(terms.coefficients);
      this.#constant = terms.constant;
    }
    const kind = this.#linear.solve(enough - this.#constant);
    this.bound = this.#linear.bound + this.#constant;
    return kind;
  }

  /** Where the objective is smallest. */
  steps(): readonly number[] {
    const { values } = this.#linear;
    const above = (at: number): number => (this.#meet === undefined ? 0 : (values[this.#flours + at] ?? 0));
    const steps: number[] = [];
    for (let at = 0; at < this.#flours; at += 1) steps.push((values[at] ?? 0) + above(at));
    return steps;
  }

  /** Narrows the box solved last: what stands at an end can leave it only so far that the objective comes down to `enough`. */
  narrow({ least, most }: Box, enough: number): void {
    const room = enough - this.bound;
    const { low, high, slopes } = this.#linear;
    for (let at = 0; at < this.#flours; at += 1) {
      const above = this.#flours + at;
      const slope = slopes[at] ?? 0;
      const meet = this.#meet?.[at];
      const [slopeAbove, roomAbove] = meet === undefined ? [0, 0] : [slopes[above] ?? 0, high[above] ?? 0];
      if (slope < -tiny) least[at] = Math.max(least[at] ?? 0, Math.ceil((high[at] ?? 0) + room / slope - tiny));
      if (slope > tiny && roomAbove === 0)
        most[at] = Math.min(most[at] ?? 0, Math.floor((low[at] ?? 0) + room / slope + tiny));
      if (slopeAbove > tiny && meet !== undefined)
        most[at] = Math.min(most[at] ?? 0, Math.floor(meet + (low[above] ?? 0) + room / slopeAbove + tiny));
    }
  }

  /** Weights of the flours as coefficients of their columns. */
  #spread(weights: readonly number[]): Float64Array {
    const out = new Float64Array(this.#columns);
    out.set(weights);
    if (this.#meet !== undefined) out.set(weights, this.#flours);
    return out;
  }

  #moved({ from, perStep, weights }: Extract<Objective, { kind: "moved" }>): Terms {
    const coefficients = this.#spread(weights.map((weight) => weight * perStep));
    for (let at = 0; at < this.#flours; at += 1) coefficients[at] = -(coefficients[at] ?? 0);
    return { coefficients, constant: weigh(weights, from) };
  }

  /** A flour counts by the part of its room that it moves: never more than it truly counts. */
  #changed({ from, perStep }: Counted, { least, most }: Box): Terms {
    const coefficients = new Float64Array(this.#columns);
    const above = this.#meet === undefined ? 0 : this.#flours;
    let constant = 0;
    for (const [at, start] of from.entries()) {
      const [low, high, point] = [least[at] ?? 0, most[at] ?? 0, start / perStep];
      const inside = point >= low && point <= high && Number.isInteger(point);
      if (!inside) constant += 1;
      if (!inside || low === high || (low < point && point < high && point !== this.#meet?.[at])) continue;
      const [down, up] =
        point === low ? [-1 / (high - low), 1 / (high - low)] : [1 / (point - low), 1 / (high - point)];
      const [fewer, more] = [-down, point === high ? -down : up];
      coefficients[at] = fewer;
      coefficients[above + at] = more;
      constant -= fewer * point;
    }
    return { coefficients, constant };
  }
}

/** A slope, or a fraction of a step, that counts as none: far above what rounding does. */
const tiny = 1e-6;

function largest(values: Iterable<number>): number {
  let most = 0;
  for (const value of values) most = Math.max(most, Math.abs(value));
  return most === 0 ? 1 : most;
}
