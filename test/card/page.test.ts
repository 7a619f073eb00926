import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { deflateSync } from "node:zlib";
import type { Note } from "@noodlewright/core";
import { printable, toldNote } from "@noodlewright/core/render";
import fc from "fast-check";
import type { BrowserContextOptions, Page } from "playwright-core";
import { beforeAll, describe, expect, test } from "vitest";
import type { State } from "#cli/page/state.ts";
import { runBuilt } from "../cli/built.ts";
import { folderFor } from "../cli/folder.ts";
import { readCsv } from "../cli/read-csv.ts";
import { axeFindings, examples, misdeeds, openFile } from "./browser.ts";

const out = folderFor();
const fileOf = (name: string): string => join(out, `${name}.html`);

beforeAll(async () => {
  for (const name of examples) {
    const { status, stderr } = runBuilt(["page", `examples/${name}.yaml`, "-o", fileOf(name)]);
    expect([name, status, stderr]).toEqual([name, 0, expect.stringMatching(/^Wrote .*\n$/u)]);
  }
});

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
  if (status === 2) return [];
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

/** The rows of what mends a load, the starch for dusting the last. */
function mendedByCommand(ask: readonly string[]): readonly (readonly string[])[] {
  const [, ...rows] = readCsv(runBuilt(["mend", ...ask]).stdout);
  return rows
    .filter(([name]) => name !== "dough")
    .map(([name = "", ...masses]) => [name.replace(/ \(dusting, not in the dough\)$/u, ""), ...masses]);
}

async function go(page: Page, tab: string): Promise<void> {
  const entry = page.getByRole("navigation").getByText(tab, { exact: true });
  await entry.click();
  // a slow machine draws the part a little later
  await entry.and(page.locator("[aria-current=page]")).waitFor();
}

async function enterBowls(page: Page, bowls: string): Promise<void> {
  await go(page, "Size");
  await page.getByRole("textbox", { name: "bowls", exact: true }).fill(bowls);
  await done(page);
}

/** Enters the moisture of the first flour. */
async function enterMoisture(page: Page, moisture: string): Promise<void> {
  await go(page, "Today");
  await page.getByRole("textbox", { name: "moisture" }).first().fill(moisture);
  await done(page);
}

/** Puts another product in the place of an alkaline one. */
async function replace(page: Page, product: string, other: string): Promise<void> {
  await go(page, "Today");
  await page.getByLabel(`in the place of ${product}`).selectOption(other);
  await done(page);
}

/** Ticks all that is still to go in, and of which there is not too much. */
async function tickAll(page: Page): Promise<void> {
  const open = page.locator("ul.weights li:not(.over) input:not(:checked)");
  for (let left = await open.count(); left > 0; left = await open.count()) await open.first().click();
}

async function expectText(page: Page, text: string): Promise<void> {
  await page.getByText(text, { exact: false }).first().waitFor({ timeout: 10_000 });
}

/** Opens a page with a place of its own to keep what is entered, and waits for its script. */
async function openBench(name: string, options: BrowserContextOptions = {}): Promise<Page> {
  const page = await openFile(fileOf(name), { viewport: phone, ...options });
  await begun(page);
  return page;
}

const phone = { width: 360, height: 740 };

async function begun(page: Page): Promise<void> {
  await page.locator("main:not([inert])").waitFor();
}

async function reload(page: Page): Promise<void> {
  await page.reload();
  await begun(page);
}

/** Controls smaller than 44 px, which a finger misses. A box to tick is as large as its label. */
async function smallTargets(page: Page): Promise<unknown> {
  return page.evaluate(`[...document.querySelectorAll("button, a, select, input")]
    .map((one) => (/checkbox|radio/.test(one.type) && one.closest("label")) || one)
    .filter((one) => one.getClientRects().length > 0)
    .filter((one) => one.getBoundingClientRect().height < 44 || one.getBoundingClientRect().width < 44)
    .map((one) => one.outerHTML.slice(0, 90))`);
}

async function done(page: Page): Promise<void> {
  // a slow machine takes up what was entered with the next picture
  await page.evaluate("new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)))");
  await page.locator("main[aria-busy=false]").waitFor();
}

describe("the weights of the page are those of the command", () => {
  test.each(examples)("for %s as written", async (name) => {
    const page = await openBench(name);
    expect(await weightsOf(page)).toEqual(weightsByCommand(`examples/${name}.yaml`, []));
  });

  test.each(examples)("for %s with random bowls, losses and temperatures", async (name) => {
    const page = await openBench(name);
    const wishes = fc.sample(
      fc.record({
        bowls: fc.integer({ min: 3, max: 900 }),
        sheeting: fc.integer({ min: 0, max: 20 }),
        tap: fc.integer({ min: 5, max: 28 }),
      }),
      3,
    );
    for (const { bowls, sheeting, tap } of wishes) {
      await go(page, "Size");
      await page.getByRole("radio", { name: "bowls" }).check();
      await page.getByRole("textbox", { name: "bowls", exact: true }).fill(String(bowls));
      await page.getByLabel("at the rolls").fill(`${sheeting},5`);
      await go(page, "Today");
      await page.getByRole("textbox", { name: "tap water" }).fill(String(tap));
      await done(page);
      const losses = ["--set", `losses.sheeting=${sheeting}.5 %`, "--set", `temperature.tap=${tap} °C`];
      const expected = weightsByCommand(`examples/${name}.yaml`, ["--bowls", String(bowls), ...losses]);
      expect(await weightsOf(page)).toEqual(expected);
      expect(await page.getByRole("alert").count()).toBe(expected.length === 0 ? 1 : 0);
    }
  });

  test.each(examples)("for %s with a wetter flour, by the spec that the page exports", async (name) => {
    const page = await openBench(name);
    await enterMoisture(page, "14.9");
    await go(page, "Take");
    const file = join(out, `${name}-today.yaml`);
    writeFileSync(file, await saved(page, "Spec as changed today (YAML)"));
    const weights = await weightsOf(page);
    expect(weights.length).toBeGreaterThan(2);
    expect(weights).toEqual(weightsByCommand(file, []));
    expect(weights).not.toEqual(weightsByCommand(`examples/${name}.yaml`, []));
  });
});

test("a page in US units shows what the command prints in them", async () => {
  const spec = "examples/school-noodle.yaml";
  runBuilt(["page", spec, "-o", fileOf("us"), "--units", "us"]);
  const page = await openBench("us");
  expect(await weightsOf(page)).toEqual(weightsByCommand(spec, ["--units", "us"]));
  await go(page, "Size");
  await page.getByText("81.217 lb").waitFor();
  await go(page, "Today");
  await page.getByRole("textbox", { name: "tap water" }).fill("50");
  await done(page);
  expect(await page.locator("ul.follows").textContent()).toContain("ice – → 1.874 lb");
  await go(page, "Notes");
  expect(await page.getByLabel("dough temperature, °F").count()).toBe(1);
});

async function saved(page: Page, button: string): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: button, exact: true }).click(),
  ]);
  return readFileSync(await download.path(), "utf8");
}

const tabs = ["Size", "Today", "Weigh", "Roll", "Notes", "Take"];

interface Figures {
  readonly figures?: Readonly<Record<string, { readonly value: string }>>;
}

interface Told {
  readonly notes: readonly Note[];
  readonly cautions: readonly string[];
}

/** Whether the weight and the button of what is weighed stand above the bar without a scroll. */
async function isAboveBar(page: Page): Promise<unknown> {
  return page.evaluate(`[".focus .large", ".focus .main"].every((one) =>
    document.querySelector(one).getBoundingClientRect().bottom < document.querySelector("nav").getBoundingClientRect().top)`);
}

/** How far a page can be scrolled sideways, px. */
async function sidewaysOf(page: Page): Promise<unknown> {
  return page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth");
}

describe("the page", () => {
  test.each(examples)("of %s tells all that the command notes and warns of", async (name) => {
    const told = ["batch", "sheet", "plan", "water-temperature"].flatMap((command): readonly string[] => {
      const { stdout } = runBuilt([command, `examples/${name}.yaml`, "--format", "json"]);
      const { notes = [], cautions = [] }: Partial<Told> = JSON.parse(stdout);
      // The page has no spec to point into, so what the command adds on keys is left out.
      return [...notes.map((note) => toldNote({ ...note, path: [] }, "metric").text), ...cautions];
    });
    expect(told.length).toBeGreaterThan(1);
    const page = await openBench(name);
    await done(page);
    const weighing = await page.locator("#bench").allTextContents();
    await go(page, "Roll");
    await page.getByText("Working it out").waitFor({ state: "detached" });
    const shown = [...weighing, ...(await page.locator("#bench").allTextContents())].join("\n");
    expect(told.filter((text) => !shown.includes(printable(text)))).toEqual([]);
  });

  test("holds two scripts and one style, and a policy that lets nothing else run or load", () => {
    for (const name of examples) {
      const text = readFileSync(fileOf(name), "utf8");
      const [, policy = ""] = /http-equiv="Content-Security-Policy" content="([^"]*)"/u.exec(text) ?? [];
      expect(policy).toMatch(
        /^default-src .none.; script-src .sha256-[^.]+. .sha256-[^.]+.; worker-src blob:; style-src .sha256-[^.]+.; /u,
      );
      expect(policy).not.toMatch(/unsafe|https?:|\*/u);
      expect(text.length).toBeLessThan(465_000);
      expect(text).not.toContain("sourceMappingURL");
    }
  });

  test.each(examples.flatMap((name) => [320, 1280].map((width) => [name, width] as const)))(
    "of %s has nothing that axe-core finds on %i px, light or dark, targets of 44 px, and nothing that scrolls sideways",
    async (name, width) => {
      const page = await openBench(name, { bypassCSP: true, viewport: { width, height: 740 } });
      await page.emulateMedia({ colorScheme: "light", reducedMotion: "reduce" });
      for (const tab of tabs) {
        await go(page, tab);
        await page.getByText("Working it out").waitFor({ state: "detached" });
        expect([tab, await sidewaysOf(page)]).toEqual([tab, 0]);
        const cut = await page.evaluate(`[...document.querySelectorAll(".scroll")]
          .filter((one) => one.scrollWidth > one.clientWidth).map((one) => one.textContent.slice(0, 60))`);
        expect([tab, cut]).toEqual([tab, []]);
        const beyond = await page.evaluate(`[...document.querySelectorAll("nav > *")]
          .map((one) => one.getBoundingClientRect())
          .filter(({ left, right }) => left < 0 || right > innerWidth).length`);
        expect([tab, beyond]).toEqual([tab, 0]);
        expect([tab, await smallTargets(page)]).toEqual([tab, []]);
        expect([tab, await axeFindings(page)]).toEqual([tab, []]);
        await page.emulateMedia({ colorScheme: "dark" });
        expect([tab, await axeFindings(page, ["color-contrast"])]).toEqual([tab, []]);
        await page.emulateMedia({ colorScheme: "light" });
      }
    },
  );

  test.each(examples)("of %s has what is done first on the first screen of a phone", async (name) => {
    const page = await openBench(name, { bypassCSP: true });
    const stock = page.getByRole("heading", { name: "Too little for the scale: do this first" });
    const button = page.getByRole("button", { name: "Weighed as listed" });
    await button.waitFor();
    const first = await ((await stock.count()) > 0 ? stock : button).boundingBox();
    const bar = await page.getByRole("navigation").boundingBox();
    expect((first?.y ?? 999) + (first?.height ?? 0)).toBeLessThan(bar?.y ?? 0);
    await page.setViewportSize({ width: 740, height: 360 });
    if ((await stock.count()) === 0) expect(await isAboveBar(page)).toBe(true);
  });

  test("finds the amounts anew when a flour is another, as the command does, and keeps what is to be found", async () => {
    const page = await openBench("friday-noodle");
    await go(page, "Today");
    await page.getByRole("textbox", { name: "protein" }).first().fill("7");
    await done(page);
    expect(await page.locator("ul.follows").textContent()).toContain("found anew by what the spec wants");
    const weights = await weightsOf(page);
    const flags = ["--set", "flours[0].figures.protein=7 %", "--set", "flours[0].figures.proteinBasis=14 % mb"];
    expect(weights).toEqual(weightsByCommand("examples/friday-noodle.yaml", flags));
    expect(await isAboveBar(page)).toBe(true);
    await go(page, "Take");
    const yaml = await saved(page, "Spec as changed today (YAML)");
    expect(yaml.match(/amount: find/gu)?.length).toBe(6);
    writeFileSync(join(out, "friday-today.yaml"), yaml);
    expect(weightsByCommand(join(out, "friday-today.yaml"), [])).toEqual(weights);
    await replace(page, "sodium carbonate", "sodium carbonate decahydrate");
    const other = [...flags, "--set", "alkali[0].name=sodium carbonate decahydrate"];
    expect(await weightsOf(page)).toEqual(weightsByCommand("examples/friday-noodle.yaml", other));
  });

  test("breaks a long name of one word, so that nothing scrolls sideways", async () => {
    const figures = { moisture: "12 %", protein: "10 %", allergens: [] };
    const spec = {
      name: "W".repeat(80),
      flours: [{ name: "W".repeat(60), amount: "100 %", figures }],
      water: { added: "36 %" },
      batch: { dough: "12 kg" },
    };
    const file = fileOf("long-name");
    expect(runBuilt(["page", "-", "-o", file], { input: JSON.stringify(spec) }).status).toBe(0);
    const page = await openBench("long-name");
    for (const tab of tabs) {
      await go(page, tab);
      expect([tab, await sidewaysOf(page)]).toEqual([tab, 0]);
    }
  });

  test("shows names that look like markup as words", async () => {
    const markup = `\u202E</script><script>alert(1)</script><img src=x onerror=alert(2)><!--`;
    const spec = {
      name: markup,
      flours: [
        { name: markup.slice(0, 70), amount: "100 %", figures: { moisture: "12 %", protein: "10 %", allergens: [] } },
      ],
      water: { added: "36 %" },
      batch: { dough: "12 kg" },
    };
    const file = fileOf("hostile");
    expect(runBuilt(["page", "-", "-o", file], { input: JSON.stringify(spec) }).status).toBe(0);
    const page = await openBench("hostile");
    expect([await page.locator("h1").textContent(), await page.title()]).toEqual([
      printable(markup),
      printable(markup),
    ]);
    expect(await page.locator("script").count()).toBe(4);
    expect(await page.locator("img").count()).toBe(0);
    for (const tab of tabs) await go(page, tab);
  });

  test("stands in its file before a script runs, to be read and not to be entered", async () => {
    const page = await openFile(fileOf("school-noodle"), { javaScriptEnabled: false });
    const rows = page.locator("main[inert] ul.weights li:not(.total)");
    const [names, masses] = [rows.locator(".name span"), rows.locator(".figure")];
    const weights = await Promise.all([names.allTextContents(), masses.allTextContents()]);
    const expected = weightsByCommand("examples/school-noodle.yaml", []);
    expect(weights[0].map((name, index) => [name, weights[1][index]])).toEqual(expected);
    expect(await page.locator("noscript").textContent()).toContain("scripts are off here");
  });

  test("is not written for a spec that cannot be worked out", () => {
    const file = fileOf("wrong");
    const { status, stderr } = runBuilt(["page", "examples/wrong-on-purpose.yaml", "-o", file]);
    expect([status, existsSync(file)]).toEqual([2, false]);
    expect(stderr).toContain("wrong-on-purpose.yaml");
    const store = readFileSync(new URL("../../examples/harbour-store.yaml", import.meta.url), "utf8");
    const spec = readFileSync(new URL("../../examples/friday-noodle.yaml", import.meta.url), "utf8");
    writeFileSync(join(out, "harbour-store.yaml"), store);
    writeFileSync(join(out, "beyond.yaml"), spec.replace("protein: at least 12 %", "protein: at least 30 %"));
    const beyond = runBuilt(["page", join(out, "beyond.yaml"), "-o", file]);
    expect([beyond.status, existsSync(file)]).toEqual([1, false]);
    expect(beyond.stderr).toContain("The nearest: ");
  });

  test("answers a wrong value in its place, and weighs nothing by it", async () => {
    const page = await openBench("school-noodle");
    await enterMoisture(page, "60");
    expect(await page.locator(".field [role=alert]").textContent()).toMatch(
      /^\d.* water in the dough. Needed: at least/u,
    );
    await page.getByRole("textbox", { name: "moisture" }).first().fill("130");
    await done(page);
    expect(await page.locator(".field [role=alert]").textContent()).toBe('"130 %". Needed: a share from 0 to 100 %.');
    await go(page, "Weigh");
    expect(await page.locator("ul.weights li:not(.total)").count()).toBe(0);
    await page.getByRole("button", { name: "Undo" }).click();
    await done(page);
    expect(await weightsOf(page)).toEqual(weightsByCommand("examples/school-noodle.yaml", []));
  });
});

test("a home cook's evening, with a mistap, a reload, a rest and a dough written down", async () => {
  const page = await openBench("evening-class");
  await enterBowls(page, "6");
  await go(page, "Today");
  await page.getByRole("textbox", { name: "tap water" }).fill("20,5");
  await expectText(page, "The flour, the room or the tap is warmer or colder");
  await page.getByRole("button", { name: /^ice: .* Working$/u }).click();
  await page.getByRole("dialog").getByText("= 20.5 °C").first().waitFor();
  await page.getByRole("button", { name: "Close" }).click();
  const flags = ["--bowls", "6", "--set", "temperature.tap=20.5 °C"];
  expect(await weightsOf(page)).toEqual(weightsByCommand("examples/evening-class.yaml", flags));
  await page.getByRole("button", { name: "Weighed as listed" }).dblclick();
  const ticked = page.locator("ul.weights input:checked");
  expect(await ticked.count()).toBe(1);
  await page.getByLabel("lot", { exact: true }).press("Enter");
  expect(await page.getByRole("alert").count()).toBe(0);
  await page.getByLabel("the scale shows, g").fill("300,5");
  await page.getByRole("button", { name: "Enter" }).click();
  expect(await page.getByRole("alert").textContent()).toBe("This scale shows steps of 1 g.");
  for (const [typed, needs] of [
    ["1,000", "Needed: 1000 or 1, whichever is meant."],
    ["999999999999", "Needed: at most"],
  ] as const) {
    await page.getByLabel("the scale shows, g").fill(typed);
    await page.getByRole("button", { name: "Enter" }).click();
    expect(await page.getByRole("alert").textContent()).toContain(needs);
  }
  await page.getByRole("button", { name: "Weighed as listed" }).click();
  await page.getByRole("button", { name: "Undo" }).click();
  expect(await ticked.count()).toBe(1);
  await reload(page);
  await expectText(page, "The whole load");
  expect(await ticked.count()).toBe(1);
  const [, [, second = ""] = []] = await weightsOf(page);
  await page.getByLabel("the scale shows, g").fill(second.replace(" g", ""));
  await page.getByRole("button", { name: "Enter" }).dblclick();
  expect([await ticked.count(), await page.getByRole("alert").count()]).toEqual([2, 0]);
  for (let open = 2; open > 0; open -= 1) await page.getByRole("button", { name: "Weighed as listed" }).click();
  await expectText(page, "Everything is in the bowl.");
  await go(page, "Roll");
  const passes = page.getByRole("table", { name: "Passes of a sheet" });
  await passes.waitFor();
  const sheet = readCsv(runBuilt(["sheet", "examples/evening-class.yaml", ...flags, "--format", "csv"]).stdout);
  const rows = await passes.locator("tbody tr").allTextContents();
  expect(rows.slice(0, -1)).toEqual(sheet.slice(1, rows.length).map((cells) => cells.join("")));
  expect(await page.getByRole("table", { name: "As it went" }).locator("tbody tr").textContent()).toMatch(
    /^1weighing\d\d:\d\d:\d\d\d\d:\d\d:\d\d$/u,
  );
  await page.getByLabel("time of service").fill("20:00");
  const { width = 0 } = (await page.getByLabel("time of service").boundingBox()) ?? {};
  expect(width).toBeGreaterThan(200);
  await expectText(page, "19:40");
  await page.waitForTimeout(1100);
  await page.getByRole("button", { name: "Start rest, 30 min" }).click();
  expect(await page.getByRole("timer").textContent()).toMatch(/^(?:30:00|29:5\d) left$/u);
  await reload(page);
  await page.getByRole("timer").waitFor();
  expect(await page.getByRole("timer").textContent()).toMatch(/^(?:30:00|29:5\d) left$/u);
  await page.getByRole("button", { name: "End rest, 30 min" }).click();
  expect(await page.getByRole("timer").count()).toBe(0);
  await go(page, "Notes");
  await page.getByLabel("dough temperature, °C").fill("abc");
  await page.getByLabel("score, 1 to 5").fill("99 apples");
  expect(await page.getByRole("alert").allTextContents()).toEqual([
    '"abc". Needed: a number, such as 12 or 0.4.',
    '"99 apples". Needed: a number, such as 12 or 0.4.',
  ]);
  await page.getByLabel("dough temperature, °C").fill("24,5");
  await page.getByLabel("score, 1 to 5").fill("4");
  await page.getByLabel("initials").fill("AB");
  expect((await saved(page, "Rows for a spreadsheet (CSV)")).split("\n")[1]).toMatch(/,42e10a73,1,.*,24\.5,,,4,,AB,/u);
  expect(await saved(page, "Batch record")).toContain("initials: AB");
  await page.evaluate("globalThis.print = () => undefined");
  await page.getByRole("button", { name: "Print the batch record" }).click();
  await page.getByText("initials: AB").waitFor();
  await page.evaluate("dispatchEvent(new Event('afterprint'))");
  await go(page, "Take");
  await page.getByRole("button", { name: "Print the card" }).click();
  await page.locator(".bar").first().waitFor();
  await page.evaluate("dispatchEvent(new Event('afterprint'))");
  const file = join(out, "evening-today.yaml");
  writeFileSync(file, await saved(page, "Spec as changed today (YAML)"));
  expect(await weightsOf(page)).toEqual(weightsByCommand(file, []));
  await go(page, "Take");
  await page.getByRole("button", { name: "Start anew" }).click();
  await page.getByRole("button", { name: "Yes, clear everything entered" }).click();
  await weightsOf(page);
  expect(await ticked.count()).toBe(0);
  await page.getByRole("button", { name: "Undo" }).click();
  await done(page);
  expect(await ticked.count()).toBe(4);
});

test("a coarse scale, a bottle's two products and a flour's temperature say what follows from them", async () => {
  const evening = await openBench("evening-class");
  await go(evening, "Today");
  await evening.getByLabel("step of letter scale", { exact: true }).fill("0.5");
  await done(evening);
  expect(await evening.locator("ul.follows").textContent()).toMatch(
    /stock solution.*– → .*takes the place of alkali powder 6 to 4 and table salt, and brings its own water/u,
  );
  await go(evening, "Size");
  await evening.getByRole("textbox", { name: "bowls", exact: true }).fill("1,000");
  await done(evening);
  expect(await evening.getByRole("alert").textContent()).toBe('"1,000". Needed: 1000 or 1, whichever is meant.');
  const page = await openBench("one-bottle");
  await go(page, "Today");
  await page.getByRole("textbox", { name: "flour", exact: true }).fill("24");
  await expectText(page, "Enter the dough temperature wanted");
  await page.getByRole("textbox", { name: "flour", exact: true }).fill("");
  expect(await page.getByLabel("in the place of bottle of the noodle class").count()).toBe(1);
  await replace(page, "bottle of the noodle class", "sodium bicarbonate");
  const weights = await weightsOf(page);
  expect(weights.map(([name]) => name)).toContain("sodium bicarbonate");
  await go(page, "Take");
  const file = join(out, "another-bottle.yaml");
  writeFileSync(file, await saved(page, "Spec as changed today (YAML)"));
  expect(weights).toEqual(weightsByCommand(file, []));
});

test("offers the kitchen's own product for a salt, and takes another reading of a solution", async () => {
  const page = await openBench("school-noodle");
  await replace(page, "sodium carbonate", "alkali powder 6 to 4");
  const swap = ["--set", "alkali[0].replaceWith=alkali powder 6 to 4"];
  expect(await weightsOf(page)).toEqual(weightsByCommand("examples/school-noodle.yaml", swap));
  await replace(page, "sodium carbonate", "another, as its label says");
  // Key by key, it is the name of a salt of the list for a while.
  await page.getByLabel("what takes the place of sodium carbonate").pressSequentially("potassium carbonate at 25 %");
  const bottle = ["--set", "alkali[0].replaceWith=potassium carbonate at 25 %"];
  expect(await weightsOf(page)).toEqual(weightsByCommand("examples/school-noodle.yaml", bottle));
  const other = await openBench("one-bottle");
  await go(other, "Today");
  const strength = other.getByLabel("strength of bottle of the noodle class", { exact: true });
  expect(await strength.inputValue()).toBe("30");
  await strength.fill("27");
  await done(other);
  expect(await other.locator("ul.follows").textContent()).toMatch(
    /sodium carbonate.*The solution has another strength/u,
  );
  const reading = ["--set", "alkali[0].figures.solution.strength=27 °Bé"];
  const weights = weightsByCommand("examples/one-bottle.yaml", reading);
  expect(await weightsOf(other)).toEqual(weights);
  expect(weights).not.toEqual(weightsByCommand("examples/one-bottle.yaml", []));
  await other.getByRole("button", { name: "Weighed as listed" }).click();
  await go(other, "Notes");
  expect(await saved(other, "Batch record")).toContain("strength of bottle of the noodle class: 27 °Bé");
});

test("what is left is of what is in the dough today, and what is wrong with it stands beside it", async () => {
  const page = await openBench("school-noodle");
  await replace(page, "sodium carbonate", "trisodium phosphate");
  await go(page, "Size");
  await done(page);
  await page.getByRole("radio", { name: "what is left" }).check();
  const have = page.getByLabel("ingredient that is to be used up");
  const offered = await have.locator("option").allTextContents();
  expect([offered.includes("sodium carbonate"), offered.includes("trisodium phosphate")]).toEqual([false, true]);
  await have.selectOption("trisodium phosphate");
  await page.getByLabel("what is left of it", { exact: true }).fill("100");
  await page.getByLabel("unit of what is left of it").selectOption("g");
  await done(page);
  await page.getByText("It comes to").waitFor();
  await replace(page, "sodium carbonate", "sodium bicarbonate");
  await go(page, "Size");
  await done(page);
  expect(await have.inputValue()).toBe("trisodium phosphate");
  const [wrong = ""] = await page.locator(".field [role=alert]").allTextContents();
  expect(wrong).toContain("trisodium phosphate");
  expect(wrong).not.toContain("a number");
});

test("only products that can give what is wanted are offered where amounts are found, and what is found can be what is left", async () => {
  const page = await openBench("friday-noodle");
  await go(page, "Today");
  for (const product of await page.getByLabel(/^in the place of/u).all()) {
    const offered = await product.locator("option").allTextContents();
    for (const name of offered.slice(1)) {
      await product.selectOption(name);
      await done(page);
      expect([name, await page.getByRole("alert").count()]).toEqual([name, 0]);
    }
    await product.selectOption("");
    expect(offered.length).toBeGreaterThan(1);
  }
  await go(page, "Size");
  await page.getByRole("radio", { name: "what is left" }).check();
  await page.getByLabel("ingredient that is to be used up").selectOption("table salt");
  await page.getByLabel("what is left of it", { exact: true }).fill("100");
  await page.getByLabel("unit of what is left of it").selectOption("g");
  await done(page);
  expect(await page.getByRole("alert").allTextContents()).toEqual([]);
});

test("times of the plan are read as the plan reads them, and the longest rings and is told", async () => {
  const set = ["rest.least=1 h 15 min", "rest.most=2 h", "boil=1½ h", "mix=100 s"].flatMap((one) => [
    "--set",
    `plan.${one}`,
  ]);
  runBuilt(["page", "examples/school-noodle.yaml", ...set, "-o", fileOf("times")]);
  const page = await openBench("times");
  await page.clock.install({ time: new Date(2026, 2, 2, 8, 0) });
  await reload(page);
  await go(page, "Roll");
  const { y = 999 } = (await page.getByRole("heading", { name: "Timers" }).boundingBox()) ?? {};
  expect(y).toBeLessThan(300);
  for (const name of ["boiling, 90 min", "mixing, 1 min 40 s"]) {
    await page.getByRole("button", { name: `Start ${name}`, exact: true }).waitFor();
  }
  await page.getByRole("button", { name: "Start rest, 75 min (at most 120 min)" }).click();
  await page.clock.fastForward("01:16:00");
  await page.getByText("over since 09:15").waitFor();
  await page.getByText("ends at the latest at 10:00").waitFor();
  await page.clock.fastForward("00:45:00");
  await page.getByText("too long since 10:00").waitFor();
});

test("a flour of the catalogue shows the protein it is reckoned with, and nothing moves when that is typed", async () => {
  const page = await openBench("school-noodle");
  await go(page, "Today");
  const protein = page.getByRole("group", { name: "whole wheat flour" }).getByLabel(/^protein/u);
  const shown = (await protein.getAttribute("placeholder")) ?? "";
  // 13.21 % as is by N x 5.83 at 10.74 % moisture, by N x 5.7 at 14 %.
  expect(shown).toBe("12.44");
  await protein.fill(shown);
  await done(page);
  expect(await page.locator("ul.follows").textContent()).toBe("");
});

test("a field that is reached by the keyboard stands above the bar", async () => {
  const page = await openBench("school-noodle");
  await go(page, "Today");
  const hidden = await page.evaluate(`[...document.querySelectorAll("main input, main select, main button")]
    .filter((one) => {
      scrollTo(0, 0);
      one.focus();
      return one.getBoundingClientRect().bottom > document.querySelector("nav").getBoundingClientRect().top;
    })
    .map((one) => one.outerHTML.slice(0, 90))`);
  expect(hidden).toEqual([]);
});

test("a timer rings in any part of the page, and the screen stays on through a look elsewhere", async () => {
  const page = await openBench("evening-class");
  await page.addInitScript(`globalThis.heard = [];
    navigator.vibrate = (shakes) => heard.push("shake " + shakes);
    AudioContext.prototype.createOscillator = new Proxy(AudioContext.prototype.createOscillator, {
      apply: (make, self) => (heard.push("tone"), Reflect.apply(make, self, [])),
    });
    Object.defineProperty(navigator, "wakeLock", { value: {
      request: async (what) => (heard.push("on " + what), { release: async () => heard.push("off") }),
    } });`);
  await reload(page);
  await go(page, "Roll");
  await page.getByText("A timer of your own").click();
  await page.getByLabel("minutes", { exact: true }).fill("0,02");
  await page.getByRole("button", { name: "Start timer, 1 s" }).click();
  await go(page, "Notes");
  await page.getByText(/^timer, 1 s over since \d\d:\d\d$/u).waitFor();
  const ringing = ["shake 400,200,400", "tone", "tone", "tone"];
  expect(await page.evaluate("heard.splice(0)")).toEqual(ringing);
  await go(page, "Roll");
  await page.getByText("A timer of your own").click();
  for (const typed of ["0x10", "0", "1441"]) {
    await page.getByLabel("minutes", { exact: true }).fill(typed);
    expect(await page.getByRole("alert").textContent()).toContain("at most 1440 minutes");
    expect(await page.getByRole("button", { name: /^Start timer/u }).count()).toBe(0);
  }
  await page.getByLabel("minutes", { exact: true }).fill("30");
  await page.getByRole("button", { name: "Start timer, 30 min" }).click();
  await page.evaluate("Date.now = ((now) => () => now() + 3_600_000)(Date.now)");
  await page
    .getByText(/^over since \d\d:\d\d$/u)
    .nth(1)
    .waitFor();
  await page.waitForTimeout(600);
  expect(await page.evaluate("heard.splice(0)")).toEqual(ringing);
  await go(page, "Weigh");
  await page.getByLabel("Keep the screen on").check();
  await go(page, "Roll");
  expect(await page.getByLabel("Keep the screen on").isChecked()).toBe(true);
  await page.evaluate(`document.dispatchEvent(new Event("visibilitychange"))`);
  await page.getByLabel("Keep the screen on").uncheck();
  // The page lets go of the screen after it is drawn anew, which may be later than the tap.
  await expect.poll(async () => page.evaluate("heard")).toEqual(["on screen", "on screen", "off"]);
});

test.each([
  ["has no workers", "<head>", "<head><script>delete globalThis.Worker</script>"],
  ["lets none start", "worker-src blob:", "worker-src 'none'"],
])("a browser that %s works the noodle out in the page", async (_, part, instead) => {
  const text = readFileSync(fileOf("school-noodle"), "utf8");
  writeFileSync(
    fileOf("no-worker"),
    text.replace(part, () => instead),
  );
  const page = await openBench("no-worker", { bypassCSP: instead.includes("script") });
  await enterBowls(page, "90");
  expect(await weightsOf(page)).toEqual(weightsByCommand("examples/school-noodle.yaml", ["--bowls", "90"]));
  expect(page.workers()).toEqual([]);
  expect(misdeeds.splice(0).join()).toMatch(instead.includes("none") ? /^console: Creating a worker/u : /^$/u);
});

test("a core that fails is told of, and what was entered is undone", async () => {
  const fail = "({ data: { question }, ports: [port] }) => port.postMessage({ ok: false, fault: question })";
  const core = deflateSync(`addEventListener("message", ${fail})`).toString("base64");
  writeFileSync(
    fileOf("failing"),
    readFileSync(fileOf("evening-class"), "utf8").replace(/(id="core">)[^<]*/u, (_, start) => `${start}${core}`),
  );
  const page = await openBench("failing");
  const alert = page.getByRole("alert");
  await alert.getByText("This page has failed").waitFor();
  await page.getByLabel("lot", { exact: true }).fill("A");
  await alert.waitFor({ state: "detached" });
  await go(page, "Roll");
  await alert.getByText("This page has failed").waitFor();
});

test("several loads on a shop's morning, timed through a sleep and a reload, to the exported record", async () => {
  const page = await openBench("school-noodle", { viewport: { width: 768, height: 1024 } });
  await page.clock.install({ time: new Date(2026, 2, 2, 8, 0) });
  await reload(page);
  const start = (minutes: string) => page.getByRole("button", { name: `Start ${minutes}` }).click();
  const end = (what: string) => page.getByRole("button", { name: `End ${what}` }).click();
  for (const load of [1, 2]) {
    await go(page, "Weigh");
    if (load > 1) await page.getByRole("button", { name: "Next load" }).click();
    await tickAll(page);
    await page.clock.fastForward("05:00");
    await go(page, "Roll");
    await start("rest, 20 min");
    // The page sleeps until well after the timer, as one that is out of sight does.
    await page.clock.fastForward("40:00");
    await page.getByText(`load ${load}: rest, 20 min`, { exact: true }).waitFor();
    await page.getByText(/^over since 0\d:\d\d$/u).waitFor();
    if (load === 2) await reload(page);
    await end(`load ${load}: rest, 20 min`);
    await start("boiling, 25 min");
    await page.clock.fastForward("26:30");
    if (load === 1) await end("load 1: boiling, 25 min");
  }
  await go(page, "Notes");
  await page.getByLabel("score").fill("4");
  const [heads = [], ...rows] = readCsv(await saved(page, "Rows for a spreadsheet (CSV)"));
  const seconds = (row: readonly string[], head: string): number => {
    const [hours = 0, minutes = 0, rest = 0] = (row[heads.indexOf(head)] ?? "").split(":").map(Number);
    return hours * 3600 + minutes * 60 + rest;
  };
  // The clock of the test goes on by itself as well: no step takes it a minute.
  const took = rows.map((row) => {
    return ["rest", "boiling"].map((step) => (seconds(row, `${step} ended`) - seconds(row, `${step} began`)) / 60);
  });
  expect(rows.map((row) => row[heads.indexOf("load")])).toEqual(["1", "2"]);
  expect(took.flat().map((minutes) => Math.floor(minutes))).toEqual([40, 26, 40, expect.any(Number)]);
  expect(rows[1]?.[heads.indexOf("boiling ended")]).toBe("");
  const record = await saved(page, "Batch record");
  const [began = "", over = ""] = ["rest began", "rest ended"].map((head) => rows[0]?.[heads.indexOf(head)] ?? "");
  for (const text of ["rest, 20 min", began, over, "not yet"]) expect(record).toContain(text);
  await page.getByRole("button", { name: "Undo" }).click();
  await go(page, "Roll");
  await end("load 2: boiling, 25 min");
  const went = page.getByRole("table", { name: "As it went" }).locator("tbody tr");
  expect(await went.count()).toBe(6);
  expect(await went.nth(1).textContent()).toBe(`1rest, 20 min${began}${over}`);
});

describe("what another version of the page saved or kept", () => {
  const first = { entries: [], keepWet: true, load: 1, weighed: {}, mended: {}, lots: { "1/x": "A7" }, doughs: {} };
  const timers = [{ label: "rest", minutes: 30, end: 0 }];
  const keyIn = (name: string): string => /"key":"([0-9a-f]{16})"/u.exec(readFileSync(fileOf(name), "utf8"))?.[1] ?? "";

  test("is read where its form is known, and refused by name where it is not", async () => {
    const page = await openBench("evening-class");
    await go(page, "Take");
    const open = async (data: unknown): Promise<string | null> => {
      const buffer = Buffer.from(JSON.stringify(data));
      await page
        .getByLabel("Open a saved file")
        .setInputFiles({ name: "a.json", mimeType: "application/json", buffer });
      await page.waitForTimeout(50);
      return page.locator("main [role=status]").textContent();
    };
    const file = { noodlewright: "bench", version: 1, key: keyIn("evening-class"), state: { ...first, timers } };
    expect(await open({ ...file, version: 6 })).toMatch(/^This file is of form 6, and this page reads up to form 5/u);
    expect(await open({ ...file, state: {} })).toBe("This file is damaged, so nothing of it was taken.");
    expect(await open(file)).toMatch(/^The file is open/u);
    await page.getByText("rest, 30 min").waitFor();
  });

  test("stays on the device, and is told of where it cannot be read", async () => {
    const page = await openBench("evening-class");
    const place = `noodlewright 5 ${keyIn("evening-class")}`;
    const unread = '{"of":"a later page"}';
    await page.evaluate(`localStorage.setItem(${JSON.stringify(place)}, ${JSON.stringify(unread)})`);
    await reload(page);
    await page.getByRole("button", { name: "Weighed as listed" }).click();
    await reload(page);
    await page.locator("ul.weights input:checked").waitFor();
    await page.getByRole("alert").getByText("that this page cannot read").waitFor();
    expect(await saved(page, "Save it as a file")).toBe(unread);
    await page.getByRole("button", { name: "Let go of it" }).click();
    await reload(page);
    await page.locator("ul.weights input:checked").waitFor();
    expect(await page.getByRole("alert").count()).toBe(0);
    const before = JSON.stringify({ ...first, timers });
    await page.evaluate(
      `localStorage.clear(); localStorage.setItem("noodlewright ${keyIn("evening-class")}", ${JSON.stringify(before)})`,
    );
    await reload(page);
    await page.getByText("rest, 30 min").waitFor();
  });
});

test("a shop's morning, from another flour to the exported record", async () => {
  const page = await openBench("school-noodle", { viewport: { width: 768, height: 1024 } });
  await go(page, "Size");
  await page.getByLabel("bowls", { exact: true }).last().fill("150");
  await enterMoisture(page, "12,1");
  await expectText(page, "The dough keeps");
  await go(page, "Take");
  const yaml = await saved(page, "Spec as changed today (YAML)");
  writeFileSync(join(out, "today.yaml"), yaml);
  expect(await weightsOf(page)).toEqual(weightsByCommand(join(out, "today.yaml"), []));
  const [, , water = ["", ""]] = await weightsOf(page);
  await page.getByRole("button", { name: "Weighed as listed" }).click();
  await page.getByRole("button", { name: "Weighed as listed" }).click();
  const listed = Number(water[1]?.replace(" g", ""));
  await page.getByLabel("the scale shows, g").fill(String(listed + 40));
  await page.getByRole("button", { name: "Enter" }).click();
  await expectText(page, "40 g too much");
  // Nothing asks for the weights of a list that no longer holds.
  expect(await page.getByRole("button", { name: "Weighed as listed" }).count()).toBe(0);
  await expectText(page, "see to that first");
  // What is not in yet is said so, and goes to the scale that holds all of it.
  const left = (await weightsOf(page)).slice(3, -1).flatMap(([name]) => ["--weighed", `${name}=0 g`]);
  const flags = ["--weighed", `tap water=${listed + 40} g`, ...left, "--format", "csv"];
  const mended = mendedByCommand([join(out, "today.yaml"), ...flags]);
  await page.getByRole("button", { name: "Go on with these weights" }).click();
  for (const [name = "", , , , inAll = ""] of mended) {
    const [, shown = ""] = (await weightsOf(page)).find(([one]) => one === name) ?? [];
    expect([name, Number.parseFloat(shown)]).toEqual([name, Number(inAll)]);
  }
  await tickAll(page);
  await go(page, "Notes");
  await page.getByLabel("dough temperature, °C").fill("25.5");
  await page.getByLabel("note", { exact: true }).fill('=1+1, "quoted"');
  const rows = readCsv(await saved(page, "Rows for a spreadsheet (CSV)"));
  const heads = rows[0] ?? [];
  const value = (head: string) => rows[1]?.[heads.indexOf(head)];
  expect([rows.length, value("load"), value("dough temperature, °C")]).toEqual([2, "1", "25.5"]);
  expect(value("note")).toBe(`'=1+1, "quoted"`);
  expect(value("spec")).toMatch(/^[0-9a-f]{8}$/u);
  const record = await saved(page, "Batch record");
  for (const words of ["Load 1", "mill strong flour", value("spec") ?? "", "25.5"]) expect(record).toContain(words);
  await go(page, "Take");
  const state = await saved(page, "Save what was entered");
  expect(await saved(page, "Save the card")).toContain("School noodle");
  const other = await openBench("school-noodle");
  await go(other, "Take");
  await other
    .getByLabel("Open a saved file")
    .setInputFiles({ name: "a.json", mimeType: "application/json", buffer: Buffer.from(state) });
  await expectText(other, "The file is open.");
  expect(await weightsOf(other)).toEqual(await weightsOf(page));
  await go(other, "Take");
  await other
    .getByLabel("Open a saved file")
    .setInputFiles({ name: "b.json", mimeType: "application/json", buffer: Buffer.from("{}") });
  await expectText(other, "This is no file that this page saved.");
});

/** Weighs an ingredient of the load. */
async function weigh(page: Page, name: string, grams: string): Promise<void> {
  await go(page, "Weigh");
  await done(page);
  await page.locator("ul.weights button.name", { hasText: name }).click();
  await page.locator("#shows").fill(grams);
  await page.keyboard.press("Enter");
}

describe("a load at the bench", () => {
  test("is no more mended when the list changes, and is mended anew from what is in the bowl", async () => {
    const page = await openBench("school-noodle");
    await weigh(page, "tap water", "3400");
    await page.getByRole("button", { name: "Go on with these weights" }).click();
    await enterBowls(page, "60");
    expect((await weightsOf(page)).map(([, mass]) => mass)).toEqual(
      weightsByCommand("examples/school-noodle.yaml", ["--bowls", "60"]).map(([, mass]) => mass),
    );
    await expectText(page, "The list has changed since this load was mended");
    const others = (await weightsOf(page))
      .slice(0, -1)
      .flatMap(([name]) => (name === "tap water" ? [] : ["--weighed", `${name}=0 g`]));
    const flags = ["--bowls", "60", "--weighed", "tap water=3400 g", ...others, "--format", "csv"];
    const mended = mendedByCommand(["examples/school-noodle.yaml", ...flags]);
    await page.getByRole("button", { name: "Go on with these weights" }).click();
    const shown = (await weightsOf(page)).map(([name, mass = ""]) => [name, Number.parseFloat(mass)]);
    expect(shown).toEqual(expect.arrayContaining(mended.map(([name, , , , inAll]) => [name, Number(inAll)])));
  });

  test("counts too much rework as the same dough, and adds nothing for it", async () => {
    const ask = ["examples/school-noodle.yaml", "--set", "rework.amount=5 %"];
    expect(runBuilt(["page", ...ask, "-o", fileOf("rework")]).status).toBe(0);
    const page = await openBench("rework");
    const [name = "", mass = ""] = (await weightsOf(page)).at(-2) ?? [];
    const more = Number.parseFloat(mass) + 100;
    await weigh(page, name, String(more));
    await expectText(page, "100 g more of it than planned leaves the formula as it is");
    const others = (await weightsOf(page)).slice(0, -2).flatMap(([one]) => ["--weighed", `${one}=0 g`]);
    const flags = [...others, "--weighed", `${name}=${more} g`, "--format", "csv"];
    const mended = mendedByCommand([...ask, ...flags]).slice(0, -1);
    await page.getByRole("button", { name: "Go on with these weights" }).click();
    const shown = (await weightsOf(page)).slice(0, -1).map(([one, grams = ""]) => [one, Number.parseFloat(grams)]);
    expect(shown).toEqual(mended.map(([one, , , , inAll]) => [one, Number(inAll)]));
  });

  test("goes by the list it was weighed by when the list changes, and stays when there are fewer loads", async () => {
    const page = await openBench("school-noodle");
    await weightsOf(page);
    await page.getByRole("button", { name: "Next load" }).click();
    const weights = await weightsOf(page);
    await tickAll(page);
    for (const bowls of ["300", "60"]) {
      await enterBowls(page, bowls);
      expect(await weightsOf(page)).toEqual(weights);
      expect(await page.getByText("Too much is in the bowl").count()).toBe(0);
      await expectText(page, "All of this load was weighed before the list changed.");
    }
    await page.emulateMedia({ media: "print" });
    expect(await page.locator(".loads b").isVisible()).toBe(true);
  });

  test("carries what differed when it was weighed, not what differs since", async () => {
    const page = await openBench("school-noodle");
    for (const [load, moisture] of [
      ["1", ""],
      ["2", "11"],
    ] as const) {
      await enterMoisture(page, moisture);
      await weightsOf(page);
      if (load !== "1") await page.getByRole("button", { name: "Next load" }).click();
      await page.getByRole("button", { name: "Weighed as listed" }).click();
    }
    await enterBowls(page, "200");
    await go(page, "Notes");
    const [heads = [], ...rows] = readCsv(await saved(page, "Rows for a spreadsheet (CSV)"));
    const differed = "mill strong flour, moisture: 11 %";
    expect(rows.map((row) => row[heads.indexOf("Differs from the spec")])).toEqual(["", differed]);
    const [before = "", second = ""] = (await saved(page, "Batch record")).split("Load 2");
    expect([before.includes("Differs"), second.includes(`Differs from the spec: ${differed}`)]).toEqual([false, true]);
  });

  test("says on every part of the page what an undo took back, after a reload too, and takes back a start anew", async () => {
    const page = await openBench("school-noodle");
    const ticked = page.locator("ul.weights input:checked");
    const said = page.getByRole("navigation").getByRole("status");
    const anew = async () => {
      await go(page, "Take");
      await page.getByRole("button", { name: "Start anew" }).click();
      await page.getByRole("button", { name: "Yes, clear everything entered" }).click();
      await expectText(page, "Everything is cleared. Undo brings it back.");
    };
    for (const count of [1, 2]) {
      await page.getByRole("button", { name: "Weighed as listed" }).click();
      expect(await ticked.count()).toBe(count);
    }
    await reload(page);
    await go(page, "Notes");
    expect(await said.textContent()).toBe("");
    await page.getByRole("button", { name: "Undo" }).click();
    expect(await said.textContent()).toBe("Undone: the weight of whole wheat flour, load 1.");
    await enterMoisture(page, "12");
    expect(await said.textContent()).toBe("");
    await page.getByRole("button", { name: "Undo" }).click();
    expect(await said.textContent()).toBe("Undone: mill strong flour, moisture.");
    await anew();
    await reload(page);
    await page.getByRole("button", { name: "Undo" }).click();
    expect(await said.textContent()).toBe("Undone: the weight of mill strong flour, load 1.");
    await weightsOf(page);
    expect(await ticked.count()).toBe(1);
  });

  test("is weighed one by one, however long a key is held", async () => {
    const page = await openBench("evening-class");
    await page.getByRole("button", { name: "Weighed as listed" }).focus();
    for (let held = 3; held > 0; held -= 1) await page.keyboard.down("Enter");
    expect(await page.locator("ul.weights input:checked").count()).toBe(1);
  });

  test("says on another day when it was weighed, and lets a new one begin", async () => {
    const page = await openBench("evening-class");
    await page.clock.install({ time: new Date(2026, 10, 20, 18) });
    await reload(page);
    await page.getByRole("button", { name: "Weighed as listed" }).click();
    expect(await page.getByText("was weighed on").count()).toBe(0);
    await page.clock.fastForward(7 * 24 * 3_600_000);
    await reload(page);
    for (const tab of ["Notes", "Weigh"]) {
      await go(page, tab);
      await page.getByText("Load 1 was weighed on 2026-11-20.").waitFor();
    }
    await page.getByRole("button", { name: "Start anew" }).click();
    await page.getByRole("button", { name: "Yes, clear everything entered" }).click();
    await page.getByText("was weighed on").waitFor({ state: "detached" });
  });

  /** Goes on as listed until nothing more is asked for. */
  async function weighRest(page: Page): Promise<void> {
    const button = page.getByRole("button", { name: "Weighed as listed" });
    for (let left = await button.count(); left > 0; left = await button.count()) await button.click();
  }

  const enterStep = async (page: Page, scale: string, step: string): Promise<void> => {
    await go(page, "Today");
    await page.getByLabel(`step of ${scale}`, { exact: true }).fill(step);
  };

  /** What stands beside an ingredient of the list. */
  const toldOf = async (page: Page, name: string): Promise<string | null> =>
    page.locator("ul.weights li", { hasText: name }).first().locator("small").textContent();

  test.each([
    ["a finer scale", async (page: Page) => enterStep(page, "kitchen scale", "0.1")],
    [
      "a larger batch",
      async (page: Page) => {
        await enterBowls(page, "86");
      },
    ],
  ])(
    "counts a stock that is in as what it holds when %s takes it off the list, and asks for no salt twice",
    async (_, turn) => {
      const { stdout } = runBuilt(["batch", "examples/barley-egg-noodle.yaml", "--format", "json"]);
      const { figures = {} }: Figures = JSON.parse(stdout);
      const page = await openBench("barley-egg-noodle");
      await go(page, "Weigh");
      for (let item = 0; item < 5; item += 1) await page.getByRole("button", { name: "Weighed as listed" }).click();
      await turn(page);
      const weights = await weightsOf(page);
      const listed = weights.slice(0, -1);
      expect(listed.map(([name]) => name)).toContain("table salt");
      expect(await page.getByRole("alert").first().textContent()).toMatch(
        /^250 g of stock solution.*counts as what it holds: alkali powder 6 to 4 1[01](?:\.\d)? g, table salt 1[12](?:\.\d)? g, tap water/u,
      );
      await page.getByRole("button", { name: "Go on with these weights" }).waitFor({ state: "detached" });
      await weighRest(page);
      expect(await page.locator(".done").textContent()).toBe("Everything is in the bowl.");
      await go(page, "Take");
      const state: { state: State } = JSON.parse(await saved(page, "Save what was entered"));
      for (const [id, name, part] of [
        ["alkali.1", "alkali powder 6 to 4", "1"],
        ["salt", "table salt", "2"],
      ] as const) {
        const own = Number(state.state.weighed[`1/${id}`]?.grams ?? 0);
        const brought = Number(figures[`common-stock.delivered.${part}`]?.value);
        const [, mass = ""] = listed.find(([one]) => one === name) ?? [];
        expect([name, brought > 10, Math.abs(own + brought - Number.parseFloat(mass)) < 1]).toEqual([name, true, true]);
      }
    },
  );

  test("weighs a load with its salts in without the stock solution that a coarser scale puts in their place", async () => {
    const page = await openBench("one-bottle");
    const before = await weightsOf(page);
    for (const salt of ["sodium carbonate", "sesquihydrate"]) {
      await page.locator("ul.weights button.name", { hasText: salt }).click();
      await page.getByRole("button", { name: "Weighed as listed" }).click();
    }
    await enterStep(page, "fine scale", "1");
    expect((await weightsOf(page)).map(([name]) => name)).toEqual(before.map(([name]) => name));
    await expectText(page, "do not add stock solution");
    expect([await toldOf(page, "sodium carbonate"), await toldOf(page, "sesquihydrate")]).toEqual(["in", "in"]);
    expect(await page.getByText("Too little for the scale").count()).toBe(0);
  });

  test.each(["potassium carbonate", "sodium hydroxide"])(
    "names a second salt of the bottle that is in, and lets no %s be added to it",
    async (product) => {
      const page = await openBench("one-bottle");
      await weigh(page, "sesquihydrate", "16.0");
      await replace(page, "bottle of the noodle class", product);
      expect(await page.locator("ul.follows").textContent()).toMatch(
        new RegExp(
          `${product} – → \\d+\\.\\d g.*the place of sodium carbonate 8.9 g and potassium carbonate sesquihydrate 16.0 g`,
          "u",
        ),
      );
      await weightsOf(page);
      await weighRest(page);
      expect(await page.getByRole("alert").textContent()).toContain(
        `16.0 g of potassium carbonate sesquihydrate is in the bowl of this load and not on its list. Do not add ${product} to it.`,
      );
      expect(await page.locator(".done").textContent()).toMatch(/^This load is not right/u);
      const tick = page.getByLabel(`${product}: weighed as listed`, { exact: true });
      expect([await tick.isDisabled(), await toldOf(page, product)]).toEqual([
        true,
        "do not add: potassium carbonate sesquihydrate is in",
      ]);
      await page.getByLabel("potassium carbonate sesquihydrate: weighed as listed").click();
      expect([await tick.isDisabled(), await page.getByRole("alert").count()]).toEqual([false, 0]);
    },
  );

  test("works the ice of a mended load out for its dough, and gives none for water that is in in part", async () => {
    const page = await openBench("evening-class");
    await weigh(page, "mill strong flour", "950");
    await page.getByRole("button", { name: "Go on with these weights" }).click();
    const flags = ["--dough", "1331 g", "--format", "json"];
    const { stdout } = runBuilt(["water-temperature", "examples/evening-class.yaml", ...flags]);
    const { figures = {} }: Figures = JSON.parse(stdout);
    expect(await toldOf(page, "tap water")).toContain(`; ${figures["water.ice-weighed"]?.value} g of it as ice`);
    await page.getByRole("button", { name: "Back to the list" }).click();
    await weigh(page, "tap water", "300");
    expect(await toldOf(page, "tap water")).not.toContain("ice");
  });

  test("lets pass what the scale does not tell, and names the scale of what is added", async () => {
    for (const [name, ingredient] of [
      ["school-noodle", "tap water"],
      ["barley-egg-noodle", "mill strong flour"],
    ] as const) {
      const page = await openBench(name);
      const [, mass = ""] = (await weightsOf(page)).find(([one]) => one === ingredient) ?? [];
      await weigh(page, ingredient, String(Number.parseFloat(mass) + 1));
      expect(await toldOf(page, ingredient)).toMatch(/^in\b/u);
      expect(await page.locator(".bench .notice").count()).toBe(0);
    }
    const page = await openBench("school-noodle");
    await weigh(page, "whole wheat flour", "1300");
    const others = (await weightsOf(page)).flatMap(([name]) =>
      name === "cornstarch" || name === "whole wheat flour" || name === "tap water" ? [] : ["--weighed", `${name}=0 g`],
    );
    await weigh(page, "tap water", "3470");
    await page.getByRole("button", { name: "Go on with these weights" }).click();
    await page.locator("ul.weights button.name", { hasText: "whole wheat flour" }).click();
    const flags = ["--weighed", "whole wheat flour=1300 g", "--weighed", "tap water=3470 g", ...others];
    const rows = readCsv(runBuilt(["mend", "examples/school-noodle.yaml", ...flags, "--format", "csv"]).stdout);
    const [, , , add, inAll, scale] = rows.find(([name]) => name === "whole wheat flour") ?? [];
    expect([
      await page.locator(".focus .large").textContent(),
      await page.locator(".what small").textContent(),
    ]).toEqual([`+${add} g`, `add ${add} g on ${scale}; ${inAll} g in all`]);
  });

  test("with too much of a stock solution says what that does, and that no sum mends it", async () => {
    const page = await openBench("barley-egg-noodle");
    await weigh(page, "stock solution", "400");
    await page.getByRole("alert").getByText("Too much of the stock solution is in the bowl").waitFor();
    await tickAll(page);
    expect(await page.locator(".done").textContent()).toBe("Everything is in the bowl, and too much of something.");
  });

  test("holds the place and the live line from one ingredient to the next, and to the end", async () => {
    const page = await openBench("evening-class");
    await go(page, "Weigh");
    await page.evaluate(`globalThis.line = document.querySelector("[aria-live] b").parentElement`);
    await page.locator("#shows").fill((await weightsOf(page))[0]?.[1]?.replace(" g", "") ?? "");
    await page.locator("#shows").press("Enter");
    await expectText(page, "in");
    expect(await page.evaluate(`document.activeElement.id + line.isConnected`)).toBe("showstrue");
    for (let open = 3; open > 0; open -= 1) await page.getByRole("button", { name: "Weighed as listed" }).click();
    await expectText(page, "Everything is in the bowl.");
    await page.waitForFunction(`document.activeElement === line`);
  });

  test("asks whether a second, smaller figure is more of it or all of it", async () => {
    const page = await openBench("school-noodle");
    const [[name = "", mass = ""] = []] = await weightsOf(page);
    const listed = Number.parseFloat(mass);
    await weigh(page, name, String(listed - 60));
    expect(await page.getByLabel("in all, with what is in already, g").inputValue()).toBe("");
    await page.locator("#shows").fill("60");
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: `60 g more, ${mass} in all` }).click();
    expect(await page.locator("ul.weights li").first().getAttribute("class")).toBe("right");
  });

  test("cannot be entered in two tabs at once, so that neither writes over the other", async () => {
    const page = await openBench("evening-class");
    const other = await page.context().newPage();
    await other.goto(page.url());
    await weigh(other, (await weightsOf(other))[0]?.[0] ?? "", "100");
    await page.getByRole("alert").getByText("Another tab has gone on").waitFor();
    await expect(page.getByRole("button", { name: "Weighed as listed" }).click({ timeout: 500 })).rejects.toThrow();
    await page.getByRole("button", { name: "Go on here from there" }).click();
    await go(page, "Weigh");
    await expectText(page, "add ");
  });

  test("counts no value that is typed as it is, and goes back to the kind of size that is undone to", async () => {
    const page = await openBench("school-noodle");
    await go(page, "Size");
    const bowls = page.getByRole("textbox", { name: "bowls", exact: true });
    const before = await bowls.inputValue();
    await bowls.fill(`${before}0`);
    await bowls.fill(before);
    await go(page, "Weigh");
    await reload(page);
    await page.locator("header").waitFor();
    expect(await page.locator("header").textContent()).not.toContain("differs");
    await go(page, "Size");
    await bowls.fill(`${before}0`);
    await bowls.fill(`${before}.0`);
    await bowls.blur();
    expect([await bowls.inputValue(), await page.locator("header").textContent()]).toEqual([
      before,
      expect.not.stringContaining("differs"),
    ]);
    await page.getByRole("radio", { name: "dough" }).check();
    await page.getByLabel("dough to mix", { exact: true }).fill("12");
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(async () => page.getByRole("radio", { name: "bowls" }).isChecked()).toBe(true);
  });
});

describe("a small dough on a coarse scale", () => {
  const spec = {
    name: "Small dough of the noodle class",
    flours: [
      { name: "strong flour", amount: "90 %", figures: { moisture: "12 %", protein: "13 %", proteinBasis: "dry" } },
      { name: "wheat bran", amount: "rest" },
    ],
    water: { added: "38 %" },
    alkali: [{ name: "sodium carbonate", amount: "0.6 %" }],
    salt: "1 %",
    ingredients: [{ name: "egg yolk", amount: "1.7 %" }],
    dusting: { name: "cornstarch", amount: "1.5 %" },
    batch: { flour: "1 kg" },
    scales: [{ division: "1 g", capacity: "5 kg" }],
    temperature: { dough: "25 °C", flour: "20 °C", room: "20 °C", tap: "14 °C", friction: "8 K" },
  };
  const input = JSON.stringify(spec);

  async function openSmall(): Promise<Page> {
    const { status, stderr } = runBuilt(["page", "-", "-o", fileOf("small")], { input });
    expect([status, stderr]).toEqual([0, expect.stringMatching(/Wrote/u)]);
    return openBench("small");
  }

  test("tells how to make up the stock above the weights, and what needs a finer scale", async () => {
    const page = await openSmall();
    await go(page, "Weigh");
    const remedies = page.getByRole("region", { name: "Too little for the scale: do this first" });
    const told = await remedies.locator("tbody tr").allTextContents();
    const { stdout } = runBuilt(["batch", "-", "--format", "json"], { input });
    const { sections = [] }: Partial<Printed> = JSON.parse(stdout);
    const printed = sections.find(({ id }) => id === "remedies")?.blocks[0]?.rows ?? [];
    expect(told).toEqual(printed.map(({ cells }) => cells.map(({ text }) => text).join("")));
    for (const part of ["stock solution", "from sodium carbonate", "in a load", "lasts for loads"]) {
      expect(told.join("\n")).toContain(part);
    }
    expect(await page.locator("main section").first().textContent()).toContain("do this first");
    for (const name of ["egg yolk", "cornstarch"]) {
      const row = page.locator("ul.weights li", { hasText: name });
      expect(await row.textContent()).toMatch(/too coarse, weigh it to 0\.\d+ g or finer/u);
    }
  });

  test("takes the protein of a flour on the basis that its label names", async () => {
    const page = await openSmall();
    await go(page, "Today");
    expect(await page.getByLabel("protein, dry").inputValue()).toBe("13");
    await page.getByLabel("protein, dry").fill("14");
    await page.getByLabel("protein, 14 % mb").fill("15");
    await done(page);
    await go(page, "Take");
    const yaml = await saved(page, "Spec as changed today (YAML)");
    expect(yaml).toMatch(/protein: 14 %\s+proteinBasis: dry/u);
    expect(yaml).toMatch(/protein: 15 %\s+proteinBasis: 14 % mb/u);
  });

  test("takes another scale where the spec names none", async () => {
    const { scales: _, ...plain } = spec;
    runBuilt(["page", "-", "-o", fileOf("no-scale")], { input: JSON.stringify(plain) });
    const page = await openBench("no-scale");
    await go(page, "Today");
    expect(await page.getByLabel("step of scale 1", { exact: true }).getAttribute("placeholder")).toBe("1");
    await page.getByLabel("step of scale 1", { exact: true }).fill("0,5");
    await done(page);
    const file = join(out, "another-scale.yaml");
    await go(page, "Take");
    writeFileSync(file, await saved(page, "Spec as changed today (YAML)"));
    const weights = await weightsOf(page);
    expect(weights).toEqual(weightsByCommand(file, []));
    expect(weights.map(([, mass]) => mass)).toContain("900.0 g");
  });

  test("gives no reason of flour or size when only the alkaline product is another, and offers none without alkali", async () => {
    const page = await openSmall();
    await go(page, "Today");
    expect(await page.getByLabel("step of scale 1", { exact: true }).count()).toBe(1);
    const product = page.getByLabel("in the place of sodium carbonate");
    const offered = await product.locator("option").allTextContents();
    expect(offered).toEqual(expect.arrayContaining(["potassium carbonate", "sodium bicarbonate"]));
    expect(offered.filter((name) => name.includes("chloride") || name.includes("dihydrogen"))).toEqual([]);
    await product.selectOption("sodium carbonate decahydrate");
    await done(page);
    await expectText(page, "The other alkaline product has another weight, or brings other water.");
    const follows = await page.locator("ul.follows").textContent();
    expect(follows).not.toMatch(/The flours bring|The batch has|The scale has|is warmer or colder|The dough keeps/u);
  });
});
