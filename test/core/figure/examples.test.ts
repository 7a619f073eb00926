import { readdirSync, readFileSync } from "node:fs";
import { isDeepStrictEqual } from "node:util";
import { compileFunction } from "node:vm";
import { type Noodle, readNoodleData } from "@noodlewright/core";
import { readKitchenFile } from "@noodlewright/core/spec";
import { beforeAll, describe, expect, it } from "vitest";
import { parse } from "yaml";
import manifest from "../../../packages/core/package.json" with { type: "json" };
import { answered } from "../told-of.ts";
import { unexplained } from "./explained.ts";

/** What stands behind `@example` in the doc comments of core is worked out and compared with what it says. */
interface Example {
  readonly file: string;
  readonly call: string;
  readonly says: string;
}

const source = new URL("../../../packages/core/src/", import.meta.url);
const files = readdirSync(source, { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".ts") && !name.endsWith("index.ts"))
  .sort();

const form = /@example (.+?) \/\/ => (.+?)(?: \*\/)?$/gmu;
const examples: readonly Example[] = files.flatMap((file) =>
  [...readFileSync(new URL(file, source), "utf8").matchAll(form)].map(([, call = "", says = ""]) => ({
    file,
    call,
    says: says.trim(),
  })),
);

type Names = Readonly<Record<string, unknown>>;

/** Everything that core has, those of the file itself first: examples use names of other modules too. */
const exportsOf = new Map<string, Names>();

const doors = Object.values(manifest.exports).flatMap((entry) =>
  typeof entry === "string" ? [] : [entry["@noodlewright/source"]],
);

/** The functions of each door, with their names. */
const functionsOf = new Map<string, ReadonlyMap<unknown, string>>();

/** What the functions of the doors gave in the examples. */
const given: { readonly name: string; readonly result: unknown }[] = [];

beforeAll(async () => {
  for (const file of files) exportsOf.set(file, (await import(new URL(file, source).href)) as Names);
  for (const door of doors) {
    const shown = Object.entries((await import(new URL(`../${door}`, source).href)) as Names);
    functionsOf.set(door, new Map(shown.flatMap(([name, one]) => (typeof one === "function" ? [[one, name]] : []))));
  }
});

/** Names of which those of the doors note what they give. */
function noting(names: Names): Names {
  const noted = Object.entries(names).map(([own, one]) => {
    const name = [...functionsOf.values()].map((functions) => functions.get(one)).find(Boolean);
    if (name === undefined || typeof one !== "function") return [own, one] as const;
    const call = (...inputs: readonly unknown[]): unknown => {
      const result: unknown = Reflect.apply(one, undefined, inputs);
      given.push({ name, result });
      return result;
    };
    return [own, call] as const;
  });
  return Object.fromEntries(noted);
}

/** In an example, `example("school-noodle")` is the noodle of the example file of this name. */
function example(name: string): Noodle {
  const dataOf = (file: string): unknown =>
    parse(readFileSync(new URL(`../../../examples/${file}`, import.meta.url), "utf8"));
  const kitchen = readKitchenFile(dataOf("harbour-store.yaml"));
  return answered(readNoodleData(dataOf(`${name}.yaml`), { kitchens: [answered(kitchen)] }));
}

function namesFor(file: string): Names {
  const all = Object.assign({}, ...exportsOf.values()) as Names;
  return { example, ...noting({ ...all, ...exportsOf.get(file) }) };
}

function evaluated(code: string, names: Names): unknown {
  const keys = Object.keys(names).filter((key) => /^[A-Za-z_$][\w$]*$/u.test(key));
  const work = compileFunction(`"use strict"; return (${code});`, keys);
  return Reflect.apply(
    work,
    undefined,
    keys.map((key) => names[key]),
  );
}

/** Whether the right side is data that can be compared; words such as `28.7 °C` tell a reader only. */
function isData(says: string): boolean {
  try {
    evaluated(says, {});
    return true;
  } catch {
    return false;
  }
}

/** Decimals read as their text, so that an example can say `"0.3"`. */
function plain(value: unknown): unknown {
  return value === undefined ? undefined : JSON.parse(JSON.stringify(value));
}

const checked = examples.filter(({ says }) => isData(says));

describe("the examples of the doc comments", () => {
  it("are many, and most of them say data", () => {
    expect(examples.length).toBeGreaterThan(120);
    expect(checked.length / examples.length).toBeGreaterThan(0.9);
  });

  it.each(checked)("$file: $call", ({ file, call, says }) => {
    expect(plain(evaluated(call, namesFor(file)))).toStrictEqual(evaluated(says, {}));
  });

  it.each(examples.filter((one) => !checked.includes(one)))("$file: $call can be worked out", ({ file, call }) => {
    expect(() => evaluated(call, namesFor(file))).not.toThrow();
  });
});

/** The functions whose work is a noodle or a function. */
const unplainOnes = ["input", "noAnswer", "readNoodle", "settle", "telling", "toldIn"];

describe("what a program imports", () => {
  it.each(doors)("has at door %s an example of every function, which says a value", (door) => {
    const lacking = [...(functionsOf.get(door) ?? [])].filter(([value]) => {
      const own = [...exportsOf].flatMap(([file, names]) =>
        Object.entries(names).flatMap(([name, one]) => (one === value ? [{ file, name }] : [])),
      );
      return !checked.some(
        ({ file, call, says }) =>
          own.some((one) => one.file === file && new RegExp(`\\b${one.name}\\(`, "u").test(call)) &&
          !(call.endsWith(".ok") && says === "true"),
      );
    });
    expect(lacking.map(([, name]) => name)).toEqual([]);
  });

  it("is given plain data by every function but those whose work is a noodle or a function", () => {
    const unplain = given.flatMap(({ name, result }) => {
      const { report, changes, ...plain } = (typeof result === "object" ? result : { result: result ?? null }) as Names;
      const told = [report, changes].flatMap((tell) =>
        typeof tell === "function" && tell.length === 0 ? [Reflect.apply(tell, undefined, [])] : [],
      );
      const data = [plain, ...told];
      return isDeepStrictEqual(JSON.parse(JSON.stringify(data)), data) ? [] : [name];
    });
    expect([...new Set(unplain)].toSorted()).toEqual(unplainOnes);
    expect(new Set(given.map(({ name }) => name)).size).toBeGreaterThan(150);
  });

  it("is given figures that every function lets explain themselves, in a copy too", () => {
    // `inSystem` shows a figure of another result, whose graph stays there.
    const others = [...unplainOnes, "inSystem"];
    const silent = given.flatMap(({ name, result }) => {
      if (typeof result !== "object" || result === null || others.includes(name)) return [];
      const { report: _report, changes: _changes, ...plain } = result as Names;
      return unexplained(Array.isArray(result) ? result : plain).map((what) => `${name}: ${what}`);
    });
    expect([...new Set(silent)]).toEqual([]);
  });
});
