import { everyOf, fewestOf, type Row, type StepProblem } from "./step-problem.ts";

/** Least and most steps of each flour, as the search narrows them. */
export interface Box {
  readonly least: readonly number[];
  readonly most: readonly number[];
}

/**
 * Narrows a box to what the total and each row leave open, without losing any answer; `undefined` when nothing is left.
 *
 * @example narrow({ total: 10, least: [0, 0], most: [10, 4], rows: [] }, { least: [0, 0], most: [10, 4] }) // => { least: [6, 0], most: [10, 4] }
 */
export function narrow(problem: StepProblem, box: Box): Box | undefined {
  const least = [...box.least];
  const most = [...box.most];
  for (let round = 0; round < 8; round += 1) {
    let changed = narrowByTotal(problem.total, least, most);
    for (const row of problem.rows) changed = narrowByRow(row, least, most) || changed;
    changed = narrowByShape(problem, least, most) || changed;
    if (isEmpty(problem.total, least, most)) return undefined;
    if (!changed) break;
  }
  return { least, most };
}

function isEmpty(total: number, least: readonly number[], most: readonly number[]): boolean {
  const add = (sum: number, count: number): number => sum + count;
  if (least.reduce(add, 0) > total || most.reduce(add, 0) < total) return true;
  return least.some((count, index) => count > (most[index] ?? 0));
}

function narrowByTotal(total: number, least: number[], most: number[]): boolean {
  const lowest = least.reduce((sum, count) => sum + count, 0);
  const highest = most.reduce((sum, count) => sum + count, 0);
  let changed = false;
  for (const [index, low] of least.entries()) {
    const high = most[index] ?? 0;
    const newLow = Math.max(low, total - (highest - high));
    const newHigh = Math.min(high, total - (lowest - low));
    if (newLow === low && newHigh === high) continue;
    least[index] = newLow;
    most[index] = newHigh;
    changed = true;
  }
  return changed;
}

/** Whole multiples only, nothing between none of a flour and its fewest steps, and no flour beyond those that may be in. */
function narrowByShape(problem: StepProblem, least: number[], most: number[]): boolean {
  const used = least.filter((low) => low > 0).length;
  const full = used >= (problem.mostFlours ?? least.length);
  const over = used > (problem.mostFlours ?? least.length);
  let changed = false;
  for (const [index, low] of least.entries()) {
    const high = most[index] ?? 0;
    const every = everyOf(problem, index);
    const fewest = fewestOf(problem, index);
    const none = high < fewest || (full && low === 0);
    const newHigh = over ? -1 : none ? 0 : Math.floor(high / every) * every;
    const newLow = low === 0 ? 0 : Math.ceil(Math.max(low, fewest) / every) * every;
    if (newLow === low && newHigh === high) continue;
    least[index] = newLow;
    most[index] = newHigh;
    changed = true;
  }
  return changed;
}

/** With the other flours at their best for the row, how far may this one go? */
function narrowByRow({ coefficients, constant }: Row, least: number[], most: number[]): boolean {
  const best = coefficients.map((coefficient, index) => coefficient * ((coefficient > 0 ? most : least)[index] ?? 0));
  const top = best.reduce((sum, value) => sum + value, constant);
  let changed = false;
  for (const [index, coefficient] of coefficients.entries()) {
    if (coefficient === 0) continue;
    const bound = -(top - (best[index] ?? 0)) / coefficient;
    const [low, high] = [least[index] ?? 0, most[index] ?? 0];
    const newLow = coefficient > 0 ? Math.max(low, ceilSafely(bound)) : low;
    const newHigh = coefficient < 0 ? Math.min(high, floorSafely(bound)) : high;
    if (newLow === low && newHigh === high) continue;
    least[index] = newLow;
    most[index] = newHigh;
    changed = true;
  }
  return changed;
}

/** A quotient that rounding may have pushed past a whole number is given the benefit of the doubt. */
function ceilSafely(value: number): number {
  return Math.ceil(value - 1e-9);
}

function floorSafely(value: number): number {
  return Math.floor(value + 1e-9);
}
