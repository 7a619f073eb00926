import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { reportSchema } from "#core/report/schema.ts";
import { splitWords } from "../docs/console-blocks.ts";
import { everyCommand } from "./every-example.ts";
import { runHere } from "./in-process.ts";

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

/** Lines that need no spec, and questions about one. */
const lines: readonly Line[] = everyCommand.flatMap(({ usage, command }) => {
  const flags = Object.keys(command.flags);
  if (/^(?:alkali|calibrate) /u.test(usage))
    return Object.keys(command.examples).map((example) => ({ base: splitWords(example).slice(1), flags }));
  const [name = ""] = usage.split(" ");
  return ["batch", "cost", "sheet"].includes(name) ? [{ base: [name, "examples/school-noodle.yaml"], flags }] : [];
});

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

/** What no screen shows, but for a word too many as it was typed: numbers that are none, and what a terminal obeys. */
const unshown =
  /(?<!["\w-]|too many: )(?:NaN|Infinity|undefined)(?!["\w])|\[object Object\]|(?![\r\n])\p{Cc}|[\u202A-\u202E]/u;

describe("hostile values on the command line", () => {
  test.each([[["-"]], [["--working", "-"]], [["sodium carbonate", "-"]]])(
    "a lone dash among the products is no product, and not passed over: %j",
    async (words) => {
      const strength = ["--strength", "10 %", "--amount", "1 kg"];
      const { status, stderr } = await runHere(["alkali", "make", ...words, ...strength]);
      expect(status).toBe(2);
      expect(stderr).toContain("<products>: [");
    },
  );

  test("end in an answer or a refusal, and nothing unfit is shown", async () => {
    await fc.assert(
      fc.asyncProperty(commandLine, async (args) => {
        const { status, stdout, stderr } = await runHere(args);
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
        const { status, stdout } = await runHere([...args, "--format", "json"]);
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
