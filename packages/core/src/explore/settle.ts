import { planBatch } from "../batch/batch.ts";
import type { WeighedLine } from "../batch/weighing.ts";
import { shown } from "../figure/figure.ts";
import { answer, loudNote, type Note, type Outcome, type Path, problem, refuse } from "../figure/problem.ts";
import { type Formula, formulaOf } from "../formula/formula.ts";
import type { OwnMaterials } from "../materials/own.ts";
import { dec, decimalText, fixedText } from "../number/decimal.ts";
import { parseQuantity } from "../number/quantity.ts";
import type { Spec } from "../spec/spec.ts";
import { withFound } from "./found-figures.ts";
import { balanceAmounts } from "./settle-balance.ts";
import { type FoundFlours, floursFound } from "./settle-flours.ts";
import {
  type FoundAmount,
  isSection,
  type OpenPlaces,
  openPlaces,
  type Section,
  type WaterKey,
} from "./settle-places.ts";
import { wantedChecks } from "./wanted-checks.ts";

/** A spec with its amounts found, and its formula. */
export interface Settled {
  readonly spec: Spec;
  readonly formula: Formula;
  readonly found: readonly FoundAmount[];
  readonly notes: readonly Note[];
  /** The amounts in the fewest digits at which the formula and all that is wanted read the same, and no scale tells a weight apart. */
  readonly rounded: () => readonly FoundAmount[];
}

/**
 * Finds the amounts that a spec leaves to be found, by what it wants; nothing where it states them all.
 *
 * Flours are searched in whole steps. Alkaline products, salt and water are worked out exactly by mass balance, then rounded
 * to a millionth of a per cent of flour, far below what any scale shows.
 *
 * @param data - plain data of a spec, of which nobody knows yet whether it is one
 * @param extra - the kitchen's own materials from files that the spec includes
 * Problems: `settle.masses`, `settle.replaced`, `settle.out-of-reach`, and those of `balanceAmounts`, of the blend search and of the spec.
 * @example settle({ name: "plain", flours: [{ name: "bread flour", amount: "100 %" }], water: { added: "find" }, wanted: { addedWater: "36 %" } }).value.found[0].text // => "36 %"
 */
export function settle(data: unknown, extra: OwnMaterials = {}): Outcome<Settled | undefined> {
  const open = openPlaces(data);
  if (open === undefined || !isSection(data)) return answer(undefined);
  if (open.flours.length > 0 && hasMasses(data)) return refuse(problem("settle.masses", ["flours"], {}));
  const replaced = open.alkali.find((index) => isReplaced(data["alkali"], index));
  if (replaced !== undefined) return refuse(problem("settle.replaced", ["alkali", replaced, "replaceWith"], {}));
  const filled = (found: readonly FoundAmount[]) => formulaOf(withAmounts(data, open, found), extra);
  const first = filled([]);
  if (!first.ok) return first;
  const flours = open.flours.length === 0 ? answer({ amounts: [] }) : floursIn(first.value, open, filled, extra);
  if (!flours.ok) return flours;
  const blended = filled(flours.value.amounts);
  if (!blended.ok) return blended;
  const balance = balanceAmounts(blended.value.spec, blended.value.formula, open);
  if (!balance.ok) return balance;
  const found = [...flours.value.amounts, ...balance.value];
  const whole = filled(found);
  if (!whole.ok) return whole;
  const { spec } = whole.value;
  const notes = [foundNote(found, flours.value, spec), ...flours.notes, ...balance.notes, ...whole.notes];
  return answer({
    spec,
    formula: withFound(whole.value, found, extra),
    found,
    notes,
    rounded: () => withFewestDigits(found, filled, extra),
  });
}

/** Says at the head of every answer which amounts were found, and what protein their blend comes to. */
function foundNote(found: readonly FoundAmount[], { protein: reached }: FoundFlours, { wanted }: Spec): Note {
  const amounts = found.map(({ name, text }) => ({ name, amount: inWords(text) }));
  const text = wanted?.protein?.text;
  const protein = reached !== undefined && text !== undefined && { protein: { wanted: text, reached } };
  return loudNote("settle.found", ["wanted"], { amounts, ...protein });
}

/** A found share as it is said: two places, or two digits of a small one; the exact share stands in the table. */
function inWords(text: string): string {
  const share = dec(text.replace(/ %$/u, ""));
  if (share.decimalPlaces() <= 2) return text;
  return `${share.lt("0.1") ? decimalText(share.toSignificantDigits(2)) : fixedText(share, 2)} %`;
}

/** Amounts with no more significant digits than it takes; flours are on their steps already. */
function withFewestDigits(
  found: readonly FoundAmount[],
  filled: (found: readonly FoundAmount[]) => ReturnType<typeof formulaOf>,
  extra: OwnMaterials,
): readonly FoundAmount[] {
  const exactly = filled(found);
  const shorter = [3, 4, 5].map((digits) =>
    found.map((amount) => (amount.path[0] === "flours" ? amount : shortened(digits, amount))),
  );
  return (
    shorter.find((amounts) => {
      const fewer = filled(amounts);
      return exactly.ok && fewer.ok && readAlike(exactly.value, fewer.value, extra);
    }) ?? found
  );
}

function shortened(digits: number, amount: FoundAmount): FoundAmount {
  const share = dec(amount.text.replace(/ %$/u, ""));
  return { ...amount, text: `${decimalText(share.toSignificantDigits(digits))} %` };
}

/** Whether two noodles read alike: their formula, what is wanted beside what is reached, and each weight within half of what its scale tells. */
function readAlike(one: Reading, other: Reading, extra: OwnMaterials): boolean {
  const [old, fresh] = [one, other].map(({ spec, formula }) => {
    const planned = spec.batch === undefined ? undefined : planBatch(spec, formula);
    const batch = planned?.ok === true ? planned.value : undefined;
    const { checks } = wantedChecks(spec, formula, batch, extra);
    return {
      shown: JSON.stringify([formula.lines.map(({ parts }) => shown(parts)), checks]),
      weights: batch?.lines ?? [],
    };
  });
  const isNear = ({ exact, division }: WeighedLine, index: number): boolean =>
    dec(exact.value)
      .minus(fresh?.weights[index]?.exact.value ?? 0)
      .abs()
      .times(2)
      .lte(division);
  return old !== undefined && old.shown === fresh?.shown && old.weights.every(isNear);
}

type Reading = Extract<ReturnType<typeof formulaOf>, { readonly ok: true }>["value"];

/** The flours, by the dough that the other amounts make with flours of any kind: a store is held against its flour. */
function floursIn(
  first: Reading,
  open: OpenPlaces,
  filled: (found: readonly FoundAmount[]) => ReturnType<typeof formulaOf>,
  extra: OwnMaterials,
): Outcome<FoundFlours> {
  const balance = balanceAmounts(first.spec, first.formula, open);
  const nearer = balance.ok ? filled(balance.value) : undefined;
  const { spec, formula } = nearer?.ok ? nearer.value : first;
  return floursFound(spec, formula, open.flours, extra);
}

function isReplaced(list: unknown, index: number): boolean {
  const entry: unknown = isList(list) ? list[index] : undefined;
  return isSection(entry) && entry["replaceWith"] !== undefined;
}

/** Shares are found; beside a flour in g they would have nothing to be a share of. */
function hasMasses(data: Section): boolean {
  const flours: readonly unknown[] = Array.isArray(data["flours"]) ? data["flours"] : [];
  return flours.some((flour) => isSection(flour) && parseQuantity(String(flour["amount"]), ["mass"]).ok);
}

/** The spec with amounts that were found; an amount not yet found stands at one that makes a dough. */
function withAmounts(data: Section, open: OpenPlaces, found: readonly FoundAmount[]): Section {
  const at = (...path: Path): string | undefined =>
    found.find((one) => one.path.length === path.length && one.path.every((step, index) => step === path[index]))?.text;
  const rest = isList(data["flours"]) && data["flours"].some((flour) => isSection(flour) && flour["amount"] === "rest");
  const [first] = rest ? [] : open.flours;
  const entries = (key: "flours" | "alkali", start: (index: number) => string) => {
    const list = data[key];
    if (!isList(list)) return {};
    const amount = (index: number) => at(key, index, "amount") ?? start(index);
    const put = (entry: unknown, index: number): unknown =>
      open[key].includes(index) && isSection(entry) ? { ...entry, amount: amount(index) } : entry;
    return { [key]: list.map(put) };
  };
  return {
    ...data,
    ...entries("flours", (index) => (index === first ? "rest" : "0 %")),
    ...entries("alkali", () => "0 %"),
    ...(open.salt && { salt: at("salt") ?? "0 %" }),
    ...(open.water && { water: waterWith(data["water"], open.water, at("water", open.water)) }),
  };
}

function waterWith(water: unknown, way: WaterKey, found: string | undefined): Section {
  const { [way]: _open, ...others } = isSection(water) ? water : {};
  return found === undefined ? { ...others, tap: "36 %" } : { ...others, [way]: found };
}

function isList(value: unknown): value is readonly unknown[] {
  return Array.isArray(value);
}
