import { styleText } from "node:util";
import type { UnitSystem } from "@noodlewright/core";
import { type ProblemIn, pathText, type Told, telling, toldIn } from "@noodlewright/core/figure";
import { printable, printableJson } from "@noodlewright/core/render";
import { linesInPlace } from "@noodlewright/core/spec";
import type { PlacedProblem } from "../input/placed-problem.ts";
import type { AnyProblem, OwnFacts } from "../input/problem.ts";
import { hintOn } from "./hints.ts";
import { catalogue } from "./problem-texts.ts";
import { wrapText } from "./wrap.ts";

/** Longest piece of a line that is shown. */
const excerptWidth = 100;

/** Most problems that are shown. */
const mostShown = 100;

interface Manner {
  readonly width: number;
  readonly colour: boolean;
  readonly units?: UnitSystem | undefined;
  /** What was done in spite of the problems. */
  readonly verdict?: string | undefined;
}

/** Prints problems in words: place, excerpt with a caret, what was found, what would be right, what to do. */
export function renderProblems(problems: readonly PlacedProblem[], manner: Manner): string {
  const parts = inOrder(problems)
    .slice(0, mostShown)
    .map((problem) => problemLines(problem, manner).join("\n"));
  const all = problems.length === 1 ? "1 problem" : `${problems.length} problems`;
  const count = problems.length > mostShown ? `${all}, the first ${mostShown} of them shown` : all;
  const none = problems.every((problem) => inWords(problem).kind === "no-answer")
    ? "there is no such answer"
    : "nothing was worked out";
  return `${parts.join("\n\n")}\n\n${count}; ${manner.verdict ?? none}.\n`;
}

/** What a problem says where it stands: advice names the flag that said the value. */
export function inWords(problem: PlacedProblem, units: UnitSystem = "metric"): Told {
  const { found, expected, advice, ...words } = sentences(problem, units);
  const { code, path, place, flag, example, named, lines: ofFlag = [] } = problem;
  const asFlag = flag !== undefined && example !== undefined && code.startsWith("spec.");
  const ofSpec = place !== undefined && flag === undefined ? linesOfSpec(problem) : ofFlag;
  return {
    ...words,
    ...(ofSpec.length > 0 && { lines: ofSpec }),
    found: named === undefined ? found : `${found} (${named})`,
    expected,
    advice: asFlag
      ? `write it like ${flag} '${example}'`
      : ofFlag.length > 0 && code.startsWith("spec.") && !ofFlag.some((line) => line.includes(`'${pathText(path)}=`))
        ? "set the value by its key"
        : ofSpec.length > 0 && (code === "spec.type" || code === "spec.missing")
          ? "write it like this"
          : advice,
  };
}

const tellOwn = telling<OwnFacts>(catalogue);

function sentences(problem: AnyProblem, units: UnitSystem): Told {
  if (isOwn(problem)) return tellOwn(problem, units);
  const words = toldIn(units)(problem);
  return { ...words, advice: `${words.advice}${hintOn(problem)}` };
}

function linesOfSpec(problem: AnyProblem): readonly string[] {
  return isOwn(problem) ? [] : linesInPlace(problem);
}

function isOwn(problem: AnyProblem): problem is ProblemIn<OwnFacts> {
  return Object.hasOwn(catalogue, problem.code);
}

/** File by file, and in each from top to bottom. */
function inOrder(problems: readonly PlacedProblem[]): readonly PlacedProblem[] {
  const files = [...new Set(problems.map(({ file }) => file))];
  const turn = ({ file }: PlacedProblem): number => files.indexOf(file);
  return [...problems].sort(
    (a, b) =>
      turn(a) - turn(b) ||
      (a.place?.line ?? 0) - (b.place?.line ?? 0) ||
      (a.place?.column ?? 0) - (b.place?.column ?? 0),
  );
}

function problemLines(problem: PlacedProblem, manner: Manner): readonly string[] {
  const strong = (text: string): string => (manner.colour ? styleText("bold", text, { validateStream: false }) : text);
  const { file, place, flag, path, code } = problem;
  const { found, expected, advice, lines = [] } = inWords(problem, manner.units);
  const where =
    flag !== undefined
      ? flag
      : file === undefined
        ? "noodlewright"
        : place === undefined
          ? file
          : `${file}:${place.line}:${place.column}`;
  const what = path.length === 0 ? "" : ` ${pathText(path)}`;
  const fact = (name: string, text: string): readonly string[] =>
    wrapText(printable(text), Math.max(20, manner.width - 12)).map(
      (line, index) => `  ${(index === 0 ? name : "").padEnd(9)} ${line}`,
    );
  return [
    `${strong(printable(`${where}:${what}`))} [${code}]`,
    ...excerpt(problem),
    ...fact("found", found),
    ...fact("expected", expected),
    ...fact("do", advice),
    ...lines.map((line, index) => `  ${(index === 0 ? "such as" : "").padEnd(9)} ${printable(line)}`),
  ];
}

function excerpt({ place, lineText }: PlacedProblem): readonly string[] {
  if (place === undefined || lineText === undefined) return [];
  const start = Math.max(0, place.column - 1 - excerptWidth / 2);
  const shown = printable(lineText.slice(start, start + excerptWidth));
  const number = String(place.line);
  const before = " ".repeat(place.column - 1 - start);
  const carets = "^".repeat(Math.min(place.length, Math.max(1, shown.length - before.length)));
  return [`  ${number} | ${shown}`, `  ${" ".repeat(number.length)} | ${before}${carets}`];
}

/** Problems for other programs. */
export function problemsJson(problems: readonly PlacedProblem[], units: UnitSystem): string {
  const list = inOrder(problems).map((problem) => {
    const { code, path, file, place, flag } = problem;
    return {
      code,
      path: pathText(path),
      ...inWords(problem, units),
      facts: problem.facts,
      ...(flag !== undefined && { flag }),
      ...(file !== undefined && { file }),
      ...(place && { line: place.line, column: place.column }),
    };
  });
  return printableJson({ noodlewright: "problems", version: 1, problems: list });
}
