/** Time in which one unit of a machine is taken, whole minutes, the end not included. */
export interface Booking {
  readonly unit: number;
  readonly start: number;
  readonly end: number;
}

/**
 * Finds the latest free time on any unit of a machine that ends no later than a bound; of equally late ones the first unit's.
 */
export function latestFree(bookings: readonly Booking[], units: number, minutes: number, bound: number): Booking {
  const slots = Array.from({ length: units }, (_, unit) => {
    const end = latestEnd(
      bookings.filter((booking) => booking.unit === unit),
      minutes,
      bound,
    );
    return { unit, start: end - minutes, end };
  });
  return slots.reduce((best, slot) => (slot.end > best.end ? slot : best));
}

function latestEnd(taken: readonly Booking[], minutes: number, bound: number): number {
  const fromLatest = [...taken].sort((a, b) => b.start - a.start);
  return fromLatest.reduce(
    (end, booking) => (booking.start < end && booking.end > end - minutes ? booking.start : end),
    bound,
  );
}
