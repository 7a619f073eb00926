import { everyOf, fewestOf, type Objective, type StepProblem } from "./step-problem.ts";

/** A question in which flours that are alike stand as one, and the way back. */
export interface Joined {
  readonly problem: StepProblem;
  readonly objectives: readonly Objective[];
  /** The flours that each of its flours stands for. */
  readonly groups: readonly (readonly number[])[];
  /** Steps of the flours as steps of the groups. */
  readonly total: (steps: readonly number[]) => readonly number[];
  /** Steps of the groups as steps of the flours: the least moved, then the flour listed first. */
  readonly split: (steps: ArrayLike<number>) => readonly number[];
  /** What an objective of the flours has over that of the groups. */
  readonly extra: (objective: Objective) => number;
}

/**
 * Joins the flours that add the same per step to every limit and every objective: to the search they are one flour.
 *
 * Where flours are counted, or a flour has a least share if it is used at all, only those are joined that one of them can
 * stand for; so every answer of the joined question is one of the question asked, and as good.
 */
export function joinAlike(problem: StepProblem, objectives: readonly Objective[]): Joined {
  const groups = groupsOf(problem, objectives);
  const only = (values: readonly number[]): readonly number[] => groups.map(([first = 0]) => values[first] ?? 0);
  const total = (values: readonly number[]): readonly number[] =>
    groups.map((group) => group.reduce((sum, index) => sum + (values[index] ?? 0), 0));
  const joined = (one: Objective): Objective => {
    switch (one.kind) {
      case "weighted":
      case "off-zero":
        return { ...one, weights: only(one.weights) };
      case "moved":
        return { ...one, from: total(inside(problem, one)), weights: only(one.weights) };
      case "missed":
        return { ...one, rows: one.rows.map(only) };
      case "changed":
        return { ...one, from: total(one.from) };
    }
  };
  const [start] = objectives.flatMap((one): readonly (readonly number[])[] => {
    if (one.kind !== "moved" && one.kind !== "changed") return [];
    const from = one.kind === "moved" ? inside(problem, one) : one.from;
    return [from.map((count) => Math.floor(count / one.perStep))];
  });
  return {
    problem: {
      ...problem,
      least: total(problem.least),
      most: total(problem.most).map((most) => Math.min(most, problem.total)),
      rows: problem.rows.map((row) => ({ ...row, coefficients: only(row.coefficients) })),
      ...(problem.every && { every: only(problem.every) }),
      ...(problem.ifUsed && { ifUsed: only(problem.ifUsed) }),
    },
    objectives: objectives.map(joined),
    groups,
    total,
    split: (steps) => split(problem, groups, steps, start ?? problem.least),
    extra: (one) => {
      if (one.kind !== "moved") return 0;
      const near = inside(problem, one);
      return one.from.reduce((sum, from, at) => sum + Math.abs(from - (near[at] ?? 0)) * (one.weights[at] ?? 0), 0);
    },
  };
}

/** A blend to move away from, brought within the limits of each flour: what lies outside is moved in any case. */
function inside(problem: StepProblem, { from, perStep }: Extract<Objective, { kind: "moved" }>): readonly number[] {
  return from.map((start, index) =>
    Math.min(Math.max(start, (problem.least[index] ?? 0) * perStep), (problem.most[index] ?? 0) * perStep),
  );
}

function groupsOf(problem: StepProblem, objectives: readonly Objective[]): readonly (readonly number[])[] {
  const columns = [
    ...problem.rows.map(({ coefficients }) => coefficients),
    ...objectives.flatMap((one) => (one.kind === "changed" ? [] : one.kind === "missed" ? one.rows : [one.weights])),
    ...(problem.every ? [problem.every] : []),
    ...(problem.ifUsed ? [problem.ifUsed] : []),
  ];
  const groups: number[][] = [];
  for (const index of problem.least.keys()) {
    const known = groups.find(
      ([first = 0]) =>
        columns.every((column) => column[first] === column[index]) &&
        [first, index].every((one) => canJoin(problem, objectives, one)),
    );
    if (known === undefined) groups.push([index]);
    else known.push(index);
  }
  return groups;
}

function canJoin(problem: StepProblem, objectives: readonly Objective[], index: number): boolean {
  const every = everyOf(problem, index);
  const [least, most] = [problem.least[index] ?? 0, problem.most[index] ?? 0];
  const counted =
    problem.mostFlours !== undefined ||
    fewestOf(problem, index) > every ||
    objectives.some(({ kind }) => kind === "changed");
  const standsAlone = least === 0 && most >= problem.total;
  return (
    objectives.every((one) => {
      if (one.kind !== "moved" && one.kind !== "changed") return true;
      const start = (one.kind === "moved" ? inside(problem, one)[index] : one.from[index]) ?? 0;
      return counted ? start === 0 : start % (one.perStep * every) === 0;
    }) &&
    least % every === 0 &&
    most % every === 0 &&
    (!counted || standsAlone)
  );
}

function split(
  problem: StepProblem,
  groups: readonly (readonly number[])[],
  steps: ArrayLike<number>,
  starts: readonly number[],
): readonly number[] {
  const out = problem.least.map(() => 0);
  for (const [at, group] of groups.entries()) {
    const clamp = (count: number, index: number): number =>
      Math.min(Math.max(count, problem.least[index] ?? 0), problem.most[index] ?? 0);
    let missing = steps[at] ?? 0;
    for (const index of group) missing -= out[index] = clamp(starts[index] ?? 0, index);
    for (const index of missing > 0 ? group : group.toReversed()) {
      const now = out[index] ?? 0;
      const next = clamp(now + missing, index);
      out[index] = next;
      missing -= next - now;
    }
  }
  return out;
}
