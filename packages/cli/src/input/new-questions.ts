import { told } from "@noodlewright/core";
import { readHandwritten } from "@noodlewright/core/spec";
import type { Asker } from "../io.ts";
import { flourLines, withAnswer, withIngredient, withLabel } from "./new-formula.ts";
import { type KitchenWords, kitchenProblems, kitchenSections } from "./new-sections.ts";
import type { BookSpec } from "./workbook-spec.ts";

/** What is known before anything is asked, and after. */
export interface NewWishes {
  readonly text: string;
  readonly name: string | undefined;
  readonly kitchen: KitchenWords;
  /** Keys of the spec that tell the style and where its formula is from. */
  readonly style?: Readonly<Record<string, string>>;
  /** The spec of a workbook that was written here. */
  readonly book?: BookSpec;
  /** What there is to know of how the text was read. */
  readonly remarks: readonly string[];
}

type Say = (text: string) => void;

/**
 * Asks in a cook's words for what was not said on the command line; undefined where the questions are broken off, and an
 * empty text where nothing is written down.
 */
export async function askForFormula(wishes: NewWishes, asker: Asker, say: Say): Promise<NewWishes | undefined> {
  let { text } = wishes;
  if (text.trim() === "") {
    const pasted = await asker.lines(
      "What do you have written down? A line for each ingredient, such as: bread flour 1 kg\nPaste or type it, and end with an empty line. An empty line alone writes an example.\n",
    );
    if (pasted === undefined) return undefined;
    if (pasted.trim() === "") return { ...wishes, text: "" };
    text = pasted;
  }
  const asked = new Set<string>();
  for (;;) {
    const question = readHandwritten(text).questions.find(({ ask, line }) => !asked.has(`${line} ${ask}`));
    if (question === undefined) break;
    asked.add(`${question.line} ${question.ask}`);
    say(
      `\n${question.line === undefined ? "" : `Line ${question.line}: ${question.text}\n`}${sentence(question.ask)}\n`,
    );
    const answer = await asker.line("Answer, or Enter to leave it open: ");
    if (answer === undefined) return undefined;
    if (answer.trim() !== "") text = withAnswer(text, question, answer.trim());
  }
  for (const flour of flourLines(readHandwritten(text)).filter(({ told: known }) => !known)) {
    const before = asksOf(text);
    for (;;) {
      const label = await asker.line(
        `\nWhat does the bag of ${flour.name} say? Such as: protein 12 %, moisture 13.5 % (Enter: not known)\n> `,
      );
      if (label === undefined) return undefined;
      const labelled = label.trim() === "" ? text : withLabel(text, flour, label.trim());
      const doubt = asksOf(labelled).find((ask) => !before.includes(ask));
      if (doubt === undefined) {
        text = labelled;
        break;
      }
      say(`${sentence(doubt)}\n`);
    }
  }
  if (!/"alkali":/u.test(JSON.stringify(readHandwritten(text).spec))) {
    const alkali = await asker.line(
      "\nWhich alkaline product goes in, and how much? Such as: sodium carbonate 10 g (Enter: none)\n> ",
    );
    if (alkali === undefined) return undefined;
    if (alkali.trim() !== "") text = withIngredient(text, "alkali", alkali.trim());
  }
  const kitchen = await askForKitchen(wishes.kitchen, text, asker, say);
  return kitchen && { ...wishes, text, kitchen };
}

function asksOf(text: string): readonly string[] {
  return readHandwritten(text).questions.map(({ ask }) => ask);
}

async function askForKitchen(
  known: KitchenWords,
  text: string,
  asker: Asker,
  say: Say,
): Promise<KitchenWords | undefined> {
  const { yields } = readHandwritten(text);
  const questions: readonly (readonly [key: keyof KitchenWords, prompt: string])[] = [
    ["bowls", "For how many bowls? Such as: 40"],
    ["rawWeight", "How much raw noodle goes into a bowl? Such as: 130 g"],
    ["scales", "What is the smallest step that your scale shows? Such as: 1 g (of two scales: 1 g, 0.1 g up to 500 g)"],
    ["rolls", "What rolls and cutter? Such as: 145 mm wide, gap 1 to 5 mm, cutter 2 mm"],
  ];
  let words: KitchenWords = { bowls: yields && String(yields.bowls), rawWeight: yields?.rawWeight, ...defined(known) };
  for (const [key, prompt] of questions) {
    while (words[key] === undefined) {
      const answer = await asker.line(`\n${prompt} (Enter: not now)\n> `);
      if (answer === undefined) return undefined;
      if (answer.trim() === "") break;
      const value = key === "scales" ? answer.split(/(?<!\d),|,(?!\d)/u).map((one) => one.trim()) : answer.trim();
      const next = { ...words, [key]: value };
      const wrong = kitchenProblems({ bowls: "1", rawWeight: "1 g", ...defined(next) })[0];
      const unread = key === "rolls" && !("machines" in kitchenSections(next).sections);
      if (wrong === undefined && !unread) words = next;
      else
        say(`${sentence(wrong === undefined ? "the width and the cutter are needed" : told(wrong.problem).advice)}\n`);
    }
  }
  return words;
}

function defined(words: KitchenWords): KitchenWords {
  return Object.fromEntries(Object.entries(words).filter(([, value]) => value !== undefined));
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.?!]$/u.test(text) ? "" : "."}`;
}
