import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { runBuilt } from "../cli/built.ts";
import { folderFor } from "../cli/folder.ts";
import { asOnPaper, findings, openFile, printedPages, startBrowser } from "./browser.ts";

const out = folderFor();
let browser: Browser;

beforeAll(async () => {
  browser = await startBrowser();
});

afterAll(() => browser.close());

/** Loads of the school noodle, from one to a long day. */
const kilograms = [12, 40, 60, 80, 110, 160, 240];

test.each(kilograms)(
  "%s kg of dough: a card that takes more than two pages says so, and is not cut off",
  async (kg) => {
    const file = join(out, `${kg}.html`);
    const { stderr } = runBuilt(["card", "examples/school-noodle.yaml", "--dough", `${kg} kg`, "-o", file]);
    const { page } = await openFile(browser, file);
    await asOnPaper(page, "a4");
    const pages = await printedPages(page);
    expect(pages.length <= 2 || stderr.includes("the card may take up to")).toBe(true);
    expect(await findings(page, "overflowing")).toEqual([]);
    await page.close();
  },
);

test("fewer loads make it fit again", async () => {
  const file = join(out, "few.html");
  const flags = ["--dough", "240 kg", "--loads", "1-3,7", "-o", file];
  const { stderr } = runBuilt(["card", "examples/school-noodle.yaml", ...flags]);
  expect(stderr).not.toContain("may take");
  const { page } = await openFile(browser, file);
  expect(await page.locator("th.tick").allTextContents()).toEqual(["load 1", "load 2", "load 3", "load 7"]);
  await asOnPaper(page, "a4");
  expect((await printedPages(page)).length).toBeLessThanOrEqual(2);
  await page.close();
});
