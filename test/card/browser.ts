import { existsSync, readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { pathToFileURL } from "node:url";
import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect } from "vitest";

/** Where Chromium is. */
const executablePath = process.env["CHROMIUM"] ?? "/usr/bin/chromium";
const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const inPage = readFileSync(new URL("in-page.js", import.meta.url), "utf8");

/** In the folder of the examples, a kitchen file and a spec that is wrong on purpose have no card and no page. */
const without = ["harbour-store", "wrong-on-purpose"];
export const examples = readdirSync(new URL("../../examples", import.meta.url))
  .filter((name) => name.endsWith(".yaml"))
  .map((name) => name.replace(".yaml", ""))
  .filter((name) => !without.includes(name));

let browser: Browser;
const opened = new Set<Page>();
/** What the pages of a test did that a card must not do. */
export const misdeeds: string[] = [];

// Without Chromium the tests of the cards fail and say what to install.
beforeAll(async () => {
  if (!existsSync(executablePath)) {
    throw new Error(
      `there is no Chromium at ${executablePath}: install it (Debian: apt-get install chromium), or name it with CHROMIUM=`,
    );
  }
  browser = await chromium.launch({
    executablePath,
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
});

// Whatever a test is of, its pages do nothing that a card must not do: talk to the console, ask the network, open dialogs.
afterEach(async () => {
  await Promise.all([...opened].map((page) => page.context().close()));
  opened.clear();
  expect(misdeeds.splice(0)).toEqual([]);
});

afterAll(() => browser.close());

/** Opens a file in a page of its own, which is watched and closed after the test. */
export async function openFile(path: string, options: BrowserContextOptions = {}): Promise<Page> {
  const page = await (await browser.newContext(options)).newPage();
  opened.add(page);
  page.on("console", (message) => misdeeds.push(`console: ${message.text()}`));
  page.on("pageerror", (error) => misdeeds.push(`error: ${error.message}`));
  page.on("request", (request) => {
    // A page makes a blob of its own text, and a tap on a link of the index opens a card.
    if (!request.isNavigationRequest() && !request.url().startsWith("blob:"))
      misdeeds.push(`request: ${request.url()}`);
  });
  page.on("dialog", (dialog) => {
    misdeeds.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  await page.goto(pathToFileURL(path).href);
  return page;
}

/** Printable width, px at 96 to the inch, and size in points, of the papers. ISO 216 and ANSI/ASME Y14.1. */
export const papers = {
  a4: { width: Math.floor(((210 - 24) / 25.4) * 96), points: "595 842" },
  letter: { width: Math.floor(((215.9 - 24) / 25.4) * 96), points: "612 792" },
} as const;

export type Paper = keyof typeof papers;

/** Shows the page as its paper will: print style, printable width. */
export async function asOnPaper(page: Page, paper: Paper): Promise<void> {
  await page.emulateMedia({ media: "print" });
  await page.setViewportSize({ width: papers[paper].width, height: 900 });
}

/** Asks the page what it finds wrong with itself. */
export async function findings(
  page: Page,
  what: "overflowing" | "pictureFaults" | "livelyParts",
): Promise<readonly string[]> {
  return texts(await page.evaluate(`(() => { ${inPage}; return ${what}();  })()`));
}

function texts(answer: unknown): readonly string[] {
  return Array.isArray(answer) ? answer.map(String) : ["the page gave no answer"];
}

/** Sizes of the pages of the print, in points, one text a page. */
export async function printedPages(page: Page): Promise<readonly string[]> {
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
  return [...pdf.matchAll(/\/Type\s*\/Page\b[^s][\s\S]*?\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/gu)].map(
    ([, width, height]) => `${Math.round(Number(width))} ${Math.round(Number(height))}`,
  );
}

/** What axe-core holds against the page, by all its rules for WCAG A and AA and good practice, or by some. */
export async function axeFindings(page: Page, rules?: readonly string[]): Promise<readonly string[]> {
  await page.evaluate(axeSource);
  const options = JSON.stringify(rules === undefined ? {} : { runOnly: rules });
  return texts(
    await page.evaluate(
      `axe.run(document, ${options}).then(({ violations }) => violations.map(({ id, nodes }) => id + ": " + nodes[0].html))`,
    ),
  );
}
