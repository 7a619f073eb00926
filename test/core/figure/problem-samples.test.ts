import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { compileFunction } from "node:vm";
import { type Noodle, type Outcome, type Problem, readNoodleData, told } from "@noodlewright/core";
import { blendStocks as blend, compositionOf } from "@noodlewright/core/chemistry";
import type { BlendAnswer } from "@noodlewright/core/explore";
import { pathText } from "@noodlewright/core/figure";
import { describe, expect, it } from "vitest";
import { refuse } from "#core/figure/problem.ts";
import { catalogue } from "#core/figure/problems/index.ts";
import { given, samples } from "./problem-samples.ts";

type Refusing = Outcome<unknown>;

const source = new URL("../../../packages/core/src/", import.meta.url);

/** What the calls may name: everything that the library has, the values of the samples, and what joins two calls. */
const scope: Record<string, unknown> = {};
for (const name of readdirSync(source, { recursive: true, encoding: "utf8" }).sort())
  if (/^(?!figure\/problems).*(?<!index)\.ts$/u.test(name))
    Object.assign(scope, await import(new URL(name, source).href));
Object.assign(scope, {
  blendStocks: blend,
  compositionOf,
  about: (spec: unknown, ask: (noodle: Noodle) => Refusing): Refusing => {
    const noodle = readNoodleData(spec, {});
    return noodle.ok ? ask(noodle.value) : noodle;
  },
  withinAnswer: (outcome: Outcome<BlendAnswer>): Refusing =>
    outcome.ok && outcome.value.kind === "out-of-reach" ? refuse(outcome.value.problem) : outcome,
  printed: (rendering: { readonly ok: false; readonly problem: Problem }): Refusing => refuse(rendering.problem),
});

function evaluated(text: string): unknown {
  const names = Object.keys(scope);
  return Reflect.apply(
    compileFunction(`"use strict"; return (${text});`, names),
    undefined,
    names.map((name) => scope[name]),
  );
}

for (const [name, text] of Object.entries(given)) scope[name] = evaluated(text);

const all = Object.entries(samples).map(([code, [path, call]]) => ({ code, path, call }));

function problemOf(code: string, call: string): Problem {
  const outcome = evaluated(call) as Refusing;
  const found = outcome.ok ? undefined : outcome.problems.find((problem) => problem.code === code);
  if (found === undefined) throw new Error(outcome.ok ? "was answered" : outcome.problems.map(sayProblem).join("; "));
  return found;
}

function sayProblem(problem: Problem): string {
  const { found } = told(problem);
  return `${problem.code} ${pathText(problem.path)}: ${found}`;
}

describe("every problem", () => {
  it.each(all)("$code comes about, points at its place and is told in whole sentences", ({ code, path, call }) => {
    const problem = problemOf(code, call);
    expect(pathText(problem.path)).toBe(path);
    const { kind, found, expected, advice } = told(problem);
    expect(["input", "no-answer"]).toContain(kind);
    for (const sentence of [found, expected, advice]) {
      expect(sentence).not.toBe("");
      expect(sentence).not.toMatch(/undefined|NaN|\[object|\s{2}|^\s|\s$/u);
      expect(sentence).not.toMatch(/(?:^|[\s("`'])--?[a-z]|noodlewright /u);
    }
    expect(JSON.parse(JSON.stringify(problem))).toEqual(problem);
  });

  it("has a sample", () => {
    const codes = Object.entries(catalogue).flatMap(([code, { kind }]) => (kind === "note" ? [] : [code]));
    expect(Object.keys(samples).toSorted()).toEqual(codes.toSorted());
  });
});

describe("the page of all problems", () => {
  const file = new URL("../../../packages/core/problems.md", import.meta.url);

  it("tells each as it is told", () => {
    const page = pageOf();
    if (process.env["UPDATE_DOCS"] === "1") writeFileSync(file, page);
    expect(existsSync(file) ? readFileSync(file, "utf8") : "").toBe(page);
  });
});

function pageOf(): string {
  const sections = all
    .toSorted((a, b) => (a.code < b.code ? -1 : 1))
    .map(({ code, path, call }) => {
      const { kind, found, expected, advice } = told(problemOf(code, call));
      const place = path === "" ? "" : `, at \`${path}\``;
      const whose = kind === "input" ? "The input is wrong" : "There is no such answer";
      return [
        `## ${code}`,
        `${whose}${place}. It comes of:`,
        `\`\`\`ts\n${call}\n\`\`\``,
        [`- found: ${found}`, `- expected: ${expected}`, `- do: ${advice}`].join("\n"),
      ].join("\n\n");
    });
  const values = Object.entries(given).map(([name, text]) => `const ${name} = ${text};`);
  return `${[
    "# Problems",
    "What keeps an answer from being given is data: `{ code, path, facts }`. `told` makes the sentences below from it. Each problem stands here with a call that it comes of; `about(spec, ask)` reads a spec and puts a question to it. The command line adds the flags and commands that help.",
    "The calls build on these values:",
    `\`\`\`ts\n${values.join("\n")}\n\`\`\``,
    ...sections,
  ].join("\n\n")}\n`;
}
