import { words } from "./words.ts";

/** Spaces between groups of three digits, as the page writes them itself: plain, no-break, thin and narrow no-break. */
const grouped = /^-?\d{1,3}(?:[ \u00A0\u2009\u202F]\d{3})+(?=$|[.,])/u;

/** A number as typed on a pad: a comma counts as a point, spaces between thousands as none. Anything else stays. */
export function asNumber(typed: string): string {
  return typed
    .replace(/[０-９．，－]/gu, (wide) => wide.normalize("NFKC"))
    .trim()
    .replace(/^−/u, "-")
    .replace(grouped, (groups) => groups.replace(/[^-\d]/gu, ""))
    .replace(/,(?=\d*$)/u, ".")
    .replace(/\.$/u, "")
    .replace(/^\./u, "0.");
}

/** A number that was typed, or what is needed in its place. */
export type Typed = { readonly ok: true; readonly number: string } | { readonly ok: false; readonly needs: string };

/**
 * Reads a number as typed on a pad.
 *
 * @param decimals - most that are usual here: with fewer than three, a comma before three digits may part thousands
 */
export function readTyped(typed: string, decimals: number): Typed {
  const number = asNumber(typed);
  if (!/^-?\d+(?:\.\d+)?$/u.test(number)) return { ok: false, needs: words.number.any };
  const thousands = decimals < 3 && /^[1-9]\d{0,2}\.\d{3}$/u.test(number);
  if (!thousands) return { ok: true, number };
  return { ok: false, needs: words.number.either(number.replace(".", ""), String(Number(number))) };
}

/** What was typed in two parts: the number, and the unit where one was typed as well. */
export function splitTyped(typed: string): { readonly number: string; readonly unit: string } {
  const [, number = typed, unit = ""] = /^([^\p{L}°%]*)([\p{L}°%]\D*)?$/u.exec(typed.trim()) ?? [];
  return { number: number.trim(), unit: unit.trim() };
}

/** Decimals that are usual in a unit: whole bowls, grams to a tenth or two, kilograms to the gram. */
export function usualDecimals(unit: string): number {
  return ["number", "g"].includes(unit) ? 2 : 3;
}

/** What is noted of a dough as a number, with the most decimals that are usual. */
export const noted = { temperature: 1, thickness: 3, cooked: 1, score: 1 } as const;

/** What a dough can be noted with: warmer or colder than this none is worked, as the spec has it, too. */
const believed = {
  "°C": { temperature: [0, 60], score: [1, 5] },
  "°F": { temperature: [32, 140], score: [1, 5] },
} as const;

/** Reads a number that was noted of a dough. */
export function readNoted(key: keyof typeof noted, typed: string, unit: keyof typeof believed): Typed {
  const reading = readTyped(typed, noted[key]);
  if (!reading.ok || (key !== "temperature" && key !== "score")) return reading;
  const [least, most] = believed[unit][key];
  const [number, of] = [Number(reading.number), key === "score" ? "" : ` ${unit}`];
  return number < least || number > most ? { ok: false, needs: words.number.within(least, most, of) } : reading;
}
