/** The whole list, or nothing where one of it is missing. */
export function whole<T>(values: readonly (T | undefined)[]): readonly T[] | undefined {
  const present = values.filter((value): value is T & {} => value !== undefined);
  return present.length === values.length ? present : undefined;
}
