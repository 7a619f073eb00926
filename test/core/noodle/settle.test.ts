import {
  askBatch,
  askBlend,
  askCost,
  askFormula,
  askNutrition,
  askSettle,
  readNoodleData,
  told,
} from "@noodlewright/core";
import { shown } from "@noodlewright/core/figure";
import { renderCsv } from "@noodlewright/core/render";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { always } from "../../always.ts";
import { listed } from "../formula/worked-out.ts";
import { answered, codesOf, toldOf } from "../told-of.ts";

const spec = {
  name: "class noodle",
  flours: listed({ "bread flour": "80 %", "rye flour": "20 %" }),
  water: { added: "36 %" },
  alkali: [{ name: "sodium carbonate", amount: "1 %" }],
  salt: "1 %",
  batch: { bowls: 40, rawWeight: "110 g" },
};
const toFind = (...names: readonly string[]) => names.map((name) => ({ name, amount: "find" }));
const pair = toFind("sodium carbonate", "potassium carbonate");

function read(more: object) {
  return answered(readNoodleData({ ...spec, ...more }));
}

function loudOf(answer: ReturnType<typeof askBatch | typeof askCost | typeof askFormula | typeof askNutrition>) {
  return answer.ok ? answer.notes.filter(({ loud }) => loud).map((note) => `${note.code}: ${told(note)}`) : [];
}

describe("a spec that leaves amounts to be found", () => {
  test("writes the fewest digits that read as all of them do, and that no scale tells apart", () => {
    const tenths = (min: number, max: number) => fc.integer({ min, max }).map((value) => String(value / 10));
    const scales = [{ division: "1 g" }, { division: "0.1 g", capacity: "300 g" }];
    always(6, [tenths(80, 250), tenths(100, 900), tenths(330, 380), tenths(10, 600)], (meq, share, water, dough) => {
      const wanted = { alkalinity: `${meq} meq`, potassiumShare: `${share} %`, doughWater: `${water} %` };
      const open = { alkali: pair, water: { added: "find" }, wanted, batch: { dough: `${dough} kg` }, scales };
      const { found = [], rounded = () => [] } = read(open).settled ?? {};
      const written = (amounts: typeof found) => {
        const textOf = (key: string, index: number) =>
          amounts.find(({ path }) => path[0] === key && [index, "added"].includes(path[1] ?? ""))?.text;
        const alkali = pair.map((one, index) => ({ ...one, amount: textOf("alkali", index) }));
        const noodle = read({ ...open, alkali, water: { added: textOf("water", 0) } });
        return {
          shown: noodle.formula.lines.map(({ parts }) => shown(parts)),
          checks: answered(askSettle(noodle)).checks,
          lines: answered(askBatch(noodle)).lines,
        };
      };
      const exact = written(found);
      const readsAs = ({ lines, ...fewer }: typeof exact): boolean =>
        JSON.stringify(fewer) === JSON.stringify({ shown: exact.shown, checks: exact.checks }) &&
        lines.every((line, index) => {
          const off = Number(line.exact.value) - Number(exact.lines[index]?.exact.value);
          return Math.abs(off) <= Number(line.division) / 2;
        });
      const short = written(rounded());
      expect(readsAs(short)).toBe(true);
      expect(short.checks.every(({ holds }) => holds)).toBe(true);
      const digits = Math.max(...rounded().map(({ text }) => text.replace(/^0\.0*|\D/gu, "").length));
      const fewer = (text: string): string => `${Number(Number.parseFloat(text).toPrecision(digits - 1))} %`;
      const shorter = found.map((one) => ({ ...one, text: fewer(one.text) }));
      expect(digits === 3 || !readsAs(written(shorter))).toBe(true);
    });
  });

  test("is held against the least and the most of a flour whose amount is stated", () => {
    const flours = (most: string) => [spec.flours[0], { ...spec.flours[1], most }];
    const flags = (most: string) => loudOf(askBatch(read({ flours: flours(most) })));
    expect(flags("20 %")).toEqual([]);
    expect(flags("15 %")).toEqual([
      expect.stringMatching(/^wanted.missed: .*rye flour is 20.00 % of flour.*at most 15 %/u),
    ]);
  });

  test.each([
    { wanted: { alkalinity: "17 meq", saltInDough: "1 %" }, advice: "write `potassiumShare: 40 %`" },
    { wanted: { potassiumShare: "40 %" }, advice: "write `alkalinity: 17 meq` or `anhydrousSalts: 0.9 %`" },
    { wanted: {}, advice: "write `alkalinity: 17 meq` or `anhydrousSalts: 0.9 %`, and `potassiumShare: 40 %`" },
  ])("asks for what is missing only, beside $wanted", ({ wanted, advice }) => {
    const problems = toldOf(readNoodleData({ ...spec, alkali: pair, wanted }));
    expect(problems.map((one) => one.advice)).toEqual([`under \`wanted:\` ${advice}`]);
  });

  test.each(["200 g", "200 grams", "200 G", "1/2 pound", "0.001 tonne"])("is refused beside a mass of %s", (amount) => {
    const flours = [...toFind("bread flour"), { name: "rye flour", amount }];
    expect(codesOf(readNoodleData({ ...spec, flours, wanted: { protein: "11 %" } }))).toEqual(["settle.masses"]);
  });

  test("a way out of a conflict is met in every line where it is taken", () => {
    always(6, [fc.integer({ min: 68, max: 74 })], (halves) => {
      const open = (addedWater: string) => {
        const wanted = { doughWater: `${halves / 2} %`, addedWater, saltInDough: "0.8 %" };
        return { water: { added: "find" }, salt: "find", wanted };
      };
      const said = toldOf(readNoodleData({ ...spec, ...open("28 %") })).map((one) => JSON.stringify(one));
      const [, least] = /added water can be ([\d.]+) % of flour at least/u.exec(said.join()) ?? [];
      expect(answered(askSettle(read(open(`${least} %`)))).checks.filter(({ holds }) => !holds)).toEqual([]);
    });
  });

  test("tells the nearest blend where what is wanted is out of reach", () => {
    const flours = ["bread flour", "rye flour"].map((name) => ({ name, amount: "find", least: "10 %" }));
    const [first] = toldOf(readNoodleData({ ...spec, flours, wanted: { protein: "at least 40 %" } }));
    expect(first).toMatchObject({
      code: "settle.out-of-reach",
      advice: expect.stringMatching(/The nearest: bread flour \d+ %, rye flour \d+ %/u),
    });
  });

  test.each([
    { most: "0.09 EUR", rye: "61" },
    { most: "0.12 EUR", rye: "36" },
  ])("finds flours whose bowl costs at most $most", ({ most, rye }) => {
    const flours = toFind("bread flour", "rye flour");
    const prices = Object.fromEntries(
      Object.entries({ "bread flour": "2", "rye flour": "0.5", "sodium carbonate": "3", "table salt": "1" }).map(
        ([name, price]) => [name, `${price} EUR/kg`],
      ),
    );
    const noodle = read({ flours, prices, wanted: { bowlPrice: most, prefer: "most bread flour" } });
    const cost = (share: number): number => {
      const other = read({
        prices,
        flours: [
          { name: "bread flour", amount: `${share} %` },
          { name: "rye flour", amount: "rest" },
        ],
      });
      const answer = askCost(other);
      return answer.ok ? Number(answer.value.bowl?.value) : Number.NaN;
    };
    const bread = 100 - Number(rye);
    expect(noodle.spec.flours.map(({ amount }) => amount !== "rest" && amount.value)).toEqual([String(bread), rye]);
    // one part more of the dear flour is too much
    expect(cost(bread)).toBeLessThanOrEqual(Number.parseFloat(most));
    expect(cost(bread + 1)).toBeGreaterThan(Number.parseFloat(most));
  });

  // 110 g of raw strands, of which 102 of 138 cost 1 EUR/kg: 81.30 g, 0.0813 EUR (mass balance)
  test("tells what a bowl that costs too much would have to cost", () => {
    const prices = { "bread flour": "1 EUR/kg", "rye flour": "1 EUR/kg", "sodium carbonate": "1 EUR/kg" };
    const more = { flours: toFind("bread flour", "rye flour"), prices: { ...prices, "table salt": "1 EUR/kg" } };
    const [first] = toldOf(readNoodleData({ ...spec, ...more, wanted: { bowlPrice: "0.075 EUR" } }));
    expect(first?.found).toMatch(/^no blend of these flours comes to price of a bowl at most 0\.075 EUR$/u);
    expect(first?.advice).toMatch(/price of a bowl of no less than 0\.08\d\d EUR instead of 0\.075/u);
  });

  test("tells no number of more than nine digits that nobody wrote", () => {
    const bottle = { solution: { salts: { K2CO3: 6, Na2CO3: 4 }, strength: "30 °Bé" } };
    const alkali = [...pair, { name: "bottle", amount: "find", figures: bottle }];
    const wants: Readonly<Record<string, string>> = {
      potassiumShare: "%",
      alkalinity: "meq",
      doughWater: "%",
      saltInDough: "%",
      protein: "%",
      ash: "%",
    };
    const open = { flours: toFind("bread flour", "rye flour"), salt: "find", water: { added: "find" }, alkali };
    const each = fc.tuple(fc.constantFrom(...Object.keys(wants)), fc.integer({ min: 0, max: 990 }));
    always(20, [fc.array(each, { minLength: 1, maxLength: 4 }), fc.boolean()], (wild, one) => {
      const wanted = Object.fromEntries(wild.map(([key, tenths]) => [key, `${tenths / 10} ${wants[key] ?? ""}`]));
      const outcome = readNoodleData({ ...spec, ...open, alkali: one ? alkali.slice(1) : alkali, wanted });
      const said = JSON.stringify(outcome.ok ? outcome.value.notes.map(told) : toldOf(outcome));
      const long = said.match(/\d[\d.]*/gu)?.filter((number) => number.replace(".", "").replace(/^0+/u, "").length > 9);
      expect(long ?? []).toEqual([]);
    });
  });

  test.each([
    {
      // 0.25 g of salt hold 98 mg of sodium
      more: { salt: "find", wanted: { saltInBowl: "0.25 g", sodium: "50 mg" } },
      found:
        /^salt in a cooked bowl of 0\.25 g, sodium of a cooked bowl at most 50 mg and added water of 36 % as .* together, which .*table salt/u,
    },
    {
      // a lye of one part in a hundred brings more water than the dough may have
      more: {
        alkali: [
          {
            name: "weak lye",
            amount: "find",
            figures: { solution: { salts: { Na2CO3: 1 }, strength: "1 %" } },
          },
        ],
        water: { added: "find" },
        wanted: { anhydrousSalts: "1 %", doughWater: "36 %" },
      },
      found: /weak lye \(9\d(?:\.\d+)? % water\)/u,
    },
  ])("tells what stands in the way: $found", ({ more, found }) => {
    expect(toldOf(readNoodleData({ ...spec, ...more }))).toMatchObject([
      { code: "settle.conflict", found: expect.stringMatching(found) },
    ]);
  });

  test("keeps the flours that it states, and the limits of the others", () => {
    const flours = [
      { name: "bread flour", amount: "find" },
      { name: "rye flour", amount: "12.5 %" },
      { name: "barley flour", amount: "find", least: "5 %", most: "7 %" },
    ];
    const { spec: settled } = read({ flours, wanted: { protein: "at least 10 %" } });
    const [bread, rye, barley] = settled.flours.map(({ amount }) => (amount === "rest" ? 0 : Number(amount.value)));
    expect(rye).toBe(12.5);
    expect(barley).toBeGreaterThanOrEqual(5);
    expect(barley).toBeLessThanOrEqual(7);
    expect((bread ?? 0) + (rye ?? 0) + (barley ?? 0)).toBe(100);
  });

  test("takes the water that the flours take by the kitchen's own figures", () => {
    const flours = [
      { name: "bread flour", amount: "75 %", figures: { absorption: "38 %" } },
      { name: "rye flour", amount: "25 %", figures: { absorption: "42 %" } },
    ];
    const noodle = read({ flours, water: { added: "find" } });
    expect(noodle.formula.water.added.value).toBe("39");
    expect(noodle.notes.map(({ code }) => code)).toContain("settle.own-water");
  });

  test.each([
    // nearest to 12 % of all shares in whole per cents, near the middle of each flour: 24 × 9.8 + 33 × 11.5 + 43 × 13.6
    { more: {}, reached: "12.00", shares: ["24", "33", "43"], met: "12 % at 14 % mb, ± 0.12" },
    { more: { prefer: "nearest", within: "0.5 %" }, reached: "12.00", shares: ["24", "33", "43"], met: "± 0.5" },
    { more: { protein: "12 % ± 0.4 %" }, reached: "12.00", shares: ["24", "33", "43"], met: "± 0.4" },
    { more: { step: "5 %" }, reached: "12.01", shares: ["20", "40", "40"], met: "± 0.12" },
    { more: { prefer: "most strong" }, reached: "12.00", shares: ["39", "6", "55"], met: "± 0.12" },
    { more: { prefer: "most strong", within: "0.4 %" }, reached: "12.39", shares: ["32", "0", "68"], met: "± 0.4" },
  ])("has flours as near to a protein value as can be, and says both: $more", ({ more, reached, shares, met }) => {
    const figures = [
      ["soft", "13.8 %", "9.8 %"],
      ["plain", "14.2 %", "11.5 %"],
      ["strong", "12.9 %", "13.6 %"],
    ].map(([name = "", moisture, protein]) => ({
      name,
      amount: "find",
      figures: { kind: "flour", moisture, protein },
    }));
    const noodle = read({ flours: figures, wanted: { protein: "12 %", ...more } });
    const [batch, settled] = [askBatch(noodle), askSettle(noodle)];
    expect(noodle.spec.flours.map(({ amount }) => amount !== "rest" && amount.value)).toEqual(shares);
    expect(loudOf(batch)).toEqual([
      expect.stringMatching(new RegExp(`; protein 12 %.* wanted, ${reached} % at 14 % mb reached$`, "u")),
    ]);
    const rows = settled.ok ? settled.value.checks.filter(({ label }) => label === "protein") : [];
    expect(rows).toEqual([
      { label: "protein", reached: `${reached} % at 14 % mb`, wanted: expect.stringContaining(met), holds: true },
    ]);
    const blend = askBlend(noodle);
    const found = blend.ok && blend.value.answer.kind === "found" ? blend.value.answer.blends[0]?.shares : [];
    expect(found?.map(({ share }) => share.value)).toEqual(shares.filter((share) => share !== "0"));
  });

  test.each([
    // 17 meq / 100 g: 17 / (10 × (0.588 / 52.994 + 0.392 / 69.103)); 39.2 of 98 are 40 %
    { wanted: { alkalinity: "17 meq", potassiumShare: "40 %" }, beside: "potassium carbonate", salts: [58.8, 39.2] },
    // 38 of 96 are 39.58 %, and 39.3 % is met from 38.907 to 39.693
    {
      wanted: { alkalinity: "14 meq", potassiumShare: "39.3 %" },
      beside: "K2CO3 6, Na2CO3 4 at 30 °Bé",
      salts: [58, 38],
    },
  ])("finds a powder alone where it meets the ratio by itself, beside $beside", ({ wanted, beside, salts }) => {
    const [soda = 0, potash = 0] = salts;
    const composition = { Na2CO3: `${soda} %`, K2CO3: `${potash} %`, water: "rest" };
    const powder = { name: "class powder", amount: "find", figures: { kind: "alkali", composition } };
    const parts = Number.parseFloat(wanted.alkalinity) / (10 * (soda / 52.994 + potash / 69.103));
    for (const alkali of [
      [powder, ...toFind(beside)],
      [...toFind(beside), powder],
    ]) {
      const { lines } = read({ alkali, wanted }).formula;
      const of = (name: string) => Number(lines.find((line) => line.name === name)?.parts.value);
      expect(of("class powder")).toBeCloseTo(parts, 4);
      expect(of(beside)).toBe(0);
    }
  });

  test("says at the head of every answer what was found", () => {
    const wish = { salt: "find", wanted: { saltInDough: "0.7 %" } };
    const [noodle, priced] = [read(wish), read({ ...wish, prices: { "bread flour": "1 EUR/kg" } })];
    const head = [expect.stringMatching(/^settle\.found: found for you: table salt 0\.9\d %$/u)];
    for (const answer of [askFormula(noodle), askBatch(noodle), askCost(priced)]) expect(loudOf(answer)).toEqual(head);
  });

  test("a dose is found as it is stated, of anhydrous salts or as alkalinity", () => {
    const doses = ["product", "anhydrous salts", "alkalinity"].map((as) => {
      const noodle = read({
        alkali: [{ name: "sodium carbonate decahydrate", amount: "find", as }],
        wanted: { alkalinity: "17 meq" },
      });
      expect(Number(noodle.formula.alkali?.alkalinityM.value)).toBeCloseTo(17, 4);
      return Number(noodle.spec.alkali?.[0]?.amount.value);
    });
    // Na2CO3 · 10 H2O: of 286.14 g, 105.99 g are the salt
    expect((doses[1] ?? 0) / (doses[0] ?? 1)).toBeCloseTo(105.988 / 286.138, 4);
    expect(doses[2]).toBeCloseTo(doses[1] ?? 0, 5);
  });

  test("salt of a cooked bowl is found by what boiling leaves, and met", () => {
    const answer = askSettle(read({ salt: "find", wanted: { saltInBowl: "0.25 g" } }));
    const checks = answered(answer).checks.map(({ label, holds }) => [label, holds]);
    expect(checks).toEqual([["salt in a cooked bowl", true]]);
    expect(answer.ok && answer.notes.map(({ code }) => code)).toContain("settle.boiled");
  });
});

describe("a spec that states its amounts and what it wants", () => {
  test.each([
    { wanted: { protein: "at least 14 %" }, miss: "protein" },
    { wanted: { addedWater: "38 %" }, miss: "added water" },
    { wanted: { doughWater: "37 to 39 %" }, miss: "dough water" },
    { wanted: { alkalinity: "at most 10 meq" }, miss: "alkalinity M" },
    { wanted: { anhydrousSalts: "1.2 %" }, miss: "anhydrous alkaline salts" },
    { wanted: { potassiumShare: "40 %" }, miss: "potassium carbonate" },
    { wanted: { saltInDough: "0.9 %" }, miss: "salt in the dough" },
    { wanted: { sodium: "at most 10 mg" }, miss: "sodium of a cooked bowl" },
  ])("is held against $wanted, loudly", ({ wanted, miss }) => {
    const noodle = read({ wanted });
    const loud = [expect.stringContaining(`wanted.missed: not the noodle that is wanted: ${miss} is `)];
    for (const ask of [askBatch, askFormula, askNutrition]) expect(loudOf(ask(noodle))).toEqual(loud);
  });

  test.each([
    {
      wanted: {
        protein: "at least 9 %",
        addedWater: "36 %",
        anhydrousSalts: "1.0 %",
        alkalinity: "18.9 meq",
        saltInDough: "0.72 % ± 0.01",
        potassiumShare: "0 %",
      },
    },
    { wanted: undefined },
  ])("says nothing where $wanted is met", ({ wanted }) => {
    expect(loudOf(askBatch(read({ ...(wanted && { wanted }) })))).toEqual([]);
  });

  test.each([
    ["1.30 EUR/kg", "metric", "2.00 EUR/kg", "at most 1.30 EUR/kg"],
    ["1 EUR per 3 kg", "metric", "2.0000 EUR/kg", "at most 1 EUR per 3 kg (0.3333 EUR/kg)"],
    ["0.40 EUR/lb", "metric", "2.0000 EUR/kg", "at most 0.40 EUR/lb (0.8818 EUR/kg)"],
    ["at most 0.40 EUR/lb", "us", "0.9072 EUR/lb", "at most 0.40 EUR/lb"],
  ] as const)("a price of %s is told in %s units as it was said", (price, units, reached, most) => {
    const prices = { "bread flour": "2 EUR/kg", "rye flour": "2 EUR/kg" };
    const noodle = answered(readNoodleData({ ...spec, prices, wanted: { price } }, { units }));
    const formula = askFormula(noodle);
    const { notes = [], sections = [] } = formula.ok ? formula.report() : {};
    expect(notes.map(({ text }) => text)).toContain(
      `not the noodle that is wanted: price is ${reached}, and the spec says ${most}`,
    );
    const unit = units === "us" ? "EUR/lb" : "EUR/kg";
    const blend = askBlend(noodle);
    const settled = askSettle(noodle);
    expect(settled.ok && renderCsv(settled.report(), undefined)).toMatchObject({
      text: expect.stringMatching(/^what,reached,wanted,met/u),
    });
    const texts = JSON.stringify([sections, settled.ok && settled.report().sections]);
    expect(texts).toContain(most);
    for (const told of [texts, JSON.stringify(blend.ok && blend.report().sections)]) {
      expect(told).toContain(unit);
      expect(told).not.toContain(units === "us" ? "EUR/kg" : '"text":"EUR/lb"');
      expect(told).not.toMatch(/"text":"[^"]*\.\d{5}/u);
    }
  });

  test("the cost of a bowl is held against what it may cost", () => {
    const prices = Object.fromEntries(
      ["bread flour", "rye flour", "sodium carbonate", "table salt"].map((name) => [name, "2 EUR/kg"]),
    );
    const loud = (bowlPrice: string) => loudOf(askCost(read({ prices, wanted: { bowlPrice } })));
    expect(loud("0.10 EUR")).toEqual([
      expect.stringMatching(
        /^wanted\.missed: .* the cost of a bowl is 0\.16\d* EUR.*; of it, bread flour costs 0\.1\d* EUR$/u,
      ),
    ]);
    expect(loud("0.1 EUR").join()).toContain("at most 0.10 EUR");
    expect(loud("at most 0.20 EUR")).toEqual([]);
  });
});
