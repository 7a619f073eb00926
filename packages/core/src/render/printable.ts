import { printable } from "../figure/printable.ts";
import type { Report } from "../report/schema.ts";

/** What a terminal would obey, less the line breaks and what JSON escapes by itself. */
const unescaped = /[\u007F-\u009F\u061C\u200E\u200F\u2028-\u202E\u2066-\u2069]/gu;

/**
 * Plain data of which every text is safe to print, for a page whose markup is written around it.
 *
 * @example printableData({ name: "a\u0007b" }) // => { name: "a·b" }
 */
export function printableData<T>(data: T): T {
  const clean: T = JSON.parse(JSON.stringify(data), (_key, value: unknown) =>
    typeof value === "string" ? printable(value) : value,
  );
  return clean;
}

/**
 * A report whose words, such as the names of a spec, are safe to print.
 *
 * @example printableReport(askFormula(example("school-noodle")).report()).title // => "School noodle"
 */
export function printableReport(report: Report): Report {
  const { title, sections, notes, cautions } = report;
  return { ...report, ...printableData({ title, sections, notes, cautions }) };
}

/**
 * JSON as lines; what a terminal would obey is escaped, so that nothing is lost.
 *
 * @example printableJson([1]) // => "[\n  1\n]\n"
 */
export function printableJson(value: unknown): string {
  const text = JSON.stringify(value, undefined, 2);
  return `${text.replace(unescaped, (mark) => `\\u${mark.charCodeAt(0).toString(16).padStart(4, "0")}`)}\n`;
}
