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
  const places = Math.max(figure.places, placesOfWidth(simulated.classes[0]));
  return simulated.classes.map(({ from, to, count }) => ({
    label: `${fixedText(from, places)} to ${fixedText(to, places)}`,
    shown: `${count}`,
    bar: "█".repeat(Math.round((count * width) / most)),
  }));
}

/** Places that tell the ends of a class apart, its width to two digits. */
function placesOfWidth(one: { readonly from: string; readonly to: string } | undefined): number {
  const width = dec(one?.to ?? 0).minus(one?.from ?? 0);
  return width.isZero() ? 0 : Math.min(9, Math.max(0, 1 - width.e));
}

/** Draws the share of each cause: 100 % would be `width` signs. */
export function causePicture({ shares }: Tolerance, width: number): readonly PictureRow[] {
  return shares.map(({ label, share }) => ({
    label,
    shown: `${fixedText(share.value, 1)} %`,
    bar: "█".repeat(dec(share.value).times(width).div(100).round().toNumber()),
  }));
}
