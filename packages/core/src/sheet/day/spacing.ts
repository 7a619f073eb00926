/**
 * Moments and how far apart they are: `least[a][b]` is the least by which the second comes after the first, in minutes;
 * −∞ where nothing is known. The first moment is the start of it all.
 */
export interface Spacing {
  readonly moments: readonly number[];
  readonly least: readonly (readonly number[])[];
}

/** A moment and a distance in minutes: the other moment comes at least so much later, or earlier. */
export type Distance = readonly [moment: number, minutes: number];

const UNKNOWN = Number.NEGATIVE_INFINITY;

/** The least by which one moment comes after another. */
export function leastAfter({ moments, least }: Spacing, from: number, to: number): number {
  return least[moments.indexOf(from)]?.[moments.indexOf(to)] ?? UNKNOWN;
}

/**
 * Takes in a moment that comes at least so much after some moments and at most so much after others.
 *
 * @param after - it comes at least the minutes after these
 * @param before - these come at least the minutes after it; below zero for a limit on how late it is
 * @returns nothing where it cannot be
 */
export function withMoment(
  spacing: Spacing,
  moment: number,
  after: readonly Distance[],
  before: readonly Distance[] = [],
): Spacing | undefined {
  const { moments, least } = spacing;
  const links = (list: readonly Distance[]) =>
    list.map(([other, minutes]) => [moments.indexOf(other), minutes] as const);
  const [behind, ahead] = [links(after), links(before)];
  const toIt = moments.map((_, at) =>
    behind.reduce((most, [from, minutes]) => Math.max(most, (least[at]?.[from] ?? UNKNOWN) + minutes), UNKNOWN),
  );
  const fromIt = moments.map((_, at) =>
    ahead.reduce((most, [to, minutes]) => Math.max(most, (least[to]?.[at] ?? UNKNOWN) + minutes), UNKNOWN),
  );
  if (toIt.some((there, at) => there + (fromIt[at] ?? UNKNOWN) > 0)) return undefined;
  const rows = least.map((row, at) => {
    const there = toIt[at] ?? UNKNOWN;
    const through = there === UNKNOWN ? row : row.map((known, to) => Math.max(known, there + (fromIt[to] ?? UNKNOWN)));
    return [...through, there];
  });
  return { moments: [...moments, moment], least: [...rows, [...fromIt, 0]] };
}

/** Keeps some moments, in the order given, each under a name of its own. What was known through the others stays known. */
export function onlyMoments(
  { moments, least }: Spacing,
  kept: readonly (readonly [moment: number, name: number])[],
): Spacing {
  const places = kept.map(([moment]) => moments.indexOf(moment));
  return {
    moments: kept.map(([, name]) => name),
    least: places.map((from) => places.map((to) => least[from]?.[to] ?? UNKNOWN)),
  };
}

/** Tells whether whatever fits the second of two spacings of the same moments fits the first too. */
export function isLooser(one: Spacing, other: Spacing): boolean {
  return one.least.every((row, from) => row.every((known, to) => known <= (other.least[from]?.[to] ?? UNKNOWN)));
}
