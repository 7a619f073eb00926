import { readdirSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { runBuilt } from "../cli/built.ts";
import { folderFor } from "../cli/folder.ts";
import { openFile, startBrowser } from "./browser.ts";

const without = ["harbour-store", "wrong-on-purpose"];
const examples = readdirSync(new URL("../../examples", import.meta.url))
  .filter((name) => name.endsWith(".yaml"))
  .map((name) => name.replace(".yaml", ""))
  .filter((name) => !without.includes(name));

const out = folderFor();
let browser: Browser;
const fileOf = (name: string): string => join(out, `${name}.html`);

beforeAll(async () => {
  browser = await startBrowser();
  for (const name of examples) {
    const { status, stderr } = runBuilt(["page", `examples/${name}.yaml`, "-o", fileOf(name)]);
    expect([name, status, stderr]).toEqual([name, 0, expect.stringMatching(/^Wrote .*\n$/u)]);
  }
});

afterAll(() => browser.close());

/** The list of a load as the page shows it: ingredient, weight with its unit. */
async function weightsOf(page: Page): Promise<readonly (readonly string[])[]> {
  await go(page, "Weigh");
  await page.locator("main[aria-busy=false]").waitFor();
  const rows = page.locator("ul.weights li:not(.total)");
  const names = await rows.locator(".name span").allTextContents();
  const masses = await rows.locator(".figure").allTextContents();
  return names.map((name, index) => [name, masses[index] ?? ""]);
}

interface Printed {
  readonly sections: readonly {
    readonly id: string;
    readonly blocks: readonly {
      readonly columns?: readonly { readonly id: string; readonly label: string }[];
      readonly rows?: readonly { readonly role: string; readonly cells: readonly { readonly text: string }[] }[];
    }[];
  }[];
}

/** The same as the command prints it. */
function weightsByCommand(spec: string, flags: readonly string[]): readonly (readonly string[])[] {
  const { status, stdout, stderr } = runBuilt(["batch", spec, "--format", "json", ...flags]);
  expect([[0, 1].includes(status ?? 70), stderr]).toEqual([true, ""]);
  const { sections = [] }: Partial<Printed> = JSON.parse(stdout);
  const tableOf = (id: string) => sections.find((one) => one.id === id)?.blocks[0];
  const plain = tableOf("weights");
  const rowsOf = (table: typeof plain, role: string) => {
    const column = table?.columns?.findIndex(({ label }) => /, (?:g|kg|oz|lb)$/u.test(label)) ?? -1;
    const unit = table?.columns?.[column]?.label.split(", ").at(-1);
    return (table?.rows ?? [])
      .filter((row) => row.role === role)
      .map(({ cells }) => [cells[0]?.text ?? "", `${cells[column]?.text} ${unit}`]);
  };
  return [...rowsOf(tableOf("stock-weights") ?? plain, "item"), ...rowsOf(plain, "aside")].map(
    ([name = "", mass = ""]) => [name.replace(/ \(dusting, not in the dough\)$/u, ""), mass],
  );
}

async function go(page: Page, tab: string): Promise<void> {
  await page.getByRole("navigation").getByText(tab, { exact: true }).click();
}

async function done(page: Page): Promise<void> {
  await page.waitForTimeout(0);
  await page.locator("main[aria-busy=false]").waitFor();
}

describe("the weights of the page are those of the command", () => {
  test.each(examples)("for %s as written", async (name) => {
    const { page, misdeeds } = await openFile(browser, fileOf(name));
    expect(await weightsOf(page)).toEqual(weightsByCommand(`examples/${name}.yaml`, []));
    expect(misdeeds).toEqual([]);
    await page.close();
  });

  test("for random bowls, losses, scales and flours", async () => {
    const { page } = await openFile(browser, fileOf("school-noodle"));
    const wishes = fc.sample(
      fc.record({
        bowls: fc.integer({ min: 3, max: 900 }),
        sheeting: fc.integer({ min: 0, max: 20 }),
        tap: fc.integer({ min: 5, max: 28 }),
      }),
      4,
    );
    for (const { bowls, sheeting, tap } of wishes) {
      await go(page, "Size");
      await page.getByLabel("bowls", { exact: true }).last().fill(String(bowls));
      await page.getByLabel("at the rolls").fill(`${sheeting},5`);
      await go(page, "Today");
      await page.getByRole("textbox", { name: "tap water" }).fill(String(tap));
      await done(page);
      const flags = [
        "--bowls",
        String(bowls),
        "--set",
        `losses.sheeting=${sheeting}.5 %`,
        "--set",
        `temperature.tap=${tap} °C`,
      ];
      const expected = weightsByCommand("examples/school-noodle.yaml", flags);
      expect(await weightsOf(page)).toEqual(expected);
      expect(await page.getByRole("alert").count()).toBe(expected.length === 0 ? 1 : 0);
    }
    await page.close();
  });
});
