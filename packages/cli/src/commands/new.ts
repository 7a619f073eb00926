import { printable } from "@noodlewright/core/render";
import { type Handwritten, readHandwritten, styleStart, yamlLines } from "@noodlewright/core/spec";
import { withIngredient } from "../input/new-formula.ts";
import { askForFormula, type NewWishes } from "../input/new-questions.ts";
import { type KitchenWords, kitchenProblems, kitchenSections } from "../input/new-sections.ts";
import type { PlacedProblem } from "../input/placed-problem.ts";
import { ownProblem } from "../input/problem.ts";
import { isSection, textAt } from "../input/put.ts";
import { largestWorkbook, readTextFile } from "../input/read-file.ts";
import { starterSpec } from "../input/starter-spec.ts";
import type { BookSpec } from "../input/workbook-spec.ts";
import { writtenBook, writtenFormula, writtenOutsideBook, writtenRemarks } from "../input/written-formula.ts";
import { writtenAnew } from "../input/written-values.ts";
import { type ExitStatus, exit, type Io } from "../io.ts";
import { wrapText } from "../render/wrap.ts";
import { printProblems } from "../shared/answer.ts";
import { atFlag } from "../shared/ask-noodle.ts";
import type { Asked, Command, Flag } from "../shared/command.ts";
import { writeFiles } from "../shared/write-output.ts";

const flags = {
  from: {
    describe:
      "A formula as you have it written, a line for each ingredient, or a spreadsheet (.xlsx); - reads standard input",
    placeholder: "handwritten.txt",
  },
  name: { describe: "Name of the noodle", placeholder: "Weekday noodle" },
  style: {
    describe: "Style of noodle; where a source prints a formula for it, that is the start",
    placeholder: "yellow alkaline",
  },
  flour: {
    describe:
      "A flour, with its amount where there is more than one, and what its bag says; may be given several times",
    placeholder: "bread flour, protein 12 %",
  },
  water: { describe: "The water poured in, in % of flour or as a weight", placeholder: "36 %" },
  alkali: {
    describe:
      "An alkaline product and its amount; may be given several times. With --from, what the pack lists of one that is not clear",
    placeholder: "sodium carbonate 1 %",
  },
  salt: { describe: "Table salt, in % of flour or as a weight", placeholder: "1 %" },
  bowls: { describe: "Number of bowls", placeholder: "40" },
  "raw-weight": { describe: "Raw noodles for a bowl", placeholder: "130 g" },
  scale: {
    describe: "Smallest step that a scale shows, and what it takes; may be given several times",
    placeholder: "0.1 g up to 500 g",
  },
  rolls: {
    describe: "Rolls and cutter: width, gaps, strand width",
    placeholder: "145 mm wide, gap 1 to 5 mm, cutter 2 mm",
  },
} as const satisfies Readonly<Record<string, Flag>>;

type Data = Readonly<Record<string, unknown>>;

/** `noodlewright new`: a spec from a formula as it is written, from answers, or an example to change. */
export const newCommand: Command = {
  positionals: { file: "Where to write it; noodle.yaml unless stated, - prints it" },
  flags,
  examples: {
    "noodlewright new": "asks a few questions, and writes noodle.yaml; without a terminal it writes an example",
    "noodlewright new --from handwritten.txt": "reads your own notes",
    "noodlewright new --from handwritten.txt --scale '1 g' --scale '0.1 g up to 500 g'":
      "a coarse scale, and a fine one that takes no more than 500 g",
    "noodlewright new evening-class.yaml --flour 'bread flour, protein 12 %' --water '36 %' --salt '1 %'":
      "asks nothing that a flag says",
    "noodlewright new noodle.yaml --style 'yellow alkaline' --flour 'bread flour'":
      "water, salt and alkali as a source prints them for the style",
  },
  run: async (asked, io) => {
    const given = await wishesOf(asked, io);
    if (typeof given === "number") return given;
    const asker = given.book !== undefined || asked.text("from") === "-" ? undefined : await io.asker();
    const half = asker === undefined ? halfBatch(given.kitchen, asked) : [];
    if (half.length > 0) return printProblems(half, asked, io, "nothing was written");
    if (given.book !== undefined) {
      const { heldBack } = await import("../input/workbook-held.ts");
      return write(bookSpec(given, given.book, await heldBack(given.book)), asked, io);
    }
    const wishes = asker === undefined ? given : await askForFormula(given, asker, (text) => io.err(printable(text)));
    asker?.close();
    if (wishes === undefined) {
      io.err("\nBroken off; nothing was written.\n");
      return exit.wrongInput;
    }
    const nothing = wishes.text.trim() === "" && Object.keys(flags).every((flag) => asked.list(flag).length === 0);
    if (nothing) return write({ text: starterSpec, open: [], toFillIn: false }, asked, io);
    const { sections: kitchen, toFillIn } = kitchenSections(wishes.kitchen);
    const sections = { ...wishes.style, ...kitchen };
    const { yields } = readHandwritten(wishes.text);
    const remarks =
      yields?.workedOut !== undefined && yields.rawWeight === wishes.kitchen.rawWeight ? [yields.workedOut] : [];
    const read = readHandwritten(wishes.text, { name: wishes.name, sections, remarks: { batch: remarks } });
    const open = openLines(read, [...given.remarks, ...remarks]);
    return write({ text: `${read.text}${toFillIn}`, open, toFillIn: read.questions.length > 0 }, asked, io);
  },
};

/** What the flags say; the status where they cannot be read. */
async function wishesOf(asked: Asked, io: Io): Promise<NewWishes | ExitStatus> {
  const from = asked.text("from");
  const formulaFlags = ["flour", "water", "alkali", "salt"] as const;
  const anew = formulaFlags.some((flag) => asked.list(flag).length > 0);
  const textOf = anew ? writtenFormula : writtenOutsideBook;
  // One byte more than a workbook may have tells that it has more.
  const reading = from === undefined ? undefined : await readTextFile(from, io, largestWorkbook + 1, textOf);
  if (reading?.ok === false) return printProblems(reading.problems, asked, io);
  const style = asked.text("style");
  const starting = style === undefined ? undefined : styleStart(style);
  if (starting?.ok === false) return printProblems(starting.problems.map(atFlag("style")), asked, io);
  const start = from === undefined ? starting?.value : undefined;
  const said = (flag: "flour" | "water" | "alkali" | "salt"): readonly string[] => {
    const words = asked.list(flag);
    return words.length > 0 || start === undefined || flag === "flour" ? words : [start[flag]].flat();
  };
  const book = reading === undefined || anew ? undefined : await writtenBook(reading.file.bytes);
  if (reading?.file.text.trim() === "" && book === undefined && !anew)
    return printProblems([{ ...ownProblem("file.empty", { wanted: "formula" }), file: reading.file.name }], asked, io);
  const remarks = reading === undefined || book !== undefined ? [] : await writtenRemarks(reading.file.bytes);
  let text = reading?.file.text ?? "";
  for (const flag of formulaFlags) {
    const words = said(flag);
    for (const one of words) text = withIngredient(text, flag === "flour" ? "flours" : flag, one, words.length === 1);
  }
  const { yields } = book ? {} : readHandwritten(text);
  const { bowls = yields?.bowls, rawWeight = yields?.rawWeight } = { ...bookBowls(asked, book?.data) };
  const kitchen: KitchenWords = {
    bowls: asked.text("bowls") ?? (bowls === undefined ? undefined : String(bowls)),
    rawWeight: asked.text("raw-weight") ?? rawWeight,
    rolls: asked.text("rolls"),
    ...(asked.list("scale").length > 0 && { scales: asked.list("scale") }),
  };
  const wrong = kitchenProblems({ ...kitchen, bowls: kitchen.bowls ?? "1", rawWeight: kitchen.rawWeight ?? "1 g" });
  const taken = (["water", "salt", "alkali"] as const).filter(
    (flag) => start !== undefined && start[flag].length > 0 && asked.list(flag).length === 0,
  );
  const notes =
    start && taken.length > 0 ? `As in ${start.source}: ${taken.join(", ")}. The rest is your own.` : undefined;
  const styled = style === undefined ? {} : { style: style.trim().toLowerCase(), ...(notes && { notes }) };
  if (wrong.length === 0)
    return { text, name: asked.text("name"), kitchen, style: styled, remarks, ...(book && { book }) };
  const flagOf: Readonly<Record<keyof KitchenWords, keyof typeof flags>> = {
    bowls: "bowls",
    rawWeight: "raw-weight",
    scales: "scale",
    rolls: "rolls",
  };
  const placed = wrong.map(({ key, problem }) => {
    return { ...problem, flag: `--${flagOf[key]}`, example: flags[flagOf[key]].placeholder };
  });
  return printProblems(placed, asked, io, "nothing was written");
}

/** Bowls say nothing without what each weighs, nor a weight without how many: no flag goes without an effect. */
function halfBatch({ bowls, rawWeight }: KitchenWords, asked: Asked): readonly PlacedProblem[] {
  const missing = (flag: "bowls" | "raw-weight", wanted: string): readonly PlacedProblem[] => [
    { ...ownProblem("flag.missing", { wanted, example: `--${flag} '${flags[flag].placeholder}'` }), flag: `--${flag}` },
  ];
  if (asked.text("bowls") !== undefined && rawWeight === undefined)
    return missing("raw-weight", `what each of ${bowls} bowls weighs raw, which the formula does not tell`);
  return bowls === undefined && asked.text("raw-weight") !== undefined
    ? missing("bowls", `how many bowls of ${rawWeight} to make, which the formula does not tell`)
    : [];
}

/** The size of the batch of a workbook, where one half of it is said anew. */
function bookBowls(asked: Asked, book: Data | undefined): { readonly bowls?: number; readonly rawWeight?: string } {
  const anew = asked.text("bowls") !== undefined || asked.text("raw-weight") !== undefined;
  const batch = anew ? book?.["batch"] : undefined;
  return {
    ...(isSection(batch) && typeof batch["bowls"] === "number" && { bowls: batch["bowls"] }),
    ...(isSection(batch) && batch["rawWeight"] !== undefined && { rawWeight: textAt(batch, ["rawWeight"]) }),
  };
}

/** The spec of a workbook that was written here, with what was said beside it. */
function bookSpec(
  { name, style, kitchen }: NewWishes,
  { data, file, changed, open }: BookSpec,
  unlike: readonly string[],
): Written {
  const spec = { ...data, ...(name !== undefined && { name }), ...style, ...kitchenSections(kitchen).sections };
  const parts = Object.entries(spec).map(([key, value]) => yamlLines(key, value, 0).join("\n"));
  const text = writtenAnew(file, spec) ?? `${parts.join("\n\n")}\n`;
  const told = [...listed("Changed in the workbook:", changed), ...listed("To know:", unlike)];
  return { text, open: [...told, ...listed(toBeFilledIn, open)], toFillIn: open.length > 0 };
}

const toBeFilledIn = "To be filled in before it can be worked out:";

function listed(heading: string, lines: readonly string[]): readonly string[] {
  return lines.length === 0 ? [] : [heading, ...lines.map((line) => `  - ${line}`)];
}

/** What the cook still has to do, for standard error. */
function openLines(
  { remarks, understood, notUnderstood, notes, questions }: Handwritten,
  more: readonly string[],
): readonly string[] {
  const at = (line: number | undefined, text: string): string => (line === undefined ? text : `line ${line}: ${text}`);
  const said = [...remarks, ...understood.flatMap((one) => one.remarks.map((remark) => at(one.line, remark))), ...more];
  const kept = [...new Set(notes.map(({ line }) => line))];
  const missed = notUnderstood.map((one) => at(one.line, `${one.text}: ${one.why}`));
  const asked = questions.map((one) => at(one.line, `${one.text}: ${one.ask}`));
  return [
    ...listed("To know:", said),
    ...(notes.length === 0 ? [] : [`Kept as a note: ${kept.length === 1 ? "line" : "lines"} ${kept.join(", ")}`]),
    ...listed("Not in the formula, for it was not understood:", missed),
    ...listed(toBeFilledIn, asked),
  ];
}

interface Written {
  readonly text: string;
  /** For standard error. */
  readonly open: readonly string[];
  readonly toFillIn: boolean;
}

async function write({ text, open, toFillIn }: Written, asked: Asked, io: Io): Promise<ExitStatus> {
  const file = asked.text("file") ?? "noodle.yaml";
  const tell = (lines: readonly string[]): void => {
    for (const line of lines.flatMap((whole) => wrapText(printable(whole), io.width))) io.err(`${line}\n`);
  };
  if (file === "-") {
    io.out(text);
    tell(open);
    return exit.done;
  }
  const status = await writeFiles([{ path: file, text }], "nothing", asked, io);
  const next = toFillIn ? "Fill it in, then:" : "Next:";
  if (status === exit.done) tell([...open, `Wrote ${file}. ${next} noodlewright formula ${file} --words`]);
  return status;
}
