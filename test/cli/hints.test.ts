import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readWords } from "#cli/command-line.ts";
import { splitWords } from "../docs/console-blocks.ts";
import { everyCommand } from "./every-example.ts";

const flags = new Set(everyCommand.flatMap(({ command }) => Object.keys(command.flags)));
const everywhere = ["help", "version"];

const source = ["hints", "problem-texts"]
  .map((name) => readFileSync(new URL(`../../packages/cli/src/render/${name}.ts`, import.meta.url), "utf8"))
  .join("\n")
  .replaceAll(/^\s*(?:\/\*\*|\*|import ).*$/gmu, "");
const lines = [...new Set([...source.matchAll(/\\?`(noodlewright [a-z][^`\\]*)\\?`/gu)].map(([, line = ""]) => line))];
const said = [...new Set([...source.matchAll(/(?<![\w-])--([a-z][a-z-]*)(?![\w$-])/gu)].map(([, flag = ""]) => flag))];

test("the hints name commands and flags", () => expect([lines.length > 8, said.length > 12]).toEqual([true, true]));

test.each(lines)("%s, which a hint names, is a command with these flags", (line) => {
  const words = splitWords(line.replaceAll(/\$\{\w+\}/gu, "flour")).slice(1);
  const fitting = everyCommand.find(({ usage }) => {
    const names = usage.split(" ").filter((word) => /^[a-z]/u.test(word));
    return names.every((name, index) => words[index] === name);
  });
  expect(fitting?.usage).toBeDefined();
  if (fitting === undefined) return;
  const names = fitting.usage.split(" ").filter((word) => /^[a-z]/u.test(word));
  const { wrong } = readWords(words.slice(names.length), { usage: fitting.usage, flags: fitting.command.flags });
  expect(wrong).toEqual([]);
});

test.each(said)("--%s, which a hint names, is a flag", (flag) => {
  expect([...flags, ...everywhere]).toContain(flag);
});

test("the flags of temperatures are those of the keys that may be missing", () => {
  const { flags: ofWater = {} } =
    everyCommand.find(({ usage }) => usage.startsWith("water-temperature"))?.command ?? {};
  for (const key of ["dough", "flour", "room"]) expect(Object.keys(ofWater)).toContain(`${key}-at`);
});
