import { type DecimalText, dec, fixedText, sum } from "../../number/decimal.ts";
import { fillOf, patterns } from "./fills.ts";
import { element, label, type Picture, picture } from "./svg.ts";
import { textWidth, wrapText } from "./text-width.ts";

/** A part of a whole: its words and its share. */
interface BarPart {
  readonly words: string;
  readonly value: DecimalText;
}

const width = 640;
const barHeight = 44;
const legendTop = barHeight + 14;
const lineHeight = 20;
const partGap = 4;
const swatch = 16;
const outline = { stroke: "#111", "stroke-width": 1 };

/**
 * Draws parts of a whole as one bar with a legend in the order of the bar; parts that show as nothing are left out.
 *
 * @param unit - written behind each value
 * @param places - decimal places of the values
 */
export function barPicture(
  about: { readonly id: string; readonly title: string },
  parts: readonly BarPart[],
  unit: string,
  places: number,
): Picture | undefined {
  const shown = parts
    .filter(({ value }) => dec(fixedText(value, places)).gt(0))
    .map(({ words, value }) => ({ words, value, text: `${fixedText(value, places)} ${unit}`.trim() }));
  if (shown.length === 0) return undefined;
  const description = `${shown.map(({ words, text }) => `${words} ${text}`).join("; ")}.`;
  const legend = legendOf(about.id, shown);
  return picture(
    { ...about, description },
    { width, height: legend.bottom },
    patterns(about.id, shown.length),
    ...barsOf(about.id, shown),
    ...legend.drawn,
  );
}

type Shown = BarPart & { readonly text: string };

function barsOf(id: string, shown: readonly Shown[]): readonly string[] {
  const whole = sum(shown.map(({ value }) => dec(value)));
  const spanOf = (upTo: number): number =>
    sum(shown.slice(0, upTo).map(({ value }) => dec(value)))
      .div(whole)
      .times(width - 2)
      .toNumber();
  return shown.map((_, index) => {
    const x = spanOf(index);
    const span = spanOf(index + 1) - x;
    return element("rect", { x: x + 1, y: 1, width: span, height: barHeight, fill: fillOf(id, index), ...outline });
  });
}

function legendOf(id: string, shown: readonly Shown[]): { readonly drawn: readonly string[]; readonly bottom: number } {
  const valueEnd = swatch + 12 + Math.max(...shown.map(({ text }) => textWidth(text)));
  const wordsAt = valueEnd + 12;
  const drawn: string[] = [];
  let y = legendTop;
  for (const [index, { words, text }] of shown.entries()) {
    const lines = wrapText(words, width - wordsAt);
    drawn.push(
      element("rect", { x: 1, y, width: swatch, height: swatch, fill: fillOf(id, index), ...outline }),
      label(valueEnd, y + 13, text, { "text-anchor": "end", "font-weight": 600 }),
      ...lines.map((line, row) => label(wordsAt, y + 13 + row * lineHeight, line)),
    );
    y += lines.length * lineHeight + partGap;
  }
  return { drawn, bottom: y };
}
