import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { pathToFileURL } from "node:url";
import { type Browser, chromium, type Page } from "playwright-core";

/** Where Chromium is. */
const executablePath = process.env["CHROMIUM"] ?? "/usr/bin/chromium";
const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const inPage = readFileSync(new URL("in-page.js", import.meta.url), "utf8");

/** Starts Chromium; without it the tests of the cards fail and say what to install. */
export async function startBrowser(): Promise<Browser> {
  if (!existsSync(executablePath)) {
    throw new Error(
      `there is no Chromium at ${executablePath}: install it (Debian: apt-get install chromium), or name it with CHROMIUM=`,
    );
  }
  return chromium.launch({
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
}

/** A page and what it did that a card must not do: talk to the console, ask the network, open dialogs. */
export interface Watched {
  readonly page: Page;
  readonly misdeeds: readonly string[];
}

/** Opens a file in a page of its own. */
export async function openFile(browser: Browser, path: string): Promise<Watched> {
  const page = await browser.newPage();
  const misdeeds: string[] = [];
  const own = pathToFileURL(path).href;
  page.on("console", (message) => misdeeds.push(`console: ${message.text()}`));
  page.on("pageerror", (error) => misdeeds.push(`error: ${error.message}`));
  page.on("request", (request) => {
    // A page makes a blob of its own text.
    if (request.url() !== own && !request.url().startsWith("blob:")) misdeeds.push(`request: ${request.url()}`);
  });
  page.on("dialog", (dialog) => {
    misdeeds.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  await page.goto(own);
  return { page, misdeeds };
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
