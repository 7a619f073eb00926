import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

const core = new URL("../../../packages/core/src/", import.meta.url);
const tests = new URL("../", import.meta.url);

/** The text of all TypeScript files below a folder. */
function textBelow(folder: URL): string {
  const names = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".ts"));
  return names.map((name) => readFileSync(new URL(name, folder), "utf8")).join("\n");
}

const modules = [
  ...[
    "alkali",
    "blend",
    "dose",
    "flour-figures",
    "flour-shares",
    "formula",
    "limits",
    "lines",
    "not-alkaline",
    "spec/read-spec",
    "replace",
    "spec/spec",
    "water",
  ].map((name) => (name.includes("/") ? name : `formula/${name}`)),
  ...["batch", "bowl", "dough-size", "loads", "remedy", "weighing"].map((name) => `batch/${name}`),
  ...["own", "fields"].map((name) => `materials/${name}`),
];
const source = modules.map((name) => readFileSync(new URL(`${name}.ts`, core), "utf8")).join("\n");
const code = String.raw`"([a-z]+\.[a-z-]+)"`;
/** Codes of problems and notes, as the source makes them. */
const made = new Set(
  [new RegExp(String.raw`(?:inputProblem|noAnswer)\(\s*${code}`, "gu"), new RegExp(`code: ${code}`, "gu")].flatMap(
    (form) => [...source.matchAll(form)].map(([, name = ""]) => name),
  ),
);
const tested = textBelow(tests);

describe("every code of a problem or a note", () => {
  it("is found in the source", () => {
    expect(made.size).toBeGreaterThan(40);
  });

  it.each([...made].sort())("%s is produced by a test", (name) => {
    expect(tested.includes(`"${name}"`)).toBe(true);
  });
});
