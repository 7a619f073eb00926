import { escapeMarkup } from "@noodlewright/core/render";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { formulaOf } from "#core/formula/formula.ts";
import { barPicture } from "#core/report/pictures/bar.ts";
import { blendPicture, waterPicture } from "#core/report/pictures/formula-pictures.ts";
import { passStrip } from "#core/report/pictures/pass-strip.ts";
import { wrapText } from "#core/report/pictures/text-width.ts";
import { always } from "../../always.ts";
import { listed } from "../formula/worked-out.ts";

/** An attribute of every rectangle that is not a part of a pattern, in the order of the picture. */
function rectangles(svg: string, attribute: "height" | "width" | "fill"): readonly string[] {
  const drawn = svg.replace(/<defs>.*<\/defs>/u, "");
  return [...drawn.matchAll(/<rect [^>]*>/gu)].map(
    ([rect]) => new RegExp(` ${attribute}="([^"]*)"`, "u").exec(rect)?.[1] ?? "",
  );
}

const thickness = fc.integer({ min: 40, max: 1200 }).map((n) => String(n / 100));

describe("the strip of passes", () => {
  test("is to scale: heights are to each other as the thicknesses", () => {
    always(100, [fc.array(thickness, { minLength: 1, maxLength: 14 })], (all) => {
      const strip = passStrip(all.map((one, index) => ({ words: `pass ${index + 1}`, thickness: one })));
      const heights = rectangles(strip?.svg ?? "", "height").map(Number);
      expect(heights.length).toBe(all.length);
      const scale = Number(heights[0]) / Number(all[0]);
      // Coordinates are written to 0.01 px.
      for (const [index, height] of heights.entries())
        expect(Math.abs(height - Number(all[index]) * scale)).toBeLessThan(
          0.02 + (0.01 * Number(all[index])) / Number(all[0]),
        );
    });
  });

  test("shows how tall a millimetre is by a bar of that height", () => {
    const svg = passStrip([{ words: "pass 1", thickness: "4" }])?.svg ?? "";
    const [, from, to] = /M24 ([\d.]+)V([\d.]+)/u.exec(svg) ?? [];
    expect(Number(from) - Number(to)).toBeCloseTo(Number(rectangles(svg, "height")[0]) / 4, 2);
  });

  test("says in words what it shows, and is nothing without passes", () => {
    const strip = passStrip([
      { words: "pass 1", thickness: "4.8" },
      { words: "pass 2", thickness: "1.5" },
    ]);
    expect(strip?.description).toBe("Thickness of the sheet: pass 1 4.80 mm, pass 2 1.50 mm.");
    const set = passStrip([{ words: "pass 1", thickness: "4.8", setting: "3" }]);
    expect(set?.description).toBe("Thickness of the sheet: pass 1 at 3 4.80 mm.");
    expect(passStrip([])).toBeUndefined();
  });
});

const parts = fc.array(
  fc.record({
    words: fc.string({ minLength: 1, maxLength: 80 }),
    value: fc.integer({ min: 0, max: 10_000 }).map((n) => String(n / 100)),
  }),
  { maxLength: 14 },
);

describe("a bar of parts", () => {
  test("fills its width, each part by its share; parts that show as 0.0 are left out", () => {
    always(100, [parts], (all) => {
      const some = all.filter(({ value }) => Number(value) >= 0.05);
      const bar = barPicture({ id: "bar", title: "Bar" }, all, "%", 1);
      expect(bar === undefined).toBe(some.length === 0);
      const widths = rectangles(bar?.svg ?? "", "width")
        .slice(0, some.length)
        .map(Number);
      const whole = some.reduce((sum, { value }) => sum + Number(value), 0);
      for (const [index, width] of widths.entries())
        expect(Math.abs(width - (638 * Number(some[index]?.value)) / whole)).toBeLessThan(0.011);
    });
  });

  test("uses black, white and patterns of them: no colour; neighbours differ; a legend has the fills of the bar", () => {
    const all = Array.from({ length: 12 }, (_, index) => ({ words: `part ${index}`, value: "1" }));
    const svg = barPicture({ id: "bar", title: "Bar" }, all, "%", 1)?.svg ?? "";
    const fills = rectangles(svg, "fill");
    expect(fills.slice(0, 12)).toEqual(fills.slice(12));
    for (const [index, fill] of fills.slice(1, 12).entries()) expect(fill).not.toBe(fills[index]);
    expect(new Set(fills.slice(0, 10)).size).toBe(10);
    const colours = [...svg.matchAll(/(?:fill|stroke)="([^"]*)"/gu)].map(([, colour]) => colour ?? "");
    expect(colours.filter((colour) => !/^(?:#111|#fff|url\(#bar-fill-\d\))$/u.test(colour))).toEqual([]);
    for (const [, id] of svg.matchAll(/url\(#([^)]*)\)/gu)) expect(svg).toContain(`id="${id}"`);
  });

  test("keeps words from being markup and long names within the picture", () => {
    const svg =
      barPicture({ id: "bar", title: "<b>" }, [{ words: `</svg><script>${"n".repeat(200)}`, value: "1" }], "%", 1)
        ?.svg ?? "";
    expect(svg).not.toContain("<script");
    expect(svg).not.toContain("<b>");
    expect(svg.match(/<text/gu)?.length).toBeGreaterThan(2);
  });
});

test("the pictures of a formula say its flours and its water in words", () => {
  const outcome = formulaOf({
    name: "noodle",
    flours: listed({ "bread flour": "85 %", "whole wheat flour": "rest" }),
    water: { added: "35 %" },
  });
  if (!outcome.ok) throw new Error("the spec is right");
  const { formula } = outcome.value;
  expect(blendPicture(formula)?.description).toBe("bread flour 85.0 %; whole wheat flour 15.0 %.");
  // Moisture of the two flours by the table of the USDA: 13.36 % (FDC 168896) and 10.74 % (FDC 168893); 0.85 × 13.36 + 0.15 × 10.74 = 12.967.
  expect(waterPicture(formula)?.description).toBe("in the flour 12.97; tap water 35.00.");
});

test("wrapped text loses no letter and no line is too long", () => {
  always(100, [fc.string({ maxLength: 200 }), fc.integer({ min: 60, max: 400 })], (text, most) => {
    const lines = wrapText(text, most);
    expect(lines.join("").replaceAll(/\s/gu, "")).toBe(text.replaceAll(/\s/gu, ""));
    for (const line of lines) expect([...line].length * 9).toBeLessThanOrEqual(most);
  });
});

// The five characters that XML reserves: XML 1.0, section 2.4, and HTML, section 13.1.
test("escaped text holds none of the marks of markup", () => {
  expect(escapeMarkup(`<a href="x" id='y'>&`)).toBe("&lt;a href=&quot;x&quot; id=&#39;y&#39;&gt;&amp;");
});
