import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { catalogue } from "#cli/render/problem-texts.ts";
import { catalogue as library } from "#core/figure/problems/index.ts";
import { splitWords } from "../docs/console-blocks.ts";
import { expectPage, kinds } from "../docs/page.ts";
import { folderFor } from "./folder.ts";
import { runHere } from "./in-process.ts";
import { given, type Sample, samples } from "./problem-samples.ts";
import { readProblems, type SeenProblem } from "./read-problems.ts";

interface Shown {
  readonly code: string;
  readonly line: string;
  readonly status: number | null;
  readonly problems: readonly SeenProblem[];
}

const contents = Object.fromEntries(
  Object.entries(given).map(([name, held]) => [name, typeof held === "string" ? held : held[0]]),
);
const folder = folderFor(contents);
mkdirSync(join(folder, "shelf"));

async function shown(code: string, sample: Sample): Promise<Shown> {
  const [line, terminal] = typeof sample === "string" ? [sample] : sample;
  const [asked = "", file = ""] = line.split(" < ");
  const input = String(contents[file] ?? "");
  const surroundings = { cwd: folder, input, ...(terminal && { answers: [] }) };
  const { status, stderr } = await runHere(splitWords(asked), surroundings);
  return { code, line, status, problems: readProblems(stderr.replaceAll(`${folder}/`, "")) };
}

const all = await Promise.all(Object.entries(samples).map(([code, sample]) => shown(code, sample)));
const kindOf = new Map(Object.entries(catalogue).map(([code, { kind }]) => [code, kind]));

test.each(all)("$code comes about alone and is told in whole sentences", ({ code, status, problems }) => {
  expect(problems.map((problem) => problem.code)).toEqual([code]);
  expect(status).toBe(kindOf.get(code) === "no-answer" ? 1 : 2);
  for (const sentence of problems.flatMap(({ found, expected, advice }) => [found, expected, advice])) {
    expect(sentence).not.toBe("");
    expect(sentence).not.toMatch(/undefined|NaN|\[object|\s{2}|^\s|\s$/u);
  }
});

test("every problem of the command has a sample, and a code that the library does not use", () => {
  expect(Object.keys(samples).toSorted()).toEqual([...kindOf.keys()].toSorted());
  expect(Object.keys(samples).filter((code) => Object.hasOwn(library, code))).toEqual([]);
});

test("the page of the command's problems tells each as it is told", () => {
  const files = Object.entries(given).map(([name, held]) =>
    typeof held === "string" ? `\`${name}\`:\n\n\`\`\`yaml\n${held}\`\`\`` : `\`${name}\` holds ${held[1]}.`,
  );
  const sections = all
    .toSorted((a, b) => (a.code < b.code ? -1 : 1))
    .flatMap(({ code, line, problems }) => [
      `## ${code}`,
      `${kinds[kindOf.get(code) ?? "input"]}. It comes of:`,
      `\`\`\`sh\nnoodlewright ${line}\n\`\`\``,
      problems
        .map(({ where, found, expected, advice }) =>
          // How deep the parser gets depends on the machine.
          [
            `- at: ${where.replace(/^(deep\.yaml):.*/u, "$1")}`,
            `- found: ${found}`,
            `- expected: ${expected}`,
            `- do: ${advice}`,
          ].join("\n"),
        )
        .join("\n\n"),
    ]);
  expectPage(
    "packages/cli/problems.md",
    `${[
      "# Problems of files and flags",
      "What the command finds wrong before it asks the library: files, flags and words. With `--format json` a problem comes as data, with the same code. The problems of a noodle, and the notes that go with an answer, stand on the page of the library, `@noodlewright/core`.",
      "The command lines are typed in a folder with an empty folder `shelf` and these files:",
      ...files,
      ...sections,
    ].join("\n\n")}\n`,
  );
});
