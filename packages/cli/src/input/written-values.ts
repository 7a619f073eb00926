import { isDeepStrictEqual } from "node:util";
import type { Path } from "@noodlewright/core/figure";
import { type Document, isAlias, isMap, isScalar, isSeq, type Node, parseDocument } from "yaml";
import type { TextFile } from "./read-file.ts";

/** A value and where it belongs. */
export interface NewValue {
  readonly path: Path;
  readonly text: string;
}

/**
 * The text of a file with other values at some places and nothing else changed: comments, order, quotes, anchors, indents
 * and line ends stay. Nothing where that cannot be done, as where an anchor would carry a value to another place.
 */
export function withValues({ text, bytes }: TextFile, values: readonly NewValue[]): string | undefined {
  const document = parseDocument(text, { prettyErrors: false, uniqueKeys: false });
  const splices = values.map(({ path, text: value }) => spliceAt(document, path, value, text));
  if (!splices.every((one) => one !== undefined)) return undefined;
  const changed = splices
    .toSorted((a, b) => b.start - a.start)
    .reduce((before, { start, end, value }) => before.slice(0, start) + value + before.slice(end), text);
  const wanted = values.reduce<unknown>((data, { path, text: value }) => withValue(data, path, value), document.toJS());
  if (!isDeepStrictEqual(readAgain(changed), wanted)) return undefined;
  const mark = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? "\ufeff" : "";
  return mark + changed;
}

interface Splice {
  readonly start: number;
  readonly end: number;
  readonly value: string;
}

/** The piece of text that the value of a path stands on; a quoted one stays quoted. */
function spliceAt(document: Document, path: Path, value: string, text: string): Splice | undefined {
  let node: unknown = document.contents;
  for (const step of path) {
    if (isAlias(node)) node = node.resolve(document);
    if (isMap(node)) node = node.items.find(({ key }) => isScalar(key) && String(key.value) === String(step))?.value;
    else if (isSeq(node) && typeof step === "number") node = node.items[step];
    else return undefined;
  }
  const range = isScalar(node) || isAlias(node) ? (node as Node).range : undefined;
  if (range === undefined || range === null) return undefined;
  const [start, end] = range;
  const [quote = ""] = /^["'|>]/u.exec(text.slice(start, end)) ?? [];
  if (quote === "|" || quote === ">") return undefined;
  return { start, end, value: quote + value + quote };
}

function readAgain(text: string): unknown {
  try {
    return parseDocument(text, { prettyErrors: false, uniqueKeys: false }).toJS();
  } catch {
    return undefined;
  }
}

function withValue(data: unknown, [step, ...rest]: Path, value: string): unknown {
  if (step === undefined) return value;
  if (Array.isArray(data))
    return data.map((entry: unknown, index) => (index === step ? withValue(entry, rest, value) : entry));
  const section = data as Readonly<Record<string | number, unknown>>;
  return { ...section, [step]: withValue(section[step], rest, value) };
}
