import { type BlendQuestion, type FoundBlend, searchBlend } from "@noodlewright/core/explore";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { answered } from "../told-of.ts";
import { everyBlend, Independent, meets, restate, score } from "./independent.ts";
import { blendQuestion } from "./questions.ts";

/** Shares back into steps. */
function stepsOf(question: BlendQuestion, blend: FoundBlend): readonly number[] {
  const shares = new Map(blend.shares.map(({ name, share }) => [name, Number(share.value)]));
  return question.flours.map(({ name }) => Math.round((shares.get(name) ?? 0) / Number(question.step ?? "1")));
}

function search(question: BlendQuestion) {
  return answered(searchBlend(question));
}

/** Questions of a few flours in coarse steps, so that all of their blends can be gone through. */
const small = (mostFlours: number, step = "5") =>
  blendQuestion.filter(({ flours }) => flours.length <= mostFlours).map((question) => ({ ...question, step }));

describe("random questions", () => {
  test("400 of them: the optimum of an independent solver, every limit met exactly, every refusal confirmed", async () => {
    const solver = await Independent.load();
    const counts = { found: 0, none: 0, askedTwice: 0 };
    for (const question of fc.sample(blendQuestion, { numRuns: 400, seed: 20_031 })) {
      const problem = restate(question);
      const expected = solver.solve(problem, question);
      const answer = search(question);
      if (answer.kind === "out-of-reach") {
        expect(expected, JSON.stringify(question)).toBeUndefined();
        counts.none += 1;
        continue;
      }
      const [blend] = answer.blends;
      const steps = blend === undefined ? [] : stepsOf(question, blend);
      expect(meets(problem, steps), JSON.stringify({ question, steps })).toBe(true);
      expect(blend?.checks.every((check) => check.holds)).toBe(true);
      const own = score(problem, question, steps);
      if (own[0] !== expected?.[0] || own[1] !== expected[1]) {
        expect(own, JSON.stringify({ question, steps })).toEqual(solver.solve(problem, question, "off"));
        counts.askedTwice += 1;
      }
      counts.found += 1;
    }
    expect(counts.found).toBeGreaterThan(160);
    expect(counts.none).toBeGreaterThan(80);
    expect(counts.askedTwice).toBeLessThan(5);
  }, 240_000);

  test("small ones: the very blend that going through all of them in the stated order gives", () => {
    for (const question of fc.sample(small(4), { numRuns: 300, seed: 77 })) {
      const problem = restate(question);
      let best: { readonly steps: readonly number[]; readonly score: readonly [number, number] } | undefined;
      for (const steps of everyBlend(question.flours.length, problem.total)) {
        if (!meets(problem, steps)) continue;
        const own = score(problem, question, steps);
        if (best === undefined || own[0] < best.score[0] || (own[0] === best.score[0] && own[1] < best.score[1])) {
          best = { steps, score: own };
        }
      }
      const answer = search(question);
      const steps =
        answer.kind === "found" && answer.blends[0] !== undefined ? stepsOf(question, answer.blends[0]) : undefined;
      expect(steps, JSON.stringify(question)).toEqual(best?.steps);
    }
  });

  test("small ones with a protein value: the best that comes up to it, or the nearest of those; else the nearest that whole steps reach", () => {
    const counts = { met: 0, nearest: 0, near: 0, none: 0 };
    for (const [number, question] of fc.sample(small(3), { numRuns: 300, seed: 41 }).entries()) {
      const { protein } = question.targets;
      if (protein === undefined || "value" in protein) continue;
      const wish = protein.least ?? "10";
      const at = (bounds: { readonly least?: string; readonly most?: string }) =>
        restate({ ...question, targets: { ...question.targets, protein: { ...bounds, basis: protein.basis } } });
      const window = at({ least: (Number(wish) - 0.05).toFixed(2), most: (Number(wish) + 0.05).toFixed(2) });
      const [exactly, loose] = [at({ least: wish }), at({})];
      const off = (steps: readonly number[]): bigint => {
        const over = (exactly.rows[0] ?? []).reduce(
          (sum, weight, index) => sum + weight * BigInt(steps[index] ?? 0),
          0n,
        );
        return over < 0n ? -over : over;
      };
      const all = [...everyBlend(question.flours.length, window.total)].filter((steps) => meets(loose, steps));
      const inside = all.filter((steps) => meets(window, steps));
      const order = (one: readonly number[], other: readonly number[]): number => {
        const [a, b] = [score(window, question, one), score(window, question, other)];
        return a[0] - b[0] || a[1] - b[1];
      };
      const shown = at({ least: (Number(wish) - 0.005).toFixed(3), most: (Number(wish) + 0.005).toFixed(3) });
      const nearest = number % 2 === 0;
      const target = { value: wish, within: "0.05", nearest, basis: protein.basis };
      const answer = search({ ...question, targets: { ...question.targets, protein: target } });
      if (answer.kind === "out-of-reach") {
        expect(inside, JSON.stringify(question)).toEqual([]);
        counts.none += 1;
        continue;
      }
      const steps = answer.blends[0] === undefined ? [] : stepsOf(question, answer.blends[0]);
      if (inside.length > 0 && nearest) {
        const far = (one: readonly number[]): number => (meets(shown, one) ? 0 : Number(off(one)));
        const [first] = inside.toSorted((one, other) => far(one) - far(other) || order(one, other));
        expect(steps, JSON.stringify(question)).toEqual(first);
        counts.nearest += 1;
      } else if (inside.length > 0) {
        expect(steps, JSON.stringify(question)).toEqual(inside.toSorted(order)[0]);
        counts.met += 1;
      } else {
        const least = Math.min(...all.map((other) => Number(off(other))));
        expect(Number(off(steps)), JSON.stringify(question)).toBe(least);
        counts.near += 1;
      }
    }
    expect(Math.min(counts.met, counts.near, counts.none), JSON.stringify(counts)).toBeGreaterThan(5);
  });

  test("small ones in steps of each flour, with a least share and few flours: the best of all that have that shape", () => {
    const counts = { found: 0, none: 0 };
    for (const question of fc.sample(
      small(4).filter(({ prefer }) => prefer.kind !== "nearest"),
      { numRuns: 150, seed: 11 },
    )) {
      const [mostFlours, leastShare] = [Math.max(1, question.flours.length - 1), "10"];
      const flours = question.flours.map((flour, index) => (index === 1 ? { ...flour, step: "2.5" } : flour));
      // counted in steps of 2.5 %: the first flour takes the rest, the second has its own step, the others come in fives
      const problem = restate({ ...question, step: "2.5" });
      const shaped = (steps: readonly number[]): boolean =>
        steps.filter((count) => count > 0).length <= mostFlours &&
        steps.every((count, index) => {
          const most = Number(question.flours[index]?.most ?? 100) / 2.5;
          const fewest = Math.floor(Math.min(4, most) / (index < 2 ? 1 : 2)) * (index < 2 ? 1 : 2);
          return (index < 2 || count % 2 === 0) && (count === 0 || count >= fewest);
        });
      const scores = [...everyBlend(flours.length, problem.total)]
        .filter((steps) => meets(problem, steps) && shaped(steps))
        .map((steps) => score(problem, question, steps)[0]);
      const answer = search({ ...question, flours, mostFlours, leastShare });
      if (answer.kind === "out-of-reach") {
        expect(scores, JSON.stringify(question)).toEqual([]);
        counts.none += 1;
        continue;
      }
      const steps = answer.blends[0] === undefined ? [] : stepsOf({ ...question, step: "2.5" }, answer.blends[0]);
      expect(meets(problem, steps) && shaped(steps), JSON.stringify({ question, steps })).toBe(true);
      expect(score(problem, question, steps)[0], JSON.stringify({ question, steps })).toBe(Math.min(...scores));
      counts.found += 1;
    }
    expect(Math.min(counts.found, counts.none)).toBeGreaterThan(20);
  });

  test("small ones out of reach: no blend within the flours' own limits misses less in all than the nearest", () => {
    let compared = 0;
    for (const question of fc.sample(small(3), { numRuns: 60, seed: 23 })) {
      const answer = search(question);
      if (answer.kind === "found" || answer.nearest === undefined) continue;
      const problem = restate(question);
      const within = (steps: readonly number[]): boolean =>
        steps.every((count, index) => count >= (problem.least[index] ?? 0) && count <= (problem.most[index] ?? 0));
      const misses = [...everyBlend(question.flours.length, problem.total)]
        .filter(within)
        .map((steps) => missOf(question, steps));
      // the search counts in ten-thousandths of what weighs alike, rounded for each flour and step
      expect(missOf(question, stepsOf(question, answer.nearest)), JSON.stringify(question)).toBeLessThan(
        Math.min(...misses) + 0.01,
      );
      compared += 1;
    }
    expect(compared).toBeGreaterThan(8);
  });

  test("small ones: alternatives are the best in order that differ in a way that matters", () => {
    for (const question of fc.sample(small(3, "2"), { numRuns: 150, seed: 5 })) {
      const problem = restate(question);
      const all = [...everyBlend(question.flours.length, problem.total)]
        .filter((steps) => meets(problem, steps))
        .map((steps) => ({ steps, score: score(problem, question, steps) }))
        .toSorted((a, b) => a.score[0] - b.score[0] || a.score[1] - b.score[1]);
      const expected: (readonly number[])[] = [];
      for (const { steps } of all)
        if (expected.length < 4 && expected.every((other) => matters(other, steps))) expected.push(steps);
      const answer = search({ ...question, alternatives: 4 });
      const shown = answer.kind === "found" ? answer.blends.map((blend) => stepsOf(question, blend)) : [];
      expect(shown, JSON.stringify(question)).toEqual(expected);
    }
  });

  test("the protein a move names settles the question, and a hundred-thousandth more does not", () => {
    let settled = 0;
    for (const question of fc.sample(blendQuestion, { numRuns: 80, seed: 9 })) {
      const answer = search(question);
      if (answer.kind === "found") continue;
      const move = answer.conflicts.flat().find(({ id, settles }) => id === "protein.least" && settles);
      const { protein } = question.targets;
      if (move?.to === undefined || protein === undefined || "value" in protein) continue;
      const ask = (least: number): string =>
        search({ ...question, targets: { ...question.targets, protein: { ...protein, least: least.toFixed(6) } } })
          .kind;
      expect(ask(Number(move.to) - 0.00001), JSON.stringify(question)).toBe("found");
      expect(ask(Number(move.to) + 0.00001), JSON.stringify(question)).toBe("out-of-reach");
      settled += 1;
    }
    expect(settled).toBeGreaterThan(3);
  });
});

/** Another set of flours, or some share five per cent apart: at 2 % steps, three steps. */
function matters(one: readonly number[], other: readonly number[]): boolean {
  return one.some((count, index) => {
    const second = other[index] ?? 0;
    return count > 0 !== second > 0 || Math.abs(count - second) >= 3;
  });
}

/** What a blend misses in all, in units that weigh alike, the mean moisture of the flours standing for that of the blend. */
function missOf({ flours, targets, step = "1" }: BlendQuestion, steps: readonly number[]): number {
  const { protein, glutenProtein, ash, wholegrain, price } = targets;
  const lacks = (
    figure: (at: number) => number,
    bound: string | undefined,
    sign: 1 | -1,
    unit: number,
    moist?: string,
  ) => {
    if (bound === undefined) return 0;
    const asIs = moist === undefined;
    const below = flours.map(({ moisture }) => (asIs ? 1 : (100 - Number(moisture)) / (100 - Number(moist))));
    const mean = below.reduce((sum, value) => sum + value, 0) / below.length;
    const over = steps.reduce(
      (sum, count, at) => sum + ((count * Number(step)) / 100) * (figure(at) - Number(bound) * (below[at] ?? 1)),
      0,
    );
    return Math.max(0, (-sign * over) / mean / unit);
  };
  const basis = (target: { readonly basis: { readonly kind: string; readonly moisture?: string } } | undefined) =>
    target?.basis.kind === "at" ? target.basis.moisture : undefined;
  const [least, most] = protein !== undefined && !("value" in protein) ? [protein.least, protein.most] : [];
  const number = (key: "protein" | "ash" | "glutenProtein" | "price") => (at: number) => Number(flours[at]?.[key] ?? 0);
  return (
    lacks(number("protein"), least, 1, 0.1, basis(protein)) +
    lacks(number("protein"), most, -1, 0.1, basis(protein)) +
    lacks(number("glutenProtein"), glutenProtein?.least, 1, 0.1, basis(glutenProtein)) +
    lacks(number("ash"), ash?.most, -1, 0.05, basis(ash)) +
    lacks((at) => (flours[at]?.wholegrain === true ? 100 : 0), wholegrain?.least, 1, 1) +
    lacks(number("price"), price?.most, -1, Number(price?.most ?? 1) * 0.02)
  );
}
