import { dec, fixedText } from "../number/decimal.ts";
import type { TrialClass } from "./simulate.ts";
import type { CauseShare, Tolerance } from "./tolerance.ts";

/** One row of a picture in text: what it is, its value as shown, and a bar. */
interface PictureRow {
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
  const places = placesApart(simulated.classes, figure.places);
  return simulated.classes.map(({ from, to, count }) => ({
    label: `${fixedText(from, places)} to ${fixedText(to, places)}`,
    shown: `${count}`,
    bar: "█".repeat(Math.round((count * width) / most)),
  }));
}

/** Whether the trials are further apart than what the figure shows. */
export function isSpreadShown({ figure, simulated }: Tolerance): boolean {
  return dec(simulated.high).minus(simulated.low).gte(dec(10).pow(-figure.places));
}

/** Places that tell the ends of the classes apart, no fewer than those of the figure. */
function placesApart(classes: readonly TrialClass[], least: number): number {
  const isApart = (places: number): boolean =>
    classes.every(({ from, to }) => fixedText(from, places) !== fixedText(to, places));
  const most = least + 6;
  let places = least;
  while (places < most && !isApart(places)) places += 1;
  return places;
}

/** Draws the share of a cause: 100 % would be `width` signs. */
export function shareBar({ share }: CauseShare, width: number): string {
  return "█".repeat(dec(share.value).times(width).div(100).round().toNumber());
}
