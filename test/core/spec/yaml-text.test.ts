import { yamlLines } from "@noodlewright/core/spec";
import { expect, test } from "vitest";
import { parse } from "yaml";

test("YAML that is written reads as the same data, lists and sections with nothing in them too", () => {
  const data = {
    allergens: [],
    materials: {},
    dial: { "1": "4.8 mm", no: "yes" },
    flours: [{ name: "a: b", amount: "100 %" }],
  };
  const text = Object.entries(data).flatMap(([key, value]) => yamlLines(key, value, 0));
  expect(parse(text.join("\n"))).toEqual(data);
});
