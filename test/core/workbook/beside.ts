import { askBatch, type UnitSystem } from "@noodlewright/core";
import type { Graph } from "@noodlewright/core/figure";
import { addressOf, type Workbook } from "@noodlewright/core/render";
import { type Book, bookIn, withTyped } from "#cli/input/workbook-spec.ts";
import { heldWants } from "#core/explore/wanted-checks.ts";
import { wantsInOne } from "#core/noodle/workbook/wants.ts";
import {
  cellsOf,
  commandGraph,
  type Data,
  exampleData,
  figurePlaces,
  type Input,
  inputsOf,
  noodleOf,
  type Place,
  same,
  type Typed,
  workbookFor,
} from "./kit.ts";

/** Figures that rest on what a procedure found from others and no formula of the workbook works out. */
function restingOnDecisions(graph: Graph, workbook: Workbook): ReadonlySet<string> {
  const places = figurePlaces(workbook);
  const resting = new Set<string>();
  for (const { id, working } of Object.values(graph)) {
    if (working.kind === "procedure" && working.on !== undefined && places.get(id)?.cell.formula === undefined)
      resting.add(id);
    if (working.kind !== "formula") continue;
    const feeds = Object.values(working.from).flatMap((fed) =>
      "figure" in fed ? [fed.figure] : "figures" in fed ? fed.figures : [],
    );
    if (feeds.some((feed) => resting.has(feed))) resting.add(id);
  }
  return resting;
}

/** The figures of a workbook as they are read back from its file. */
export function bookOf({ sheets }: Workbook): Book {
  const read = sheets.map(({ name, rows }) => {
    const cells = rows.flatMap((row, at) =>
      row.flatMap((cell, column) => (cell === null ? [] : [[addressOf(at, column), cell] as const])),
    );
    return {
      name,
      cells: new Map(cells.map(([address, { value }]) => [address, String(value ?? "")])),
      formulas: new Map(cells.flatMap(([address, { formula }]) => (formula === undefined ? [] : [[address, formula]]))),
      hidden: false,
      numbers: new Set<string>(),
      unworked: undefined,
      unseen: new Set<string>(),
    };
  });
  return bookIn(read) ?? new Map();
}

/** The same with numbers typed into inputs. */
function typedInto(book: Book, changes: ReadonlyMap<Input, Typed>): Book {
  const typed = [...changes].map(([{ id }, { value }]) => {
    const figure = book.get(id);
    if (figure?.typed === undefined) throw new Error(`${id} is no input`);
    return [id, { ...figure, typed: { ...figure.typed, text: String(value) } }] as const;
  });
  return new Map([...book, ...typed]);
}

/** Where a workbook says whether each thing that is wanted is met. */
function wantedPlaces({ sheets }: Workbook): readonly Place[] {
  const rows = sheets[0]?.rows ?? [];
  const top = rows.findIndex((cells) => cells[6]?.value === "Wanted") + 1;
  const count = top === 0 ? 0 : rows.slice(top).findIndex((cells) => !cells[6]);
  const places = Array.from({ length: count }, (_, index) => {
    const column =
      rows[top + index]?.findIndex((cell) => /^(?:as written )?(?:not )?met\b/u.test(String(cell?.value))) ?? 0;
    return { sheet: "Noodle", row: top + index, column };
  });
  return places.filter(({ column }) => column > 0);
}

/** What a workbook says of changes: an answer, that there is none, or that the command has to be asked. */
interface Held {
  readonly says: "answered" | "refused" | "asked";
  /** Where workbook and command are not of one mind. */
  readonly wrong: readonly unknown[];
}

/** Checks beside which the answers stand. */
const standing =
  /^decided for the inputs |^an ingredient is too little|^not all of it is met|^one is more than kitchens have|^see the notes/u;

/** A workbook beside the command that is asked anew with what was typed into it. */
export function beside(name: string, units: UnitSystem = "metric", more: Data = {}) {
  const data = { ...exampleData(name), ...more };
  const noodle = noodleOf(data, units);
  if (noodle === undefined) throw new Error(`${name} is refused`);
  const workbook = workbookFor(noodle);
  const book = bookOf(workbook);
  const places = figurePlaces(workbook);
  const graph = commandGraph(noodle) ?? {};
  const resting = restingOnDecisions(graph, workbook);
  const wanted = wantedPlaces(workbook);
  const checks = cellsOf(workbook).filter(({ cell: { role }, column }) => role === "check" && column === 1);
  const held = (changes: ReadonlyMap<Input, Typed>, value: (place: Place) => string | number): Held => {
    const typed = new Map([...changes].map(([{ id }, one]) => [id, one]));
    const answer = noodleOf(withTyped(data, typedInto(book, changes)).data, units);
    const fresh = answer && commandGraph(answer);
    const failing = checks.map((place) => String(value(place))).filter((text) => text !== "fine");
    const others = failing.filter((text) => !standing.test(text));
    const batch = answer && others.length === 0 && wanted.length > 0 ? askBatch(answer) : undefined;
    const met =
      answer && batch?.ok
        ? wantsInOne(heldWants(answer.spec, answer.formula, batch.value, answer.kitchen.materials).held).map(
            ({ check }) => check.holds,
          )
        : [];
    const unlike = met.flatMap((holds, index) => {
      const said = String(wanted[index] && value(wanted[index])).replace(/^as written |:.*$/gu, "");
      return said === (holds ? "met" : "not met") ? [] : [`wanted ${index}: ${said}, the command ${holds}`];
    });
    const different = Object.values(fresh ?? {}).flatMap((figure) => {
      const place = places.get(figure.id);
      const remedied = failing.length > 0 && /^(?:weighed|rounding)\.|\.weighed-parts$/u.test(figure.id);
      if (place === undefined || resting.has(figure.id) || remedied || others.length > 0) return [];
      const mine = value(place);
      return same(mine, Number(figure.value)) ? [] : [`${figure.id}: ${mine}, the command ${figure.value}`];
    });
    const silent = fresh === undefined && others.length === 0 ? ["the command refuses"] : [];
    return {
      says: fresh === undefined ? "refused" : others.length > 0 ? "asked" : "answered",
      wrong:
        different.length + silent.length + unlike.length === 0
          ? []
          : [...typed, ...silent, ...unlike, ...different.slice(0, 5)],
    };
  };
  /** Whether amounts were found, of which the command alone knows how much. */
  const forCommand = workbook.sheets[0]?.rows.some((cells) => String(cells[0]?.value).endsWith("were found")) === true;
  return { workbook, places, graph, inputs: inputsOf(workbook), held, forCommand };
}

/** Inputs that alone cannot be changed: shares in % without a rest come to 100 % together. */
export const notAlone = /^flour\.\d+\.parts$/u;
