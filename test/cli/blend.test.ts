import type { Report } from "@noodlewright/core";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import * as z from "zod";
import { splitWords } from "../docs/console-blocks.ts";
import { runBuilt } from "./built.ts";
import { folderFor } from "./folder.ts";
import { readProblems } from "./read-problems.ts";

const spec = "examples/school-barley-noodle.yaml";

interface Ran {
  readonly status: number | null;
  readonly report: Report;
}

function reported(...args: readonly string[]): Ran {
  const { status, stdout, stderr } = runBuilt([...args, "--format", "json"]);
  expect(stderr).toBe("");
  return { status, report: JSON.parse(stdout) as Report };
}

const value = ({ report }: Ran, id: string): number => Number(report.figures[id]?.value);
/** The share of a flour in the shown blend. */
const shareIn = ({ figures }: Report, name: string): number =>
  Number(Object.values(figures).find(({ id, label }) => id.endsWith(".parts") && label === `share of ${name}`)?.value);
const sectionsOf = ({ report }: Ran): readonly string[] => report.sections.map(({ id }) => id);

describe("blend", () => {
  it("finds the wholegrain and barley noodle of the school, and its alternatives", () => {
    const ran = reported("blend", spec);
    expect(ran.status).toBe(0);
    expect(value(ran, "alternative.1.blend.protein.14")).toBeGreaterThanOrEqual(11.5);
    expect(value(ran, "alternative.1.blend.wholegrain")).toBeGreaterThanOrEqual(20);
    expect(shareIn(ran.report, "barley flour")).toBeGreaterThanOrEqual(10);
    expect(shareIn(ran.report, "vital wheat gluten")).toBeLessThanOrEqual(4);
    expect(value(ran, "alternative.2.blend.protein.14")).toBeGreaterThanOrEqual(11.5);
    expect(runBuilt(["blend", spec, "--format", "json"]).stdout).toBe(
      runBuilt(["blend", spec, "--format", "json"]).stdout,
    );
  });

  it("takes flags before the spec, and shows the square rule for two flours", () => {
    const reach = ["--protein", "11.60 %", "--within", "0.05 %", "--step", "0.5 %", "--alternatives", "1"];
    const shelf = ["--shelf", "vital wheat gluten=0 %", "--shelf", "barley flour"];
    const { status, stdout } = runBuilt(["blend", "examples/barley-out-of-reach.yaml", ...reach, ...shelf]);
    expect([status, stdout]).toEqual([0, expect.stringMatching(/^ {2}protein +± 0\.05 +11\.6 +11\.6\d+ /mu)]);
    const two = folderFor({
      "two.yaml":
        "name: two\nflours: [{ name: bread flour, amount: 90 % }, { name: vital wheat gluten, amount: 10 % }]\nwater: { added: 36 % }\n",
    });
    const square = runBuilt(["blend", "two.yaml", "--protein", "13.50 %", "--step", "0.1 %"], { cwd: two });
    expect(square.stdout).toContain("The square rule, exactly");
    expect(square.stdout).toMatch(/share of vital wheat gluten +\d+\.\d+ % of flour/u);
  });

  it("takes whole bags, few flours, a window for ash and a price of the batch by flags", () => {
    const priced = folderFor({
      "party.yaml":
        "name: party\nflours: [{ name: bread flour, amount: 90 % }, { name: cake flour, amount: 10 % }]\nshelf: { all-purpose flour: {}, rye flour: {} }\nprices: { bread flour: 1.2 EUR/kg, cake flour: 1.4 EUR/kg, all-purpose flour: 0.8 EUR/kg, rye flour: 1 EUR/kg }\nwater: { added: 36 % }\nbatch: { flour: 10 kg }\n",
    });
    const ask = (...flags: readonly string[]): Report =>
      JSON.parse(runBuilt(["blend", "party.yaml", ...flags, "--format", "json"], { cwd: priced }).stdout) as Report;
    const cheap = ask("--protein", "at least 10 %", "--batch-price", "10.50 EUR");
    expect(Number(cheap.figures["alternative.1.blend.batch-price"]?.value)).toBeLessThanOrEqual(10.5);
    const bags = ask("--protein", "at most 11 %", "--bag", "cake flour=700 g");
    expect([shareIn(bags, "cake flour") > 10, shareIn(bags, "cake flour") % 7]).toEqual([true, 0]);
    expect(bags.notes.map(({ code }) => code)).toContain("blend.bags");
    const few = ask("--ash", "0.45 to 0.50 %", "--protein", "at least 10 %", "--most-flours", "1", "--whole-range");
    const ash = Number(few.figures["alternative.1.blend.ash.14"]?.value);
    expect([ash >= 0.45, ash <= 0.5]).toEqual([true, true]);
    const used = ask("--prefer", "use up rye flour; cake flour", "--protein", "at least 11 %", "--least-share", "10 %");
    expect(used.sections.map(({ id }) => id)).toContain("limits");
  });

  it("says why there is none, by how much each limit would have to move, and shows the nearest", () => {
    const ran = reported("blend", "examples/barley-out-of-reach.yaml");
    expect(ran.status).toBe(1);
    expect(sectionsOf(ran).slice(0, 4)).toEqual(["unchanged", "no-answer", "conflict", "flour-needed"]);
    const nearest = value(ran, "nearest.blend.protein.14");
    expect(nearest).toBeLessThan(12.9);
    const eased = ["--protein", `at least ${Math.floor(nearest * 100) / 100} %`];
    expect(reported("blend", "examples/barley-out-of-reach.yaml", ...eased).status).toBe(0);
  });

  it.each([
    ["--protein eleven", "bounds.unreadable"],
    ["--protein '12 to 11 %'", "bounds.unreadable"],
    ["--step '0.3 %'", "blend.step"],
    ["--prefer dearest", "wanted.prefer"],
    ["--basis wet", "basis.unreadable"],
    ["--alternatives 99", "spec.size"],
    ["--bag 'mill strong flour'", "quantity.unreadable"],
    ["--batch-price cheap", "price.unreadable"],
    ["--most-flours 0", "spec.size"],
    ["--shelf 'flour of nowhere'", "materials.unknown", "shelf"],
    ["--shelf 'rye flour=heaps'", "bounds.unreadable"],
    ["--prefer 'most oat flour'", "blend.unknown-flour"],
  ])("refuses %s", (flags, code, where = flags.split(" ")[0]) => {
    const { status, stdout, stderr } = runBuilt(["blend", spec, ...splitWords(flags)]);
    expect([status, stdout]).toEqual([2, ""]);
    const [problem] = readProblems(stderr);
    expect(problem?.code).toBe(code);
    expect(`${problem?.where} ${problem?.path}`).toContain(where);
  });
});

describe("replace and lot", () => {
  it("replace a flour that is not to be had, protein held", () => {
    const ran = reported("replace", "examples/new-lot.yaml", "--missing", "whole wheat flour");
    expect(ran.status).toBe(0);
    const off = value(ran, "alternative.1.blend.protein.14") - value(ran, "blend.protein.14");
    expect(Math.abs(off)).toBeLessThanOrEqual(0.05);
    expect(shareIn(ran.report, "whole wheat flour")).toBe(0);
  });

  it("replace egg by dried egg and water, the dry matter held", () => {
    const ran = reported("replace", spec, "--missing", "whole egg", "--with", "dried whole egg");
    // USDA SR28: raw whole egg 76.15 % water, dried whole egg 2.78 % water
    expect(value(ran, "replaced.amount")).toBeCloseTo((4 * 23.85) / 97.22, 2);
    expect(value(ran, "replaced.tap") - value(ran, "water.tap")).toBeCloseTo(4 - (4 * 23.85) / 97.22, 2);
  });

  it("correct the blend for the lot of the spec, and for one on the command line", () => {
    const ran = reported("lot", "examples/new-lot.yaml");
    expect(ran.status).toBe(0);
    expect(Math.abs(value(ran, "alternative.1.blend.protein.14.difference"))).toBeLessThanOrEqual(0.05);
    // the kitchen has an absorption for every flour of both blends, so that the water has a range
    expect(ran.report.figures["alternative.1.water.after"]?.range).toBeDefined();
    const flags = ["--of", "mill strong flour", "--protein", "12.3 %", "--moisture", "13.6 %"];
    const short = reported("lot", "examples/school-noodle.yaml", ...flags);
    // 2.4 kg of whole wheat flour are less than 15 % of the flour for 320 bowls
    expect(short.report.notes.map(({ code }) => code)).toContain("blend.store-short");
    expect(shareIn(short.report, "whole wheat flour")).toBeLessThan(15);
    // USDA SR28 20083: 13.36 % water, as the catalogue has it, so that nothing changes
    const unchanged = ["--of", "bread flour", "--moisture", "13.36 %"];
    const written = reported("lot", "examples/written-in-grams.yaml", ...unchanged);
    expect(value(written, "alternative.1.water.after")).toBeCloseTo(value(written, "water.added"), 12);
  });

  it("write the new lot and the new water so that they can be gone on with", () => {
    const figures = { like: "bread flour", moisture: "13.8 %", protein: "12.4 %", nitrogenFactor: 5.7 };
    const lot = { moisture: "14.4 %", protein: "11.9 %", proteinBasis: "14 % mb", nitrogenFactor: 5.7 };
    const written = {
      name: "t",
      flours: [
        { name: "mill flour", amount: "70 %", figures },
        { name: "all-purpose flour", amount: "30 %" },
      ],
      water: { added: "36 %" },
      lot: { of: "mill flour", figures: { ...lot, recorded: { lotNumber: "0298", farinographAbsorption: "61 %" } } },
    };
    const { stdout } = runBuilt(["lot", "-"], { input: JSON.stringify(written) });
    const block = /To go on with, in the spec\n([\s\S]*?)\n\n/u.exec(stdout)?.[1] ?? "";
    const flour = z.object({ name: z.string(), amount: z.string(), figures: z.looseObject({}).optional() });
    const fragment = z.object({ flours: z.array(flour), water: z.object({ added: z.string() }) });
    const { flours, water } = fragment.parse(parse(block));
    const asFlour = flours.map((one) => (one.figures ? { ...one, figures: { ...figures, ...one.figures } } : one));
    expect(asFlour[0]?.figures).toEqual({ ...figures, ...written.lot.figures });
    const next = { ...written, flours: asFlour, water };
    const ran = (command: string, input: object): Ran => {
      const { status, stdout: json } = runBuilt([command, "-", "--format", "json"], { input: JSON.stringify(input) });
      return { status, report: JSON.parse(json) as Report };
    };
    const [now, then] = [ran("lot", written), ran("formula", next)];
    expect(value(then, "blend.moisture")).toBeCloseTo(value(now, "alternative.1.blend.moisture"), 9);
    expect(value(then, "water.added")).toBeCloseTo(value(now, "alternative.1.water.after"), 2);
  });
});

describe("tolerance and trial", () => {
  it("tell the error that matters, the same for one seed, within the exact range for another", () => {
    const ran = reported("tolerance", spec, "--runs", "500");
    expect(ran.report.figures["tolerance.dough.water"]?.range).toBeDefined();
    const table = runBuilt(["tolerance", spec, "--runs", "500"]).stdout;
    expect(table).toContain("Which error matters");
    expect(table).toContain("█");
    const csv = (seed: string) =>
      runBuilt(["tolerance", spec, "--runs", "500", "--seed", seed, "--format", "csv", "--table", "water-trials"])
        .stdout;
    expect(csv("1")).not.toBe(csv("7"));
    expect(csv("7")).toBe(csv("7"));
    const svg = runBuilt(["tolerance", spec, "--runs", "500", "--format", "svg", "--picture", "alkali-causes"]);
    expect(svg.stdout).toMatch(/^<svg/u);
  });

  it("lay a trial out", () => {
    const ran = reported("trial", spec, "--flour", "300 g", "--step", "2 %");
    const water = [1, 2, 3].map((number) => value(ran, `trial.${number}.water.1.mass`));
    // 2 % of 300 g apart
    expect([(water[1] ?? 0) - (water[0] ?? 0), (water[2] ?? 0) - (water[1] ?? 0)]).toEqual([6, 6]);
  });
});

describe("a flour with only a label, and a style", () => {
  const folder = folderFor({
    "bag.yaml":
      "name: from the shop\nstyle: Hokkien\nflours: [{ name: flour of the bag, amount: 100 %, figures: { label: { protein: 4 g, serving: 30 g, rules: US }, allergens: [wheat] } }]\nwater: { added: 34 % }\nalkali: [{ name: sodium carbonate, amount: 1 % }]\nsalt: 3 %\nbatch: { bowls: 10, rawWeight: 120 g }\n",
  });

  it.each([["formula"], ["batch"], ["nutrition"], ["trial"], ["tolerance"]])("work in %s", (command) => {
    const { status, stdout } = runBuilt([command, "bag.yaml"], { cwd: folder });
    expect(status).toBe(0);
    expect(stdout).toContain("flour of the bag");
  });

  it("show the range of protein and water, and where the style is left", () => {
    const { stdout } = runBuilt(["formula", "bag.yaml"], { cwd: folder });
    expect(stdout).toMatch(/protein at 14 % mb: from 10\.40 to 15\.18 %/u);
    expect(stdout).toMatch(/dough water: from \d+\.\d+ to \d+\.\d+ % of dough/u);
    expect(stdout).toContain("salt of 3 % is outside what is published for hokkien");
  });
});
