import { createHash } from "node:crypto";
import { basename } from "node:path";
import { askCard, type Note, type Problem, told } from "@noodlewright/core";
import type { CardFile, MadeCard } from "@noodlewright/core/answers";
import { pathText } from "@noodlewright/core/figure";
import { longCard, type Paper, printable } from "@noodlewright/core/render";
import { type Override, setFlagName } from "../input/overrides.ts";
import type { Placed } from "../input/placed-problem.ts";
import type { TextFile } from "../input/read-file.ts";
import type { Io } from "../io.ts";
import { hintOn } from "../render/hints.ts";
import { atFlag, loadNoodle, type Order } from "./ask-noodle.ts";

/** What a card is asked for. */
export interface CardOrder extends Omit<Order, "needs"> {
  readonly date: string;
  readonly loads?: string | undefined;
}

/** Characters of the checksum that are printed: enough to tell the specs of a kitchen apart. */
const shownOfChecksum = 8;

/** Makes the card of a spec. */
export async function makeCard(order: CardOrder, io: Io): Promise<Placed<{ made: MadeCard }>> {
  const loading = await loadNoodle({ ...order, needs: "machines" }, io);
  if (!loading.ok) return loading;
  const { noodle, files, said, place } = loading.loaded;
  const card = askCard(noodle, {
    date: order.date,
    files: files.map(cardFile),
    said: changesSaid(said),
    loads: order.loads,
  });
  if (card.ok) return { ok: true, made: card.value };
  const placed = (problem: Problem) => (problem.code === "card.loads" ? atFlag("loads")(problem) : place(problem));
  return { ok: false, problems: card.problems.map(placed) };
}

/** Says on standard error what the card has not, and where it may be longer than promised. */
export function tellOfCard({ card, missing, remarks }: MadeCard, paper: Paper, io: Io): void {
  const long = longCard(card, paper);
  const tell = (note: Note, before = "") =>
    io.err(`${printable(`${card.title}: ${before}${told(note)}${hintOn(note)}`)}\n`);
  for (const note of missing) tell(note, "not on the card: ");
  for (const note of [...remarks, ...(long ? [long] : [])]) tell(note);
}

/** A file with the first digits of its checksum. */
export function cardFile({ name, bytes }: TextFile): CardFile {
  const checksum = createHash("sha256").update(bytes).digest("hex").slice(0, shownOfChecksum);
  return { name: basename(name), checksum };
}

/** What flags change, as words on paper. */
export function changesSaid(said: readonly Override[]): string {
  return said.map((one) => `${saidWords(one)} ${sayValue(one.value)}`).join(", ");
}

function saidWords({ flag, path }: Override): string {
  return flag === setFlagName ? pathText(path) : flag.replace(/^--/u, "").replaceAll("-", " ");
}

function sayValue(value: unknown): string {
  if (value === undefined) return "taken out";
  if (typeof value === "object" && value !== null) return Object.values(value).map(String).join(" = ");
  return typeof value === "string" ? value : JSON.stringify(value);
}
