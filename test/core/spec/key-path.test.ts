import { told } from "@noodlewright/core";
import { pathText } from "@noodlewright/core/figure";
import { keyPathIn, readKeyPath } from "@noodlewright/core/spec";
import fc from "fast-check";
import { expect, test } from "vitest";
import { always } from "../../always.ts";

const spec = {
  flours: [{ name: "bread flour" }, { name: "Rye flour, dark" }, { name: "rye" }, { name: "rye" }],
  prices: { "table salt": "1 EUR/kg" },
};

test.each([
  { text: "water.added", path: ["water", "added"] },
  { text: "flours[1].amount", path: ["flours", 1, "amount"] },
  { text: "flours.rye flour, dark.figures.protein", path: ["flours", 1, "figures", "protein"] },
  { text: 'prices."flour T.55"', path: ["prices", "flour T.55"] },
  { text: "prices.Table  Salt", path: ["prices", "table salt"] },
  { text: "sheet.cutter", path: ["sheet", "cutter"] },
  { text: "materials.own flour.recorded.wetGluten", path: ["materials", "own flour", "recorded", "wetGluten"] },
])("$text is a place in the spec", ({ text, path }) => {
  const read = readKeyPath(text);
  expect(keyPathIn(spec, read ?? [])).toMatchObject({ ok: true, value: path });
});

test.each(["", ".", "water.", "flours[", "flours[x]", "a..b", 'prices."', "water.added]"])("%j is no place", (text) => {
  expect(readKeyPath(text)).toBeUndefined();
});

test.each([
  { text: "wter.added", code: "spec.unknown-key", advice: "did you mean `water`?" },
  { text: "water.aded", code: "spec.unknown-key", advice: "did you mean `added`?" },
  { text: "flours.bred flour.amount", code: "path.no-entry", advice: 'did you mean "bread flour"?' },
  { text: "flours[4].amount", code: "path.no-entry", advice: "name an entry, or count them from [0]" },
  { text: "alkali.soda.amount", code: "path.no-entry", advice: "name an entry, or count them from [0]" },
  {
    text: "flours.rye.amount",
    code: "path.several",
    advice: "say which by its number, counted from [0], or make one entry of them",
  },
  { text: "water.added.text", code: "path.deeper", advice: "leave the last key out" },
  { text: "flours[0].amunt", code: "spec.unknown-key", advice: "did you mean `amount`?" },
])("$text is told as $code", ({ text, code, advice }) => {
  const outcome = keyPathIn(spec, readKeyPath(text) ?? []);
  expect(outcome.ok ? [] : outcome.problems.map((one) => [one.code, told(one).advice])).toEqual([[code, advice]]);
});

test("a path is read back as it is written in a problem", () => {
  const name = fc.stringMatching(/^[a-z][a-z .\]-]{0,12}$/u).filter((text) => text.trim() === text);
  const steps = fc.array(fc.oneof(name, fc.nat(99)), { maxLength: 4 });
  always(100, [name, steps], (first, rest) => {
    expect(readKeyPath(pathText([first, ...rest]))).toEqual([first, ...rest]);
  });
});
