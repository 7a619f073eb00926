import { isDeepStrictEqual } from "node:util";
import type { Path } from "@noodlewright/core/figure";
import type { SpecChange } from "@noodlewright/core/spec";
import {
  type Alias,
  type Document,
  isAlias,
  isMap,
  isNode,
  isPair,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  parseDocument,
  stringify,
  visit,
  type YAMLMap,
  type YAMLSeq,
} from "yaml";
import { isSection, put } from "./put.ts";
import type { TextFile } from "./read-file.ts";

/**
 * The text of a file with changes made to it, one after the other, and nothing else changed: comments, order, quotes, anchors,
 * indents and line ends stay. Nothing where that cannot be done, as where an anchor would carry a value to another place.
 */
export function withChanges({ text, bytes }: TextFile, changes: readonly SpecChange[]): string | undefined {
  let changed = text;
  let wanted: unknown = parsed(text).toJS();
  for (const change of changes) {
    const splice = spliceAt(parsed(changed), change, changed);
    if (splice === undefined) return undefined;
    changed = changed.slice(0, splice.start) + splice.text + changed.slice(splice.end);
    wanted = put(wanted, change.path, change.value, change.before);
  }
  if (!isDeepStrictEqual(readAgain(changed), wanted)) return undefined;
  const mark = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? "\ufeff" : "";
  return mark + changed;
}

/**
 * The text of a file that says something else, its comments, order and quotes as they were; nothing where what has changed
 * cannot be written in place.
 */
export function writtenAnew(file: TextFile, data: unknown): string | undefined {
  const before = readAgain(file.text);
  const text = withChanges(file, changesTo(before, data, []))?.replace(/^\ufeff/u, "");
  return text !== undefined && isDeepStrictEqual(readAgain(text), data) ? text : undefined;
}

function changesTo(before: unknown, after: unknown, path: Path): readonly SpecChange[] {
  if (isDeepStrictEqual(before, after)) return [];
  if (Array.isArray(before) && Array.isArray(after) && before.length === after.length)
    return after.flatMap((one, index) => changesTo(before[index], one, [...path, index]));
  if (!isSection(before) || !isSection(after)) return [{ path, value: after }];
  const kept = Object.keys(after).flatMap((key) =>
    key in before ? changesTo(before[key], after[key], [...path, key]) : [{ path: [...path, key], value: after[key] }],
  );
  const gone = Object.keys(before).filter((key) => !(key in after));
  return [...kept, ...gone.map((key) => ({ path: [...path, key] }))];
}

/** A value that several places share, which keeps a change from being written at one of them. */
interface Shared {
  readonly anchor: string;
  /** Whether the value stands where it would change, or is taken over there. */
  readonly stands: "here" | "elsewhere";
  readonly start: number;
  readonly end: number;
  /** Starts of the other places: those that take it over, or where it stands. */
  readonly others: readonly number[];
}

/** The first shared value on the way to one of the changes, or in what one replaces; nothing where none is shared. */
export function sharedValue({ text }: TextFile, changes: readonly SpecChange[]): Shared | undefined {
  const document = parsed(text);
  const [aliases, anchored]: [Alias[], Node[]] = [[], []];
  visit(document, {
    Alias: (_, node) => void aliases.push(node),
    Value: (_, node) => void anchored.push(node),
    Collection: (_, node) => void anchored.push(node),
  });
  const sharedAt = (node: Node): Shared | undefined => {
    const anchor = isAlias(node) ? undefined : node.anchor;
    const takers = aliases.filter(({ source }) => source === anchor);
    if (anchor === undefined || takers.length === 0) return undefined;
    return { anchor, stands: "here", start: startOf(node), end: endOf(node), others: takers.map(startOf) };
  };
  const along = ({ path }: SpecChange): Shared | undefined => {
    let node: unknown = document.contents;
    for (const [index, step] of path.entries()) {
      node = valueIn(entryOf(node, step));
      if (isAlias(node) && index < path.length - 1) {
        const { source } = node;
        const there = anchored.filter((one) => "anchor" in one && one.anchor === source);
        return {
          anchor: source,
          stands: "elsewhere",
          start: startOf(node),
          end: endOf(node),
          others: there.map(startOf),
        };
      }
      const shared = isNode(node) ? sharedAt(node) : undefined;
      if (shared !== undefined) return shared;
    }
    if (!isNode(node)) return undefined;
    const [start, end] = [startOf(node), endOf(node)];
    const within = anchored.filter((one) => startOf(one) >= start && endOf(one) <= end);
    return within.map(sharedAt).find((one) => one?.others.some((at) => at < start || at >= end));
  };
  return changes.map(along).find((one) => one !== undefined);
}

/** A piece of text in place of another. */
interface Splice {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

type Entry = Node | Pair;
type Collection = YAMLMap | YAMLSeq;

function parsed(text: string): Document {
  return parseDocument(text, { prettyErrors: false, uniqueKeys: false, keepSourceTokens: true });
}

function spliceAt(document: Document, { path, value, before: isNew }: SpecChange, text: string): Splice | undefined {
  const step = path.at(-1);
  let node: unknown = document.contents;
  for (const before of path.slice(0, -1)) node = valueIn(entryOf(resolved(node, document), before));
  const parent = resolved(node, document);
  if (step === undefined || !(isMap(parent) || isSeq(parent))) return undefined;
  const entry = entryOf(parent, step);
  if (isNew) return isSeq(parent) ? added(parent, [value], text, entryOf(parent, Number(step) - 1)) : undefined;
  if (value === undefined) return entry && taken(parent, entry, text);
  if (entry !== undefined) return rewritten(entry, value, text);
  const more = isSeq(parent) ? (step === parent.items.length ? [value] : undefined) : { [step]: value };
  return more && added(parent, more, text);
}

function resolved(node: unknown, document: Document): unknown {
  return isAlias(node) ? node.resolve(document) : node;
}

function entryOf(node: unknown, step: string | number): Entry | undefined {
  if (isMap(node)) return node.items.find(({ key }) => isScalar(key) && String(key.value) === String(step));
  return isSeq(node) && typeof step === "number" ? (node.items[step] as Node | undefined) : undefined;
}

function valueIn(entry: Entry | undefined): unknown {
  return isPair(entry) ? entry.value : entry;
}

/** A value in place of another: a word stays quoted as it was, and anything else stands on one line. */
function rewritten(entry: Entry, value: unknown, text: string): Splice | undefined {
  const old = valueIn(entry);
  if (!isNode(old)) return undefined;
  const [start, end] = [startOf(old), endOf(old)];
  if (typeof value !== "string") return { start, end, text: inFlow(value, isJson(text)) };
  if (!(isScalar(old) || isAlias(old))) return undefined;
  const [quote = ""] = /^["'|>]/u.exec(text.slice(start, end)) ?? [];
  if (quote === "|" || quote === ">") return undefined;
  const bare = (): string => inFlow([value], isJson(text)).slice(1, -1).trim();
  const written = quote === "'" ? `'${value.replaceAll("'", "''")}'` : quote === '"' ? JSON.stringify(value) : bare();
  return { start, end, text: written };
}

/** An entry more, behind one and written as that is. */
function added(
  parent: Collection,
  more: unknown,
  text: string,
  last = parent.items.at(-1) as Entry | undefined,
): Splice | undefined {
  const first = parent.items[0] as Entry | undefined;
  if (last === undefined || first === undefined || parent.range === null || parent.range === undefined)
    return undefined;
  if (parent.flow === true) {
    const gap = text.slice(parent.range[0] + 1, startOf(first));
    const bare = inFlow(more, isJson(text)).slice(1, -1).trim();
    return inserted(endOf(last), `,${/^\s*\n\s*$/u.test(gap) ? gap : " "}${bare}`);
  }
  const token = parent.srcToken;
  const indent = token !== undefined && "indent" in token ? token.indent : 0;
  const lineEnd = text.includes("\r\n") ? "\r\n" : "\n";
  const alike = isMap(last) && last.flow === true && Array.isArray(more);
  const lines = alike ? [`- ${inFlow(more[0], false)}`] : stringify(more, { lineWidth: 0 }).trimEnd().split("\n");
  const written = lines.map((line) => " ".repeat(indent) + line).join(lineEnd);
  const at = lineEndAt(endOf(last), text);
  return text[at - 1] === "\n" ? inserted(at, written + lineEnd) : inserted(at, lineEnd + written);
}

function inserted(at: number, text: string): Splice {
  return { start: at, end: at, text };
}

/** Plain data on one line. */
function inFlow(value: unknown, json: boolean): string {
  return json
    ? JSON.stringify(value, undefined, 1).replaceAll(/\s*\n\s*/gu, " ")
    : stringify(value, { collectionStyle: "flow", lineWidth: 0 }).trim();
}

function isJson(text: string): boolean {
  return text.trimStart().startsWith("{");
}

/** An entry taken out, with the whole of its lines or, on one line, with its comma. */
function taken(parent: Collection, entry: Entry, text: string): Splice | undefined {
  const items = parent.items as readonly Entry[];
  const index = items.indexOf(entry);
  const [before, after] = [items[index - 1], items[index + 1]];
  if (before === undefined && after === undefined) return undefined;
  if (parent.flow === true) {
    if (after !== undefined) return { start: startOf(entry), end: startOf(after), text: "" };
    return before && { start: endOf(before), end: endOf(entry), text: "" };
  }
  const start = dashOf(parent, index) ?? startOf(entry);
  const lineStart = text.lastIndexOf("\n", start - 1) + 1;
  if (text.slice(lineStart, start).trim() === "")
    return { start: lineStart, end: lineEndAt(endOf(entry), text), text: "" };
  return after && { start, end: dashOf(parent, index + 1) ?? startOf(after), text: "" };
}

/** Where the dash of an entry of a list in lines stands, which may have a line of its own. */
function dashOf({ srcToken }: Collection, index: number): number | undefined {
  if (srcToken?.type !== "block-seq") return undefined;
  return srcToken.items[index]?.start.find(({ type }) => type === "seq-item-ind")?.offset;
}

function startOf(entry: Entry): number {
  return (isPair(entry) ? (entry.key as Node) : entry).range?.[0] ?? 0;
}

/** Where the last word of an entry ends, before what stands behind it. */
function endOf(entry: Entry): number {
  const node = isPair(entry) ? ((entry.value ?? entry.key) as Node) : entry;
  const last =
    (isMap(node) || isSeq(node)) && node.flow !== true ? (node.items.at(-1) as Entry | undefined) : undefined;
  return last === undefined ? (node.range?.[1] ?? 0) : endOf(last);
}

/** The start of the next line, or the end of the text. */
function lineEndAt(end: number, text: string): number {
  if (text[end - 1] === "\n") return end;
  const at = text.indexOf("\n", end);
  return at < 0 ? text.length : at + 1;
}

function readAgain(text: string): unknown {
  const document = parsed(text);
  try {
    return document.errors.length > 0 ? undefined : document.toJS();
  } catch {
    return undefined;
  }
}
