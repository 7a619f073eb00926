import { readHandwritten } from "@noodlewright/core/spec";
import fc from "fast-check";
import { expect, test } from "vitest";
import { parse } from "yaml";
import { formulaOf } from "#core/formula/formula.ts";
import { always } from "../../always.ts";

/** Names as a cook writes them, and where they belong. */
const names = {
  flours: ["bread flour", "dark rye flour", "strong flour", "強力粉", "00 flour", "whole wheat flour"],
  alkali: ["sodium carbonate", "K2CO3", "E 501(ii)", "baked soda", "炭酸カリウム"],
  ingredients: ["whole egg", "egg white", "sesame oil", "sugar"],
} as const;

/** The name in the spec, where a shorter one of the catalogue stands for it. */
const asRead: Readonly<Record<string, string>> = { "E 501(ii)": "potassium bicarbonate" };

/** A number of tenths. */
const tenths = (least: number, most: number) => fc.integer({ min: least * 10, max: most * 10 }).map((n) => n / 10);

const formula = fc.record({
  flours: fc.uniqueArray(fc.constantFrom(...names.flours), { minLength: 1, maxLength: 3 }),
  flour: tenths(300, 900),
  water: tenths(80, 110),
  alkali: fc.uniqueArray(fc.constantFrom(...names.alkali), { maxLength: 2 }),
  dose: tenths(0.5, 3),
  salt: fc.option(tenths(1, 9), { nil: undefined }),
  others: fc.uniqueArray(fc.constantFrom(...names.ingredients), { maxLength: 2 }),
  other: tenths(1, 12),
});

const style = fc.record({
  amountFirst: fc.boolean(),
  between: fc.constantFrom(" ", ": ", " - ", "\t", " ..... ", "   "),
  unit: fc.constantFrom("g", " g", " grams", "\u00A0g", "ｇ", " gr."),
  decimal: fc.constantFrom(".", ","),
  bullet: fc.constantFrom("", "- ", "• ", "* ", "[ ] "),
  end: fc.constantFrom("\n", "\r\n", "\n\n"),
  wide: fc.boolean(),
});

function wideDigits(text: string): string {
  return text.replace(/\d/gu, (digit) => String.fromCharCode(digit.charCodeAt(0) + 0xfee0));
}

test("a formula written in any of these styles reads back the same", () => {
  always(60, [formula, style], (made, as) => {
    const line = (name: string, grams: number): string => {
      const digits = String(grams).replace(".", as.decimal);
      const amount = `${as.wide ? wideDigits(digits) : digits}${as.unit}`;
      return `${as.bullet}${as.amountFirst ? `${amount} ${name}` : `${name}${as.between}${amount}`}`;
    };
    const text = [
      ...made.flours.map((name) => line(name, made.flour)),
      line("water", made.water),
      ...made.alkali.map((name) => line(name, made.dose)),
      ...(made.salt === undefined ? [] : [line("salt", made.salt)]),
      ...made.others.map((name) => line(name, made.other)),
    ].join(as.end);
    const { questions, notUnderstood, spec, text: yaml } = readHandwritten(text);
    expect([text, questions, notUnderstood]).toEqual([text, [], []]);
    const entry = (grams: number) => (name: string) => [asRead[name] ?? name, `${grams} g`];
    const read = (key: string) =>
      ((spec[key] ?? []) as readonly { name: string; amount: string }[]).map((one) => [one.name, one.amount]);
    expect({ ...spec, ...Object.fromEntries(Object.keys(names).map((key) => [key, read(key)])) }).toEqual({
      name: "Noodles",
      flours: made.flours.map(entry(made.flour)),
      water: { tap: `${made.water} g` },
      alkali: made.alkali.map(entry(made.dose)),
      ...(made.salt !== undefined && { salt: `${made.salt} g` }),
      ingredients: made.others.map(entry(made.other)),
    });
    expect(parse(yaml)).toEqual(spec);
    expect(formulaOf(spec).ok).toBe(true);
  });
});

test("any text at all is answered: its spec is YAML that says the same, and loads where nothing is asked", () => {
  const piece = fc.constantFrom(
    "flour",
    "bread flour",
    "water",
    "soda",
    "1",
    " 1000 ",
    "g",
    "%",
    ":",
    "(",
    ")",
    "\n",
    "\t",
    ",",
    ".",
    "-",
    "½",
    "#",
    "salt",
    "水",
    "tsp",
    "to",
    "x",
    "/",
    "12 % protein",
    "\u0000",
    '"',
  );
  always(
    150,
    [
      fc.array(fc.oneof({ weight: 6, arbitrary: piece }, { weight: 1, arbitrary: fc.string({ unit: "grapheme" }) }), {
        maxLength: 40,
      }),
    ],
    (pieces) => {
      const { questions, spec, text } = readHandwritten(pieces.join(""));
      expect(parse(text)).toEqual(spec);
      expect(formulaOf(spec).ok).toBe(questions.length === 0);
    },
  );
});
