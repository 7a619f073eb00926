import type { Path } from "../path.ts";
import { type Counts, input, type Lists, type Texts } from "./entry.ts";
import { didYouMean, oneOf, withPoints } from "./words.ts";

export const spec = {
  "path.no-entry": input(({ entry, names, nearest: [nearest] }: Texts<"entry"> & Lists<"names" | "nearest">) => ({
    found: `"${entry}"`,
    expected: names.length === 0 ? "a list with entries" : `an entry of the list: ${names.join(", ")}`,
    advice: nearest === undefined ? "name an entry, or count them from [0]" : `did you mean "${nearest}"?`,
  })),
  "path.several": input(({ name, entries }: Texts<"name"> & Lists<"entries">) => ({
    found: `"${name}", which the list has more than once`,
    expected: `one entry: ${entries.join(" or ")}`,
    advice: "say which by its number, counted from [0], or make one entry of them",
  })),
  "path.deeper": input(() => ({
    found: "a key below one that takes a single value",
    expected: "the key of that value",
    advice: "leave the last key out",
  })),
  "spec.too-deep": input(() => ({
    found: "keys and lists more than 20 levels deep",
    expected: "at most 20 levels",
    advice: "take the levels out that a spec does not have",
  })),
  "spec.too-large": input(({ most }: Counts<"most">) => ({
    found: `more than ${most} values`,
    expected: `at most ${most} values`,
    advice: "leave out what this noodle does not use",
  })),
  "spec.not-data": input(() => ({
    found: "something that is not plain data",
    expected: "texts, numbers, yes or no, lists and keys with values",
    advice: "hand over what a YAML or JSON file holds",
  })),
  "spec.choice": input(({ written, choices, nearest }: Texts<"written"> & Lists<"choices" | "nearest">) => ({
    found: written,
    expected: `one of: ${choices.join(", ")}`,
    advice: didYouMean(nearest, "take one of these"),
  })),
  "spec.size": input(
    ({ written, bound, limit, unit }: Texts<"written" | "bound" | "limit"> & Partial<Texts<"unit">>) => ({
      found: written,
      expected: `${bound} ${limit}${unit === undefined ? "" : ` ${unit}`}`,
      advice: unit === undefined ? "check the number" : bound === "at most" ? "shorten it" : "fill it in",
    }),
  ),
  "spec.missing": input((facts: Wanted, path) => ({
    found: "nothing",
    expected: wantedText(facts),
    advice: asWritten(facts, path),
  })),
  "spec.type": input((facts: Wanted & Texts<"written"> & { readonly meant?: unknown }, path) => ({
    found: eitherNumber(facts),
    expected: wantedText(facts),
    advice: asWritten(facts, path),
  })),
  "spec.unknown-key": input(
    ({
      key,
      allowed,
      nearest,
      recorded,
      instead,
      elsewhere,
      bare,
    }: Texts<"key"> &
      Lists<"allowed" | "nearest"> &
      Partial<Texts<"recorded" | "instead">> &
      Partial<Elsewhere> & { readonly bare?: true }) => {
      const [odd] = nearest[0] === undefined ? "" : key.replace(/[ -~]/gu, "");
      const found = `the key "${key}"${odd === undefined ? "" : `, with ${codePoint(odd)} in it`}`;
      const expected = oneOf(allowed, "a key of a spec");
      if (elsewhere !== undefined) {
        const section = elsewhere.slice(0, -1).findLast((step) => typeof step === "string");
        return {
          found,
          expected,
          advice: `write it under \`${section}:\``,
        };
      }
      if (recorded !== undefined)
        return {
          found,
          expected: `\`recorded: { ${recorded}: … }\``,
          advice: `write it under \`recorded:\` as \`${recorded}\`, where it is kept: no source turns it into the water of a noodle dough`,
        };
      if (instead !== undefined) return { found, expected, advice: `write \`${instead}\`` };
      const without = allowed.includes("notes") ? "leave it out, or put it into `notes`" : "leave it out";
      return {
        found,
        expected,
        advice:
          nearest[0] === undefined
            ? bare === true
              ? `where it belongs to the text before the comma, put quotes round both, as in "rye flour, light"; if not, ${without}`
              : without
            : `did you mean \`${nearest[0]}\`?${odd === undefined ? "" : " Type the key again: a letter of it cannot be seen, or only looks like another"}`,
      };
    },
  ),
  "bounds.unreadable": input(({ written, example }: Texts<"written" | "example">) => ({
    found: written,
    expected: `${example === "" ? "a share of at most 100 %" : `an amount such as ${example}`}, a range, or one end of it`,
    advice: /\d,\d/u.test(written)
      ? `write a point before decimals: ${withPoints(written)}`
      : example === ""
        ? 'write it like "11.5 %", "11 to 12 %", "at least 11 %", "at most 12 %" or "any"'
        : `write it like "${example}", "at least ${example}" or "at most ${example}"`,
  })),
  "shelf.ratio": input(({ written }: Texts<"written">) => ({
    found: written,
    expected: "a number above zero",
    advice: "write it like 0.5 for half the share of the other flour",
  })),
  "shelf.too-many": input(({ flours, most }: Counts<"flours" | "most">) => ({
    found: `${flours} flours`,
    expected: `at most ${most} flours`,
    advice: "leave out those that this noodle does not take",
  })),
  "wanted.prefer": input(({ written }: Texts<"written">) => ({
    found: written,
    expected: "nearest, cheapest, fewest, most with the name of a flour, or use up with several names",
    advice: 'write it like "nearest", "most rye flour" or "use up rye flour; barley flour"',
  })),
};

/** A letter that may not be seen, as Unicode names it. */
function codePoint(letter: string): string {
  return `U+${(letter.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0")}`;
}

/** Where a key, or what it names, stands in a spec; what was written there, and the entry of a list that it would be. */
export interface Elsewhere {
  readonly elsewhere: Path;
  readonly value: unknown;
  readonly entry?: { readonly name: string; readonly amount?: string };
}

/** What was written, and what a number with a comma may be. */
function eitherNumber({ written, kind }: Wanted & Texts<"written">): string {
  const points = kind === "int" || kind === "number" ? withPoints(written.replaceAll('"', "")) : undefined;
  return points === undefined ? written : `${written}, that is ${points}`;
}

/** What a key wants: its kind of value, its meaning, and an example. */
type Wanted = Texts<"kind"> & Partial<Texts<"description" | "example">>;

const kinds: Readonly<Record<string, string>> = {
  string: "a text",
  amount: "an amount with its unit",
  number: "a plain number",
  int: "a whole number",
  boolean: "true or false",
  array: "a list",
  object: "a section with keys",
  record: "a section with keys",
  quantity: "a quantity with its unit",
  other: "another kind of value",
};

function wantedText({ kind, description }: Wanted): string {
  if (kind === "other" && description !== undefined) return said(description);
  const what = kinds[kind] ?? kind;
  return description === undefined ? what : `${what} (${said(description)})`;
}

/** A description within a sentence. */
function said(description: string): string {
  return `${description.charAt(0).toLowerCase()}${description.slice(1)}`;
}

function asWritten({ example }: Wanted, path: Path): string {
  if (example === undefined) return "look it up in the schema of a spec";
  const key = path.at(-1);
  return typeof key === "string" ? `write it like \`${key}: ${example}\`` : `write it like ${example}`;
}
