/** An entry of a list. */
export function listItem(item: unknown, indent: number, deepest?: number): readonly string[] {
  const [first = "", ...rest] = Object.entries(item ?? {}).flatMap(([key, value]) =>
    yamlLines(key, value, indent + 2, deepest),
  );
  return [`${" ".repeat(indent)}- ${first.trimStart()}`, ...rest];
}

/**
 * A key and its value, plain data, as lines of YAML.
 *
 * @param deepest - indent from which on sections and lists stand in one line
 * @example yamlLines("salt", "1 %", 0) // => ["salt: 1 %"]
 */
export function yamlLines(
  key: string,
  value: unknown,
  indent: number,
  deepest = Number.POSITIVE_INFINITY,
): readonly string[] {
  const start = `${" ".repeat(indent)}${plainKey(key)}:`;
  if (indent >= deepest) return [`${start} ${flowText(value)}`];
  if (value === null || value === undefined) return [start];
  if (typeof value === "string" && value.includes("\n")) {
    return [
      `${start} |`,
      ...value
        .trimEnd()
        .split("\n")
        .map((line) => `${" ".repeat(indent + 2)}${line}`),
    ];
  }
  if (Array.isArray(value) && value.length === 0) return [`${start} []`];
  if (Array.isArray(value))
    return [start, ...value.flatMap((item: unknown) => listItemOrText(item, indent + 2, deepest))];
  if (typeof value === "object" && Object.keys(value).length === 0) return [`${start} {}`];
  if (typeof value === "object")
    return [start, ...Object.entries(value).flatMap(([inner, one]) => yamlLines(inner, one, indent + 2, deepest))];
  return [`${start} ${plainText(value)}`];
}

/** A value in one line. */
export function flowText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(flowText).join(", ")}]`;
  if (typeof value === "object" && value !== null)
    return `{ ${Object.entries(value)
      .map(([key, one]) => `${plainKey(key)}: ${flowText(one)}`)
      .join(", ")} }`;
  const text = plainText(value);
  return text.includes(",") && !text.startsWith('"') ? JSON.stringify(value) : text;
}

function listItemOrText(item: unknown, indent: number, deepest: number): readonly string[] {
  return typeof item === "object" ? listItem(item, indent, deepest) : [`${" ".repeat(indent)}- ${plainText(item)}`];
}

function plainKey(key: string): string {
  return /^[A-Za-z][\w.]*(?: [\w.]+)*$/u.test(key) && !special.test(key) ? key : JSON.stringify(key);
}

/** What YAML, old or new, takes for something else than a text. */
const special = /^(?:y|n|yes|no|on|off|true|false|null)$| $/iu;

/** A text as it is where YAML takes it for the same text, and in quotes elsewhere. */
function plainText(value: unknown): string {
  if (typeof value !== "string") return String(value);
  const safe = /^(?:[\p{L}][\p{L}\p{N} .,()%/'&+-]*|\d+(?:\.\d+)? (?:\d+\/\d+ )?[%°\p{L}][\p{L}\p{N} .%/]*)$/u.test(
    value,
  );
  return safe && !special.test(value) ? value : JSON.stringify(value);
}
