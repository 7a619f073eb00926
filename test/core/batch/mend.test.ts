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
    expect(mendedBy(weighed("tap water", "360.2 g")).value.lines[0]?.add.value).toBe("0.4");
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
