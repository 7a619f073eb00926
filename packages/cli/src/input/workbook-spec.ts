import { readNoodleData } from "@noodlewright/core";
import type { Graph } from "@noodlewright/core/figure";
import { readHandwritten } from "@noodlewright/core/spec";
import { type ReadSheet, sheetsOfWorkbook } from "./workbook-lines.ts";

type Data = Readonly<Record<string, unknown>>;

/** A figure of a workbook that was written here: how it is called, where it comes from, and what was typed for it. */
interface BookFigure {
  readonly label: string;
  readonly value: string;
  /** How it comes about. */
  readonly how: string;
  readonly typed?: { readonly text: string; readonly label: string; readonly unit: string; readonly changed: boolean };
}

/**
 * The spec behind a workbook that was written here, with what was typed into its inputs; undefined where it is another
 * workbook. Figures of a material stand in it where no table has it, or where they were changed.
 */
export function specOfWorkbook(bytes: Uint8Array): Data | undefined {
  const sheets = sheetsOfWorkbook(bytes);
  if ("why" in sheets) return undefined;
  const [use, figures] = ["Noodle", "Figures"].map((wanted) => sheets.find(({ name }) => name === wanted));
  const book = use && figures && figuresIn(use, figures);
  return book === undefined || !book.has("flour.1.parts") ? undefined : new BookSpec(book, use?.cells).data();
}

function figuresIn(use: ReadSheet, { cells, formulas }: ReadSheet): ReadonlyMap<string, BookFigure> {
  return new Map(
    [...cells].flatMap(([address, id]) => {
      const row = /^F(\d+)$/u.exec(address)?.[1];
      if (row === undefined) return [];
      const at = /^'?Noodle'?!\$?B\$?(\d+)(?!\d)/u.exec(formulas.get(`B${row}`) ?? "")?.[1];
      const text = at === undefined ? undefined : use.cells.get(`B${at}`);
      const figure: BookFigure = {
        label: cells.get(`A${row}`) ?? "",
        value: cells.get(`B${row}`) ?? "",
        how: cells.get(`D${row}`) ?? "",
        ...(text !== undefined && {
          typed: {
            text,
            label: use.cells.get(`A${at}`) ?? "",
            unit: (use.cells.get(`C${at}`) ?? "").replace(/ of .*$|\/100 g flour$/u, ""),
            changed: text !== use.cells.get(`D${at}`),
          },
        }),
      };
      return [[id, figure] as const];
    }),
  );
}

class BookSpec {
  readonly #book: ReadonlyMap<string, BookFigure>;
  readonly #use: ReadSheet["cells"] | undefined;

  constructor(book: ReadonlyMap<string, BookFigure>, use: ReadSheet["cells"] | undefined) {
    this.#book = book;
    this.#use = use;
  }

  data(): Data {
    const water = this.#ids(/^water\.(?:(added|tap|dough)-(?:stated|written)|(tap))$/u);
    const [salt, dusting] = [this.#amountOf("salt"), this.#amountOf("dusting")];
    const label = (id: string): string => this.#book.get(id)?.label ?? "";
    const notes = this.#notes();
    const data = {
      name: this.#use?.get("A1") ?? "Noodles",
      ...(notes !== "" && { notes }),
      flours: this.#lines("flour"),
      water: {
        ...Object.fromEntries(water.map(([id, [, way, tap]]) => [way ?? tap, this.#said(id)])),
        ...this.#under({ onFlourMoisture: "flour.reference-moisture" }),
      },
      alkali: this.#lines("alkali"),
      salt,
      ingredients: this.#lines("ingredient"),
      dusting: dusting && { name: label("dusting.parts"), amount: dusting },
      batch: this.#batch(),
      losses: Object.fromEntries(this.#ids(/^loss\.(\w+)$/u).map(([id, [, stage]]) => [stage, this.#said(id)])),
      mixer: this.#mixer(),
      scales: this.#scales(),
      prices: this.#named(/^cost\.(.*)\.price$/u, /^price of /u, (id, line) => this.#price(id, line)),
      stock: this.#named(/^shopping\.(.*)\.on-hand$/u, / on hand$/u, (id) => this.#said(id)),
      rework: this.#under({ amount: "rework.stated" }),
    };
    return Object.fromEntries(Object.entries(data).filter(([, value]) => value !== undefined && !isEmpty(value)));
  }

  /** The inputs whose ids are of a form, those left out that nobody stated. */
  #ids(form: RegExp): readonly (readonly [id: string, match: RegExpExecArray])[] {
    return [...this.#book].flatMap(([id, { typed, how }]) => {
      const match = form.exec(id);
      const stated = typed !== undefined && (typed.changed || !/^(?:assumed|none stated)/u.test(how));
      return match === null || !stated ? [] : [[id, match] as const];
    });
  }

  /** What was typed for a figure, with its unit. */
  #said(id: string): string | undefined {
    const typed = this.#book.get(id)?.typed;
    return typed && `${typed.text} ${typed.unit}`.trim();
  }

  #under(ids: Readonly<Record<string, string>>): Data {
    return Object.fromEntries(
      Object.entries(ids).flatMap(([key, id]) => (this.#said(id) === undefined ? [] : [[key, this.#said(id)]])),
    );
  }

  #amountOf(line: string): string | undefined {
    return ["written", "stated", "parts"].map((what) => this.#said(`${line}.${what}`)).find((one) => one !== undefined);
  }

  #lines(kind: "flour" | "alkali" | "ingredient"): readonly Data[] {
    const form = new RegExp(`^${kind}\\.(\\d+(?:\\.\\d+)?)\\.parts$`, "u");
    return [...this.#book.keys()]
      .flatMap((id) => form.exec(id)?.[1] ?? [])
      .filter((number) => !this.#book.has(`${kind}.${number}.1.parts`))
      .sort((one, other) => Number(one) - Number(other))
      .map((number) => `${kind}.${number}`)
      .map((line) => {
        const { label: name = "", value = "" } = this.#book.get(`${line}.parts`) ?? {};
        const figures = this.#figuresOf(kind, line, name);
        return {
          name,
          amount: this.#amountOf(line) ?? (kind === "flour" ? "rest" : `${value} %`),
          ...(kind === "alkali" && this.#states(line)),
          ...(Object.keys(figures).length > 0 && { figures }),
        };
      });
  }

  /** What the dose of an alkaline product states, where it is not the product. */
  #states(line: string): Data {
    if (this.#book.get(`${line}.stated`)?.typed?.unit === "meq") return {};
    if (this.#book.has(`${line}.anhydrous-share`)) return { as: "anhydrous salts" };
    return /alkalinity/u.test(this.#book.get(`${line}.parts`)?.how ?? "") ? { as: "alkalinity" } : {};
  }

  #figuresOf(kind: "flour" | "alkali" | "ingredient", line: string, name: string): Data {
    const table = tableFigures(kind, name);
    const figures = table === undefined ? entryNamed(name)["figures"] : undefined;
    const counts = (id: string): boolean => {
      const typed = this.#book.get(id)?.typed;
      const known = table?.[`${kind}.1${id.slice(line.length)}`]?.value;
      return typed !== undefined && Number(typed.text) !== Number(Number(known).toPrecision(15));
    };
    if (kind === "alkali") {
      const salts = this.#ids(new RegExp(`^${line.replace(".", "\\.")}\\.([A-Z]\\w+)$`, "u"));
      const moisture = `${line}.moisture`;
      if (![moisture, ...salts.map(([id]) => id)].some(counts)) return {};
      const water = this.#said(moisture);
      const parts = salts.map(([id, [, salt]]) => [salt, this.#said(id)] as const);
      return { composition: { ...Object.fromEntries(parts), ...(water && { water }), inert: "rest" } };
    }
    const main = (what: "protein" | "ash"): Data => {
      const [stated, basis, asIs] = [`${line}.${what}-stated`, `${line}.${what}-basis`, `${line}.${what}`];
      if (![stated, basis, asIs].some(counts)) return {};
      const onTable = /at (\S+) % mb$/u.exec(this.#book.get(asIs)?.typed?.label ?? "")?.[1];
      const of = this.#said(basis) ?? (onTable && `${onTable} %`);
      return { [what]: this.#said(stated) ?? this.#said(asIs), [`${what}Basis`]: of ? `${of} mb` : "as is" };
    };
    const factor = `${line}.nitrogen-factor`;
    const protein = kind === "flour" ? main("protein") : {};
    return {
      ...(isData(figures) && figures),
      ...(counts(`${line}.moisture`) && { moisture: this.#said(`${line}.moisture`) }),
      ...protein,
      ...("protein" in protein && this.#ids(/nitrogen-factor$/u).some(([id]) => id === factor)
        ? { nitrogenFactor: Number(this.#said(factor)) }
        : {}),
      ...(kind === "flour" && main("ash")),
    };
  }

  #batch(): Data {
    const have = this.#said("batch.have");
    const name = this.#book.get("batch.have")?.label.replace(/ there is$/u, "");
    const bowls = this.#said("batch.bowls");
    const dough = this.#book.get("batch.dough")?.how ?? "";
    const load = ["largest", "smallest"].find((size) => dough.includes(`${size} load`));
    return {
      ...(bowls !== undefined && { bowls: Number(bowls) }),
      ...this.#under({ rawWeight: "bowl.raw", cookedWeight: "bowl.cooked" }),
      ...(this.#said("bowl.cook-gain") !== undefined && { cookGain: Number(this.#said("bowl.cook-gain")) }),
      ...this.#under({ dough: "batch.dough", flour: "batch.flour-stated" }),
      ...(load !== undefined && { load }),
      ...(have !== undefined && { have: { name, amount: have } }),
    };
  }

  #mixer(): Data | undefined {
    const limits = this.#under({ smallest: "mixer.smallest", largest: "mixer.largest" });
    if (isEmpty(limits)) return undefined;
    return { ...limits, of: this.#book.get("mixer.largest")?.how?.endsWith(" of flour") ? "flour" : "dough" };
  }

  #scales(): readonly Data[] {
    return this.#ids(/^(scale\.\d+)\.division$/u).map(([id, [, scale]]) => ({
      name: this.#book.get(id)?.label.replace(/^division of /u, ""),
      ...this.#under({ division: id, capacity: `${scale}.capacity` }),
    }));
  }

  /** What is stated of materials, by their names. */
  #named(form: RegExp, around: RegExp, said: (id: string, line: string) => string | undefined): Data {
    return Object.fromEntries(
      this.#ids(form).map(([id, [, line = ""]]) => [this.#book.get(id)?.label.replace(around, ""), said(id, line)]),
    );
  }

  #price(id: string, line: string): string | undefined {
    const [price, pack] = [this.#book.get(id)?.typed, this.#book.get(`shopping.${line}.pack`)?.typed];
    const currency = /^(.*)\/kg$/u.exec(price?.unit ?? "")?.[1];
    if (price === undefined || pack?.unit !== "g" || currency === undefined) return this.#said(id);
    const each = (Number(price.text) * Number(pack.text)) / 1000;
    return `${Number(each.toPrecision(12))} ${currency} per ${pack.text} g`;
  }

  /** The notes below the title, without the advice on the cells. */
  #notes(): string {
    const lines: string[] = [];
    for (let row = 3; this.#use?.get(`A${row}`); row += 1) lines.push(this.#use.get(`A${row}`) ?? "");
    return lines.join("\n");
  }
}

/** The figures of a material as the tables have it; undefined where none knows its name. */
function tableFigures(kind: "flour" | "alkali" | "ingredient", name: string): Graph | undefined {
  const flours = [{ name: kind === "flour" ? name : "bread flour", amount: "100 %" }];
  const more = kind === "flour" ? {} : { [kind === "alkali" ? "alkali" : "ingredients"]: [{ name, amount: "1 %" }] };
  const reading = readNoodleData({ name, flours, water: { added: "60 %" }, ...more });
  return reading.ok ? reading.value.formula.graph : undefined;
}

/** What the name of a flour tells where no table knows it: that it is of wheat. */
function entryNamed(name: string): Data {
  const entries = Object.values(readHandwritten(`${name} 1 g`).spec).flat();
  return entries.filter(isData).find((one) => one["name"] === name) ?? {};
}

function isData(value: unknown): value is Data {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function isEmpty(value: unknown): boolean {
  return typeof value === "object" && value !== null && Object.keys(value).length === 0;
}
