/** A text that may be blank in a table, as an optional property. */
type Optional<K extends string> = Partial<Record<K, string>>;

/**
 * Reads the columns of a row, written with a space between and `-` for a blank.
 *
 * @example columns("1.5 - 3", ["fat", "ash", "fibre"]) // => { fat: "1.5", fibre: "3" }
 */
export function columns<K extends string>(text: string, names: readonly K[]): Readonly<Optional<K>> {
  const values = text.split(" ");
  const known: Optional<K> = {};
  names.forEach((name, index) => {
    const value = values[index];
    if (value !== undefined && value !== "" && value !== "-") known[name] = value;
  });
  return known;
}

const inGrams = ["moisture", "protein", "fat", "carbohydrate", "fibre", "ash"] as const;
/** The columns of the composition of a food; not every table has the last one. */
export const figures = [...inGrams, "sodium", "potassium", "energy"] as const;
