import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { alkaliCommands } from "#cli/commands/alkali/alkali.ts";
import { batchCommand } from "#cli/commands/batch.ts";
import { calibrateGroup } from "#cli/commands/calibrate.ts";
import { costCommand } from "#cli/commands/cost.ts";
import { sheetCommand } from "#cli/commands/sheet.ts";
import type { Listed } from "#cli/shared/command.ts";
import { reportSchema } from "#core/report/schema.ts";
import { runHere } from "./in-process.ts";

const groups = { alkali: alkaliCommands, calibrate: calibrateGroup };
const withSpec = { batch: batchCommand, cost: costCommand, sheet: sheetCommand };

const commands: readonly Listed[] = [
  { usage: "alkali", describe: "", load: async () => alkaliCommands },
  { usage: "calibrate", describe: "", load: async () => calibrateGroup },
  ...Object.entries(withSpec).map(([name, command]) => ({
    usage: `${name} <spec>`,
    describe: "",
    load: async () => command,
  })),
];

/** Texts that are no value, or that a careless reader takes for another one. */
const hostile = [
  "",
  "-",
  "---",
  "__proto__",
  "constructor",
  "toString",
  "NaN",
  "Infinity",
  "1e999",
  "-1",
  "0",
  "٣",
  "1,5",
  "½",
  "x".repeat(5000),
  "a\nb",
  "\u001b[31mred\u0007\u202e",
  "=1+1",
  "=",
  "a=b",
  "1e999 g",
  "-3 %",
  "0 g",
  "0 %",
  "100 %",
  "1e-30 g",
  "99999999999999999999999999 kg",
  "0.000000000001 mm",
  "1e30 °C",
  "<script>",
];

interface Line {
  readonly base: readonly string[];
  readonly flags: readonly string[];
}

/** The words of an example as a shell would take them apart. */
function wordsOf(example: string): readonly string[] {
  const words = [...example.matchAll(/'([^']*)'|"([^"]*)"|(\S+)/gu)];
  return words.slice(1).map((word) => word[1] ?? word[2] ?? word[3] ?? "");
}

const lines: readonly Line[] = [
  ...Object.values(groups).flatMap((group) =>
    group.commands.flatMap(({ command }) =>
      command.examples.map(([example]) => ({ base: wordsOf(example), flags: Object.keys(command.flags) })),
    ),
  ),
  ...Object.entries(withSpec).map(([name, command]) => ({
    base: [name, "examples/school-noodle.yaml"],
    flags: Object.keys(command.flags),
  })),
];

/** A right command line in which one flag, or one word, is replaced. */
const commandLine = fc
  .constantFrom(...lines)
  .chain(({ base, flags }) =>
    fc
      .tuple(fc.constantFrom(...flags), fc.nat(base.length - 1), fc.constantFrom(...hostile), fc.boolean())
      .map(([flag, at, value, asFlag]): readonly string[] =>
        asFlag
          ? [...base, `--${flag}=${value}`]
          : base.map((word, index) => (index === Math.max(2, at) ? value : word)),
      ),
  );

/** What no screen shows: numbers that are none, and what a terminal obeys. */
const unshown = /(?<!["\w-])(?:NaN|Infinity|undefined)(?!["\w])|\[object Object\]|(?![\r\n])\p{Cc}|[\u202A-\u202E]/u;

describe("hostile values on the command line", () => {
  test.each([[["-"]], [["--working", "-"]], [["sodium carbonate", "-"]]])(
    "a lone dash among the products is no product, and not passed over: %j",
    async (words) => {
      const strength = ["--strength", "10 %", "--amount", "1 kg"];
      const { status, stderr } = await runHere(["alkali", "make", ...words, ...strength], { commands });
      expect(status).toBe(2);
      expect(stderr).toContain("<products>: [");
    },
  );

  test("end in an answer or a refusal, and nothing unfit is shown", async () => {
    await fc.assert(
      fc.asyncProperty(commandLine, async (args) => {
        const { status, stdout, stderr } = await runHere(args, { commands });
        expect([0, 1, 2]).toContain(status);
        expect(stdout + stderr).not.toBe("");
        expect(stdout + stderr).not.toMatch(unshown);
      }),
      { numRuns: 60 },
    );
  });

  test("what is answered survives JSON and a structured clone, and the schema of reports takes it", async () => {
    await fc.assert(
      fc.asyncProperty(commandLine, async (args) => {
        fc.pre(!args.some((word) => /^--(?:format|table|picture|figure)=/u.test(word)));
        const { status, stdout } = await runHere([...args, "--format", "json"], { commands });
        expect([0, 1, 2]).toContain(status);
        if (status === 2) return;
        const report: unknown = JSON.parse(stdout);
        if (status === 0) reportSchema.parse(report);
        expect(structuredClone(report)).toEqual(report);
      }),
      { numRuns: 40 },
    );
  });
});
