import { describe, expect, test } from "vitest";
import { examples, fittingSpec, runExample, withoutScales } from "./every-example.ts";

const metric = /(?<![\w/°])(?:k?g|mg|[cm]?m|m?L|litres?|metres?|°C|K|kJ|k?W)(?![\w²³])(?:\/[(\w]+\)?)?/u;

/** What stays metric in an answer in US units, and why. */
const reasoned: readonly (readonly [what: RegExp, why: string])[] = [
  [
    /\d m?g becomes|\d+ mg per kg of raw noodle|^ *(?:sodium|potassium) .* mg|[\d.]+ mg\b|mg\/kg|of 100 g/gmu,
    "labels and food law",
  ],
  [
    /meq(?:\/100 g| per 100 g) flour|mol\/(?:L|kg)|moles of salts (?:per kg of water|in a litre)|g\/mol/gu,
    "laboratories",
  ],
  [/(?:Handbook|handbook)[^;]*|an old table[^;]*|(?:was fitted|carried on).*|1984, at 25 °C/gu, "what was published"],
  [/[Aa]lkalinity [MP]|\b[A-Z]\. S\. Park|B\.-K\. Baik|1 g of sodium carbonate/gu, "names, and what a word means"],
  [/the mixer takes 4 kg|[\d.]+ EUR(?:\/| per [\d.]+ )k?g|× [\d.]+ k?g/gu, "said so by the user"],
  [/`[^`]*`|(?:sheet|temperature|toasted): \{[^}]*\}.*/gu, "to be written into the spec"],
];

/** Answers that are metric all through: labels go by 100 g, words are explained, a scale in g was named. */
const exempt = /^noodlewright (?:words|nutrition|.*--division '\d+ g')/u;

function leftMetric(answer: string): readonly string[] {
  const [body = ""] = answer.split("\nCautions\n");
  const plain = reasoned.reduce((text, [what]) => text.replace(what, ""), body);
  return plain.split("\n").filter((line) => metric.test(line));
}

const { scales: _scales, ...spec } = fittingSpec as Record<string, unknown>;

/** A load whose list has a stock solution is not mended: its salts are weighed dry, on a scale that is fine enough. */
const fineScales = [
  { name: "bench scale", division: "0.1 oz", capacity: "30 lb" },
  { name: "fine scale", division: "0.005 oz", capacity: "10 oz" },
];

const ofSpecs = examples.filter(
  ({ usage, flags }) => /^(?!page|workbook).*[<[]spec/u.test(usage) && flags.includes("units"),
);
const names = ["school-noodle.yaml", "evening-class.yaml", "one-bottle.yaml"];
const files = Object.fromEntries([...names, "harbour-store.yaml"].map((name) => [name, withoutScales(name)]));

describe("an answer in US units", () => {
  test.each(examples.filter(({ flags }) => flags.includes("units")))(
    "of $usage has no metric unit",
    async ({ usage, lines }) => {
      const asked = usage.startsWith("mend") ? { ...spec, scales: fineScales } : spec;
      for (const line of lines.filter((one) => !exempt.test(one) && !one.includes("json"))) {
        const { status, stdout } = await runExample(line, { spec: asked, flags: ["--units", "us"], width: 2000 });
        expect({ line, status, left: leftMetric(stdout) }).toEqual({ line, status: 0, left: [] });
      }
    },
  );

  test.each(ofSpecs)("of $usage has none with the specs of the examples", async ({ usage }) => {
    const [command = ""] = usage.split(" ");
    for (const name of names.filter(() => !exempt.test(`noodlewright ${command}`))) {
      const { stdout, stderr } = await runExample(`noodlewright ${command} ${name}`, {
        files,
        flags: ["--units", "us"],
        width: 2000,
      });
      expect(stderr).not.toContain("[file.");
      expect({ name, left: leftMetric(stdout) }).toEqual({ name, left: [] });
    }
  });

  test("is refused in them, too", async () => {
    const line = "noodlewright sheet school-noodle.yaml --set 'sheet.width=300 cm'";
    const { stderr } = await runExample(line, { files, flags: ["--units", "us"], width: 2000 });
    const [, told = ""] = stderr.split("found");
    expect(told).toContain("a sheet 9.84 ft wide");
    expect(leftMetric(told)).toEqual([]);
  });
});
