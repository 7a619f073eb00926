import { commaReadings } from "@noodlewright/core/figure";
import { type Alias, type Document, isCollection, isScalar, Lexer, visit, type YAMLParseError } from "yaml";
import type { Slip } from "../render/problem-texts.ts";
import { type AnyProblem, ownProblem } from "./problem.ts";

/** Longest key that is shown. */
const longestKey = 80;

/** Where something stands in a text: offsets from 0, the end not included. */
export type Span = readonly [start: number, end: number];

/** A problem, and where in the text it stands. */
export interface Fault {
  readonly problem: AnyProblem;
  readonly span: Span;
}

/** Errors of syntax; where the nesting is too deep for the parser, its other errors are but echoes of that. */
export function syntaxFaults(errors: readonly YAMLParseError[]): readonly Fault[] {
  const tooDeep = errors.find(({ code }) => code === "RESOURCE_EXHAUSTION");
  const places = new Set<number>();
  const first = errors.filter(({ pos: [at] }) => !places.has(at) && places.add(at));
  return (tooDeep === undefined ? first : [tooDeep]).map((error) => ({
    problem: syntaxProblem(error.code, error.message),
    span: error.pos,
  }));
}

/** Errors of the parser that are problems of their own. */
const known: Partial<Readonly<Record<string, "file.tab" | "file.several" | "file.too-deep">>> = {
  TAB_AS_INDENT: "file.tab",
  MULTIPLE_DOCS: "file.several",
  RESOURCE_EXHAUSTION: "file.too-deep",
};

function syntaxProblem(code: string, message: string): AnyProblem {
  const own = known[code];
  if (own !== undefined) return ownProblem(own, {});
  const detail = message.replace(/\s+/gu, " ").trim();
  const slip = slips.find(([says]) => says.test(detail))?.[1] ?? "another";
  return ownProblem("file.syntax", { detail: detail.charAt(0).toLowerCase() + detail.slice(1), slip });
}

/** What somebody did, by what the parser says of it. */
const slips: readonly (readonly [says: RegExp, slip: Slip])[] = [
  [/implicit keys need to be on a single line|implicit map keys need/iu, "no colon"],
  [/nested mappings are not allowed/iu, "two colons"],
  [/block collections are not allowed within flow|missing , or :|missing , between/iu, "no comma"],
  [/must .*end with a [}\]]|expected .*to end with [}\]]/iu, "open bracket"],
  [/missing closing/iu, "open quote"],
  [/without - indicator|must start at the same column|bad indentation/iu, "indent"],
  [/cannot start with/iu, "first sign"],
];

/** Keys that stand twice. The parser's own check holds every key against every other, which takes its time. */
export function duplicateFaults(document: Document, text: string): readonly Fault[] {
  const faults: Fault[] = [];
  visit(document, {
    Map: (_key, { items }) => {
      const known = new Set<string>();
      for (const { key } of items) {
        if (!isScalar(key) || !key.range) continue;
        const name = String(key.value);
        if (known.has(name)) faults.push(duplicateFault(text, key.range[0], key.range[1]));
        known.add(name);
      }
    },
  });
  return faults;
}

function duplicateFault(text: string, start: number, end: number): Fault {
  const key = text.slice(start, Math.min(end, start + longestKey));
  return {
    problem: ownProblem("file.duplicate-key", { key }),
    span: [start, start + key.length],
  };
}

/** Braces or brackets where a key stands, as in a form that nobody filled in: `name: {{ name }}`; and comments of another kind. */
export function keyFaults(document: Document): readonly Fault[] {
  const faults: Fault[] = [];
  visit(document, {
    Pair: (_at, { key }) => {
      const isComment = isScalar(key) && key.type === "PLAIN" && /^\/[/*]/u.test(String(key.value));
      if (!(isComment || isCollection(key)) || !key.range) return;
      faults.push({
        problem: ownProblem("file.syntax", { detail: "", slip: isComment ? "comment" : "braces" }),
        span: [key.range[0], key.range[1]],
      });
    },
  });
  return faults;
}

/** Commas of numbers within braces, where a comma ends the value: `{ added: 36,5 % }` says `added: 36` and a key of its own, `5 %`. */
export function commaFaults(document: Document, text: string): readonly Fault[] {
  const spans: Span[] = [];
  visit(document, {
    Map: (_key, { flow, items }) => {
      if (flow !== true) return;
      for (const [index, { key, value }] of items.entries()) {
        const before = items[index - 1]?.value ?? items[index - 1]?.key;
        if (!isScalar(key) || value !== null || !isScalar(before) || !key.range || !before.range) continue;
        const [[start, at], [from, end]] = [before.range, key.range];
        if (from !== at + 1 || !/\d,\d/u.test(text.slice(at - 1, from + 1))) continue;
        const last = spans.at(-1);
        spans.splice(spans.length - Number(last?.[1] === at), 1, [last?.[1] === at ? last[0] : start, end]);
      }
    },
  });
  return spans.map(([start, end]) => {
    const written = text.slice(start, end);
    const [line = ""] = text.slice(text.lastIndexOf("\n", start) + 1).split(/\r?\n/u);
    const meant = commaReadings(written);
    const lines = meant.map((one) => line.trim().replace(written, one));
    return { problem: ownProblem("file.decimal-comma", { written, meant, lines }), span: [start, end] };
  });
}

/** More brackets, anchors, indents and the like than a spec has: each may be an error, and each takes the parser its time. */
export function tooManyMarks(text: string, most: number): AnyProblem | undefined {
  // A letter makes two marks at most, one for itself and one that says what it begins; the end makes two more.
  if ((text.length + 1) * 2 <= most) return undefined;
  let count = 0;
  for (const _mark of new Lexer().lex(text)) {
    count += 1;
    if (count > most) return tooLarge("marks", most);
  }
  return undefined;
}

/** More values than a spec has; the time that a run takes grows with them. */
export function tooManyValues(document: Document, most: number): AnyProblem | undefined {
  let count = 0;
  const add = (more: number): symbol | undefined => {
    count += more;
    return count > most ? visit.BREAK : undefined;
  };
  visit(document, { Collection: (_key, { items }) => add(items.length) });
  if (count <= most) return undefined;
  return tooLarge("values", most);
}

function tooLarge(of: "marks" | "values", most: number): AnyProblem {
  return ownProblem("file.too-large", { of, most: String(most) });
}

/** Why the aliases of a document cannot be put in: some have no anchor, or they multiply beyond measure. */
export function aliasFaults(document: Document, most: number): readonly Fault[] {
  const aliases: Alias[] = [];
  const lost: Alias[] = [];
  const anchors = new Set<string>();
  visit(document, {
    Alias: (_key, alias) => {
      (anchors.has(alias.source) ? aliases : lost).push(alias);
    },
    Value: (_key, { anchor }) => {
      if (anchor !== undefined) anchors.add(anchor);
    },
  });
  const fault = (alias: Alias, problem: AnyProblem): Fault => ({
    problem,
    span: [alias.range?.[0] ?? 0, alias.range?.[1] ?? 1],
  });
  if (lost.length > 0) return lost.map((alias) => fault(alias, ownProblem("file.alias", { alias: alias.source })));
  const tooMany = ownProblem("file.aliases", { most: String(most) });
  return aliases.slice(-1).map((alias) => fault(alias, tooMany));
}
