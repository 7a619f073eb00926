import {
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  LineCounter,
  type Node,
  type Pair,
  parseDocument,
  type YAMLMap,
} from "yaml";
import {
  aliasFaults,
  commaFaults,
  duplicateFaults,
  type Fault,
  keyFaults,
  type Span,
  syntaxFaults,
  tooManyMarks,
  tooManyValues,
} from "./file-problems.ts";
import type { Placed, PlacedProblem } from "./placed-problem.ts";
import { type AnyProblem, ownProblem } from "./problem.ts";
import type { TextFile } from "./read-file.ts";

/** Most keys and entries of lists that a spec may have. */
const mostValues = 4000;

/** Most marks, words and line ends of a file: twice what so many values take. */
const mostMarks = 60_000;

/** Most uses of an alias before a document is taken for a trap. */
const mostAliases = 50;

/** A YAML or JSON file as plain data, with the way back from a path to its place. */
export interface ParsedFile {
  readonly data: unknown;
  readonly place: (problem: AnyProblem) => PlacedProblem;
  readonly at: (fault: Fault) => PlacedProblem;
  /** Keys that stand twice; the data has the last of them. */
  readonly duplicates: readonly PlacedProblem[];
}

export type Parsing = Placed<{ parsed: ParsedFile }>;

/** What was parsed, by the bytes of the file: one that is looked at twice is parsed once. */
const parsings = new WeakMap<Uint8Array, Parsing>();

/** Parses a YAML or JSON file; every problem of syntax comes back with its place. */
export function parseFile(file: TextFile): Parsing {
  const parsing = parsings.get(file.bytes) ?? parseText(file);
  parsings.set(file.bytes, parsing);
  return parsing;
}

function parseText(file: TextFile): Parsing {
  const excess = tooManyMarks(file.text, mostMarks);
  if (excess !== undefined) return { ok: false, problems: [{ ...excess, file: file.name }] };
  const lineCounter = new LineCounter();
  const document = parseDocument(file.text, {
    lineCounter,
    prettyErrors: false,
    uniqueKeys: false,
    schema: "core", // whatever version the file names: `1:10` is no number
    logLevel: "error",
  });
  const lines = file.text.split(/\r?\n/u);
  const at = ({ problem, span: [start, end] }: Fault): PlacedProblem => {
    const { line, col } = lineCounter.linePos(start);
    const lineText = lines[line - 1] ?? "";
    const length = Math.max(1, Math.min(end - start, lineText.length - col + 1));
    return { ...problem, file: file.name, place: { line, column: col, length }, lineText };
  };
  const syntax = syntaxFaults(document.errors);
  if (syntax.length > 0) return { ok: false, problems: syntax.map(at) };
  const slips = [...keyFaults(document), ...commaFaults(document, file.text)];
  if (slips.length > 0) return { ok: false, problems: slips.map(at) };
  const tooMany = tooManyValues(document, mostValues);
  if (tooMany !== undefined) return { ok: false, problems: [{ ...tooMany, file: file.name }] };
  let data: unknown;
  try {
    data = document.toJS({ maxAliasCount: mostAliases });
  } catch {
    return { ok: false, problems: aliasFaults(document, mostAliases).map(at) };
  }
  if (data === null) return { ok: false, problems: [{ ...nothing, file: file.name }] };
  const find = finder(document);
  const place = (problem: AnyProblem): PlacedProblem => {
    const span = find(problem);
    return span === undefined ? { ...problem, file: file.name } : at({ problem, span });
  };
  return { ok: true, parsed: { data, place, at, duplicates: duplicateFaults(document, file.text).map(at) } };
}

const nothing = ownProblem("file.empty", { wanted: "spec" });

/** Finds the value that a path points at; its key where the key is wrong; the nearest parent where it is missing. */
function finder(document: Document): (problem: AnyProblem) => Span | undefined {
  const known = new Map<YAMLMap, ReadonlyMap<string, Pair>>();
  const pairsOf = (map: YAMLMap): ReadonlyMap<string, Pair> => {
    const pairs = known.get(map) ?? new Map(map.items.map((pair) => [keyText(pair), pair]));
    known.set(map, pairs);
    return pairs;
  };
  return ({ path, code }) => {
    let node: unknown = document.contents;
    let span: Span | undefined;
    for (const [index, step] of path.entries()) {
      if (isAlias(node)) node = node.resolve(document);
      if (isMap(node)) {
        const pair = pairsOf(node).get(String(step));
        if (pair === undefined) return span ?? firstLine(node);
        const key = rangeOf(pair.key);
        const last = index === path.length - 1;
        node = pair.value;
        span = last && code !== "spec.unknown-key" && isScalar(node) ? (rangeOf(node) ?? key) : key;
      } else if (isSeq(node) && typeof step === "number") {
        node = node.items[step];
        span = firstSpan(node) ?? span;
      } else return span;
    }
    return span;
  };
}

function keyText({ key }: Pair): string {
  return isScalar<string | number | boolean | null>(key) ? String(key.value ?? "") : "";
}

function rangeOf(node: unknown): Span | undefined {
  const range = (node as Node | null | undefined)?.range;
  return range === null || range === undefined ? undefined : [range[0], Math.max(range[1], range[0] + 1)];
}

/** The first key of a section, or the whole of a single value. */
function firstSpan(node: unknown): Span | undefined {
  if (isMap(node)) return rangeOf(node.items[0]?.key) ?? rangeOf(node);
  return rangeOf(node);
}

function firstLine(node: unknown): Span | undefined {
  const range = rangeOf(node);
  return range === undefined ? undefined : [range[0], range[0] + 1];
}
