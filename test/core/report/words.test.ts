import { listWords, type Report } from "@noodlewright/core";
import { withWords } from "@noodlewright/core/render";
import { describe, expect, test } from "vitest";
import { glossary, wordsIn } from "#core/report/words.ts";
import { reportOf } from "./parts.ts";

test("each word that has no explanation is told by itself", () => {
  const answer = listWords("meq qqqq xyzzy");
  expect(answer.ok && answer.report().notes.map(({ text }) => text)).toEqual([
    expect.stringContaining('"qqqq"'),
    expect.stringContaining('"xyzzy"'),
  ]);
});

const plain: Report = {
  ...reportOf([["% of flour", "right"]], ["bread flour, 14 % mb"]),
  notes: [{ code: "n", facts: {}, text: "the division of the scale is coarse: weigh loads" }],
};

describe("the words of an answer", () => {
  test("are explained below it, those that it uses and no others, as they come up", () => {
    const { sections } = withWords(plain);
    const block = sections.at(-1)?.blocks[0];
    const lines = block?.kind === "text" ? block.lines : [];
    expect(lines.map((line) => line.split(":")[0])).toEqual(["% of flour", "mb", "division", "load"]);
  });

  test("are left alone where it uses none", () => {
    const bare = { ...plain, sections: [], notes: [] };
    expect(withWords(bare)).toBe(bare);
  });

  test("are found as words, not within others", () => {
    expect(wordsIn("a slot for the flash of a gap, downloads").map(({ word }) => word)).toEqual(["gap"]);
    expect(wordsIn("Decahydrate at 20 °Bé").map(({ word }) => word)).toEqual(["hydrate", "degrees Baumé"]);
  });
});

describe("the list of words", () => {
  test("stands in the order of the alphabet, each once, each with its source", () => {
    const names = glossary.map(({ word }) => word.replace(/^% /u, "").toLowerCase());
    expect(names).toEqual([...new Set(names)].sort((a, b) => a.localeCompare(b, "en")));
    for (const { meaning, source } of glossary)
      expect([meaning.length > 10, source.cite.length > 3]).toEqual([true, true]);
  });

  test.each([
    ["meq", ["meq"]],
    ["Baume", ["degrees Baumé"]],
    ["°Bé", ["degrees Baumé"]],
    ["spring", ["spring-back"]],
    ["divison", ["division"]],
    ["ph", ["pH"]],
    ["degree baume", ["degrees Baumé"]],
    ["M and P", ["alkalinity M", "alkalinity P"]],
    ["meq, pH", ["meq", "pH"]],
    ["P", ["alkalinity P"]],
    ["14 % mb", ["mb"]],
    ["N FACTORS", ["N factor"]],
    ["Hydrates", ["hydrate"]],
    ["kansuis", ["kansui"]],
    ["nitrogen", ["N factor"]],
    ["absorption", ["absorption"]],
    ["absorbtion", ["absorption"]],
    ["compounding", ["compounding"]],
    ["crumb", ["crumb"]],
    ["dusting", ["dusting"]],
    ["trim", ["edge trim"]],
    ["heat of mixing", ["friction"]],
    ["carried water", ["carried water"]],
    ["heat of hydration", ["hydration"]],
    ["passes", ["pass"]],
  ])("answers %s with %j", (asked, words) => {
    const answer = listWords(asked);
    expect(answer.ok && answer.value.map(({ word }) => word)).toEqual(words);
  });

  test("says of a misspelt word that the nearest is shown, and of a plural nothing", () => {
    const notes = (asked: string) => {
      const answer = listWords(asked);
      return answer.ok ? answer.report().notes.map(({ text }) => text) : [];
    };
    expect(notes("anhydrus")).toEqual(['"anhydrus" is not explained here; shown are the words spelt most like it']);
    expect(notes("hydrates")).toEqual([]);
    expect(notes("meq spaghetto")).toEqual(['"spaghetto" is not explained here']);
  });

  test.each(["qqqqq", "solubility", "weighing"])("has no answer for %s, which is no word of it", (asked) => {
    const answer = listWords(asked);
    expect(answer.ok ? answer.value : answer.problems.map(({ code }) => code)).toEqual(["words.none"]);
  });

  // Equivalents of Na2CO3: two for each mole; molar masses of CIAAW 2021, abridged: Na 22.990, C 12.011, O 15.999.
  test("counts the milliequivalents of sodium carbonate as the atomic weights do", () => {
    const perGram = 2000 / (2 * 22.99 + 12.011 + 3 * 15.999);
    expect(glossary.find(({ word }) => word === "meq")?.meaning).toContain(perGram.toFixed(2));
  });
});
