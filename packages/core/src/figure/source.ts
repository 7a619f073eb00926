/**
 * How well a source is known:
 * `read` the source itself was read; `copy` a reprint or a quotation of it was read;
 * `memory` remembered, not opened; `practice` a fact of the trade without a source;
 * `definition` true by definition or by arithmetic alone; `user` given by whoever wrote the spec.
 */
export type Standing = "read" | "copy" | "memory" | "practice" | "definition" | "user";

/** Where a number or a formula comes from. */
export interface Source {
  /** Author, year, title, place. */
  readonly cite: string;
  /** Table, page, section or item number within it. */
  readonly at?: string | undefined;
  readonly standing: Standing;
}

const standingText: Readonly<Record<Standing, string>> = {
  read: "",
  copy: " [read in a copy]",
  memory: " [from memory]",
  practice: "",
  definition: "",
  user: "",
};

/** Writes a source on one line. @example citation({ cite: "ICC Standard 115/1", standing: "read" }) // => "ICC Standard 115/1" */
export function citation(source: Source): string {
  return `${source.cite}${source.at === undefined ? "" : `, ${source.at}`}${standingText[source.standing]}`;
}

/** Points at a place within a source. @example at(definition, "section 2").at // => "section 2" */
export function at(source: Source, place: string): Source {
  return { ...source, at: place };
}

export const definition: Source = { cite: "by definition", standing: "definition" };
export const massBalance: Source = { cite: "mass balance", standing: "definition" };
export const commonPractice: Source = { cite: "common practice, no source", standing: "practice" };
export const fromSpec: Source = { cite: "the spec", standing: "user" };
export const fromChange: Source = { cite: "a change", standing: "user" };
