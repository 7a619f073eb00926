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

function two(value: number): string {
  return String(value).padStart(2, "0");
}
