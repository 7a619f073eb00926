import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { runBuilt } from "../cli/built.ts";
import { folderFor } from "../cli/folder.ts";
import { asOnPaper, axeFindings, examples, findings, openFile, type Paper, papers, printedPages } from "./browser.ts";

/** A card with everything on it: weights, water, times, passes. */
const full = "school-noodle-with-times";
const out = folderFor();

const fileOf = (paper: Paper, name: string): string => join(out, paper, `${name}.html`);

beforeAll(async () => {
  for (const paper of ["a4", "letter"] as const) {
    const { stderr } = runBuilt(["cards", "examples", "-o", join(out, paper), "--paper", paper]);
    expect(stderr).toContain(`Wrote ${examples.length} cards and index.html`);
    expect(stderr).not.toContain("may take");
    const flags = ["--serve", "12:15", "--paper", paper, "-o", fileOf(paper, full)];
    const { status, stderr: said } = runBuilt(["card", "examples/school-noodle.yaml", ...flags]);
    expect([status, said]).toEqual([0, expect.stringMatching(/^Wrote .*\n$/u)]);
    runBuilt([
      "card",
      "examples/school-noodle.yaml",
      "--dough",
      "150 kg",
      ...flags.slice(0, -1),
      fileOf(paper, "long-day"),
    ]);
  }
});

describe.each(["a4", "letter"] as const)("on %s", (paper) => {
  test.each([...examples, full, "index"])("the card of %s prints whole, on one or two pages", async (name) => {
    const page = await openFile(fileOf(paper, name));
    await asOnPaper(page, paper);
    expect(await findings(page, "overflowing")).toEqual([]);
    expect(await findings(page, "pictureFaults")).toEqual([]);
    expect(await findings(page, "livelyParts")).toEqual([]);
    if (name !== "index") {
      const pages = await printedPages(page);
      expect(pages.length).toBeGreaterThanOrEqual(1);
      expect(pages.length).toBeLessThanOrEqual(2);
      expect(new Set(pages)).toEqual(new Set([papers[paper].points]));
    }
  });
});

test.each([...examples, full, "index"])("axe-core finds nothing on the card of %s", async (name) => {
  const page = await openFile(fileOf("a4", name));
  expect(await axeFindings(page)).toEqual([]);
  await page.emulateMedia({ media: "print" });
  expect(await axeFindings(page)).toEqual([]);
});

test("with a wider font the cards still fit their pages", async () => {
  for (const paper of ["a4", "letter"] as const) {
    for (const name of [...examples, full]) {
      const page = await openFile(fileOf(paper, name));
      await page.addStyleTag({ content: `:root { font-family: "DejaVu Sans", Verdana, sans-serif !important; }` });
      await asOnPaper(page, paper);
      expect([name, paper, await findings(page, "overflowing")]).toEqual([name, paper, []]);
      expect([name, paper, (await printedPages(page)).length <= 2]).toEqual([name, paper, true]);
    }
  }
});

test("a card has what a cook works by: a box and a line for every weight of every load, water, passes, times", async () => {
  const page = await openFile(fileOf("a4", full));
  const rows = page.locator("#weights-1 tbody tr:not(.total, .sign)");
  expect(await rows.count()).toBe(7);
  expect(await page.locator("#weights-1 .tick .box").count()).toBe(7 * 3);
  // The true weight and the lot of each, and for each load the initials and the time.
  expect(await page.locator("#weights-1 .tick .line").count()).toBe(7 * 3 * 2 + 2 * 3);
  expect(await page.locator("#water .line").count()).toBe(4);
  expect(await page.locator("section").evaluateAll((all) => all.map(({ id }) => id))).toEqual([
    "allergens",
    "weights-1",
    "water",
    "loads",
    "passes",
    "sheets",
    "cautions",
  ]);
  // The sheet of each pass is drawn beside its gap.
  expect(await page.locator("#passes tbody .bar").count()).toBe(7);
});

test.each([...examples, full, "index"])("the card of %s reads on a phone without sideways scroll", async (name) => {
  const page = await openFile(fileOf("a4", name));
  await page.setViewportSize({ width: 390, height: 800 });
  expect(await page.evaluate("document.documentElement.scrollWidth")).toBe(390);
});

test("paper has no command words, and the dial is on the drawing", async () => {
  for (const name of [...examples, full]) {
    const page = await openFile(fileOf("a4", name));
    const text = (await page.locator("main > :not(header)").allTextContents()).join(" ");
    expect([name, /noodlewright|--\w|sha256sum/u.exec(text)?.[0]]).toEqual([name, undefined]);
  }
});

test.each([
  ["evening-class", "#passes td.setting"],
  ["evening-class", "#passes td.gap"],
  [full, "#passes td.gap"],
  [full, "#loads tbody td"],
  [full, "#weights-1 td.weight"],
  ["long-day", "#loads tbody td"],
])("on the card of %s, %s is read from a step away", async (name, cells) => {
  const page = await openFile(fileOf("a4", name));
  await asOnPaper(page, "a4");
  const all = `[...document.querySelectorAll(${JSON.stringify(cells)})]`;
  expect(Number(await page.evaluate(`${all}.length`))).toBeGreaterThan(2);
  const px = Number(
    await page.evaluate(`Math.min(...${all}.map((one) => parseFloat(getComputedStyle(one).fontSize)))`),
  );
  // Common practice, no source: digits of 3 mm are read from a metre; digits are 0.7 of the size of their font.
  expect((px / 96) * 25.4 * 0.7).toBeGreaterThan(3);
});

test("a card of 16 ingredients begins its list on the first page", async () => {
  const names = ["whole egg", "vital wheat gluten", "potato starch", "tapioca starch", "egg yolk", "egg white"];
  const more = ["rice flour", "rye flour", "oat flour", "buckwheat flour"];
  const spec = {
    name: "Sixteen",
    flours: [{ name: "bread flour", amount: "100 %" }],
    water: { added: "36 %" },
    alkali: [{ name: "sodium carbonate", amount: "1 %" }],
    salt: "1 %",
    dusting: { name: "cornstarch", amount: "2 %" },
    ingredients: [...names, ...more].map((one) => ({ name: one, amount: "1 %" })),
    batch: { dough: "40 kg" },
    mixer: { largest: "10 kg", of: "flour" },
  };
  const file = join(out, "sixteen.html");
  runBuilt(["card", "-", "-o", file], { input: JSON.stringify(spec) });
  const page = await openFile(file);
  await asOnPaper(page, "a4");
  expect(await page.evaluate("getComputedStyle(document.querySelector('.weights')).breakInside")).toBe("auto");
  expect((await page.locator("#allergens").boundingBox())?.y).toBeLessThan(200);
  expect((await printedPages(page)).length).toBeLessThanOrEqual(2);
});

test("one load of an ordinary spec, with water, day and passes, fits one page of A4 and of Letter", async () => {
  for (const paper of ["a4", "letter"] as const) {
    const file = join(out, `one-${paper}.html`);
    const flags = ["--serve", "12:15", "--dough", "7 kg", "--paper", paper, "-o", file];
    runBuilt(["card", "examples/school-noodle.yaml", ...flags]);
    const page = await openFile(file);
    expect(await page.locator("#weights-1, #water, #loads, #passes, #sheets").count()).toBe(5);
    await asOnPaper(page, paper);
    expect([paper, (await printedPages(page)).length]).toEqual([paper, 1]);
  }
});

test("the index opens every card", async () => {
  const page = await openFile(fileOf("a4", "index"));
  const links = page.locator("a");
  expect(await links.count()).toBe(examples.length);
  for (let index = 0; index < examples.length; index += 1) {
    const title = await links.nth(index).textContent();
    await links.nth(index).click();
    expect(await page.locator("h1").textContent()).toBe(title);
    await page.goBack();
  }
});

/** Loads of the school noodle, from one to a long day. */
const kilograms = [12, 40, 60, 80, 110, 160, 240];

test.each(kilograms)(
  "%s kg of dough: a card that takes more than two pages says so, and is not cut off",
  async (kg) => {
    const file = join(out, `${kg}.html`);
    const { stderr } = runBuilt(["card", "examples/school-noodle.yaml", "--dough", `${kg} kg`, "-o", file]);
    const page = await openFile(file);
    await asOnPaper(page, "a4");
    const pages = await printedPages(page);
    expect(pages.length <= 2 || stderr.includes("the card may take up to")).toBe(true);
    expect(await findings(page, "overflowing")).toEqual([]);
  },
);

test("fewer loads make it fit again", async () => {
  const file = join(out, "few.html");
  const flags = ["--dough", "240 kg", "--loads", "1-3,7", "-o", file];
  const { stderr } = runBuilt(["card", "examples/school-noodle.yaml", ...flags]);
  expect(stderr).not.toContain("may take");
  const page = await openFile(file);
  expect(await page.locator("th.tick").allTextContents()).toEqual(["load 1", "load 2", "load 3", "load 7"]);
  await asOnPaper(page, "a4");
  expect((await printedPages(page)).length).toBeLessThanOrEqual(2);
});
