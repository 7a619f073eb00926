import { readdirSync } from "node:fs";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { runBuilt } from "../cli/built.ts";
import { folderFor } from "../cli/folder.ts";
import {
  asOnPaper,
  axeFindings,
  findings,
  openFile,
  type Paper,
  papers,
  printedPages,
  startBrowser,
} from "./browser.ts";

/** In the folder of the examples, a kitchen file and a spec that is wrong on purpose have no card. */
const without = ["harbour-store", "wrong-on-purpose"];
const examples = readdirSync(new URL("../../examples", import.meta.url))
  .filter((name) => name.endsWith(".yaml"))
  .map((name) => name.replace(".yaml", ""))
  .filter((name) => !without.includes(name));

/** A card with everything on it: weights, water, times, passes. */
const full = "school-noodle-with-times";
const out = folderFor();
let browser: Browser;

const fileOf = (paper: Paper, name: string): string => join(out, paper, `${name}.html`);

beforeAll(async () => {
  browser = await startBrowser();
  for (const paper of ["a4", "letter"] as const) {
    const { stderr } = runBuilt(["cards", "examples", "-o", join(out, paper), "--paper", paper]);
    expect(stderr).toContain(`Wrote ${examples.length} cards and index.html`);
    expect(stderr).not.toContain("may take");
    const flags = ["--serve", "12:15", "--paper", paper, "-o", fileOf(paper, full)];
    const { status, stderr: said } = runBuilt(["card", "examples/school-noodle.yaml", ...flags]);
    expect([status, said]).toEqual([0, expect.stringMatching(/^Wrote .*\n$/u)]);
  }
});

afterAll(() => browser.close());

describe.each(["a4", "letter"] as const)("on %s", (paper) => {
  test.each([...examples, full, "index"])("the card of %s prints whole, on one or two pages", async (name) => {
    const { page, misdeeds } = await openFile(browser, fileOf(paper, name));
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
    expect(misdeeds).toEqual([]);
    await page.close();
  });
});

test.each([...examples, full, "index"])("axe-core finds nothing on the card of %s", async (name) => {
  const { page } = await openFile(browser, fileOf("a4", name));
  expect(await axeFindings(page)).toEqual([]);
  await page.emulateMedia({ media: "print" });
  expect(await axeFindings(page)).toEqual([]);
  await page.close();
});

test("with a wider font the cards still fit their pages", async () => {
  for (const paper of ["a4", "letter"] as const) {
    for (const name of [...examples, full]) {
      const { page } = await openFile(browser, fileOf(paper, name));
      await page.addStyleTag({ content: `:root { font-family: "DejaVu Sans", Verdana, sans-serif !important; }` });
      await asOnPaper(page, paper);
      expect([name, paper, await findings(page, "overflowing")]).toEqual([name, paper, []]);
      expect([name, paper, (await printedPages(page)).length <= 2]).toEqual([name, paper, true]);
      await page.close();
    }
  }
});

test("a card has what a cook works by: a box and a line for every weight of every load, water, passes, times", async () => {
  const { page } = await openFile(browser, fileOf("a4", full));
  const rows = page.locator("#weights-1 tbody tr:not(.total)");
  expect(await rows.count()).toBe(7);
  expect(await page.locator("#weights-1 .tick .box").count()).toBe(7 * 3);
  expect(await page.locator("#weights-1 .tick .line").count()).toBe(7 * 3);
  expect(await page.locator("#weights-1 td.lot .line").count()).toBe(7);
  expect(await page.locator("section").evaluateAll((all) => all.map(({ id }) => id))).toEqual([
    "weights-1",
    "water",
    "loads",
    "allergens",
    "passes",
    "sheets",
    "cautions",
  ]);
  expect(await page.locator("#passes svg").count()).toBe(1);
  await page.close();
});

test("the index opens every card", async () => {
  const { page } = await openFile(browser, fileOf("a4", "index"));
  const links = page.locator("a");
  expect(await links.count()).toBe(examples.length);
  for (let index = 0; index < examples.length; index += 1) {
    const title = await links.nth(index).textContent();
    await links.nth(index).click();
    expect(await page.locator("h1").textContent()).toBe(title);
    await page.goBack();
  }
  await page.close();
});
