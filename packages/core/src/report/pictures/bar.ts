import { type DecimalText, dec, fixedText, sum } from "../../number/decimal.ts";
import { element, fillOf, label, type Picture, patterns, picture } from "./svg.ts";

/** A part of a whole: its words and its share. */
export interface BarPart {
  readonly words: string;
  readonly value: DecimalText;
}

const width = 640;
const barHeight = 44;
const lineHeight = 24;
const swatch = 16;

/**
 * Draws parts of a whole as one bar with a legend; parts of nothing are left out.
 *
 * @param unit - written behind each value
 */
export function barPicture(
  about: { readonly id: string; readonly title: string },
  parts: readonly BarPart[],
  unit: string,
  places: number,
): Picture | undefined {
  const shown = parts.filter(({ value }) => dec(value).gt(0));
  const whole = sum(shown.map(({ value }) => dec(value)));
  if (shown.length === 0) return undefined;
  let left = 1;
  const bars = shown.map(({ value }, index) => {
    const span = dec(value)
      .div(whole)
      .times(width - 2)
      .toNumber();
    const bar = element("rect", {
      x: left,
      y: 1,
      width: span,
      height: barHeight,
      fill: fillOf(about.id, index),
      stroke: "#111",
      "stroke-width": 1,
    });
    left += span;
    return bar;
  });
  const legend = shown.flatMap(({ words, value }, index) => {
    const y = barHeight + 14 + index * lineHeight;
    return [
      element("rect", {
        x: 1,
        y,
        width: swatch,
        height: swatch,
        fill: fillOf(about.id, index),
        stroke: "#111",
        "stroke-width": 1,
      }),
      label(110, y + 13, `${fixedText(value, places)} ${unit}`, { "text-anchor": "end", "font-weight": 600 }),
      label(122, y + 13, words),
    ];
  });
  const description = `${shown.map(({ words, value }) => `${words} ${fixedText(value, places)} ${unit}`).join("; ")}.`;
  const height = barHeight + 14 + shown.length * lineHeight;
  return picture({ ...about, description }, { width, height }, patterns(about.id), ...bars, ...legend);
}
