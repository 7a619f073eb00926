import { readNoodleData } from "@noodlewright/core";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { wantedChecks } from "#core/explore/wanted-checks.ts";
import { always } from "../always.ts";
import { loadHighs } from "../core/explore/independent.ts";
import { listed } from "../core/formula/worked-out.ts";
import { answered } from "../core/told-of.ts";

/** Molar masses, g/mol: Prohaska et al. 2022, IUPAC standard atomic weights, abridged: Na 22.990, K 39.098, C 12.011, O 15.999. */
const molar = { soda: 2 * 22.99 + 12.011 + 3 * 15.999, potash: 2 * 39.098 + 12.011 + 3 * 15.999 };
/** Equivalents of a carbonate to the end of bicarbonate and carbonic acid: two for each mole, by definition. */
const meqPerGram = { soda: 2000 / molar.soda, potash: 2000 / molar.potash };

const flours = [
  { name: "strong", moisture: "13.5 %", protein: "12.8 %" },
  { name: "soft", moisture: "14.2 %", protein: "8.4 %" },
  { name: "rye", moisture: "12.1 %", protein: "9.6 %" },
] as const;

/** A spec of which all is to be found. */
function specOf(wanted: object, least: readonly number[], more: object = {}) {
  return {
    name: "random",
    materials: Object.fromEntries(
      flours.map(({ name, ...figures }) => [
        name,
        { kind: "flour", nitrogenFactor: 5.7, proteinBasis: "as is", allergens: [], ...figures },
      ]),
    ),
    flours: flours.map(({ name }, index) => ({ name, amount: "find", least: `${least[index]} %` })),
    water: { added: "find" },
    alkali: listed({ "sodium carbonate": "find", "potassium carbonate": "find" }),
    salt: "find",
    wanted: { leastShare: "0 %", ...wanted },
    ...more,
  };
}

const percent = (text: string): number => Number(text.replace(" %", ""));
const number = (text: string | number): number => percent(String(text));

const targets = fc.record({
  protein: fc.integer({ min: 80, max: 135 }).map((tenths) => tenths / 10),
  most: fc.integer({ min: 0, max: 8 }).map((tenths) => tenths / 10),
  water: fc.integer({ min: 320, max: 400 }).map((tenths) => tenths / 10),
  meq: fc.integer({ min: 20, max: 300 }).map((tenths) => tenths / 10),
  potassium: fc.integer({ min: 0, max: 100 }),
  salt: fc.integer({ min: 0, max: 20 }).map((tenths) => tenths / 10),
  least: fc.tuple(fc.nat(30), fc.nat(30), fc.nat(30)),
});

describe("a noodle of which all is to be found", async () => {
  const highs = await loadHighs();

  test("has flours exactly where an independent solver has any, and its amounts", () => {
    always(25, [targets], ({ protein, most, water, meq, potassium, salt, least }) => {
      const wanted = {
        protein: `${protein} to ${(protein + most).toFixed(1)} %`,
        doughWater: `${water} %`,
        alkalinity: `${meq} meq`,
        potassiumShare: `${potassium} %`,
        saltInDough: `${salt} %`,
      };
      const reading = readNoodleData(specOf(wanted, least));
      // whole per cents; protein at 14 % moisture: share × (protein × 86 − bound × (100 − moisture))
      const row = (bound: number) =>
        flours
          .map(({ protein: own, moisture }, index) => {
            const factor = percent(own) * 86 - bound * (100 - percent(moisture));
            return `${factor < 0 ? "-" : "+"} ${Math.abs(factor).toFixed(9)} f${index}`;
          })
          .join(" ");
      const blend = highs.solve(
        `Minimize\n obj: 0 f0\nSubject To\n all: f0 + f1 + f2 = 100\n low: ${row(protein)} >= -0.0000001\n high: ${row(Number((protein + most).toFixed(1)))} <= 0.0000001\nBounds\n${least.map((one, index) => ` ${one} <= f${index} <= 100`).join("\n")}\nGeneral\n f0 f1 f2\nEnd`,
      );
      expect(reading.ok).toBe(blend.Status === "Optimal");
      if (!reading.ok) {
        expect(reading.problems.map(({ code }) => code)).toEqual(["settle.out-of-reach"]);
        return;
      }
      const { spec, formula } = reading.value;
      const shares = spec.flours.map(({ amount }) => (amount === "rest" ? 0 : Number(amount.value)));
      const flourWater = shares.reduce(
        (sum, share, index) => sum + (share * number(flours[index]?.moisture ?? 0)) / 100,
        0,
      );
      // parts on 100 of flour: w tap water, s salt with 0.2 % of water in it, n sodium carbonate, k potassium carbonate
      const k = potassium / 100;
      const rows = [
        `water: ${100 - water} w + ${0.2 - water} s - ${water} n - ${water} k = ${water * 100 - flourWater * 100}`,
        `salt: ${100 - salt} s - ${salt} w - ${salt} n - ${salt} k = ${salt * 100}`,
        `meq: ${meqPerGram.soda} n + ${meqPerGram.potash} k = ${meq}`,
        `ratio: ${1 - k} k - ${k} n = 0`,
      ];
      const solved = highs.solve(`Minimize\n obj: w\nSubject To\n ${rows.join("\n ")}\nEnd`).Columns;
      const found = [
        [Number(formula.water.tap.value), solved["w"]],
        [Number(formula.salt.value), solved["s"]],
        [Number(formula.lines.find(({ name }) => name === "sodium carbonate")?.parts.value), solved["n"]],
        [Number(formula.lines.find(({ name }) => name === "potassium carbonate")?.parts.value), solved["k"]],
      ] as const;
      for (const [value, column] of found) {
        // amounts are written to a millionth; the solver is good to 1e-6 of what it works with
        const primal = column !== undefined && "Primal" in column ? column.Primal : Number.NaN;
        expect(Math.abs(value - primal)).toBeLessThan(1e-5);
      }
      // and by the graph: what is wanted is what the formula comes to
      const reached = [
        [formula.water.doughWater.value, water],
        [formula.alkali?.alkalinityM.value, meq],
        [formula.alkali?.potassiumShare?.value, potassium],
        [(100 * Number(formula.salt.value)) / Number(formula.water.dough.value), salt],
      ] as const;
      for (const [value, target] of reached) expect(Math.abs(Number(value) - target)).toBeLessThan(2e-4);
      const at14 = Number(formula.blend.protein?.at14.value);
      expect(at14).toBeGreaterThan(protein - 1e-7);
      expect(at14).toBeLessThan(protein + most + 1e-7);
    });
  });
});

/** How a want is stated: a value, a range, or one end. */
const stated = (least: number, most: number) =>
  fc.option(
    fc
      .record({
        way: fc.constantFrom("value", "range", "at least", "at most", "±"),
        low: fc.integer({ min: least, max: most }),
        width: fc.integer({ min: 1, max: Math.ceil((most - least) / 4) }),
      })
      .map(({ way, low, width }) => {
        const [from, to] = [low / 10, (low + width) / 10];
        const middle = (2 * low + width) / 20;
        return {
          isValue: way === "value",
          least: way === "at most" ? undefined : from,
          most: way === "at least" ? undefined : way === "value" ? from : to,
          text: (unit: string) =>
            ({
              value: `${from} ${unit}`,
              range: `${from} to ${to} ${unit}`,
              "at least": `at least ${from} ${unit}`,
              "at most": `at most ${to} ${unit}`,
              "±": `${middle} ${unit} ± ${width / 20}`,
            })[way] ?? "",
        };
      }),
    { nil: undefined },
  );

const wishes = fc.record({
  both: fc.boolean(),
  alkalinity: stated(50, 300),
  potassiumShare: stated(0, 790),
  anhydrousSalts: stated(3, 20),
  saltInDough: stated(3, 20).filter((one) => one !== undefined),
  doughWater: stated(320, 400),
  addedWater: stated(280, 420),
});

describe("what is wanted of alkali, salt and water", async () => {
  const highs = await loadHighs();

  /** Each as `top / bottom` over soda, potash, salt and tap water on 100 of flour of 14 % moisture; salt has 0.2 % of water. */
  const quantities: Readonly<Record<string, { readonly top: readonly number[]; readonly bottom: readonly number[] }>> =
    {
      alkalinity: { top: [meqPerGram.soda, meqPerGram.potash, 0, 0, 0], bottom: [0, 0, 0, 0, 1] },
      potassiumShare: { top: [0, 100, 0, 0, 0], bottom: [1, 1, 0, 0, 0] },
      anhydrousSalts: { top: [1, 1, 0, 0, 0], bottom: [0, 0, 0, 0, 1] },
      saltInDough: { top: [0, 0, 100, 0, 0], bottom: [1, 1, 1, 1, 100] },
      doughWater: { top: [0, 0, 0.2, 100, 1400], bottom: [1, 1, 1, 1, 100] },
      addedWater: { top: [0, 0, 0.002, 1, 0], bottom: [0, 0, 0, 0, 1] },
    };
  const units: Readonly<Record<string, string>> = { alkalinity: "meq" };

  interface Bound {
    readonly key: string;
    readonly least?: number | undefined;
    readonly most?: number | undefined;
  }

  function canMeet(bounds: readonly Bound[], both: boolean, mostSalt = 20): boolean {
    const row = (key: string, bound: number, sign: string): string => {
      const { top = [], bottom = [] } = quantities[key] ?? {};
      const [n, k, s, w, one] = top.map((value, index) => value - bound * (bottom[index] ?? 0));
      const term = (value = 0, name = ""): string => `${value < 0 ? "-" : "+"} ${Math.abs(value).toFixed(12)} ${name}`;
      return ` ${term(n, "n")} ${term(k, "k")} ${term(s, "s")} ${term(w, "w")} ${sign} ${(-(one ?? 0)).toFixed(12)}`;
    };
    const rows = bounds.flatMap(({ key, least, most }) => [
      ...(key === "potassiumShare" ? [" n + k >= 0.001"] : []),
      ...(least === undefined ? [] : [row(key, least, ">=")]),
      ...(most === undefined ? [] : [row(key, most, "<=")]),
    ]);
    const { Status } = highs.solve(
      `Minimize\n obj: n\nSubject To\n${rows.join("\n")}\nBounds\n n <= 200\n k <= ${both ? 200 : 0}\n s <= ${mostSalt}\n w <= 200\nEnd`,
    );
    return Status === "Optimal";
  }

  test("is found exactly where an independent solver can meet it, and every told way out of a conflict is met where it is asked for, and no further", () => {
    let [met, conflicts, told] = [0, 0, 0];
    always(40, [wishes], ({ both, ...wants }) => {
      const { alkalinity, potassiumShare, anhydrousSalts, doughWater, addedWater } = wants;
      const ofAlkali = [alkalinity, potassiumShare, anhydrousSalts].filter((one) => one !== undefined).length;
      fc.pre(ofAlkali >= (both ? 2 : 1) && (alkalinity ?? anhydrousSalts) !== undefined);
      fc.pre((doughWater ?? addedWater) !== undefined);
      /** A value is met within 1 % of it. */
      const all = Object.entries(wants).flatMap(([key, one]): readonly Bound[] => {
        if (one === undefined) return [];
        const room = one.isValue ? 0.01 : 0;
        return [{ key, least: one.least && one.least * (1 - room), most: one.most && one.most * (1 + room) }];
      });
      const ask = (changes: Readonly<Record<string, string>>) =>
        readNoodleData({
          name: "random",
          flours: [{ name: "bread flour", amount: "100 %", figures: { moisture: "14 %" } }],
          water: { added: "find" },
          alkali: ["sodium carbonate", ...(both ? ["potassium carbonate"] : [])].map((name) => ({
            name,
            amount: "find",
          })),
          salt: "find",
          wanted: {
            ...Object.fromEntries(
              Object.entries(wants).flatMap(([key, one]) => (one ? [[key, one.text(units[key] ?? "%")]] : [])),
            ),
            ...changes,
          },
        });
      const reading = ask({});
      const isBelieved = canMeet([...all, { key: "anhydrousSalts", most: 5 }], both, 10);
      expect(reading.ok).toBe(isBelieved);
      if (!isBelieved && canMeet(all, both)) return;
      if (reading.ok) {
        met += 1;
        const checks = wantedChecks(reading.value.spec, reading.value.formula, undefined).checks;
        expect(checks.filter(({ holds }) => !holds)).toEqual([]);
        expect(checks).toHaveLength(all.length);
        return;
      }
      conflicts += 1;
      let left = all;
      for (const problem of reading.problems) {
        if (problem.code !== "settle.conflict") throw new Error(problem.code);
        const keys = problem.facts.wants.map(({ label }) => keyOfLabel[label] ?? "");
        const own = all.filter(({ key }) => keys.includes(key));
        expect(own).toHaveLength(keys.length);
        expect(canMeet(own, both)).toBe(false);
        for (const [index, { reach, stays }] of problem.facts.wants.entries()) {
          const key = keys[index] ?? "";
          expect(
            canMeet(
              own.filter((one) => one.key !== key),
              both,
            ),
          ).toBe(true);
          const rest = left.filter((one) => one.key !== key);
          const end = stays === "below" ? reach[1] : reach[0];
          if (end === undefined || !canMeet(rest, both)) continue;
          told += 1;
          const problemsFor = (amount: string): number => {
            const again = ask({ [key]: `${amount} ${units[key] ?? "%"}` });
            return again.ok ? 0 : again.problems.length;
          };
          const now = reading.problems.length;
          const step = 10 ** -Math.max(2, end.split(".")[1]?.length ?? 0) * (stays === "below" ? 1 : -1);
          const beyond = (Number(end) + step).toFixed(8);
          const isValue = Object.entries(wants).some(
            ([name, one]) => name === key && typeof one === "object" && one.isValue,
          );
          const range = stays === "below" ? "at least " : "at most ";
          // what is told is met where it is asked for, as a value or as the end of a range, and nothing beyond it
          expect([key, end, problemsFor(end) < now]).toEqual([key, end, true]);
          if (!isValue) expect(problemsFor(`${range}${end}`)).toBeLessThan(now);
          if (now === 1) expect(problemsFor(`${isValue ? "" : range}${beyond}`)).toBe(1);
        }
        // the least of each conflict is left aside when the next is looked for
        left = left.filter(({ key }) => key !== keys.at(-1));
      }
    });
    expect(Math.min(met, conflicts, told)).toBeGreaterThan(10);
  });
});

const keyOfLabel: Readonly<Record<string, string>> = {
  "alkalinity M": "alkalinity",
  "potassium carbonate": "potassiumShare",
  "anhydrous alkaline salts": "anhydrousSalts",
  "salt in the dough": "saltInDough",
  "dough water": "doughWater",
  "added water": "addedWater",
};

describe("amounts found by hand", () => {
  const plain = {
    name: "by hand",
    flours: [{ name: "bread flour", amount: "100 %", figures: { moisture: "14 %" } }],
    wanted: {},
  };

  function found(more: object): Readonly<Record<string, string>> {
    const { settled } = answered(readNoodleData({ ...plain, water: { added: "36 %" }, ...more }));
    return Object.fromEntries((settled?.found ?? []).map(({ name, text }) => [name, text]));
  }

  // 100 of flour with 14 of water; added x: (14 + x) / (100 + x) = 0.36, x = 22 / 0.64 = 34.375
  test("water of a dough of 36 % from flour of 14 % moisture (mass balance)", () => {
    expect(found({ water: { added: "find" }, wanted: { doughWater: "36 %" } })).toEqual({ "added water": "34.375 %" });
  });

  // the salt's own water of 0.2 % is added water: s / (136 + 0.998 s) = 0.01, s = 1.36 / 0.99002
  test("salt of 1 % of a dough of 136 beside it (mass balance; water of table salt, USDA SR28 02047)", () => {
    expect(found({ salt: "find", wanted: { saltInDough: "1 %" } })).toEqual({ "table salt": "1.37371 %" });
  });

  // one part in 105.988 g/mol, two equivalents: 17 meq are 0.900898 g
  test("sodium carbonate for 17 meq (IUPAC standard atomic weights)", () => {
    const dose = found({ alkali: [{ name: "sodium carbonate", amount: "find" }], wanted: { alkalinity: "17 meq" } });
    expect(percent(dose["sodium carbonate"] ?? "")).toBeCloseTo(17 / meqPerGram.soda, 4);
  });

  // written on flour of 14 %, with flour of 10 % at hand: the dough keeps its water
  test("water of a formula that is written on another flour moisture gives the dough that is wanted", () => {
    const reading = readNoodleData({
      ...plain,
      flours: [{ name: "bread flour", amount: "100 %", figures: { moisture: "10 %" } }],
      water: { added: "find", onFlourMoisture: "14 %" },
      salt: "find",
      wanted: { doughWater: "36 %", saltInDough: "1 %" },
    });
    const formula = reading.ok ? reading.value.formula : undefined;
    expect(Number(formula?.water.doughWater.value)).toBeCloseTo(36, 5);
    expect((100 * Number(formula?.salt.value)) / Number(formula?.water.dough.value)).toBeCloseTo(1, 5);
  });
});
