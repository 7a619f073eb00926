import { type DecimalText, dec, fixedText } from "../../number/decimal.ts";
import { element, label, type Picture, picture } from "./svg.ts";

/** Thickness of the sheet after one pass. */
interface StripPass {
  readonly words: string;
  /** What the machine is set to: the number of the dial. */
  readonly setting?: string | undefined;
  /** mm */
  readonly thickness: DecimalText;
}

/** Pixels that stand for a millimetre where the thickest step still fits. */
const largestScale = 12;
const tallest = 110;
/** Room at the left for the bar that shows the scale. */
const left = 84;
const widestColumn = 78;
const narrowestColumn = 44;
const widest = 640;
const top = 24;
const foot = 30;
const settingFoot = 26;
const gap = 4;

/**
 * Draws the sheet getting thinner from pass to pass, its thickness to scale. A bar beside it shows how tall a millimetre
 * is, whatever the size at which the picture is printed.
 *
 * @param passes - the sheet after each pass, in their order
 */
export function passStrip(passes: readonly StripPass[]): Picture | undefined {
  if (passes.length === 0) return undefined;
  const thickest = Math.max(...passes.map(({ thickness }) => dec(thickness).toNumber()));
  const scale = Math.min(largestScale, tallest / thickest);
  const column = Math.max(narrowestColumn, Math.min(widestColumn, (widest - left) / passes.length));
  const base = top + thickest * scale;
  const width = left + column * passes.length;
  const set = passes.some(({ setting }) => setting !== undefined);
  const drawn = passes.flatMap(({ words, thickness, setting }, index) => {
    const tall = dec(thickness).toNumber() * scale;
    const x = left + index * column;
    const middle = { "text-anchor": "middle" };
    return [
      element("rect", { x, y: base - tall, width: column - gap, height: tall, fill: "#111" }),
      label(x + (column - gap) / 2, base - tall - 6, fixedText(thickness, 2), { ...middle, "font-weight": 600 }),
      label(x + (column - gap) / 2, base + 18, words, { ...middle, "font-size": 11 }),
      ...(setting === undefined
        ? []
        : [label(x + (column - gap) / 2, base + 42, setting, { ...middle, "font-size": 22, "font-weight": 700 })]),
    ];
  });
  const description = `Thickness of the sheet: ${passes.map(saidOf).join(", ")}.`;
  return picture(
    { id: "pass-strip", title: "Thickness of the sheet after each pass, mm", description },
    { width, height: base + foot + (set ? settingFoot : 0) },
    ...drawn,
    element("path", { d: `M${left - 8} ${base + 0.5}H${width}`, stroke: "#111", "stroke-width": 1 }),
    ...scaleBar(scale, base),
    ...(set ? [label(0, base + 40, "set to", { "font-size": 14 })] : []),
  );
}

function saidOf({ words, thickness, setting }: StripPass): string {
  return `${words}${setting === undefined ? "" : ` at ${setting}`} ${fixedText(thickness, 2)} mm`;
}

/** A bar as tall as a millimetre. */
function scaleBar(scale: number, base: number): readonly string[] {
  const ends = [base, base - scale].map((y) => `M20 ${y.toFixed(2)}h8`).join("");
  const bar = `M24 ${base.toFixed(2)}V${(base - scale).toFixed(2)}${ends}`;
  return [
    element("path", { d: bar, stroke: "#111", "stroke-width": 1.5 }),
    label(34, base, "1 mm"),
    label(0, base + 18, "sheet, mm", { "font-size": 11 }),
  ];
}
