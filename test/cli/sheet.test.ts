import { readFileSync } from "node:fs";
import type { Report } from "@noodlewright/core";
import { describe, expect, test } from "vitest";
import { splitWords } from "../docs/console-blocks.ts";
import { answered, reported, runBuilt } from "./built.ts";
import { readCsv } from "./read-csv.ts";
import { readProblems } from "./read-problems.ts";

function figureOf(report: Report, id: string): number {
  return Number(report.figures[id]?.value);
}

describe("320 bowls of the school on the two-stand sheeter", () => {
  test("the sheets give the bowls", () => {
    const report = reported(["sheet", "examples/school-noodle.yaml"]);
    expect(figureOf(report, "batch.portions-made")).toBeGreaterThanOrEqual(320);
    const gap = (pass: number) => figureOf(report, `pass-${pass}.gap`);
    // Two folds at 6 mm, then never more than a third off: 6.48 × (2/3)^4 < 1.4 takes four passes.
    expect(gap(1)).toBe(6);
    expect(gap(7)).toBeCloseTo(1.4 / 1.08, 12);
    expect(report.figures["pass-8.gap"]).toBeUndefined();
  });

  test.each(["batch", "cost", "sheet", "plan --serve 12:15"])(
    "%s tells when the sheets give too few portions",
    (asked) => {
      const [command = "", ...flags] = splitWords(asked);
      const told = (bowls: string) =>
        answered([command, "examples/school-noodle.yaml", ...flags, "--bowls", bowls]).replace(/\s+/gu, " ");
      expect(told("350")).toContain("The sheets give 5 portions fewer than the 350 wanted");
      expect(told("320")).not.toContain("portions fewer than");
    },
  );

  test("what is wrong with the sheet is left to the sheet", () => {
    const input =
      "name: test\nflours: [{ name: bread flour, amount: 100 % }]\nwater: { added: 36 % }\nbatch: { bowls: 10, rawWeight: 130 g }\nsheet: { machine: no such machine, thickness: 1.4 mm, cutter: 20 }\n";
    answered(["batch", "-"], { input });
    expect(runBuilt(["sheet", "-"], { input })).toMatchObject({
      status: 2,
      stderr: expect.stringContaining("[machine.unknown]"),
    });
  });

  test("the plan ends at service and books no machine twice", () => {
    const args = ["plan", "examples/school-noodle.yaml", "--serve", "12:15"];
    const [head = [], ...loads] = readCsv(answered([...args, "--format", "csv"]));
    const column = (name: string) => loads.map((row) => row[head.indexOf(name)] ?? "");
    expect(loads).toHaveLength(3);
    expect(column("done").at(-1)).toBe("12:15");
    const minutes = (text: string) => Number(text.slice(0, 2)) * 60 + Number(text.slice(3));
    const taken = [
      ...column("compound").map((start) => [minutes(start), minutes(start) + 10] as const),
      ...column("roll").map((start) => [minutes(start), minutes(start) + 15] as const),
      ...column("cut").map((start) => [minutes(start), minutes(start) + 12] as const),
    ].sort(([a], [b]) => a - b);
    for (const [index, [start]] of taken.entries()) {
      expect(start).toBeGreaterThanOrEqual(taken[index - 1]?.[1] ?? 0);
    }
    const text = answered(args);
    expect(text).toContain("The sheeter sets the pace.");
    for (const word of ["Rolls draw in", "Boiling pots", "food safety plan", "flour dust"])
      expect(text).toContain(word);
    expect(text).not.toMatch(/keeps? (for|until)|shelf life of/u);
  });

  test("the plan carries times as minutes and as ISO text, the day before too", () => {
    const args = ["plan", "examples/school-noodle.yaml", "--serve", "00:30", "--mixers", "2", "--sheeters", "2"];
    const [head = [], ...loads] = readCsv(answered([...args, "--format", "csv"]));
    const column = (name: string) => loads.map((row) => row[head.indexOf(name)] ?? "");
    expect(column("done").at(-1)).toBe("00:30");
    expect(column("done, min from midnight").at(-1)).toBe("30");
    const minutes = (text: string) => Number(text.slice(0, 2)) * 60 + Number(text.slice(3));
    expect(column("weigh, min from midnight").map(Number)).toEqual(column("weigh").map((text) => minutes(text) - 1440));
    const cells = reported(args).sections.flatMap(({ blocks }) =>
      blocks.flatMap((block) =>
        block.kind === "table" && block.id === "loads" ? block.rows.flatMap((row) => row.cells) : [],
      ),
    );
    expect(cells.find(({ text }) => text.endsWith("*"))?.time).toEqual({
      minute: Number(column("weigh, min from midnight")[0]),
      iso: column("weigh")[0],
    });
  });

  test("no time of the plan is broken in its middle, with several machines of a kind", () => {
    const args = ["plan", "examples/school-noodle.yaml", "--serve", "12:15", "--mixers", "2", "--sheeters", "2"];
    const [, day = ""] = answered(args).split("Loads, by the time each stage begins");
    const [times = ""] = day.split("Which of the machines");
    // Three loads at eight stages, and done.
    expect(times.match(/\b\d\d:\d\d(?= |$)/gmu)).toHaveLength(27);
  });

  test("another sheeter brings the bottleneck to the mixer or the pots", () => {
    const text = answered(["plan", "examples/school-noodle.yaml", "--serve", "12:15", "--sheeters", "3"]);
    expect(text).toContain("The mixer sets the pace.");
  });

  test("the working of one figure leads to the spec", () => {
    const text = answered(["sheet", "examples/school-noodle.yaml", "--figure", "cut.length"]);
    for (const word of ["raw portion", "strands across", "dough density", "Choi and Okos"])
      expect(text).toContain(word);
  });

  test.each(["markdown", "html"])("goes to %s", (format) => {
    expect(answered(["sheet", "examples/school-noodle.yaml", "--format", format])).toContain("fold and roll");
  });
});

describe("the evening class on its dial, and pin and sticks at home", () => {
  test("take the settings in turn", () => {
    const settings = (file: string) => {
      const [head = [], ...rows] = readCsv(answered(["sheet", file, "--format", "csv"]));
      return rows.map((row) => row[head.findIndex((name) => name === "setting" || name === "sticks")]);
    };
    expect(settings("examples/evening-class.yaml").slice(0, -1)).toEqual(["1", "2", "3", "4", "5", "6"]);
    expect(settings("examples/pin-and-sticks.yaml").slice(0, -1)).toEqual([
      "thick",
      "middle",
      "thin",
      "thinner",
      "finest",
    ]);
  });

  test("a warm room takes ice", () => {
    const report = reported(["water-temperature", "examples/evening-class.yaml"]);
    const [ice, tap, all] = ["water.ice", "water.from-tap", "water.mass"].map((id) => figureOf(report, id));
    expect(ice).toBeGreaterThan(0);
    expect((ice ?? 0) + (tap ?? 0)).toBeCloseTo(all ?? 0, 9);
    expect(answered(["water-temperature", "examples/evening-class.yaml", "--units", "us"])).toContain("°F");
  });

  test("every spec that has a plan runs through it", () => {
    expect(readFileSync("examples/evening-class.yaml", "utf8")).toContain("plan:");
    expect(answered(["plan", "examples/evening-class.yaml"])).toContain("serve at 19:30");
  });
});

describe("the water for a mix without a spec", () => {
  test("comes from flags alone", () => {
    const flags = ["--flour", "10 kg", "--water", "3.5 kg", "--flour-at", "22 °C", "--dough-at", "27 °C"];
    const report = reported(["water-temperature", ...flags, "--mixing-heat", "5 kJ/kg"]);
    // (10 × 1.84 × 5 + 3.5 × 4.18 × (27 − t)) = 13.5 × 5 by hand.
    expect(figureOf(report, "water.temperature")).toBeCloseTo(27 + (10 * 1.84 * 5 - 13.5 * 5) / (3.5 * 4.18), 9);
  });

  test("names the flag that is missing", () => {
    const line = "water-temperature --flour '10 kg' --water '3.5 kg' --dough-at '25 °C'";
    const { status, stderr } = runBuilt(splitWords(line));
    expect(status).toBe(2);
    expect(readProblems(stderr)).toMatchObject([{ where: "--flour-at", code: "temperature.missing" }]);
  });
});

describe("what the kitchen measured", () => {
  test.each([
    ["sheet --length '1 m' --width '150 mm' --mass '278 g' --thickness '1.5 mm'", "density: 1.236 g/mL"],
    ["losses --mixing '10 kg to 9.95 kg'", "losses: { mixing: 0.50 % }"],
    ["cooking --raw '500 g' --cooked '880 g'", "batch: { cookGain: 1.76 }"],
    [
      "mixing --flour '10 kg' --water '3.5 kg' --flour-at '19 °C' --water-at '14 °C' --dough-at '25 °C'",
      "temperature: { mixingHeat:",
    ],
  ])("calibrate %s", (line, says) => {
    expect(answered(splitWords(`calibrate ${line}`))).toContain(says);
  });
});

describe("bad input", () => {
  test.each([
    ["sheet examples/school-noodle.yaml --thickness 1.4", 2, "--thickness", "quantity.unreadable"],
    ["sheet examples/school-noodle.yaml --cutter 22", 1, "--cutter", "fits.cutter-not-there"],
    ["sheet examples/school-noodle.yaml --machine sheeter", 2, "--machine", "machine.unknown"],
    ["sheet examples/evening-class.yaml --start '9 mm'", 1, "examples/evening-class.yaml", "passes.step-too-big"],
    ["plan examples/school-noodle.yaml --serve noon", 2, "--serve", "plan.serve-time"],
    ["plan examples/school-noodle.yaml --serve 12:15 --pots none", 2, "--pots", "spec.type"],
    ["calibrate losses --mixing '9 kg to 10 kg'", 2, "--mixing", "inverse.gained"],
  ])("%s", (line, ended, where, code) => {
    const { status, stdout, stderr } = runBuilt(splitWords(line));
    expect([status, stdout]).toEqual([ended, ""]);
    const [first] = readProblems(stderr);
    expect([first?.where.startsWith(where), first?.code, first?.advice === ""]).toEqual([true, code, false]);
  });
});
