import type { Box } from "./step-bounds.ts";
import { type Objective, type Reached, type StepProblem, weigh } from "./step-problem.ts";
import { type Solved, solveLinear } from "./step-simplex.ts";

/** What a box comes to when steps need not be whole; `undefined` where not even fractions of a step hold. */
export interface Relaxed {
  /** What the objective cannot go below in the box. */
  readonly bound: number;
  /** Where that is; absent where the solving stopped before. */
  readonly steps?: readonly number[];
  /** The part of the box in which the objective can stay below what is known. */
  readonly box: Box;
}

/** A quantity as a sum over the columns, with a constant. */
interface Terms {
  readonly coefficients: Float64Array;
  readonly constant: number;
}

type Counted = Pick<Extract<Objective, { kind: "changed" }>, "from" | "perStep">;

/**
 * The question in fractions of a step, for any box of steps.
 *
 * Where flours move away from a blend, each has two columns: its steps up to its share of that blend, and those above. What
 * is moved then costs less with every step of the one and more with every step of the other.
 */
export class Relaxation {
  /** Multiplications so far, about. */
  work = 0;
  readonly #flours: number;
  readonly #columns: number;
  readonly #total: number;
  /** Where the two columns of each flour meet. */
  readonly #meet: readonly number[] | undefined;
  /** Rows, then the costs; what counts flours is written for each box. */
  readonly #table: Float64Array;
  readonly #low: Float64Array;
  readonly #high: Float64Array;
  readonly #constant: number;
  readonly #counted: readonly { readonly row: number; readonly most: number; readonly what: Counted }[];

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
      rows.push({
        terms: terms.map((one) => one * scale),
        low: Math.max(-far, low * scale),
        high: Math.min(far, high * scale),
      });
    };
    put(this.#spread(problem.least.map(() => 1)), this.#total, this.#total);
    for (const { coefficients, constant } of problem.rows) put(this.#spread(coefficients), -constant, Infinity);
    const counted: { row: number; most: number; what: Counted }[] = [];
    const nothing: Terms = { coefficients: new Float64Array(this.#columns), constant: 0 };
    const quantity = (one: Objective | undefined): Terms => {
      if (one?.kind === "weighted") return { coefficients: this.#spread(one.weights), constant: 0 };
      if (one?.kind === "moved") return this.#moved(one);
      if (one?.kind !== "missed" && one?.kind !== "off-zero") return nothing;
      const coefficients = new Float64Array(this.#columns);
      for (const row of one.kind === "missed" ? one.rows : [one.weights]) {
        const line = this.#spread(row);
        const signs = one.kind === "missed" ? [1] : [1, -1];
        for (const sign of signs) {
          line[next] = sign * largest(row);
          coefficients[next] = largest(row);
          next += 1;
        }
        put(line, 0, one.kind === "missed" ? Infinity : 0);
      }
      return { coefficients, constant: 0 };
    };
    const aim = quantity(objective);
    const limit = (one: Objective, most: number): void => {
      const { coefficients, constant } = quantity(one);
      if (one.kind === "changed") counted.push({ row: rows.length, most, what: one });
      put(coefficients, -Infinity, most - constant);
    };
    for (const reached of kept) limit(reached.objective, reached.value);
    if (problem.mostFlours !== undefined)
      limit({ kind: "changed", from: problem.least.map(() => 0), perStep: 1 }, problem.mostFlours);
    if (objective?.kind === "changed") counted.push({ row: rows.length, most: Infinity, what: objective });
    this.#counted = counted;
    this.#constant = aim.constant;
    this.#table = new Float64Array((rows.length + 1) * this.#columns);
    for (const [at, { terms }] of rows.entries()) this.#table.set(terms, at * this.#columns);
    this.#table.set(aim.coefficients, rows.length * this.#columns);
    const ends = new Float64Array(this.#columns);
    this.#low = Float64Array.from([...ends, ...rows.map(({ low }) => low)]);
    this.#high = Float64Array.from([...ends.fill(this.#total), ...rows.map(({ high }) => high)]);
  }

  /** @param enough - whether the objective can stay below this is all that is asked */
  solve(box: Box, enough = Infinity): Relaxed | undefined {
    const table = this.#table.slice();
    const [low, high] = [this.#low.slice(), this.#high.slice()];
    for (const [at, least] of box.least.entries()) {
      const most = box.most[at] ?? 0;
      const meet = this.#meet?.[at] ?? this.#total;
      low[at] = Math.min(least, meet);
      high[at] = Math.min(most, meet);
      if (this.#meet === undefined) continue;
      low[this.#flours + at] = Math.max(0, least - meet);
      high[this.#flours + at] = Math.max(0, most - meet);
    }
    let constant = this.#constant;
    for (const { row, most, what } of this.#counted) {
      const terms = this.#changed(what, box);
      table.set(terms.coefficients, row * this.#columns);
      if (most === Infinity) constant = terms.constant;
      else high[this.#columns + row] = most - terms.constant;
    }
    const solved = solveLinear({ table, columns: this.#columns, low, high }, enough - constant);
    this.work += solved.work;
    if (solved.kind === "none") return undefined;
    const bound = solved.bound + constant;
    const { values } = solved;
    const steps = (): readonly number[] =>
      box.least.map((_, at) => (values[at] ?? 0) + (this.#meet === undefined ? 0 : (values[this.#flours + at] ?? 0)));
    return {
      bound,
      box: this.#within(box, low, high, solved, enough - 1 + slackOf(bound) - bound),
      ...(solved.kind === "smallest" && { steps: steps() }),
    };
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

  /** What stands at an end can leave it only so far that the objective stays below what is known. */
  #within(box: Box, low: Float64Array, high: Float64Array, { slopes }: Solved, room: number): Box {
    if (!Number.isFinite(room)) return box;
    const [least, most] = [[...box.least], [...box.most]];
    for (const at of least.keys()) {
      const above = this.#flours + at;
      const [slope, meet] = [slopes[at] ?? 0, this.#meet?.[at]];
      const [slopeAbove, roomAbove] = meet === undefined ? [0, 0] : [slopes[above] ?? 0, high[above] ?? 0];
      if (slope < -tiny) least[at] = Math.max(least[at] ?? 0, Math.ceil((high[at] ?? 0) + room / slope - tiny));
      if (slope > tiny && roomAbove === 0)
        most[at] = Math.min(most[at] ?? 0, Math.floor((low[at] ?? 0) + room / slope + tiny));
      if (slopeAbove > tiny && meet !== undefined)
        most[at] = Math.min(most[at] ?? 0, Math.floor(meet + (low[above] ?? 0) + room / slopeAbove + tiny));
    }
    return { least, most };
  }
}

const tiny = 1e-6;

/** What rounding may have put on a bound: objectives are whole numbers. */
export function slackOf(bound: number): number {
  return Math.max(1e-3, Math.abs(bound) * 1e-11);
}

function largest(values: Iterable<number>): number {
  let most = 0;
  for (const value of values) most = Math.max(most, Math.abs(value));
  return most === 0 ? 1 : most;
}
