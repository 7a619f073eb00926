import { readdirSync, readFileSync } from "node:fs";
import { compileFunction } from "node:vm";
import { type Note, type Outcome, type Problem, told } from "@noodlewright/core";
import { type Code, type NoteCode, note, pathText } from "@noodlewright/core/figure";
import { linesInPlace, readSpec } from "@noodlewright/core/spec";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { batch } from "#core/figure/problems/batch.ts";
import { blend as blendTexts } from "#core/figure/problems/blend.ts";
import { chemistry } from "#core/figure/problems/chemistry.ts";
import { explore } from "#core/figure/problems/explore.ts";
import { figure } from "#core/figure/problems/figure.ts";
import { formula } from "#core/figure/problems/formula.ts";
import { catalogue } from "#core/figure/problems/index.ts";
import { materials } from "#core/figure/problems/materials.ts";
import { noodle } from "#core/figure/problems/noodle.ts";
import { quantity } from "#core/figure/problems/quantity.ts";
import { render } from "#core/figure/problems/render.ts";
import { sheet } from "#core/figure/problems/sheet.ts";
import { spec } from "#core/figure/problems/spec.ts";
import { expectPage, kinds } from "../../docs/page.ts";
import { given, samples } from "./problem-samples.ts";

const source = new URL("../../../packages/core/src/", import.meta.url);

/** What the calls may name: what the doors of the library show, and the values of the samples; nothing else is run. */
const scope: Record<string, unknown> = {};
const core = new URL("../package.json", source);
const { exports } = JSON.parse(readFileSync(core, "utf8")) as {
  exports: Record<string, string | { "@noodlewright/source": string }>;
};
for (const door of Object.values(exports))
  if (typeof door === "object") Object.assign(scope, await import(new URL(door["@noodlewright/source"], core).href));

function evaluated(text: string): unknown {
  const names = Object.keys(scope);
  return Reflect.apply(
    compileFunction(`"use strict"; return (${text});`, names),
    undefined,
    names.map((name) => scope[name]),
  );
}

for (const [name, text] of Object.entries(given)) scope[name] = evaluated(text);

const cautions = (
  ["burns", "into-water", "eyes", "heat", "powder", "aluminium", "food-grade", "keep", "sheet"] as const
).map((name) => note(`caution.${name}`, [], {}));

const all = Object.entries(samples).map(([code, [path, call]]) => ({ code: code as Code | NoteCode, path, call }));

/** What a call is answered with: an outcome with its notes or problems, or those alone; those of a report have no path, and its cautions are told. */
type Answered = Outcome<unknown> | readonly (Problem | Note | string)[];

function sampleOf(code: Code | NoteCode, call: string): Problem | Note {
  const answered = evaluated(call) as Answered;
  const list: readonly (Problem | Note | string)[] = isList(answered)
    ? answered
    : answered.ok
      ? answered.notes
      : answered.problems;
  // What a noodle was asked is answered with what nobody can write in.
  if (/^about\(.*\b(?:ask[A-Z]|mending|replacing)/u.test(call)) expect(Object.isFrozen(list)).toBe(true);
  const found = list
    .flatMap((one): readonly (Problem | Note)[] => (typeof one === "string" ? cautionTold(one) : [one]))
    .find((one) => one.code === code);
  if (found === undefined) throw new Error(`only ${JSON.stringify(list)}`);
  return { ...found, path: found.path ?? [] };
}

/** The cautions of alkaline products by the sentence that a report tells them in. */
function cautionTold(sentence: string): readonly Note[] {
  return cautions.filter((one) => `${told(one)[0]?.toUpperCase()}${told(one).slice(1)}.` === sentence);
}

function isList(answered: Answered): answered is readonly (Problem | Note | string)[] {
  return Array.isArray(answered);
}

function isNote(one: Problem | Note): one is Note {
  return catalogue[one.code].kind === "note";
}

/** Problems of the shape of a spec or of a kitchen file: what reading them alone brings about. */
const ofShape = all.filter(
  ({ code, call }) => /^read(?:Spec|KitchenFile)\(/u.test(call) && !code.startsWith("spec.too-"),
);

it.each(ofShape)("$code shows lines that are read where it stands", ({ code, call }) => {
  const one = sampleOf(code, call);
  const lines = isNote(one) ? [] : linesInPlace(one);
  expect(lines.length).toBeGreaterThan(0);
  const outcome = readSpec(parse(lines.join("\n")));
  const wrong = outcome.ok
    ? []
    : outcome.problems.filter(({ code, path }) => !(code === "spec.missing" && path.length === 1));
  expect([lines, wrong]).toEqual([lines, []]);
});

/** What is told of it, line by line. */
function linesOf(one: Problem | Note): readonly string[] {
  if (isNote(one)) return [`- note: ${told(one)}`];
  const { found, expected, advice, lines = [] } = told(one);
  const such = lines.length === 0 ? [] : [`- such as: ${lines.map((line) => `\`${line}\``).join(", ")}`];
  return [`- found: ${found}`, `- expected: ${expected}`, `- do: ${advice}`, ...such];
}

describe("every problem and note", () => {
  it.each(all)("$code comes about, points at its place and is told in whole sentences", ({ code, path, call }) => {
    const one = sampleOf(code, call);
    expect(pathText(one.path)).toBe(path);
    for (const line of linesOf(one)) {
      const sentence = line.slice(line.indexOf(":") + 2);
      expect(sentence).not.toBe("");
      expect(sentence).not.toMatch(/undefined|NaN|\[object|\s{2}|^\s|\s$/u);
      expect(sentence).not.toMatch(/(?:^|[\s("`'])--?[a-z]|noodlewright /u);
    }
    expect(JSON.parse(JSON.stringify(one))).toEqual(one);
  });

  it("has a sample, and its code is of one room", () => {
    expect(Object.keys(samples).toSorted()).toEqual(Object.keys(catalogue).toSorted());
    const rooms = [
      batch,
      blendTexts,
      chemistry,
      explore,
      figure,
      formula,
      materials,
      noodle,
      quantity,
      render,
      sheet,
      spec,
    ];
    expect(rooms.flatMap((room) => Object.keys(room)).length).toBe(Object.keys(catalogue).length);
  });
});

it("the page of all problems and notes tells each as it is told", () =>
  expectPage("packages/core/problems.md", pageOf()));

function pageOf(): string {
  const sections = all
    .toSorted((a, b) => (a.code < b.code ? -1 : 1))
    .map(({ code, path, call }) => {
      const one = sampleOf(code, call);
      const place = path === "" ? "" : `, at \`${path}\``;
      const first = isNote(one) && one.loud ? ", to be said before anything else" : "";
      return [
        `## ${code}`,
        `${kinds[catalogue[one.code].kind]}${place}${first}. It comes of:`,
        `\`\`\`ts\n${call}\n\`\`\``,
        linesOf(one).join("\n"),
      ].join("\n\n");
    });
  const values = Object.entries(given).map(([name, text]) => `const ${name} = ${text};`);
  return `${[
    "# Problems and notes",
    "What keeps an answer from being given, and what is worth knowing beside one, is data: `{ code, path, facts }`. `told` makes the sentences below from it. Each stands here with a call of the doors of the library that it comes of. The command line adds the flags and commands that help.",
    "The calls build on these values:",
    `\`\`\`ts\n${values.join("\n")}\n\`\`\``,
    ...sections,
  ].join("\n\n")}\n`;
}

it("no doc comment promises a code that there is not", () => {
  const named = readdirSync(source, { recursive: true, encoding: "utf8" }).flatMap((name) => {
    const comments = name.endsWith(".ts")
      ? readFileSync(new URL(name, source), "utf8").match(/\/\*\*.*?\*\//gsu)
      : null;
    const promises = (comments ?? []).flatMap((text) => text.match(/(?:Problems|Notes):[^@]*/gu) ?? []);
    return promises.flatMap((text) => [...text.matchAll(/`([a-z]+\.[a-zA-Z\d-]+)`/gu)].map(([, code = ""]) => code));
  });
  expect(named.length).toBeGreaterThan(100);
  expect(named.filter((code) => !Object.hasOwn(catalogue, code))).toEqual([]);
});

it("what is expected is told of the thing, and not of the key of a spec", () => {
  const withKeys = all.flatMap(({ code, call }) => {
    const one = sampleOf(code, call);
    return !isNote(one) && /`\w+:?`/u.test(told(one).expected) ? [code] : [];
  });
  expect(withKeys).toEqual([]);
});

it("a note tells the thing in plain words, without the keys of a spec", () => {
  const withKeys = all.flatMap(({ code, call }) => {
    const one = sampleOf(code, call);
    return isNote(one) && told(one).includes("`") ? [code] : [];
  });
  expect(withKeys).toEqual([]);
});
