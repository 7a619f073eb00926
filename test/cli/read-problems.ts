/** A problem as a reader of standard error sees it. */
export interface SeenProblem {
  /** `file:line:column`, `file`, or the flag. */
  readonly where: string;
  readonly path: string;
  readonly code: string;
  /** What the carets stand under. */
  readonly pointed: string | undefined;
  readonly found: string;
  readonly expected: string;
  readonly advice: string;
}

const heading = /^(?<where>.+?):(?: (?<path>.+))? \[(?<code>[a-z]+\.[a-z-]+)\]$/u;

/** Reads back the problems that the command printed in words. */
export function readProblems(stderr: string): readonly SeenProblem[] {
  return stderr.split("\n\n").flatMap((block) => {
    const lines = block.split("\n");
    const groups = heading.exec(lines[0] ?? "")?.groups;
    if (groups === undefined) return [];
    return [
      {
        where: groups["where"] ?? "",
        path: groups["path"] ?? "",
        code: groups["code"] ?? "",
        pointed: pointedAt(lines),
        found: fact(lines, "found"),
        expected: fact(lines, "expected"),
        advice: fact(lines, "do"),
      },
    ];
  });
}

function pointedAt(lines: readonly string[]): string | undefined {
  const at = lines.findIndex((line) => /^ +\| +\^+$| +\| \^+$/u.test(line));
  const caret = lines[at];
  return caret === undefined ? undefined : lines[at - 1]?.slice(caret.indexOf("^"), caret.length);
}

/** A fact may go on over several lines. */
function fact(lines: readonly string[], name: string): string {
  const start = lines.findIndex((line) => line.startsWith(`  ${name} `));
  if (start < 0) return "";
  const more = lines.slice(start + 1).findIndex((line) => !line.startsWith(" ".repeat(12)));
  const end = more < 0 ? lines.length : start + 1 + more;
  return lines
    .slice(start, end)
    .map((line) => line.slice(12))
    .join(" ");
}
