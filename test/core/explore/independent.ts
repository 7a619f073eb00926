import type { MoistureBasis } from "@noodlewright/core/answers";
import type { BlendQuestion } from "@noodlewright/core/explore";
import highsModule, { type Highs } from "highs";

/**
 * The question put down a second time, in whole numbers of its own (hundredths of a per cent), without any code of the
 * library: for the independent solver, for going through all blends, and for checking a blend.
 */
export interface Restated {
  readonly total: number;
  readonly least: readonly number[];
  readonly most: readonly number[];
  /** Each: coefficients times steps must not be below zero. */
  readonly rows: readonly (readonly bigint[])[];
  readonly prices: readonly bigint[];
  readonly from: readonly number[] | undefined;
  /** What a part of each flour counts where least is to be moved, in tenths. */
  readonly counts: readonly number[];
}

const hundredths = (text: string): bigint => BigInt(Math.round(Number(text) * 100));

export function restate(question: BlendQuestion): Restated {
  const { flours, targets } = question;
  const step = Number(question.step ?? "1");
  const rows: bigint[][] = [];
  /** figure at the basis against a bound: figure × (100 − basis) against bound × (100 − moisture). */
  const limit = (basis: MoistureBasis, figure: (index: number) => string, bound: string, sign: 1n | -1n): void => {
    const dry = basis.kind === "as is" ? undefined : 10_000n - hundredths(basis.moisture);
    rows.push(
      flours.map((flour, index) => {
        const [own, asked] = dry === undefined ? [10_000n, 10_000n] : [dry, 10_000n - hundredths(flour.moisture)];
        return sign * (hundredths(figure(index)) * own - hundredths(bound) * asked);
      }),
    );
  };
  const asIs: MoistureBasis = { kind: "as is" };
  const { protein, ash, glutenProtein, wholegrain, price } = targets;
  if (protein !== undefined && !("value" in protein)) {
    if (protein.least !== undefined) limit(protein.basis, (index) => flours[index]?.protein ?? "0", protein.least, 1n);
    if (protein.most !== undefined) limit(protein.basis, (index) => flours[index]?.protein ?? "0", protein.most, -1n);
  }
  if (ash?.least !== undefined) limit(ash.basis, (index) => flours[index]?.ash ?? "0", ash.least, 1n);
  if (ash?.most !== undefined) limit(ash.basis, (index) => flours[index]?.ash ?? "0", ash.most, -1n);
  if (glutenProtein?.least !== undefined) {
    limit(glutenProtein.basis, (index) => flours[index]?.glutenProtein ?? "0", glutenProtein.least, 1n);
  }
  if (wholegrain?.least !== undefined)
    limit(asIs, (index) => (flours[index]?.wholegrain ? "100" : "0"), wholegrain.least, 1n);
  if (price !== undefined) limit(asIs, (index) => flours[index]?.price ?? "0", price.most, -1n);
  const shares =
    question.prefer.kind === "nearest" ? new Map(question.prefer.to.map((one) => [one.name, one.share])) : undefined;
  return {
    total: Math.round(100 / step),
    least: flours.map((flour) => Math.ceil(Number(flour.least ?? 0) / step)),
    most: flours.map((flour) => Math.floor(Number(flour.most ?? 100) / step)),
    rows,
    prices: flours.map((flour) => hundredths(flour.price ?? "0")),
    from: shares === undefined ? undefined : flours.map(({ name }) => Number(shares.get(name) ?? 0) / step),
    counts: countsOf(
      flours,
      flours.map(({ name }) => Number(shares?.get(name) ?? 0)),
    ),
  };
}

/** Ten; and ten more for each 5 % of protein, 0.5 % of ash, and all of wholegrain or gluten that a flour is off the blend. */
function countsOf(flours: BlendQuestion["flours"], shares: readonly number[]): readonly number[] {
  const columns = flours.map(({ protein, ash, wholegrain, glutenProtein }) => [
    Number(protein) / 5,
    Number(ash ?? 0) / 0.5,
    wholegrain === true ? 1 : 0,
    Number(protein) === 0 ? 0 : Number(glutenProtein ?? 0) / Number(protein),
  ]);
  const blend = [0, 1, 2, 3].map((at) =>
    columns.reduce((sum, column, index) => sum + ((column[at] ?? 0) * (shares[index] ?? 0)) / 100, 0),
  );
  return columns.map((column) =>
    Math.round(10 * (1 + column.reduce((sum, value, at) => sum + Math.abs(value - (blend[at] ?? 0)), 0))),
  );
}

/** Whether steps meet everything, in exact whole numbers. */
export function meets(problem: Restated, steps: readonly number[]): boolean {
  const within = steps.every(
    (count, index) => count >= (problem.least[index] ?? 0) && count <= (problem.most[index] ?? 0),
  );
  const total = steps.reduce((sum, count) => sum + count, 0);
  return within && total === problem.total && problem.rows.every((row) => dot(row, steps) >= 0n);
}

/** The two numbers a preference makes as small as it can, one after the other. */
export function score(problem: Restated, question: BlendQuestion, steps: readonly number[]): readonly [number, number] {
  switch (question.prefer.kind) {
    case "cheapest":
      return [Number(dot(problem.prices, steps)), 0];
    case "most":
      return [0 - (steps[0] ?? 0), 0];
    case "use up": {
      const { flours } = question.prefer;
      const used = question.flours.map(({ name }, index) => (flours.includes(name) ? (steps[index] ?? 0) : 0));
      return [0 - used.reduce((sum, count) => sum + count, 0), 0];
    }
    case "fewest":
      return [steps.filter((count) => count > 0).length, 0];
    case "nearest": {
      const from = problem.from ?? [];
      const moved = steps.map((count, index) => Math.abs(count - (from[index] ?? 0)));
      const counted = moved.reduce((sum, count, index) => sum + count * (problem.counts[index] ?? 0), 0);
      return [Math.round(counted * 1e4) / 1e4, moved.filter((count) => count > 0).length];
    }
  }
}

function dot(row: readonly bigint[], steps: readonly number[]): bigint {
  return row.reduce((sum, coefficient, index) => sum + coefficient * BigInt(steps[index] ?? 0), 0n);
}

/** The package is typed as CommonJS, but what is imported is the loader itself. */
export const loadHighs = highsModule as unknown as typeof highsModule.default;

/** The independent solver, ready to be asked. */
export class Independent {
  readonly #highs: Highs;

  private constructor(highs: Highs) {
    this.#highs = highs;
  }

  static async load(): Promise<Independent> {
    return new Independent(await loadHighs());
  }

  /**
   * The smallest score, or `undefined` when no blend meets everything.
   *
   * About once in a thousand questions the solver calls a blend the best though a better one exists; it does not do so on the
   * same question with and without presolve, so it can be asked a second time.
   */
  solve(problem: Restated, question: BlendQuestion, presolve: Presolve = "on"): readonly [number, number] | undefined {
    const first = this.#smallest(problem, firstTerms(problem, question), "", presolve);
    if (first === undefined || question.prefer.kind !== "nearest") return first === undefined ? undefined : [first, 0];
    const kept = `kept: ${join(firstTerms(problem, question))} <= ${first + 0.05}`;
    const second = this.#smallest(
      problem,
      problem.least.map((_, index) => [1n, `z${index}`]),
      kept,
      presolve,
    );
    return [first, second ?? Number.NaN];
  }

  #smallest(problem: Restated, terms: readonly Term[], extra: string, presolve: Presolve): number | undefined {
    const result = this.#highs.solve(lpText(problem, terms, extra), {
      output_flag: false,
      mip_rel_gap: 0,
      presolve,
    });
    if (result.Status === "Infeasible") return undefined;
    if (result.Status !== "Optimal") throw new Error(`the independent solver ended with ${result.Status}`);
    return Math.round(result.ObjectiveValue * 1e4) / 1e4;
  }
}

type Presolve = "on" | "off";
type Term = readonly [weight: bigint, name: string];

function firstTerms(problem: Restated, question: BlendQuestion): readonly Term[] {
  if (question.prefer.kind === "cheapest") return problem.prices.map((price, index) => [price, `n${index}`]);
  if (question.prefer.kind === "most") return [[-1n, "n0"]];
  if (question.prefer.kind === "nearest") return problem.counts.map((count, index) => [BigInt(count), `d${index}`]);
  return problem.least.map((_, index) => [1n, `z${index}`]);
}

/** Half a unit of slack on every whole-number row: no whole steps lie in it, and rounding in the solver does no harm. */
function lpText(problem: Restated, terms: readonly Term[], extra: string): string {
  const indices = [...problem.least.keys()];
  const from = problem.from ?? indices.map(() => 0);
  const rows = problem.rows.map((row, at) => `r${at}: ${scaledRow(row)}`);
  const total = `total: ${join(indices.map((index) => [1n, `n${index}`]))} = ${problem.total}`;
  const changes = indices.flatMap((index) => [
    `u${index}: n${index} - ${problem.total} z${index} <= ${from[index] ?? 0}`,
    `l${index}: n${index} + ${problem.total} z${index} >= ${from[index] ?? 0}`,
  ]);
  const moves = indices.flatMap((index) => [
    `p${index}: d${index} - n${index} >= ${-(from[index] ?? 0)}`,
    `m${index}: d${index} + n${index} >= ${from[index] ?? 0}`,
  ]);
  const bounds = indices.map((index) => `${problem.least[index]} <= n${index} <= ${problem.most[index]}`);
  return [
    "Minimize",
    `obj: ${join(terms)}`,
    "Subject To",
    total,
    ...rows,
    ...changes,
    ...(extra !== "" || terms.some(([, name]) => name.startsWith("d")) ? moves : []),
    ...(extra === "" ? [] : [extra]),
    "Bounds",
    ...bounds,
    "General",
    indices.map((index) => `n${index}`).join(" "),
    "Binary",
    indices.map((index) => `z${index}`).join(" "),
    "End",
    "",
  ].join("\n");
}

/** Large weights mislead the solver, so the largest of a row becomes a thousand. */
function scaledRow(row: readonly bigint[]): string {
  const largest = Math.max(1, ...row.map((weight) => Math.abs(Number(weight))));
  const terms = row.map(
    (weight, index) => `${weight < 0n ? "-" : "+"} ${Math.abs(Number(weight) * 1000) / largest} n${index}`,
  );
  return `${terms.join(" ")} >= ${-500 / largest}`;
}

function join(terms: readonly Term[]): string {
  const written = terms
    .filter(([weight]) => weight !== 0n)
    .map(([weight, name]) => `${weight < 0n ? "-" : "+"} ${weight < 0n ? -weight : weight} ${name}`);
  return written.length === 0 ? "0 n0" : written.join(" ");
}

/** Every blend of whole steps, for questions small enough to go through. */
export function* everyBlend(flours: number, total: number): Generator<readonly number[]> {
  if (flours === 1) {
    yield [total];
    return;
  }
  for (let count = total; count >= 0; count -= 1) {
    for (const rest of everyBlend(flours - 1, total - count)) yield [count, ...rest];
  }
}
