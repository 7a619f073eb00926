import { told } from "@noodlewright/core";
import { type BlendQuestion, type Candidate, searchBlend } from "@noodlewright/core/explore";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dec, decimalText } from "#core/number/decimal.ts";
import { always } from "../../always.ts";
import {
  asIs,
  at14,
  barley,
  between,
  gluten,
  sharesOf,
  soft,
  spreadFlours,
  strong,
  whole,
} from "../explore/kitchen.ts";
import { answered } from "../told-of.ts";

const atMoisture = (moisture: string) => ({ kind: "at" as const, moisture });

const school: BlendQuestion = {
  flours: [strong, soft, whole, { ...barley, fixed: "10" }, { ...gluten, most: "2" }],
  targets: { protein: { least: "11.5", basis: at14 }, wholegrain: { least: "30" } },
  prefer: { kind: "cheapest" },
};

describe("searchBlend", () => {
  test("finds the cheapest school noodle with wholegrain and barley, and shows that it meets its targets", () => {
    const answer = answered(searchBlend(school));
    expect(sharesOf(answer)).toEqual(["strong flour 48, soft flour 22, wholegrain flour 20, barley flour 10"]);
    const [blend] = answer.kind === "found" ? answer.blends : [];
    expect(blend?.checks.map(({ id, holds }) => [id, holds])).toEqual([
      ["protein.least", true],
      ["wholegrain-share.least", true],
    ]);
    // by hand: (0.48 × 12.6 + 0.22 × 8.3 + 0.2 × 12.8 + 0.1 × 10.5) × 86 ÷ (100 − 14.151)
    const protein = blend?.figures.find(({ id }) => id === "alternative.1.blend.protein.14");
    expect(Number(protein?.value)).toBeCloseTo((11.484 * 86) / (100 - 14.151), 9);
  });

  test("is the same whatever the answer is asked again, and survives JSON", () => {
    const once = searchBlend({ ...school, alternatives: 3 });
    expect(JSON.parse(JSON.stringify(searchBlend({ ...school, alternatives: 3 })))).toEqual(once);
  });

  test("moves the least flour of a given blend, each part counted by how unlike it is to that blend", () => {
    const prefer = {
      kind: "nearest" as const,
      to: [
        { name: "strong flour", share: "50" },
        { name: "soft flour", share: "50" },
      ],
    };
    const flours = [strong, soft, gluten];
    const answer = answered(searchBlend({ flours, prefer, targets: { protein: { least: "11", basis: asIs } } }));
    // gluten for soft lifts protein by 0.637 a step, so one step is enough: 1 part of a flour that counts 13.3, where
    // eleven of the strong flour at 1.4 each would be needed
    expect(sharesOf(answer)).toEqual(["strong flour 50, soft flour 49, dry gluten 1"]);
  });

  test("carries the range of a label-read flour into the blend, as is and at the basis", () => {
    // a label of 4 g in 30 g: 11.67 up to 15.00 %
    const read = { ...strong, protein: "13.33", proteinRange: { low: "11.67", high: "15" }, fixed: "60" };
    const answer = answered(searchBlend({ flours: [read, soft], prefer: { kind: "fewest" }, targets: {} }));
    const figures = answer.kind === "found" ? (answer.blends[0]?.figures ?? []) : [];
    const asIsRange = figures.find(({ id }) => id === "alternative.1.blend.protein.as-is")?.range;
    expect([asIsRange?.low, asIsRange?.high]).toEqual(["10.322", "12.32"]);
    const converted = figures.find(({ id }) => id === "alternative.1.blend.protein.14")?.range;
    expect(Number(converted?.low)).toBeCloseTo((10.322 * 86) / (100 - 14.3), 9);
  });

  test("tells both ends of what the flours reach where one target is out of their reach by itself", () => {
    const prefer = { kind: "fewest" as const };
    const reach = (targets: BlendQuestion["targets"]) => {
      const answer = answered(searchBlend({ flours: [strong, soft, { ...whole, most: "50" }], prefer, targets }));
      return answer.kind === "found" ? [] : answer.reach;
    };
    // by hand: soft flour alone, and half of each of the two with the most ash
    const ash = { label: "ash", unit: "%", least: "0.4", most: "1.05" };
    expect(reach({ ash: { least: "3", basis: asIs } })).toEqual([ash]);
    expect(reach({ ash: { most: "0.3", basis: asIs } })).toEqual([ash]);
    expect(reach({ ash: { least: "1", basis: asIs }, wholegrain: { most: "20" } })).toEqual([]);
  });

  test("tells both ends of each quantity where several targets are out of reach at once", () => {
    const targets = {
      protein: { least: "15", basis: asIs },
      ash: { most: "0.3", basis: asIs },
      price: { most: "0.10" },
    };
    const flours = [strong, soft, { ...whole, most: "50" }];
    const answer = answered(searchBlend({ flours, prefer: { kind: "fewest" }, targets }));
    const reach = answer.kind === "found" ? [] : answer.reach;
    // by hand: soft flour alone, and half of each of the two with most of it
    const ends = reach.map(({ label, least, most }) => [label, least, most]).toSorted();
    expect(ends).toEqual([
      ["ash", "0.4", "1.05"],
      ["price", "0.9", "1.2"],
      ["protein", "8.3", "12.7"],
    ]);
  });

  test.each([
    [2, 1],
    [3, 2],
  ])("says that %i flours are needed where %i may be in", (needed, mostFlours) => {
    // each flour brings at most so much of the whole: a half, or four tenths
    const most = needed === 2 ? "50" : "40";
    const flours = [strong, soft, whole, barley].map((flour) => ({ ...flour, most }));
    const answer = answered(searchBlend({ flours, mostFlours, prefer: { kind: "fewest" }, targets: {} }));
    const moves = answer.kind === "found" ? [] : answer.conflicts.flat();
    const move = moves.find(({ id }) => id === "flours.most");
    expect([move?.from, move?.to, move?.settles]).toEqual([`${mostFlours}`, `${needed}`, true]);
  });

  test("shows the nearest blend found, and what it misses, where the search was given up", () => {
    const flours = spreadFlours(20);
    const targets = {
      protein: between("11.234567", "11.234568"),
      ash: between("0.7123456", "0.7123457"),
      glutenProtein: between("7.123456", "7.123457"),
    };
    const answer = answered(searchBlend({ flours, targets, prefer: { kind: "fewest" } }));
    expect(answer.kind === "out-of-reach" && answer.problem.code).toBe("blend.unfinished");
    const checks = answer.kind === "found" ? [] : (answer.nearest?.checks ?? []);
    expect(checks).toHaveLength(6);
    for (const { bound, reached } of checks) expect(Math.abs(Number(bound) - Number(reached))).toBeLessThan(0.5);
  });

  test("keeps ratios, stores, least and most", () => {
    const flours = [
      { ...strong, store: "5500" },
      { ...soft, least: "10", most: "40" },
      { ...barley, ratioTo: { name: "wholegrain flour", times: "0.5" } },
      whole,
    ];
    const answer = answered(
      searchBlend({ flours, flourMass: "10000", prefer: { kind: "most", flour: "strong flour" }, targets: {} }),
    );
    expect(sharesOf(answer)).toEqual(["strong flour 55, soft flour 39, barley flour 2, wholegrain flour 4"]);
  });

  describe("a value that the nearest blend is wanted of", () => {
    const three = [soft, barley, strong];
    const protein = { value: "11.2", nearest: true, basis: at14 } as const;
    /** Protein at 14 % moisture by the shares, in floating point, apart from the library. */
    const reachedBy = (shares: readonly number[]): number => {
      const of = (read: (flour: Candidate) => number) =>
        shares.reduce((total, share, at) => total + share * read(three[at] ?? soft), 0);
      return (of(({ protein: own }) => Number(own)) * 86) / of(({ moisture }) => 100 - Number(moisture));
    };
    const all = Array.from({ length: 101 }, (_, one) =>
      Array.from({ length: 101 - one }, (_none, other) => [one, other, 100 - one - other]),
    ).flat();
    const ask = (prefer: BlendQuestion["prefer"], within: string, step = "1", alternatives = 1) =>
      searchBlend({ flours: three, targets: { protein: { ...protein, within } }, prefer, step, alternatives });

    test("has what is preferred among the blends that show the value, and no other", () => {
      const shown = all.filter((shares) => Math.abs(reachedBy(shares) - 11.2) < 0.005);
      const price = (shares: readonly number[]) =>
        (shares[0] ?? 0) * 0.9 + (shares[1] ?? 0) * 1.2 + (shares[2] ?? 0) * 1.1;
      const [cheapest] = shown.toSorted((one, other) => price(one) - price(other));
      expect(sharesOf(answered(ask({ kind: "cheapest" }, "0.11")))).toEqual([
        three.flatMap(({ name }, at) => (cheapest?.[at] ? [`${name} ${cheapest[at]}`] : [])).join(", "),
      ]);
    });

    test("is as near as coarse steps come, whatever is preferred", () => {
      const coarse = all.filter((shares) => shares.every((share) => share % 5 === 0));
      const [nearest] = coarse.toSorted(
        (one, other) => Math.abs(reachedBy(one) - 11.2) - Math.abs(reachedBy(other) - 11.2),
      );
      expect(Math.abs(reachedBy(nearest ?? []) - 11.2)).toBeGreaterThan(0.005);
      const words = three.flatMap(({ name }, at) => (nearest?.[at] ? [`${name} ${nearest[at]}`] : [])).join(", ");
      for (const prefer of [{ kind: "cheapest" }, { kind: "most", flour: "strong flour" }] as const)
        expect(sharesOf(answered(ask(prefer, "0.11", "5")))).toEqual([words]);
    });

    test("leaves room for other blends, and for a preference where it is not wanted nearest", () => {
      const answer = answered(ask({ kind: "most", flour: "barley flour" }, "0.3", "1", 3));
      expect(sharesOf(answer)).toHaveLength(3);
      if (answer.kind !== "found") throw new Error("nothing found");
      expect(answer.order).toMatch(/^nearest to 11.2 % at 14 % mb protein, to two places; .*most barley flour first/u);
      const reached = answer.blends.map(({ checks }) => checks.map(({ side, reached: text }) => [side, Number(text)]));
      expect(Math.abs(Number(reached[0]?.[0]?.[1]) - 11.2)).toBeLessThan(0.005);
      for (const [check] of reached) expect(Math.abs(Number(check?.[1]) - 11.2)).toBeLessThan(0.3);
      const free = searchBlend({
        flours: three,
        targets: { protein: { ...protein, within: "0.3", nearest: false } },
        prefer: { kind: "most", flour: "strong flour" },
      });
      const most = all.filter((shares) => Math.abs(reachedBy(shares) - 11.2) <= 0.3).map(([, , share = 0]) => share);
      expect(sharesOf(answered(free))[0]).toContain(`strong flour ${Math.max(...most)}`);
    });
  });

  test("brings a value as near as whole steps allow and says so", () => {
    const question: BlendQuestion = {
      flours: [soft, gluten],
      prefer: { kind: "fewest" },
      targets: { protein: { value: "11", within: "0.05", basis: asIs } },
    };
    const outcome = searchBlend(question);
    expect(sharesOf(answered(outcome))).toEqual(["soft flour 96, dry gluten 4"]);
    expect(outcome.ok && outcome.notes.map(({ code }) => code)).toEqual(["blend.step-coarse"]);
    const finer = searchBlend({ ...question, step: "0.1" });
    expect(finer.ok && finer.notes).toEqual([]);
  });

  // 96 or 97 parts of 100 kg are no whole bags of 10 kg, and neither is any finer part between them
  test.each([
    ["10.2", "10000", "whole bags of soft flour do not reach 10.2 % protein; .*, soft flour by weight would reach it"],
    ["11", "10000", "steps of 1 % and whole bags of soft flour do not .* a finer step with soft flour by weight comes"],
    ["11", "1000", "steps of 1 % and whole bags of soft flour do not .* a finer step with soft flour by weight comes"],
  ])("says of %s %% whether bags of %s g keep it from being reached", (wanted, bag, words) => {
    const outcome = searchBlend({
      flours: [{ ...soft, bag }, gluten],
      flourMass: "100000",
      prefer: { kind: "fewest" },
      targets: { protein: { value: wanted, within: "0.05", basis: asIs } },
    });
    expect(outcome.ok && outcome.notes.filter(({ code }) => code === "blend.step-coarse").map(told)).toEqual([
      expect.stringMatching(words),
    ]);
  });

  test("explains a target out of reach: what conflicts, how far each would have to move, and the flour that would do", () => {
    const answer = answered(searchBlend({ ...school, targets: { protein: { least: "13.9", basis: at14 } } }));
    if (answer.kind !== "out-of-reach") throw new Error("found a blend that cannot be");
    expect(told(answer.problem).kind).toBe("no-answer");
    const moves = answer.conflicts.flat().map(({ id, from, to }) => [id, from, Number(to).toFixed(2)]);
    expect(moves).toEqual([
      ["protein.least", "13.9", "13.77"],
      ["greatest:dry gluten:most", "2", "3.00"],
      ["fixed:barley flour:least", "10", "5.00"],
    ]);
    expect(told(answer.problem).advice).toBe(
      "protein of no more than 13.77 % at 14 % mb instead of 13.9; " +
        "or greatest share of dry gluten of no less than 3 % instead of 2; " +
        "or fixed share of barley flour of no more than 5 % instead of 10; " +
        "or in place of wholegrain flour a flour of at least 13.03 % protein at 14 % mb and 14.5 % moisture",
    );
    // by hand: 88 % wholegrain and 2 % gluten; what the wholegrain flour lacks is borne by its 88 parts
    const needed = answer.flourNeeded.find(({ name }) => name === "wholegrain flour");
    const moisture = 0.88 * 14.5 + 0.1 * 12.11 + 0.02 * 6.5;
    const byHand = ((13.9 * (100 - moisture)) / 86 - 0.1 * 10.5 - 0.02 * 72) / 0.88;
    expect(Number(needed?.protein.value)).toBe(Math.ceil(((byHand * 86) / (100 - 14.5)) * 100) / 100);
    expect(answer.nearest?.shares.map(({ name }) => name)).toEqual(["wholegrain flour", "barley flour", "dry gluten"]);
  });

  test("reaches the target with the stronger flour that it tells, put in as told, on every basis", () => {
    const moisture = fc.integer({ min: 60, max: 160 }).map((tenths) => String(tenths / 10));
    const basis = fc.oneof(fc.constant(asIs), moisture.map(atMoisture), fc.constant(atMoisture("0")));
    let followed = 0;
    always(60, [moisture, moisture, fc.integer({ min: 14, max: 24 }), basis], (own, other, least, on) => {
      const flours = [
        { ...strong, moisture: own },
        { ...barley, moisture: other, least: "10" },
      ];
      const question = {
        targets: { protein: { least: String(least), basis: on } },
        prefer: { kind: "fewest" as const },
      };
      const refused = answered(searchBlend({ ...question, flours }));
      if (refused.kind === "found") return;
      const way =
        /in place of (?<name>[a-z ]+) a flour of at least (?<protein>[\d.]+) % protein (?<unit>as is|dry|at (?<mb>[\d.]+) % mb)(?: and (?<at>[\d.]+) % moisture)?$/u.exec(
          told(refused.problem).advice,
        )?.groups ?? {};
      const { name, protein = "", unit, mb = "0", at = own } = way;
      const asTold = unit === "as is" ? dec(protein) : dec(protein).times(dec(100).minus(at)).div(dec(100).minus(mb));
      const stronger = flours.map((flour) =>
        flour.name === name ? { ...flour, protein: decimalText(asTold), moisture: at } : flour,
      );
      expect(answered(searchBlend({ ...question, flours: stronger })).kind).toBe("found");
      followed += 1;
    });
    expect(followed).toBeGreaterThan(40);
  });

  test("calls lifting a ratio to a flour that is then left out enough, when it is", () => {
    const flours = [
      { ...strong, ratioTo: { name: "soft flour", times: "1" } },
      { ...soft, most: "0" },
    ];
    const answer = answered(searchBlend({ flours, prefer: { kind: "fewest" }, targets: {} }));
    if (answer.kind === "found") throw new Error("found a blend that cannot be");
    const ratio = answer.conflicts.flat().find(({ id }) => id === "ratio:strong flour:most");
    expect([ratio?.settles, ratio?.to]).toEqual([true, undefined]);
    expect(told(answer.problem).advice).toContain('lift "ratio of strong flour to soft flour at most 1 times"');
  });

  test("speaks of the nearest blend only where there is one", () => {
    const flours = [
      { ...strong, least: "60", most: "60" },
      { ...soft, least: "60", most: "60" },
      { ...whole, least: "60", most: "60" },
    ];
    const answer = answered(searchBlend({ flours, prefer: { kind: "fewest" }, targets: {} }));
    if (answer.kind === "found") throw new Error("found a blend that cannot be");
    expect(answer.nearest).toBeUndefined();
    expect(told(answer.problem).advice).not.toContain("nearest");
  });

  test.each([
    ["1000", "100"],
    ["500", "50"],
    ["900", "80"],
    ["1", "2"],
  ])("takes the blend of a formula in grams: %s g and %s g", (one, other) => {
    const total = dec(one).plus(other);
    const to = [
      { name: "strong flour", share: decimalText(dec(one).div(total).times(100)) },
      { name: "soft flour", share: decimalText(dec(other).div(total).times(100)) },
    ];
    const targets = { protein: { least: "9", basis: asIs } };
    const answer = answered(searchBlend({ flours: [strong, soft], prefer: { kind: "nearest", to }, targets }));
    const nearest = Math.round((Number(one) * 100) / Number(total));
    expect(sharesOf(answer)).toEqual([`strong flour ${nearest}, soft flour ${100 - nearest}`]);
  });

  test("shows shares that leave no room as a conflict of the flours' own limits", () => {
    const flours = [
      { ...strong, least: "60" },
      { ...soft, least: "50" },
    ];
    const answer = answered(searchBlend({ flours, prefer: { kind: "fewest" }, targets: {} }));
    const moves = answer.kind === "found" ? [] : answer.conflicts.flat().map(({ id, to }) => [id, to]);
    expect(moves).toEqual([
      ["least:soft flour:least", "40"],
      ["least:strong flour:least", "50"],
    ]);
  });

  test.each([
    [soft.name, /`name: soft flour 2`.*`kind`.*`allergens`/u],
    ["bread flour", /`name: bread flour 2`.*`like: bread flour`/u],
  ])("tells how to rename one of two flours of the name %s", (name, way) => {
    const outcome = searchBlend({ ...school, flours: [0, 1].map(() => ({ ...soft, name })) });
    const advice = outcome.ok ? [] : outcome.problems.map((problem) => told(problem).advice);
    expect(advice.join()).toMatch(way);
  });

  test.each([
    ["blend.step", { step: "10" }],
    ["blend.percentage", { flours: [{ ...soft, moisture: "100" }] }],
    [
      "blend.figure-missing",
      {
        flours: [{ name: "x", protein: "9", moisture: "14", price: "1" }],
        targets: { ash: { most: "0.5", basis: at14 } },
      },
    ],
  ])("says what is wrong: %s", (code, part) => {
    const outcome = searchBlend({ ...school, ...part });
    expect(outcome.ok ? [] : outcome.problems.map((problem) => problem.code)).toContain(code);
  });
});
