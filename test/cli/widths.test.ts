import { describe, expect, test } from "vitest";
import { textWidth } from "#cli/render/text-width.ts";
import { examples, fittingSpec, runExample } from "./every-example.ts";

const long = "stone-ground wholegrain wheat of the harbour mill, autumn delivery";
const spec = {
  ...fittingSpec,
  flours: [...fittingSpec.flours.slice(0, 1), { name: "rye flour", amount: "12 %" }, { name: long, amount: "rest" }],
  materials: { [long]: { kind: "flour", protein: "12 %", moisture: "13 %" } },
};

/** Words as they stand between blanks, in parts where a hyphen may end a line; the bars of a picture are as wide as there is room. */
const words = (text: string): readonly string[] => text.split(/\s+|(?<=-)/u).filter((word) => !/^[─█]*$/u.test(word));

/** The first example of each command that prints a table: the others differ in what is asked. */
const shown = examples.flatMap(({ usage, lines, flags }) => {
  const line = lines.find((one) => !/--format|-o |--write/u.test(one));
  return flags.includes("format") && line !== undefined ? [{ usage, line }] : [];
});

describe.each([50, 80])("at a terminal of %i columns", (width) => {
  test.each(shown)("$usage has no longer line and breaks no word", async ({ line }) => {
    const { stdout } = await runExample(line, { spec, width });
    expect(stdout).not.toBe("");
    expect(stdout.split("\n").filter((one) => textWidth(one) > width)).toEqual([]);
    const whole = new Set(words((await runExample(line, { spec, width: 2000 })).stdout));
    expect(words(stdout).filter((word) => !whole.has(word))).toEqual([]);
  });
});
