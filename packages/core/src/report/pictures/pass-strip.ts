import { type DecimalText, dec, fixedText } from "../../number/decimal.ts";
import { element, label, type Picture, picture } from "./svg.ts";

/** Thickness of the sheet after one pass. */
export interface StripPass {
  readonly words: string;
  /** mm */
  readonly thickness: DecimalText;
}

/** Pixels that stand for a millimetre where the thickest step still fits: the strip is to scale. */
const largestScale = 12;
const tallest = 120;
const column = 78;
const top = 26;

/**
 * Draws the sheet getting thinner from pass to pass, its thickness to scale.
 *
 * @param passes - the sheet before the first pass, then after each
 */
export function passStrip(passes: readonly StripPass[]): Picture | undefined {
  const [first] = passes;
  if (first === undefined) return undefined;
  const thickest = passes.reduce((most, { thickness }) => (dec(thickness).gt(most) ? dec(thickness) : most), dec(0));
  const scale = Math.min(largestScale, tallest / thickest.toNumber());
  const height = top + thickest.toNumber() * scale + 44;
  const width = column * passes.length + 2;
  const base = top + thickest.toNumber() * scale;
  const drawn = passes.flatMap(({ words, thickness }, index) => {
    const tall = dec(thickness).toNumber() * scale;
    const middle = index * column + column / 2;
    return [
      element("rect", { x: index * column + 1, y: base - tall, width: column - 4, height: tall, fill: "#111" }),
      label(middle, base - tall - 7, `${fixedText(thickness, 2)} mm`, { "text-anchor": "middle", "font-weight": 600 }),
      label(middle, base + 20, words, { "text-anchor": "middle", "font-size": 12 }),
    ];
  });
  const ground = element("path", { d: `M0 ${base + 1}H${width}`, stroke: "#111", "stroke-width": 1 });
  const note = label(0, base + 40, `1 mm of dough is drawn ${fixedText(scale, 1)} px high`, { "font-size": 11 });
  const description = `Thickness of the sheet: ${passes.map(({ words, thickness }) => `${words} ${fixedText(thickness, 2)} mm`).join(", ")}.`;
  return picture({ id: "pass-strip", title: "Passes", description }, { width, height }, ...drawn, ground, note);
}
