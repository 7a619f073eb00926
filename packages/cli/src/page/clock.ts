/** Two digits for a day and a time of this device, as ISO 8601 writes them. */
export function dayOf(at: Date): string {
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}

/** A time of day of this device. */
export function timeOf(at: Date): string {
  return `${two(at.getHours())}:${two(at.getMinutes())}`;
}

/** The same to the second. */
export function secondOf(at: Date): string {
  return `${timeOf(at)}:${two(at.getSeconds())}`;
}

/** The time of a moment, with its day where that is another than a given one. */
export function onDay(day: string, at: number, time: (at: Date) => string): string {
  const moment = new Date(at);
  return dayOf(moment) === day ? time(moment) : `${dayOf(moment)} ${time(moment)}`;
}

function two(value: number): string {
  return String(value).padStart(2, "0");
}
