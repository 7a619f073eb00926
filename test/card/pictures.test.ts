import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { runBuilt } from "../cli/built.ts";
import { folderFor } from "../cli/folder.ts";
import { axeFindings, findings, openFile } from "./browser.ts";

const out = folderFor();

const commandLines = [
  ["formula", "examples/school-noodle.yaml"],
  ["formula", "examples/barley-egg-noodle.yaml"],
  ["batch", "examples/barley-egg-noodle.yaml"],
  ["sheet", "examples/school-noodle.yaml"],
  ["sheet", "examples/pin-and-sticks.yaml"],
  ["plan", "examples/school-noodle.yaml", "--serve", "12:15"],
  ["cost", "examples/school-noodle.yaml"],
  ["nutrition", "examples/school-noodle.yaml"],
];

test.each(commandLines)("%s %s as HTML: pictures are whole, axe-core finds nothing, nothing runs", async (...args) => {
  const { stdout, stderr } = runBuilt([...args, "--format", "html"]);
  expect(stderr).toBe("");
  const file = join(out, `${args.join("-").replaceAll(/\W/gu, "-")}.html`);
  writeFileSync(file, stdout);
  const page = await openFile(file);
  expect(await findings(page, "pictureFaults")).toEqual([]);
  expect(await findings(page, "livelyParts")).toEqual([]);
  expect(await axeFindings(page)).toEqual([]);
});

test("bars are drawn, tables keep their words whole at 900 px, and a phone scrolls down only", async () => {
  const { stdout } = runBuilt(["tolerance", "examples/school-noodle.yaml", "--format", "html"]);
  const file = join(out, "tolerance.html");
  writeFileSync(file, stdout);
  const page = await openFile(file);
  expect(stdout).not.toContain("█");
  expect(await page.locator(".bar").count()).toBeGreaterThan(10);
  for (const width of [900, 390]) {
    await page.setViewportSize({ width, height: 800 });
    expect(await page.evaluate("document.documentElement.scrollWidth")).toBe(width);
  }
  await page.setViewportSize({ width: 900, height: 800 });
  expect(await findings(page, "overflowing")).toEqual([]);
  expect((await page.locator("#ranges tbody th").first().boundingBox())?.width).toBeGreaterThan(120);
  await page.emulateMedia({ colorScheme: "dark" });
  expect(await axeFindings(page)).toEqual([]);
});

test.each(["blend-picture", "water-picture"])("%s alone is a picture that a browser opens", async (name) => {
  const { stdout } = runBuilt(["formula", "examples/school-noodle.yaml", "--format", "svg", "--picture", name]);
  const file = join(out, `${name}.svg`);
  writeFileSync(file, stdout);
  const page = await openFile(file);
  expect(
    await page.evaluate("document.documentElement.localName + document.querySelectorAll('parsererror').length"),
  ).toBe("svg0");
});
