/** A moment: minutes from midnight of the day of service, below zero on the day before. */
export interface Moment {
  readonly minute: number;
  readonly text: string;
}

const MINUTES_PER_DAY = 1440;

/** Reads a time of day as minutes from midnight. @example readTimeOfDay("12:15") // => 735 */
export function readTimeOfDay(text: string): number | undefined {
  const match = /^([01]?\d|2[0-3]):([0-5]\d)$/u.exec(text.trim());
  return match === null ? undefined : Number(match[1]) * 60 + Number(match[2]);
}

/**
 * Writes a moment as people say it.
 *
 * @throws {RangeError} on what is no number of minutes: a bug of the caller.
 * @example momentAt(-80) // => { minute: -80, text: "22:40 the day before" }
 */
export function momentAt(minute: number): Moment {
  if (!Number.isFinite(minute)) throw new RangeError(`minute: ${minute} is no number of minutes`);
  const days = daysBefore({ minute });
  const rest = minute + days * MINUTES_PER_DAY;
  const text = `${pad(Math.floor(rest / 60))}:${pad(rest % 60)}`;
  if (days === 0) return { minute, text };
  return { minute, text: days === 1 ? `${text} the day before` : `${text}, ${days} days before` };
}

/** Whole days that a moment is before the day of service. */
export function daysBefore({ minute }: Pick<Moment, "minute">): number {
  return Math.max(0, Math.ceil(-minute / MINUTES_PER_DAY));
}

function pad(value: number): string {
  return String(value).padStart(2, "0");
}
