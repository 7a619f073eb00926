import type { DecimalText } from "../number/decimal.ts";
import { listItem, yamlLines } from "../spec/yaml-text.ts";

/** An entry of a spec to be written; without an amount it is to be filled in. */
export interface DraftEntry {
  readonly line: number;
  readonly name: string;
  readonly amount: string | undefined;
  /** g or %, for adding up. */
  readonly value?: DecimalText;
  /** Of water: what is added in all, and not from the tap alone. */
  readonly added?: true;
  readonly figures?: Readonly<Record<string, unknown>>;
  /** For the cook who reads the spec, one comment each. */
  readonly remarks: readonly string[];
  /** Lines that can be filled in below it. */
  readonly toFillIn?: readonly string[];
}

/** A spec to be written. */
export interface Draft {
  readonly name: string;
  readonly flours: readonly DraftEntry[];
  readonly water: DraftEntry | undefined;
  readonly alkali: readonly DraftEntry[];
  readonly salt: DraftEntry | undefined;
  readonly ingredients: readonly DraftEntry[];
  readonly rework: DraftEntry | undefined;
  readonly dusting: DraftEntry | undefined;
  /** Headings and steps that stood beside the formula. */
  readonly notes: readonly string[];
  /** What is not in the formula, and why. */
  readonly leftOut: readonly string[];
  /** The other sections of the spec, such as `batch` and `scales`, as plain data. */
  readonly sections: Readonly<Record<string, unknown>>;
  /** What to say above a section, by its key. */
  readonly remarks: Readonly<Record<string, readonly string[]>>;
}

/** The draft as plain data, as a spec file gives it. */
export function draftData(draft: Draft): Readonly<Record<string, unknown>> {
  const entry = ({ name, amount, figures }: DraftEntry) => {
    return { name, amount: amount ?? null, ...(figures && { figures }) };
  };
  return {
    name: draft.name,
    ...(draft.notes.length > 0 && { notes: `${draft.notes.join("\n")}\n` }),
    flours: draft.flours.length === 0 ? null : draft.flours.map(entry),
    water: draft.water === undefined ? null : { [draft.water.added ? "added" : "tap"]: draft.water.amount ?? null },
    ...(draft.alkali.length > 0 && { alkali: draft.alkali.map(entry) }),
    ...(draft.salt && { salt: draft.salt.amount ?? null }),
    ...(draft.ingredients.length > 0 && { ingredients: draft.ingredients.map(entry) }),
    ...(draft.rework && { rework: { amount: draft.rework.amount ?? null } }),
    ...(draft.dusting && { dusting: entry(draft.dusting) }),
    ...draft.sections,
  };
}

/**
 * Writes a draft as a spec in YAML, with a comment for everything that a cook has to know or to fill in.
 *
 * The text and `draftData` say the same.
 */
export function draftText(draft: Draft): string {
  const data = draftData(draft);
  const lines: string[] = [];
  for (const [key, value] of Object.entries(data)) {
    const entries = entriesOf(draft, key);
    lines.push("");
    if (Array.isArray(value) && entries !== undefined) {
      lines.push(`${key}:`);
      value.forEach((item: unknown, index) => {
        const { remarks = [], toFillIn = [] } = entries[index] ?? {};
        lines.push(...commented(remarks, 2), ...listItem(item, 2), ...commented(toFillIn, 4));
      });
    } else {
      lines.push(...commented(entries?.[0]?.remarks ?? draft.remarks[key] ?? [], 0));
      lines.push(...yamlLines(key, value, 0), ...(value === null ? (samples[key] ?? []) : []));
    }
  }
  const out = ["", ...commented(["Not in the formula:", ...draft.leftOut.map((one) => `- ${one}`)], 0)];
  return `${[...lines.slice(1), ...(draft.leftOut.length === 0 ? [] : out)].join("\n")}\n`;
}

/** What is to be filled in where a section is missing from the whole. */
const samples: Readonly<Record<string, readonly string[]>> = {
  flours: ["  # - name: bread flour", "  #   amount: 1000 g"],
  water: ["  # tap: 380 g    what is poured"],
};

function entriesOf(draft: Draft, key: string): readonly DraftEntry[] | undefined {
  switch (key) {
    case "flours":
    case "alkali":
    case "ingredients":
      return draft[key];
    case "water":
    case "salt":
    case "rework":
    case "dusting":
      return draft[key] === undefined ? [] : [draft[key]];
    default:
      return undefined;
  }
}

function commented(texts: readonly string[], indent: number): readonly string[] {
  return texts.map((text) => `${" ".repeat(indent)}# ${text}`);
}
