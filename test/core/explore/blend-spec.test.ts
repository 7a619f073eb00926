import { told } from "@noodlewright/core";
import type { SpecBlend } from "@noodlewright/core/answers";
import type { Figure } from "@noodlewright/core/figure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { designBlend } from "#core/blend/spec-blend.ts";
import { formulaOf } from "#core/formula/formula.ts";
import { blendSearchReport } from "#core/report/blend-search-report.ts";
import { always } from "../../always.ts";
import { listed } from "../formula/worked-out.ts";
import { answered, codesOf } from "../told-of.ts";

const certificate = (protein: string, ash: string, more: object = {}) => ({
  kind: "flour",
  moisture: "14 %",
  protein,
  nitrogenFactor: 5.7,
  ash,
  allergens: ["wheat"],
  ...more,
});
const store = {
  plain: certificate("10.4 %", "0.50 %", { price: "0.90 EUR/kg" }),
  strong: certificate("12.4 %", "0.50 %", { price: "1.10 EUR/kg" }),
  dark: certificate("11.4 %", "1.00 %", { price: "0.80 EUR/kg" }),
};
const kitchen = {
  name: "harbour noodle",
  materials: store,
  flours: listed({ plain: "80 %", dark: "20 %" }),
  shelf: { strong: {} },
  water: { added: "36 %" },
  batch: { flour: "50 kg" },
};

function asked(input: object) {
  const { spec, formula } = answered(formulaOf(input));
  return { formula, outcome: designBlend(spec, formula) };
}
function design(input: object): SpecBlend {
  return answered(asked(input).outcome);
}
function shares({ answer }: SpecBlend, at = 0): Readonly<Record<string, number>> {
  if (answer.kind !== "found") throw new Error(told(answer.problem).found);
  return Object.fromEntries(answer.blends[at]?.shares.map(({ name, share }) => [name, Number(share.value)]) ?? []);
}
/** Cells of a table, as text. */
function cells(input: object, id: string): readonly (readonly string[])[] {
  const { formula, outcome } = asked(input);
  const blocks = blendSearchReport(formula, answered(outcome), { notes: [] }).sections.flatMap(
    (section) => section.blocks,
  );
  const table = blocks.find((block) => block.kind === "table" && block.id === id);
  return table?.kind === "table" ? table.rows.map((row) => row.cells.map(({ text }) => text)) : [];
}
function lines(input: object): string {
  const { formula, outcome } = asked(input);
  const { sections } = blendSearchReport(formula, answered(outcome), { notes: [] });
  return sections
    .flatMap((section) => section.blocks)
    .flatMap((block) => (block.kind === "text" ? block.lines : []))
    .join("\n");
}

describe("if nothing is changed", () => {
  test("comes first, with every target and every flour's own limit", () => {
    const input = {
      ...kitchen,
      shelf: { strong: {}, dark: { share: "at least 25 %" } },
      wanted: { protein: "at least 10.5 %" },
    };
    const { formula, outcome } = asked(input);
    const [first] = blendSearchReport(formula, answered(outcome), { notes: [] }).sections;
    expect(first?.id).toBe("unchanged");
    // 0.8 × 10.4 + 0.2 × 11.4 at 14 % moisture
    expect(cells(input, "unchanged").map((row) => [row[0], row[3], row[6]])).toEqual([
      ["protein", "10.6", "yes"],
      ["share of dark", "20", "no"],
    ]);
  });

  test("says so where all of it is met already", () => {
    expect(lines({ ...kitchen, wanted: { protein: "at least 10.5 %" } })).toContain("nothing has to be changed");
  });

  test("holds whole bags and the store against the blend as it is, and what is found", () => {
    const wanted = { protein: "at least 10.5 %" };
    const bagged = { ...kitchen, shelf: { strong: {}, plain: { bag: "25 kg" } }, wanted };
    expect(lines(bagged)).not.toContain("nothing has to be changed");
    // of 50 kg: 80 % are 40 kg, no whole bags of 25 kg
    expect(cells(bagged, "unchanged")[1]).toEqual(["plain", "whole bags of", "25", "40", "–", "kg", "no"]);
    expect(cells(bagged, "limits")[1]).toEqual(["plain", "whole bags of", "25", "25", "–", "kg", "yes"]);
    const short = { ...kitchen, stock: { dark: "4 kg" }, wanted };
    expect(lines(short)).not.toContain("nothing has to be changed");
    expect(cells(short, "unchanged")[1]).toEqual(["dark from the store", "at most", "4", "10", "−6", "kg", "no"]);
  });

  test("names whole bags among the limits that conflict, and what the flours reach without them", () => {
    const bag = { flours: [{ name: "plain", amount: "100 %" }], shelf: { plain: { bag: "60 kg" }, strong: {} } };
    const apart = { ...kitchen, ...bag, wanted: { protein: "at most 12 %" } };
    expect(cells(apart, "conflict").map(([limit]) => limit)).toContain("plain in whole bags of 60 kg");
    // 10.4 is out of reach by itself, but the bags keep the flours from coming nearer than 12.4
    expect(lines({ ...apart, wanted: { protein: "at most 10 %" } })).toContain("whole bags of 60 kg");
    const alone = { ...apart, shelf: { plain: { bag: "60 kg" } }, wanted: { protein: "at least 10 %" } };
    expect(cells(alone, "conflict").map(([limit]) => limit)).toEqual(["plain in whole bags of 60 kg"]);
  });

  test("tells a miss that lies within the lot's own plus or minus, and meets it over the whole range when asked", () => {
    const materials = { ...store, plain: { ...store.plain, proteinUncertainty: "0.3 %" } };
    const input = { ...kitchen, materials, wanted: { protein: "at least 10.7 %" } };
    // 10.6, and 0.8 × 0.3 more or less
    expect(cells(input, "unchanged")[0]?.at(-1)).toBe("perhaps, 10.36 to 10.84");
    expect(lines(input)).toContain("lies within what is known of the flours");
    const likely = Number(cells(input, "limits")[0]?.[3]);
    expect(likely).toBeGreaterThanOrEqual(10.7);
    expect(cells(input, "limits")[0]?.at(-1)).toMatch(/^likely, 10\.\d+ to 1\d\.\d+$/u);
    const sure = { ...input, wanted: { ...input.wanted, wholeRange: true } };
    expect(cells(sure, "limits")[0]?.at(-1)).toBe("yes");
    const { strong = 0, plain = 0, dark = 0 } = shares(design(sure));
    expect((strong * 12.4 + plain * 10.1 + dark * 11.4) / 100).toBeGreaterThanOrEqual(10.7);
  });
});

describe("a formula in grams that meets all of it", () => {
  const grams = {
    ...kitchen,
    flours: listed({ plain: "900 g", dark: "80 g" }),
    shelf: { strong: {}, dark: {} },
    batch: { flour: "50 kg" },
  };
  const wanted = { protein: "at least 10.4 %" };
  const share = (input: object) => Number(shares(design(input))["plain"]);
  const whole = (input: object): boolean => Number.isInteger(share(input));

  test("stays as it is, in no steps, with nothing to write down", () => {
    const input = { ...grams, wanted };
    // 900 g of 980 g
    expect(share(input)).toBeCloseTo(91.836_734_693_877_6, 12);
    expect(cells(input, "blend").map((row) => row.at(-1))).toEqual(["0.00", "0.00", ""]);
    expect(lines(input)).toContain("Nothing is changed: the flours meet all of it as they are");
    const { formula, outcome } = asked(input);
    const sections = blendSearchReport(formula, answered(outcome), { notes: [] }).sections.map(({ id }) => id);
    expect(sections.filter((id) => ["alternatives", "water", "spec"].includes(id))).toEqual([]);
  });

  test.each([
    ["alternatives are asked for", { wanted: { ...wanted, alternatives: 2 } }],
    ["another order is asked for", { wanted: { ...wanted, prefer: "most plain" } }],
    ["a target is missed", { wanted: { protein: "at least 10.5 %" } }],
    ["a flour is above its greatest share", { wanted, shelf: { dark: { share: "at most 5 %" } } }],
    ["the store holds less", { wanted, shelf: { dark: {} }, stock: { dark: "2 kg" } }],
    ["bags stay open", { wanted, shelf: { dark: { bag: "1 kg" } } }],
    ["too many flours are in", { wanted: { ...wanted, mostFlours: 1 } }],
    ["a ratio is off", { wanted, shelf: { dark: { ratio: { to: "plain", times: 1 } } } }],
  ])("is searched for where %s", (_, more) => {
    expect(whole({ ...grams, ...more })).toBe(true);
  });
});

const tenths = (least: number, most: number) => fc.integer({ min: least * 10, max: most * 10 }).map((one) => one / 10);
const milled = fc.record({
  protein: tenths(8, 15),
  moisture: tenths(10, 15),
  ash: tenths(0.3, 1.8),
  price: tenths(0.5, 3),
  wholegrain: fc.boolean(),
});

test("the blend that is shown has the figures that the formula has for its shares, of the same names and exactly", () => {
  always(25, [fc.array(milled, { minLength: 2, maxLength: 4 }), tenths(8, 15)], (mills, least) => {
    const materials = Object.fromEntries(
      mills.map(({ protein, moisture, ash, price, wholegrain }, index) => [
        `flour ${index}`,
        certificate(`${protein} %`, `${ash} %`, { moisture: `${moisture} %`, price: `${price} EUR/kg`, wholegrain }),
      ]),
    );
    const input = (amounts: readonly (readonly [name: string, amount: string])[]) => ({
      name: "any",
      materials,
      flours: amounts.map(([name, amount]) => ({ name, amount })),
      water: { added: "36 %" },
    });
    const shelf = Object.fromEntries(Object.keys(materials).map((name) => [name, {}]));
    const wanted = { protein: `at least ${least} %`, prefer: "cheapest" };
    const { answer } = design({ ...input([["flour 0", "100 %"]]), shelf, wanted });
    const blend = answer.kind === "found" ? answer.blends[0] : answer.nearest;
    const shown = blend?.shares.map(({ name, share }) => [name, `${share.value} %`] as const) ?? [];
    const { graph } = answered(formulaOf(input(shown))).formula;
    const kept = (figure: Figure | undefined) => figure && [figure.label, figure.value, figure.places];
    const ids = ["moisture", ...contents, "wholegrain", "price"].map((what) => `blend.${what}`);
    expect(blend?.figures.map(({ id }) => id)).toEqual(ids.map((id) => `${blend?.scope}.${id}`));
    expect(blend?.figures.map(kept)).toEqual(ids.map((id) => kept(graph[id])));
  });
});

const contents = ["protein", "gluten-protein", "ash"].flatMap((what) => [`${what}.as-is`, `${what}.14`]);

describe("what a noodle maker asks of a blend", () => {
  test("least of the flour moved: rye does not come in where a little strong flour does", () => {
    const input = { ...kitchen, shelf: { strong: {}, "rye flour": {} }, wanted: { protein: "at least 10.8 %" } };
    // 0.2 more protein: ten parts of strong flour, 2 above the plain, in place of the plain
    expect(shares(design(input))).toEqual({ plain: 70, dark: 20, strong: 10 });
  });

  test("dry gluten in tenths, the main flour takes the rest", () => {
    const input = { ...kitchen, shelf: { "vital wheat gluten": {} }, wanted: { protein: "at least 10.8 %" } };
    const found = shares(design(input));
    expect(found["vital wheat gluten"]).toBeLessThan(1);
    expect(found["dark"]).toBe(20);
    expect((found["plain"] ?? 0) + (found["vital wheat gluten"] ?? 0)).toBeCloseTo(80, 9);
  });

  test("at most so many flours", () => {
    const wanted = { protein: "11.0 %", ash: "0.55 %", mostFlours: 2 };
    const found = shares(design({ ...kitchen, wanted }));
    // without dark flour: 30 parts of strong flour, 2 above the plain of 10.4, bring 11.0
    expect(found).toEqual({ plain: 70, strong: 30 });
  });

  test("whole bags", () => {
    const shelf = { strong: { bag: "5 kg" }, dark: { bag: "5 kg" } };
    const found = shares(design({ ...kitchen, shelf, wanted: { protein: "at least 11.05 %" } }));
    // bags of 5 kg are tenths of 50 kg of flour
    expect(found).toEqual({ plain: 50, dark: 20, strong: 30 });
  });

  test("a window for ash", () => {
    const { dark = 0 } = shares(design({ ...kitchen, wanted: { ash: "0.52 to 0.53 %" } }));
    // 0.5 and half a hundredth for each part of dark flour
    expect([dark >= 4, dark <= 6]).toEqual([true, true]);
  });

  test("several stocks to use up", () => {
    const input = { ...kitchen, stock: { dark: "8 kg", strong: "10 kg" }, wanted: { prefer: "use up dark; strong" } };
    expect(shares(design(input))).toEqual({ plain: 64, dark: 16, strong: 20 });
  });

  test("the price of the batch", () => {
    const found = design({ ...kitchen, wanted: { batchPrice: "43 EUR", protein: "at least 10 %" } });
    const [blend] = found.answer.kind === "found" ? found.answer.blends : [];
    const price = blend?.figures.find(({ id }) => id === "alternative.1.blend.batch-price");
    // 50 kg at 0.86 EUR; the blend before costs 44
    expect(Number(price?.value)).toBeLessThanOrEqual(43);
    expect(shares(found)["dark"]).toBe(40);
  });

  test("no crumbs: a flour is in with at least 2 % or not at all, unless stated", () => {
    const wanted = { protein: "10.61 %", within: "0.02 %", prefer: "most strong", step: "0.5 %", alternatives: 8 };
    const all = (more: object) => {
      const { answer } = design({ ...kitchen, wanted: { ...wanted, ...more } });
      return answer.kind === "found"
        ? answer.blends.flatMap((blend) => blend.shares.map(({ share }) => Number(share.value)))
        : [];
    };
    expect(Math.min(...all({}))).toBeGreaterThanOrEqual(2);
    expect(Math.min(...all({ leastShare: "8 %" }))).toBeGreaterThanOrEqual(8);
    expect(Math.min(...all({ leastShare: "0 %" }))).toBeLessThan(2);
  });
});

describe("the nearest blend where none meets everything", () => {
  const wanted = { ash: "at most 0.5 %", wholegrain: "at least 20 %", protein: "at least 10.4 %" };
  const whole = certificate("11.4 %", "1.00 %", { wholegrain: true });
  const input = { ...kitchen, materials: { ...store, dark: whole }, wanted };

  test("weighs the misses of all targets against one another, and says how", () => {
    // a part of wholegrain flour less would miss 1 % of wholegrain to win 0.005 of ash, of which 0.05 weighs as much
    const { answer } = design(input);
    const nearest = answer.kind === "found" ? [] : (answer.nearest?.shares ?? []);
    expect(nearest.map(({ name, share }) => `${name} ${share.value}`)).toEqual(["plain 80", "dark 20"]);
    expect(lines(input)).toContain("0.1 % of protein, 0.05 % of ash, 1 % of wholegrain share");
  });
});

describe("a style", () => {
  test("is a question by its published ranges, and a found blend is held against them", () => {
    const { outcome } = asked({ ...kitchen, style: "yellow alkaline", shelf: { strong: { share: "at least 95 %" } } });
    // the range read in a textbook's copy: protein 10 to 12
    const reached = answered(outcome).answer;
    expect(reached.kind === "found" ? [] : reached.conflicts.flat().map(({ id }) => id)).toContain("protein.most");
    const found = asked({ ...kitchen, style: "yellow alkaline" });
    expect(found.outcome.ok && found.outcome.notes.map(({ code }) => code)).toEqual(["blend.style"]);
    const outside = asked({ ...kitchen, style: "yellow alkaline", wanted: { protein: "at least 12.2 %" } });
    const notes = outside.outcome.ok ? outside.outcome.notes : [];
    expect(notes.map(({ code }) => code)).toContain("style.outside");
  });
});

test("takes the blend of a formula in grams", () => {
  const flours = listed({ plain: "1000 g", dark: "100 g" });
  const found = design({ ...kitchen, flours, water: { added: "360 g" }, wanted: { protein: "at least 10.6 %" } });
  expect(found.unchanged.map(({ holds }) => holds)).toEqual([false]);
  expect(shares(found)).toEqual({ plain: 85, dark: 9, strong: 6 });
});

test("a price asked in another currency than that of the flours is refused", () => {
  expect(codesOf(asked({ ...kitchen, wanted: { price: "1 USD/kg" } }).outcome)).toEqual(["shelf.currencies"]);
});
