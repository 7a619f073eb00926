import { dec, fixedText } from "../number/decimal.ts";
import type { Tolerance } from "./tolerance.ts";

/** One row of a picture in text: what it is, its value as shown, and a bar. */
export interface PictureRow {
  readonly label: string;
  readonly shown: string;
  readonly bar: string;
}

/**
 * Draws the trials of an output: one row a class, the longest bar `width` signs.
 *
 * @param width - 10 to 200 signs
 */
export function trialPicture({ figure, simulated }: Tolerance, width: number): readonly PictureRow[] {
  const most = simulated.classes.reduce((top, { count }) => Math.max(top, count), 1);
  return simulated.classes.map(({ from, to, count }) => ({
    label: `${fixedText(from, figure.places)} to ${fixedText(to, figure.places)}`,
    shown: `${count}`,
    bar: "█".repeat(Math.round((count * width) / most)),
  }));
}

/** Draws the share of each cause: 100 % would be `width` signs. */
export function causePicture({ shares }: Tolerance, width: number): readonly PictureRow[] {
  return shares.map(({ label, share }) => ({
    label,
    shown: `${fixedText(share.value, 1)} %`,
    bar: "█".repeat(dec(share.value).times(width).div(100).round().toNumber()),
  }));
}
