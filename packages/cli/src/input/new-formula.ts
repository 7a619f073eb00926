import {
  amendedText,
  answeredLine,
  type Handwritten,
  type OpenQuestion,
  readHandwritten,
  type UnderstoodLine,
} from "@noodlewright/core/spec";

function added(text: string, line: string): string {
  return text.trim() === "" ? line : `${text}\n${line}`;
}

/** The formula with the answer to one of its questions. */
export function withAnswer(text: string, { line, part, text: was }: OpenQuestion, answer: string): string {
  if (line !== undefined) return amendedText(text, line, was, answeredLine(was, answer));
  return added(text, answeredLine(part === "water" ? "water 1 g" : "1 g", answer));
}

/** The formula with what the bag of one of its flours says. */
export function withLabel(text: string, flour: Pick<UnderstoodLine, "line" | "text">, label: string): string {
  return amendedText(text, flour.line, flour.text, `${flour.text}, ${label}`);
}

/**
 * The formula with an ingredient that was named apart. An alkaline product without an amount answers the first question
 * about one; a flour that stands in the formula gets what is said of it; all else is a line more.
 *
 * @param isOnly - whether nothing more of its kind is to come: a flour without an amount is then all of the flour
 */
export function withIngredient(
  text: string,
  part: "flours" | "water" | "alkali" | "salt",
  said: string,
  isOnly = true,
): string {
  if (part === "water" || part === "salt") return added(text, answeredLine(`${part} 1 g`, said));
  const read = readHandwritten(text);
  const open = read.questions.find((question) => question.part === "alkali" && question.about === "name");
  const bare = asksAmount(said);
  if (part === "alkali" && open !== undefined && (bare || /^[^,]*%.*%/u.test(said)))
    return withAnswer(text, open, said);
  const [name = "", ...label] = said.split(",");
  const flour = flourLines(read).find((line) => line.name.toLowerCase() === name.trim().toLowerCase());
  if (part === "flours" && flour !== undefined && label.length > 0)
    return withLabel(text, flour, label.join(",").trim());
  const alone = isOnly && part === "flours" && isBareFlour(said) && flourLines(read).length === 0;
  return added(text, alone ? `${said}: 100 %` : said);
}

function asksAmount(text: string): boolean {
  return readHandwritten(text).questions.some(({ about, line }) => about === "amount" && line !== undefined);
}

/** A name without an amount, known or not; a name alone that is not known would be taken for a title. */
function isBareFlour(said: string): boolean {
  const { understood, notUnderstood } = readHandwritten(said);
  return understood.length + notUnderstood.length === 0 && !asksAmount(`${said}: 100 %`);
}

/** Of a line that two questions are about, the first. */
function isFirst(lines: readonly { readonly line: number; readonly text: string }[], index: number): boolean {
  return lines.findIndex(({ line, text }) => line === lines[index]?.line && text === lines[index]?.text) === index;
}

/** The lines of the flours, with whether the protein is told. */
export function flourLines({ understood, questions, spec }: Handwritten) {
  const flours = (spec["flours"] ?? []) as readonly {
    readonly name: string;
    readonly figures?: Readonly<Record<string, unknown>>;
  }[];
  const lines = [
    ...understood,
    ...questions.flatMap((one) => (one.line === undefined ? [] : [{ ...one, line: one.line, name: "" }])),
  ]
    .filter(({ part }, index, all) => part === "flours" && isFirst(all, index))
    .sort((a, b) => a.line - b.line);
  return lines.map((one, index) => {
    const { name = one.name, figures = {} } = flours[index] ?? {};
    return { line: one.line, text: one.text, name, told: "protein" in figures || "label" in figures };
  });
}
