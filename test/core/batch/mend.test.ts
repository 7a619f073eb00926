import { askMend, type MendWish, readNoodleData, told } from "@noodlewright/core";
import { standingOf } from "@noodlewright/core/sheet";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { always } from "../../always.ts";
import { listed } from "../formula/worked-out.ts";
import { answered } from "../told-of.ts";

const spec = {
  name: "class noodle",
  flours: listed({ "bread flour": "80 %", "rye flour": "20 %" }),
  water: { tap: "36 %" },
  alkali: [{ name: "sodium carbonate", amount: "1 %" }],
  salt: "2 %",
  batch: { flour: "1000 g" },
  scales: [{ division: "0.1 g" }],
};

function mend(wish: MendWish, more: object = {}) {
  return askMend(answered(readNoodleData({ ...spec, ...more })), wish);
}

function mendedBy(wish: MendWish, more: object = {}) {
  const answer = mend(wish, more);
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  return answer;
}

const weighed = (name: string, amount: string) => ({ weighed: [{ name, amount }] });

describe("a load with too much of something", () => {
  // 1000 g of flour and 360 g of water; 400 g are in, right for 1000 × 400 / 360 = 1111.1 g of flour (mass balance)
  test("is brought back by all else, worked out by hand", () => {
    const { value } = mendedBy(weighed("tap water", "400 g"));
    expect(value.lines.map(({ name, add, total }) => [name, add.value, total.value])).toEqual([
      ["bread flour", "88.9", "888.9"],
      ["rye flour", "22.2", "222.2"],
      ["tap water", "0", "400"],
      ["sodium carbonate", "1.1", "11.1"],
      ["table salt", "2.2", "22.2"],
    ]);
    expect(value.dough.value).toBe("1544.4");
  });

  test("adds up, takes nothing out, and comes to the formula as near as the scale allows", () => {
    const names = spec.flours.map(({ name }) => name).concat("tap water", "sodium carbonate", "table salt");
    always(40, [fc.constantFrom(...names), fc.integer({ min: 1, max: 1000 })], (name, tenths) => {
      const { value } = mendedBy(weighed(name, `${tenths / 10} g`));
      for (const { already, add, total } of value.lines) {
        expect(Number(add.value)).toBeGreaterThanOrEqual(0);
        expect(Number(total.value)).toBeCloseTo(Number(already.value) + Number(add.value), 9);
      }
      const sum = value.lines.reduce((all, { total }) => all + Number(total.value), 0);
      expect(Number(value.dough.value)).toBeCloseTo(sum, 9);
      const flour = value.lines.slice(0, 2).reduce((all, { total }) => all + Number(total.value), 0);
      for (const { total, planned } of value.lines) {
        // half a division of it, and what half a division of each flour and of the list moves
        const right = (Number(planned.line.parts.value) * flour) / 100;
        expect(Math.abs(Number(total.value) - right)).toBeLessThan(0.05 + (0.15 * right) / 1000 + 0.051);
      }
    });
  });

  // 1000 g of dough is no round number of anything: each weight of the list is rounded by up to half a division
  test.each(["0.1 g", "10 g"])("needs nothing where all is weighed as listed in steps of %s", (division) => {
    const more = { batch: { dough: "1237 g" }, scales: [{ division }] };
    const listed = mendedBy(weighed("tap water", "0 g"), more).value.lines;
    const asListed = listed.map(({ name, planned }) => ({ name, amount: `${planned.load.value} g` }));
    for (const wish of [asListed, ...asListed.map((one) => [one])]) {
      expect(mendedBy({ weighed: wish }, more).value.lines.map(({ add }) => add.value)).toEqual(listed.map(() => "0"));
    }
    const withMore = mendedBy({ ...weighed("tap water", "400 g"), noMore: ["bread flour", "rye flour"] }, more);
    expect(withMore.value.lines.map(({ add }) => add.value)).toEqual(listed.map(() => "0"));
  });

  test("stays as it is in what there is no more of, and all else goes by the flour", () => {
    const { value } = mendedBy({ ...weighed("tap water", "400 g"), noMore: ["bread flour", "rye flour"] });
    expect(value.lines.every(({ add }) => add.value === "0")).toBe(true);
    const water = value.figures.find(({ label }) => label === "added water");
    // 400 g on 1000 g of flour, and 0.2 % of water in the salt
    expect([water?.now?.value, water?.mended.value]).toEqual(["40.004", "40.004"]);
  });

  // 100 g of salt would be right for five times the flour; without water and bread flour that makes it drier and greyer
  test("is left as it is where what else there is leads no nearer to the formula, and says so", () => {
    const noMore = ["bread flour", "tap water"];
    const { value, notes } = mendedBy({ ...weighed("table salt", "100 g"), noMore });
    expect(value.lines.map(({ add }) => add.value)).toEqual(["0", "0", "0", "0", "0"]);
    const said = notes.filter(({ loud }) => loud).map(told);
    expect(said).toContainEqual(
      expect.stringMatching(
        /a load made larger for what is too much would be no nearer .*, counting every ingredient: /u,
      ),
    );
    const shares = value.figures.slice(0, 2).map(({ label, now, mended }) => [label, now?.value, mended.value]);
    expect(shares).toEqual([
      ["bread flour", "80", "80"],
      ["rye flour", "20", "20"],
    ]);
  });

  // for the salt, 1200 g of flour would get 30 % of water, 6 less; for the bread flour, 1020 g get 35.3 %, and 0.35 % too much salt;
  // by the list, 1016 g of flour get 35.4 %, and 0.3 % too little rye as well
  test("grows for what brings it nearest to the formula, and says so", () => {
    const said = [
      { name: "table salt", amount: "24 g" },
      { name: "bread flour", amount: "816 g" },
    ];
    const { value, notes } = mendedBy({ weighed: said, noMore: ["tap water"] });
    expect(value.lines.map(({ total }) => total.value)).toEqual(["816", "204", "360", "10.2", "24"]);
    expect(notes.map(told)).toContainEqual(expect.stringContaining("So it grows for bread flour alone"));
    const { notes: further } = mendedBy({ ...weighed("table salt", "30 g"), noMore: ["sodium carbonate"] });
    expect(further.map(told)).toContainEqual(
      expect.stringMatching(/further off in what else is told: .*alkalinity M/u),
    );
  });

  // 1390 g of dough, of which 139 g are rework: 1251 g of new dough, 900 g of its flour and 324 g of its water
  describe("with rework", () => {
    const rework = { batch: { dough: "1390 g" }, rework: { amount: "10 %" } };

    test("counts it, in the list and in all", () => {
      const { value } = mendedBy(weighed("tap water", "360 g"), rework);
      const planned = value.lines.reduce((all, one) => all + Number(one.planned.load.value), 0);
      expect(value.rework?.planned.value).toBe("139");
      expect(planned + Number(value.rework?.planned.value)).toBeCloseTo(Number(value.planned.value), 9);
      const total = value.lines.reduce((all, one) => all + Number(one.total.value), 0);
      expect(total + Number(value.rework?.total.value)).toBeCloseTo(Number(value.dough.value), 9);
      // 360 g of water in the new dough and 36 g in the rework, on 900 and 100 g of flour (mass balance)
      const water = value.figures.find(({ label }) => label === "added water");
      expect(Number(water?.now?.value)).toBeCloseTo(39.604, 2);
    });

    test.each([
      { said: "200 g", add: "0", told: true },
      { said: "39 g", add: "100", told: false },
    ])("of which $said are in needs $add g more of it, and nothing else", ({ said, add, told }) => {
      const { value, notes } = mendedBy(weighed("rework", said), rework);
      expect(value.rework?.add.value).toBe(add);
      expect(value.lines.map((one) => one.add.value)).toEqual(["0", "0", "0", "0", "0"]);
      expect(notes.some(({ code }) => code === "mend.rework")).toBe(told);
    });
  });

  test("takes more of the flours that there are, and the salts for them", () => {
    const { value } = mendedBy({ ...weighed("tap water", "400 g"), noMore: ["rye flour"] });
    // 888.9 and 200 g of flour: salt of 2 % is 21.778 g
    expect(value.lines.map(({ total }) => total.value)).toEqual(["888.9", "200", "400", "10.9", "21.8"]);
  });

  test("that is not in yet goes to the scale that holds all of it, and what is in is named by its line", () => {
    const scales = [
      { name: "fine", division: "0.1 g", capacity: "200 g" },
      { name: "coarse", division: "10 g", capacity: "30 kg" },
    ];
    const wish = listed({ water: "400 g", "rye flour": "0 g" });
    const { lines } = mendedBy({ weighed: wish }, { scales }).value;
    // 200 × 400 / 360 = 222.2 g of rye, 800 × 400 / 360 − 800 = 88.9 g of bread flour to add (mass balance)
    expect(lines.slice(0, 2).map(({ add, scale }) => [add.value, scale])).toEqual([
      ["88.9", "fine"],
      ["220", "coarse"],
    ]);
  });

  test("has no figures as it stands as long as no flour is in, and is mended all the same", () => {
    const none = spec.flours.map(({ name }) => ({ name, amount: "0 g" }));
    const { figures, lines } = mendedBy({ weighed: [{ name: "tap water", amount: "400 g" }, ...none] }).value;
    expect(figures.map(({ now }) => now)).toEqual(figures.map(() => undefined));
    expect(lines.slice(0, 2).map(({ add }) => add.value)).toEqual(["888.9", "222.2"]);
  });

  test.each([
    ["less than the list", "350", "10", "short"],
    ["one step of its scale more, which that does not tell", "360.1", "0", "right"],
  ])("that is in by %s needs nothing else, as at the scale", (_, grams, add, kind) => {
    const answer = mendedBy(weighed("tap water", `${grams} g`));
    expect(answer.value.lines.map((line) => line.add.value)).toEqual(["0", "0", add, "0", "0"]);
    expect(answer.notes.map(({ code }) => code)).toContain("mend.fine");
    expect(standingOf("360", "0.1", grams).kind).toBe(kind);
  });

  test("that is in by two steps of its scale more is mended, as at the scale", () => {
    // 1390 × 360.2 / 360 = 1390.77 g of dough: 0.57 g of all else, 0.44 of it bread flour, which takes up the tenth that is missing
    const { lines, dough } = mendedBy(weighed("tap water", "360.2 g")).value;
    expect([lines[0]?.add.value, dough.value]).toEqual(["0.5", "1390.8"]);
    expect(standingOf("360", "0.1", "360.2")).toEqual({ kind: "over", by: "0.2" });
  });

  test.each([
    { mixer: { largest: "2 kg" }, code: "mend.mixer-holds" },
    { mixer: { largest: "1.5 kg" }, code: "mend.mixer" },
    { mixer: { largest: "1.11 kg", of: "flour" }, code: "mend.mixer" },
  ])("tells whether a mixer of $mixer holds it", ({ mixer, code }) => {
    const { notes } = mendedBy(weighed("tap water", "400 g"), { mixer });
    expect(notes.map((note) => note.code).filter((one) => one.startsWith("mend."))).toEqual([code]);
  });
});

/** 36 % of water, 0.6 % of sodium and 0.4 % of potassium carbonate, 1 % of salt: on 400 g of flour 144, 2.4, 1.6 and 4 g, listed as 144, 2, 2 and 4. */
const coarse = {
  flours: listed({ "bread flour": "100 %" }),
  alkali: listed({ "sodium carbonate": "0.6 %", "potassium carbonate": "0.4 %" }),
  salt: "1 %",
  batch: { flour: "400 g" },
  scales: [{ division: "1 g" }],
};
const dry = listed({ "sodium carbonate": "0 g", "potassium carbonate": "0 g", "table salt": "0 g" });

function totalsOf({ lines }: ReturnType<typeof mendedBy>["value"]) {
  return lines.map(({ total }) => total.value);
}

describe("on a coarse scale, a load", () => {
  // flour = water / 0.36, salts 0.6, 0.4 and 1 % of that, all to whole grams; the flour takes up what the total then misses:
  // 1050.3 and 613.3 g of dough are 1050 and 613, 1533.3 are 1533
  test.each([
    ["400", ["1111", "400", "7", "4", "11"]],
    ["274", ["760", "274", "5", "3", "8"]],
    ["288", ["800", "288", "5", "3", "8"]],
    ["160", ["444", "160", "3", "2", "4"]],
  ])("with %s g of water is the formula at its size, and not the rounded list times that", (water, totals) => {
    const wish = { weighed: [{ name: "tap water", amount: `${water} g` }, ...dry] };
    expect(totalsOf(mendedBy(wish, coarse).value)).toEqual(totals);
  });

  // 4 g are shown from 583 to 750 g of flour. At 700 g potassium carbonate is 2.8 and salt 7 g, so that 3 and 7 g make 1.00 % of
  // carbonates; at 4 / 0.006 = 667 g, 4, 3 and 7 g would make 1.05 %. 3 g of potassium carbonate are shown from 625 to 875 g:
  // at 800 g 5, 3 and 8 g come as near, with more flour
  test.each([
    ["sodium carbonate", "4 g"],
    ["potassium carbonate", "3 g"],
  ])("with too much of %s takes the size whose rounded weights come nearest", (name, amount) => {
    const { value, notes } = mendedBy(weighed(name, amount), coarse);
    expect(totalsOf(value)).toEqual(["700", "252", "4", "3", "7"]);
    expect(value.figures.find(({ label }) => label === "anhydrous salts")?.mended.value).toBe("1");
    const codes = notes.filter(({ loud }) => loud).map(({ code }) => code);
    expect(codes).toEqual(expect.arrayContaining(["mend.dry", "mend.off", "mend.coarse"]));
  });

  // 4 / 0.006 = 666.667 g, with 240, 4, 2.667 and 6.667 g 920 g of dough: the flour takes up the hundredth that the total misses
  test("takes the exact size where its scale is fine", () => {
    const { value } = mendedBy(weighed("sodium carbonate", "4 g"), { ...coarse, scales: [{ division: "0.01 g" }] });
    expect(totalsOf(value)).toEqual(["666.66", "240", "4", "2.67", "6.67"]);
  });

  test("has a step too much where a step is much of it, as at the scale", () => {
    expect([standingOf("2", "1", "3").kind, standingOf("144", "1", "145").kind]).toEqual(["over", "right"]);
  });

  // on the list, 90 g of stock solution bring the salts and 82 of the 144 g of water
  test.each(["tap water", "stock solution of the salts"])(
    "with a stock solution on its list is refused: %s",
    (name) => {
      const answer = mend(weighed(name, "100 g"), coarse);
      expect(answer.ok ? [] : answer.problems.map(({ code }) => code)).toEqual(["mend.stock"]);
    },
  );
});

describe("of what there is no more, a load", () => {
  const egg = { ...coarse, alkali: undefined, water: { added: "38 %" }, ingredients: listed({ "whole egg": "6 %" }) };

  test("gets the water of the egg from the tap, and is told what stays off", () => {
    const more = { ...egg, batch: { flour: "1000 g" }, scales: [{ division: "0.1 g" }] };
    const { value, notes } = mendedBy({ ...weighed("whole egg", "0 g"), noMore: ["whole egg"] }, more);
    const of = (label: string) => value.figures.find((one) => one.label === label);
    // 380 g of water on 1000 g of flour, wherever from, to a tenth of a gram
    expect(Math.abs(Number(of("added water")?.mended.value) - 38)).toBeLessThan(0.01);
    expect([of("whole egg")?.asked.value, of("whole egg")?.mended.value]).toEqual(["6", "0"]);
    expect(notes.map(told)).toContainEqual(expect.stringContaining("whole egg 0.00 % of flour, by the formula 6.00"));
    expect(notes.map(({ code }) => code)).not.toContain("mend.fine");
  });

  // 24 g on 1000 g of flour, where 10 g are right
  test("is told how far its alkali stays off", () => {
    const { notes } = mendedBy({ ...weighed("sodium carbonate", "24 g"), noMore: ["bread flour", "rye flour"] });
    expect(notes.map(told)).toContainEqual(
      expect.stringContaining("anhydrous salts 2.400 % of flour, by the formula 1.000"),
    );
  });

  // 270 g of water are right for 750 g of flour: 600 and 150 g, 7.5 g of soda and 15 g of salt
  test("is smaller where all else is not in yet", () => {
    const others = listed({ "bread flour": "0 g", "rye flour": "0 g", "sodium carbonate": "0 g", "table salt": "0 g" });
    const weighed = [{ name: "tap water", amount: "270 g" }, ...others];
    const { value } = mendedBy({ weighed, noMore: ["tap water"] });
    expect(totalsOf(value)).toEqual(["600", "150", "270", "7.5", "15"]);
  });

  test("without any flour has no figures", () => {
    const none = listed({ "bread flour": "0 g", "rye flour": "0 g" });
    expect(mendedBy({ weighed: none, noMore: ["bread flour", "rye flour"] }).value.figures).toEqual([]);
  });
});

describe("a larger load", () => {
  // twice the flour, twice its 1.5 % of starch
  test("gets its dusting by its flour", () => {
    const dusting = { name: "cornstarch", amount: "1.5 %" };
    const { value } = mendedBy(weighed("tap water", "720 g"), { dusting });
    expect([value.dusting?.planned.load.value, value.dusting?.total.value]).toEqual(["15", "30"]);
  });

  // of 2780 g of dough in loads of 1390 g, 720 g of water make all; of 4170 g, they leave one load
  test.each([
    ["2780 g", 0],
    ["4170 g", 1],
  ])("takes the place of others of %s of dough", (dough, left) => {
    const { notes } = mendedBy(weighed("tap water", "720 g"), { batch: { dough }, mixer: { largest: "1390 g" } });
    expect(notes.find(({ code }) => code === "mend.fewer-loads")?.facts).toMatchObject({ left });
  });

  test("is told in ounces of the scale", () => {
    const scales = [{ division: "0.005 oz" }];
    const rows = mendedBy(weighed("tap water", "20 oz"), { scales }).report().sections[0]?.blocks[0];
    const dough = rows?.kind === "table" ? rows.rows.at(-1)?.cells.map(({ text }) => text) : [];
    // 20 / 0.36 × 1.39 oz, each of five weights rounded
    expect(dough?.[4]).toMatch(/^77\.2[12]\d$/u);
  });
});
