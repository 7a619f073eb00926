import { readSpec, specSample } from "@noodlewright/core/spec";
import { expect, test } from "vitest";
import { parse } from "yaml";
import { specSchema } from "#core/spec/spec.ts";

const keys = Object.keys(specSchema.shape);

test.each(keys)("the sample of %s is right where it stands", (key) => {
  const lines = specSample([key]);
  const outcome = readSpec(parse(lines.join("\n") || "{}"));
  const wrong = outcome.ok
    ? []
    : outcome.problems.filter(({ code, path }) => !(code === "spec.missing" && path.length === 1));
  expect([lines, wrong]).toEqual([lines, []]);
});

test("samples are made of the examples of the schema, and few lines long", () => {
  expect(specSample(["alkali", 0, "figures", "composition"])).toEqual([
    "composition:",
    "  K2CO3: 18 %",
    "  Na2CO3: 12 %",
    "  water: rest",
  ]);
  expect(specSample(["flours", 2, "nmae"])).toEqual(["flours:", "  - name: bread flour", "    amount: 70 %"]);
  expect(specSample(["dusting"])).toEqual(["dusting:", "  name: cornstarch", "  amount: 1.5 %"]);
  expect(specSample(["nonsense"])).toEqual([]);
  const long = keys.filter((key) => specSample([key]).length > 4);
  expect(long).toEqual([]);
});
