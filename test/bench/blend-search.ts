import { writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { type BlendQuestion, type Candidate, searchBlend } from "@noodlewright/core/explore";
import { Independent, restate } from "../core/explore/independent.ts";

/**
 * The blend search beside the independent solver, on random questions of 2 to 16 flours in steps of half a per cent.
 *
 * Both get the same questions, one after the other in the same process. Both have gone through all of them once before, so
 * that neither starts up or is compiled while it is timed; then each question is asked three times in turn, and the least
 * time of each counts, so that what else the machine does falls on neither. The solver is asked by the text of a model, and
 * gives the smallest score only; the search also settles which of equals comes first, works the figures out and, where there
 * is no blend, says why.
 */
const { values: flags } = parseArgs({
  options: {
    json: { type: "string" },
    cases: { type: "string", default: "240" },
    seed: { type: "string", default: "1" },
  },
});

/** Numbers between 0 and 1 by the generator of W. Park and K. Miller (1988). */
let state = Number(flags.seed);
function chance(): number {
  state = (state * 48_271) % 2_147_483_647;
  return state / 2_147_483_647;
}
const between = (low: number, high: number): number => low + chance() * (high - low);

function flour(name: string): Candidate {
  const isGluten = chance() < 0.08;
  return {
    name,
    protein: (isGluten ? between(70, 76) : between(7, 15)).toFixed(2),
    moisture: between(10, 15).toFixed(2),
    ash: between(0.3, 1.6).toFixed(2),
    glutenProtein: between(4, 9).toFixed(1),
    price: between(0.6, 3).toFixed(2),
    wholegrain: chance() < 0.25,
    ...(chance() < 0.15 && { most: String(Math.round(between(10, 60))) }),
    ...(chance() < 0.08 && { least: String(Math.round(between(1, 6))) }),
  };
}

const at14 = { kind: "at" as const, moisture: "14" };

/** Every other question has flours that are alike; about half of all have no answer. */
function question(at: number): BlendQuestion {
  const count = 2 + (at % 15);
  const flours: Candidate[] = [];
  while (flours.length < count) {
    const name = `flour ${flours.length + 1}`;
    const [like] = at % 2 === 1 && chance() < 0.6 ? flours.slice(-1) : [];
    flours.push(like === undefined ? flour(name) : { ...like, name });
  }
  const low = between(9, 12);
  const width = [0.05, 0.1, 0.3, 1][Math.floor(chance() * 4)] ?? 1;
  const prefer = chance();
  const first = Math.round(between(20, 80));
  return {
    flours,
    step: "0.5",
    prefer:
      prefer < 0.25
        ? { kind: "cheapest" }
        : prefer < 0.5
          ? { kind: "fewest" }
          : prefer < 0.6
            ? { kind: "most", flour: "flour 1" }
            : {
                kind: "nearest",
                to: [
                  { name: "flour 1", share: String(first) },
                  { name: "flour 2", share: String(100 - first) },
                ],
              },
    targets: {
      protein: { least: low.toFixed(2), most: (low + width).toFixed(2), basis: at14 },
      ...(chance() < 0.7 && { ash: { most: between(0.4, 1).toFixed(2), basis: at14 } }),
      ...(chance() < 0.3 && { price: { most: between(0.8, 2).toFixed(2) } }),
      ...(chance() < 0.3 && { wholegrain: { least: String(Math.round(between(0, 50))) } }),
    },
  };
}

/** CPU time of one run, ms. */
function timed(run: () => void): number {
  const start = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}

const solver = await Independent.load();
const questions = Array.from({ length: Number(flags.cases) }, (_, at) => question(at));
const answers = questions.map((one) => {
  solver.solve(restate(one), one);
  const outcome = searchBlend(one);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return { one, answer: outcome.value };
});
const rows = answers.map(({ one, answer }, at) => {
  const times = [1, 2, 3].map(() => ({
    own: timed(() => searchBlend(one)),
    other: timed(() => solver.solve(restate(one), one)),
  }));
  const isProven =
    answer.kind === "found" ? answer.notProven === undefined : answer.problem.code !== "blend.unfinished";
  const kind = isProven ? (answer.kind === "found" ? "found" : "none") : "not proven";
  const common = { flours: one.flours.length, alike: at % 2 === 1, prefer: one.prefer.kind, kind };
  return {
    ...common,
    ms: Math.min(...times.map(({ own }) => own)),
    solverMs: Math.min(...times.map(({ other }) => other)),
  };
});

const median = (numbers: readonly number[]): number =>
  numbers.toSorted((a, b) => a - b)[Math.floor(numbers.length / 2)] ?? Number.NaN;
const kinds = [...new Set(rows.map(({ kind }) => kind))].map((kind) => {
  const some = rows.filter((row) => row.kind === kind);
  return {
    kind,
    cases: some.length,
    medianMs: median(some.map(({ ms }) => ms)),
    medianSolverMs: median(some.map(({ solverMs }) => solverMs)),
    medianRatio: median(some.map(({ ms, solverMs }) => ms / solverMs)),
    mostMs: Math.max(...some.map(({ ms }) => ms)),
    mostSolverMs: Math.max(...some.map(({ solverMs }) => solverMs)),
  };
});
for (const { kind, cases, medianMs, medianSolverMs, medianRatio, mostMs, mostSolverMs } of kinds) {
  process.stdout.write(
    `${kind.padEnd(10)} ${cases} questions: median ${medianMs.toFixed(2)} ms, solver ${medianSolverMs.toFixed(2)} ms, ` +
      `${medianRatio.toFixed(2)} × the solver; most ${mostMs.toFixed(0)} ms, solver ${mostSolverMs.toFixed(0)} ms\n`,
  );
}
if (flags.json !== undefined) writeFileSync(flags.json, `${JSON.stringify({ kinds, rows }, undefined, 2)}\n`);
