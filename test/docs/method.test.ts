import { readFileSync } from "node:fs";
import * as core from "@noodlewright/core";
import { citation, writtenWorking } from "@noodlewright/core/figure";
import { readKitchenFile } from "@noodlewright/core/spec";
import { expect, test } from "vitest";
import { parse } from "yaml";
import { expectPage, row } from "./page.ts";

// The page of how figures are worked out is made of the figures of the examples: a formula changes there as it changes here.

const dataOf = (name: string): Readonly<Record<string, unknown>> =>
  parse(readFileSync(new URL(`../../examples/${name}.yaml`, import.meta.url), "utf8"));

function noodleOf(name: string): core.Noodle {
  const kitchen = readKitchenFile(dataOf("harbour-store"));
  const noodle = core.readNoodleData(dataOf(name), { kitchens: kitchen.ok ? [kitchen.value] : [] });
  if (!noodle.ok) throw new Error(`${name}: ${JSON.stringify(noodle.problems)}`);
  return noodle.value;
}

interface Chapter {
  readonly title: string;
  readonly text: string;
  readonly ask: (noodle: core.Noodle) => core.Answer<unknown>;
  readonly of: readonly string[];
}

const chapters: readonly Chapter[] = [
  {
    title: "The formula on 100 of flour",
    text: "Flours are the 100 parts. Protein and ash are carried to one moisture before they are mixed; the water of eggs, solutions and crystals counts as added water; a dose of an alkaline product counts by what is in it.",
    ask: core.askFormula,
    of: ["school-noodle", "barley-egg-noodle", "written-in-grams", "one-bottle", "school-barley-noodle"],
  },
  {
    title: "The batch",
    text: "From the bowls back through the losses to the dough, then the loads. Each weight is rounded to its scale so that the total is kept: the largest takes up what is left over. What a scale tells too coarsely becomes a stock solution. The formula as weighed is worked out by the same formulas, under ids that begin with `weighed.`; what differs from the formula as asked, under `rounding.`; both are left out here.",
    ask: core.askBatch,
    of: ["school-noodle", "evening-class", "barley-egg-noodle", "written-in-grams", "one-bottle"],
  },
  {
    title: "Cost and shopping",
    text: "Prices by the pack or by weight, to the smallest coin; what is in the store goes first.",
    ask: core.askCost,
    of: ["school-noodle"],
  },
  {
    title: "What is in a bowl",
    text: "Sums over the ingredients, per 100 g and per bowl, raw and boiled; then rounded as the rules of a place say.",
    ask: core.askNutrition,
    of: ["school-noodle", "evening-class"],
  },
  {
    title: "Sheet, strands and portions",
    text: "Which gaps are taken is found by search: the fewest passes that take off no more than allowed.",
    ask: core.askSheet,
    of: ["school-noodle", "evening-class"],
  },
  {
    title: "Water temperature",
    text: "A balance of heat over the masses: what flour, water, ice and the rest bring, and what the mixer adds.",
    ask: core.askWater,
    of: ["school-noodle", "evening-class"],
  },
  {
    title: "The day",
    text: "Stages are laid backwards from service; which load is where at what time is found by search. Times of the clock are minutes after midnight.",
    ask: core.askDay,
    of: ["evening-class"],
  },
  {
    title: "The blend asked for",
    text: "Shares are searched in whole steps; the figures of a blend follow the formulas above.",
    ask: core.askBlend,
    of: ["school-barley-noodle"],
  },
  {
    title: "What errors do",
    text: "Each cause goes to its least and its greatest value, and random trials go between them; the outputs are worked out anew each time by their own formulas.",
    ask: core.askTolerance,
    of: ["school-noodle"],
  },
  {
    title: "A trial of the water",
    text: "Three small doughs, a step of water apart.",
    ask: core.askTrial,
    of: ["school-noodle"],
  },
];

/** `alkali.2.water` and `salt.water` are worked out alike: a row tells a formula once for each kind of figure. */
const kindOf = (id: string, formula: string): string => `${id.split(".").at(-1)} ${formula}`;

function rowsOf({ ask, of }: Chapter, told: Set<string>): readonly string[] {
  return of.flatMap((name) => {
    const answer = ask(noodleOf(name));
    if (!answer.ok) throw new Error(`${name}: ${JSON.stringify(answer.problems)}`);
    const { figures } = answer.report();
    return Object.values(figures).flatMap((figure) => {
      const { working, id, label, unit, sources } = figure;
      if (working.kind !== "formula" || /^(?:weighed|rounding)\./u.test(id)) return [];
      const kind = kindOf(id, working.formula);
      if (told.has(kind)) return [];
      told.add(kind);
      const words = writtenWorking(figure, figures)?.names ?? "";
      return [row(`\`${id}\``, unit === "" ? label : `${label}, ${unit}`, words, sources.map(citation).join("; "))];
    });
  });
}

function method(): string {
  const told = new Set<string>();
  const head = [row("figure", "what it is", "how it is worked out", "source"), row("---", "---", "---", "---")];
  const sections = chapters.map((chapter) => {
    const rows = rowsOf(chapter, told);
    return [`## ${chapter.title}`, chapter.text, ...(rows.length === 0 ? [] : [[...head, ...rows].join("\n")])];
  });
  return `${[
    "# How the figures are worked out",
    "Every figure is worked out by one formula in the code, and this page is made of those formulas, as the figures of the examples carry them; a test holds it to that. A formula that serves several figures of a kind, such as the weight of each ingredient, stands here once, with the first of them. What was given, by a spec, a table or a definition, has no formula and is not here: `--working` shows it with its source, for any answer, and `--figure` for any one figure.",
    "Percent stands as percent: 36 is 36 %. `mb` is moisture basis, `M` and `P` are the alkalinity to the end of bicarbonate and to the end of carbonate; `noodlewright words` explains the words.",
    ...sections.flat(),
  ].join("\n\n")}\n`;
}

test("the page of how figures are worked out says what the code does", () => {
  const page = method();
  expect(page.split("\n").length).toBeGreaterThan(150);
  expectPage("packages/core/method.md", page);
});
