import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { runBuilt } from "../cli/built.ts";
import { folderFor } from "../cli/folder.ts";
import { asOnPaper, axeFindings, findings, openFile, printedPages } from "./browser.ts";

const markup = `<script>alert(1)</script>`;
const attribute = `"><img src=x onerror=alert(2)>`;
const style = `</style></title><script>alert(3)</script>`;
const terminal = "\u001b[31mred\u001b[0m";
const turned = "\u202Eesrever";
const long = "n".repeat(300);

const flour = (kind: string) => ({ kind, moisture: "12 %", protein: "10 %", allergens: ["wheat"], source: markup });

const hostile = {
  name: `${style} ${attribute} noodle`,
  notes: `${markup}\n${attribute} ${long}\n${terminal} ${turned}`,
  materials: { [markup]: flour("flour"), [attribute]: flour("flour"), [long.slice(0, 80)]: flour("starch") },
  flours: [
    { name: markup, amount: "60 %" },
    { name: attribute, amount: "30 %" },
    { name: long.slice(0, 80), amount: "rest" },
  ],
  water: { added: "36 %" },
  batch: { dough: "12 kg" },
  scales: [{ name: `scale ${attribute}`, division: "1 g" }],
};

const folder = folderFor({
  "hostile.json": JSON.stringify(hostile),
  "a#b c?.yaml": JSON.stringify({ ...hostile, name: "name of a file" }),
});

beforeAll(async () => {
  const { status, stderr } = runBuilt(["cards", folder, "-o", join(folder, "out")]);
  expect([status, stderr]).toEqual([0, expect.stringContaining("Wrote 2 cards")]);
});

test("hostile names and notes are words on the card and nothing else", async () => {
  const page = await openFile(join(folder, "out", "hostile.html"));
  expect(await findings(page, "livelyParts")).toEqual([]);
  const text = ((await page.locator("main").textContent()) ?? "").replaceAll(/\s+/gu, " ");
  for (const words of [markup, attribute, style, long]) expect(text).toContain(words);
  expect(text).not.toContain("\u001b");
  expect(text).not.toContain("\u202E");
  expect(await page.locator("style").count()).toBe(1);
  expect(await page.title()).toContain(style);
  await asOnPaper(page, "a4");
  expect(await findings(page, "overflowing")).toEqual([]);
  expect((await printedPages(page)).length).toBeLessThanOrEqual(2);
  expect(await axeFindings(page)).toEqual([]);
});

test("names of files with marks of their own open from the index", async () => {
  const page = await openFile(join(folder, "out", "index.html"));
  expect(await findings(page, "livelyParts")).toEqual([]);
  await page.getByText("name of a file").click();
  expect(await page.locator("h1").textContent()).toBe("name of a file");
});
