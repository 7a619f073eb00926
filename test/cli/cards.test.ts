import { createHash } from "node:crypto";
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { describe, expect, test } from "vitest";
import { cardsCommand } from "#cli/commands/cards.ts";
import { run } from "#cli/run.ts";
import { systemIo } from "#cli/system-io.ts";
import { runBuilt } from "./built.ts";
import { folderFor } from "./folder.ts";

const spec = {
  name: "Noodle",
  include: ["kitchen.json"],
  flours: [{ name: "house flour", amount: "100 %" }],
  water: { added: "36 %" },
  batch: { dough: "20 kg" },
  mixer: { largest: "5 kg", of: "flour" },
};
const kitchen = {
  materials: {
    "house flour": { kind: "flour", moisture: "13 %", protein: "11 %", allergens: ["wheat"], source: "certificate" },
  },
};
const text = JSON.stringify(spec);

/** The first digits of the SHA-256 of a file, as `sha256sum` prints them. */
function checksum(path: string): string {
  return createHash("sha256").update(readFileSync(path)).digest("hex").slice(0, 8);
}

describe("noodlewright card", () => {
  const folder = folderFor({ "noodle.json": text, "kitchen.json": JSON.stringify(kitchen) });
  const path = join(folder, "noodle.json");

  test("prints a card with the date and the loads asked for, and what the flags say", () => {
    const flags = ["--date", "2026-02-28", "--loads", "3,1-2,2", "--dough", "19 kg"];
    const { status, stdout, stderr } = runBuilt(["card", path, ...flags]);
    expect([status, stderr]).toEqual([0, ""]);
    expect(stdout).toContain("2026-02-28");
    expect(stdout).toContain("changed: dough 19 kg");
    expect([...stdout.matchAll(/class="tick">(load \d)</gu)].map(([, load]) => load)).toEqual([
      "load 1",
      "load 2",
      "load 3",
    ]);
  });

  test("carries the checksums of the spec and of the kitchen file, byte for byte, also behind a byte order mark", () => {
    const marked = join(folder, "marked.json");
    writeFileSync(marked, `\uFEFF${text}\r\n`);
    for (const file of [path, marked]) {
      const { status, stdout } = runBuilt(["card", file]);
      expect(status).toBe(0);
      expect(stdout).toContain(`spec <b>${checksum(file)}</b>`);
      expect(stdout).toContain(`kitchen.json <b>${checksum(join(folder, "kitchen.json"))}</b>`);
    }
  });

  test("speaks one system of units, that of the scales", () => {
    const day = ["--serve", "12:15"];
    const grams = runBuilt(["card", "examples/school-noodle.yaml", ...day, "--units", "us"]);
    expect([grams.status, grams.stderr]).toEqual([0, expect.stringContaining("the scales show g")]);
    const ounces = readFileSync("examples/school-noodle.yaml", "utf8")
      .replace(/division: (\S+) g/gu, "division: $1 oz")
      .replace("harbour-store.yaml]", `${join(process.cwd(), "examples/harbour-store.yaml")}]`);
    const us = runBuilt(["card", "-", ...day], { input: ounces });
    expect(us.status).toBe(0);
    const wordsOf = (page: string): string => page.replace(/<style>.*<\/style>/su, "").replace(/<[^>]*>/gu, " ");
    const measure = (units: string): RegExp => new RegExp(`(?:\\d |, )(?:${units})(?![\\p{L}/])`, "u");
    expect(wordsOf(grams.stdout)).not.toMatch(measure("oz|lb|in|ft|ft/min|gal|°F"));
    expect(wordsOf(us.stdout)).not.toMatch(measure("g|kg|mm|m|m/min|L|°C"));
    expect(wordsOf(us.stdout)).toMatch(measure("oz"));
  });

  const wrong: readonly (readonly [flag: string, value: string, told: string])[] = [
    ["--date", "2026-02-30", "a date such as"],
    ["--date", "tomorrow", "a date such as"],
    ["--loads", "0", "loads from 1 to"],
    ["--loads", "2-1", "loads from 1 to"],
    ["--loads", "1,99", "loads from 1 to"],
    ["--loads", "all", "loads from 1 to"],
    ["--out", "no-such-folder/card.html", "no-such-folder/card.html: [file.unwritable]"],
    ["--paper", "a5", "a4"],
  ];

  test.each(wrong)("%s %s is refused, and the flag named", (flag, value, told) => {
    const { status, stdout, stderr } = runBuilt(["card", path, flag, value], { cwd: folder });
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toContain(flag === "--paper" ? "paper" : flag === "--out" ? value : flag);
    expect(stderr).toContain(told);
  });
});

describe("a card of a spec that asks for what cannot be had", () => {
  const salts = { alkali: [{ name: "sodium carbonate", amount: "1 %" }] };
  const scales = [{ name: "scale", division: "0.1 g" }];
  const plan = { serve: "12:15", weigh: "10 min", mix: "15 min", boil: "20 min", longestHold: "5 min" };
  const sheet = {
    machine: "bench sheeter",
    thickness: "1.5 mm",
    cutter: "3 mm",
    start: "6 mm",
    width: "180 mm",
    strandLength: "250 mm",
    portion: "130 g",
  };
  const temperature = { dough: "20 °C", flour: "21 °C", room: "22 °C", tap: "18 °C" };
  const machines = {
    "bench sheeter": { width: "200 mm", gap: { least: "0.5 mm", greatest: "8 mm" }, cutters: [{ size: "2 mm" }] },
  };
  const asked = { ...spec, ...salts, machines, scales, temperature, plan };
  const impossible = { ...temperature, flour: "90 °C" };
  const cardOf = (content: object) => {
    const folder = folderFor({ "noodle.json": JSON.stringify(content), "kitchen.json": JSON.stringify(kitchen) });
    return runBuilt(["card", join(folder, "noodle.json")]);
  };
  const notesOf = (html: string): string => /<section id="notes">.*?<\/section>/su.exec(html)?.[0] ?? "";

  test("leaves the answer out and says so on the card and on standard error; there is no such answer", () => {
    const { status, stdout, stderr } = cardOf({ ...asked, temperature: impossible });
    expect(status).toBe(1);
    const notes = notesOf(stdout);
    expect(notes).toMatch(/Water temperature: found a dough too warm .*</u);
    expect(notes).toMatch(/Plan: .*</u);
    expect(stdout).not.toContain("see noodlewright");
    expect(stderr.trim().split("\n")).toEqual([
      expect.stringMatching(/^Noodle: not on the card: Water temperature: .*; see noodlewright water-temperature$/u),
      expect.stringMatching(/^Noodle: not on the card: Plan: .*; see noodlewright plan$/u),
    ]);
    expect(stdout).toContain('id="weights-1"');
    expect(stdout).not.toMatch(/<section id="(?:water|loads)"/u);
  });

  test("does so for the sheet, and keeps the water", () => {
    const { longestHold: _hold, ...possible } = plan;
    const { status, stdout, stderr } = cardOf({ ...asked, plan: possible, sheet });
    const missing = "Sheet: found 3 mm, expected a cutter that the machine has: 2 mm";
    expect([status, stderr]).toEqual([1, `Noodle: not on the card: ${missing}; see noodlewright sheet\n`]);
    expect(notesOf(stdout)).toContain(missing);
    for (const danger of ["Rolls draw in fingers", "Cutters pull in", "Boiling pots scald"])
      expect(stdout).toContain(danger);
    expect(stdout).toContain('<section id="water"');
    expect(stdout).toContain('<section id="loads"');
    expect(stdout).not.toContain('<section id="passes"');
  });

  test("refuses wrong input all the same", () => {
    const { flour: _flour, ...missing } = temperature;
    const { status, stdout, stderr } = cardOf({ ...asked, temperature: missing });
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toContain("temperature.missing");
  });
});

describe("noodlewright cards", () => {
  test("gives every spec a card of its own, whatever the specs are called", () => {
    const names = ["a.yaml", "a.json", "a.json.yml", "index.json", "B.yaml", "b.json", "a b#c.json"];
    const files = Object.fromEntries(names.map((name) => [name, JSON.stringify({ ...spec, name })]));
    const folder = folderFor({ ...files, "kitchen.json": JSON.stringify(kitchen) });
    const out = join(folder, "deep", "out");
    const { status, stderr } = runBuilt(["cards", folder, "-o", out, "--date", "2026-11-25"]);
    expect([status, stderr]).toEqual([0, `Wrote ${names.length} cards and index.html to ${out}.\n`]);
    const written = readdirSync(out).filter((name) => name !== "index.html");
    const titles = written.map((name) => /<h1>(.*?)<\/h1>/u.exec(readFileSync(join(out, name), "utf8"))?.[1]);
    expect(titles.sort()).toEqual([...names].sort());
    const index = readFileSync(join(out, "index.html"), "utf8");
    const links = [...index.matchAll(/href="([^"]*)"/gu)].map(([, link]) => decodeURIComponent(link ?? ""));
    expect(links.sort()).toEqual(written.sort());
    for (const name of names) expect(index).toContain(checksum(join(folder, name)));
    // Names that differ in case alone are one file on some disks.
    expect(new Set(written.map((name) => name.toLowerCase())).size).toBe(names.length);
  });

  test("passes over a spec without a batch, tells what is wrong with another, and writes the rest", () => {
    const { batch: _batch, ...without } = spec;
    const folder = folderFor({
      "good.json": text,
      "without.json": JSON.stringify(without),
      "wrong.json": JSON.stringify({ ...spec, watr: 1 }),
      "kitchen.json": JSON.stringify(kitchen),
    });
    const { status, stderr } = runBuilt(["cards", folder, "-o", join(folder, "out")]);
    expect(status).toBe(2);
    expect(stderr).toContain("Passed over, no batch stated: without.json.");
    expect(stderr).toContain("wrong.json");
    expect(stderr).toContain("spec.unknown-key");
    expect(stderr).toContain("1 problem; the other cards were written.");
    expect(readdirSync(join(folder, "out")).sort()).toEqual(["good.html", "index.html"]);
  });

  test("ends with 1 where a card lacks what its spec asks for, and writes it all the same", () => {
    const plan = { serve: "12:15", mix: "15 min", longestHold: "5 min" };
    const folder = folderFor({
      "noodle.json": JSON.stringify({ ...spec, plan }),
      "kitchen.json": JSON.stringify(kitchen),
    });
    const { status, stderr } = runBuilt(["cards", folder, "-o", join(folder, "out")]);
    expect([status, stderr]).toEqual([1, expect.stringMatching(/^Noodle: not on the card: Plan: .*\nWrote 1 card /u)]);
  });

  test("says where there is nothing to make cards of, no folder, or nowhere to write", () => {
    const folder = folderFor({ "kitchen.json": JSON.stringify(kitchen), "good.json": text });
    mkdirSync(join(folder, "empty"));
    const none = runBuilt(["cards", join(folder, "empty"), "-o", join(folder, "out")]);
    expect([none.status, none.stderr]).toEqual([1, expect.stringContaining("cards.none")]);
    const missing = runBuilt(["cards", join(folder, "nowhere"), "-o", join(folder, "out")]);
    expect([missing.status, missing.stderr]).toEqual([2, expect.stringContaining("file.unreadable")]);
    const unnamed = runBuilt(["cards", folder]);
    expect([unnamed.status, unnamed.stderr]).toEqual([2, expect.stringContaining("--out")]);
    const blocked = runBuilt(["cards", folder, "-o", join(folder, "good.json")]);
    expect([blocked.status, blocked.stderr]).toEqual([2, expect.stringContaining("file.unwritable")]);
  });
});

test("the cards of a folder read each file once, the kitchen file of them all too", async () => {
  const folder = folderFor({ "one.json": text, "two.json": text, "kitchen.json": JSON.stringify(kitchen) });
  const read: string[] = [];
  const real = systemIo();
  const status = await run(
    ["cards", folder, "-o", join(folder, "cards")],
    [{ usage: "cards <folder>", describe: "", load: async () => cardsCommand }],
    {
      ...real,
      readFile: (path, most) => {
        read.push(basename(path));
        return real.readFile(path, most);
      },
      err: () => undefined,
    },
  );
  expect(status).toBe(0);
  expect(read.toSorted()).toEqual(["kitchen.json", "one.json", "two.json"]);
});
