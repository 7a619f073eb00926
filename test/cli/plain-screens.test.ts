import { describe, expect, test } from "vitest";
import { runBuilt } from "./built.ts";
import { folderFor } from "./folder.ts";
import { readCsv } from "./read-csv.ts";

const folder = folderFor({
  "shop.yaml":
    "name: shop\nflours: [{ name: shop flour, amount: 100 %, figures: { label: { protein: 4 g, serving: 30 g, rules: US } } }]\nwater: { added: 36 % }\nbatch: { bowls: 20, rawWeight: 110 g }\nmachines: { pin: { width: 300 mm, gap: { least: 1 mm, greatest: 9 mm }, cutters: [{ size: 20 }] } }\nsheet: { machine: pin, thickness: 2 mm, cutter: 20, start: 9 mm }\ntemperature: { dough: 25 °C, flour: 20 °C, room: 20 °C }\n",
});

describe("notes on the label of a flour", () => {
  test.each([
    ["formula", true],
    ["sheet", false],
    ["water-temperature", false],
  ])("%s tells them: %s", (command, told) => {
    const { status, stdout } = runBuilt([command, "shop.yaml"], { cwd: folder });
    expect(status).toBe(0);
    expect(stdout.includes("its moisture is not stated")).toBe(told);
    expect(stdout.includes("nitrogen factor")).toBe(told);
  });
});

test("CSV leaves a number that is not there empty", () => {
  const [head = [], ...rows] = readCsv(runBuilt(["materials", "wheat gluten", "--format", "csv"]).stdout);
  const numeric = ["moisture", "protein", "N factor", "ash"].map((name) => head.indexOf(name));
  const fields = rows.flatMap((row) => numeric.map((index) => row[index]));
  expect(fields).toContain("");
  expect(fields.filter((field) => !/^(?:-?\d+(?:\.\d+)?)?$/u.test(field ?? "–"))).toEqual([]);
});
