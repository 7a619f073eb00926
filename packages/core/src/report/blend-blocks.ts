import { missWords } from "../blend/blend-conflict.ts";
import { toHundredths } from "../blend/blend-limits.ts";
import type { Check, FoundBlend, OutOfReach, Reach } from "../blend/blend-question.ts";
import type { BlendWater } from "../blend/blend-water.ts";
import { type Change, figuresIn, idsAtBasis, isShare, ownId, shownBlend } from "../blend/compare-blends.ts";
import type { SpecBlend } from "../blend/spec-blend.ts";
import type { Figure } from "../figure/figure.ts";
import { groupDigits, inSystem, measure, type UnitSystem } from "../figure/in-system.ts";
import { note } from "../figure/problem.ts";
import { toldIn } from "../figure/told.ts";
import { type Decimal, dec, decimalText, fixedText, shortText } from "../number/decimal.ts";
import { flowText } from "../spec/yaml-text.ts";
import { listing, numberColumn, row, section, table, wordColumn } from "./build.ts";
import type { Cell, Section, Table } from "./schema.ts";
import { capital, cellOr, figureCell, rangeLines, words } from "./show.ts";

/** A change with its sign, shown as what is now less what was before as they are shown. */
function changeCell(before: Figure | undefined, after: Figure | undefined, change: Figure | undefined): Cell {
  if (before === undefined || after === undefined || change === undefined) return words("–");
  const { places } = change;
  const [old, fresh] = [before, after].map(({ value }) => dec(fixedText(value, places)));
  const shown = figureCell({ ...change, value: decimalText(dec(fresh ?? 0).minus(old ?? 0)) });
  const cell = { ...shown, value: change.value };
  return /[1-9]/u.test(cell.text) && !/^[−-]/u.test(cell.text) ? { ...cell, text: `+${cell.text}` } : cell;
}

/** A number that is no figure, to at most three places. */
function shortCell(number: string, metric: string, units: UnitSystem): Cell {
  const { value, unit } = inSystem(measure(number, metric), units);
  return { text: groupDigits(shortText(value, 3)), value, unit };
}

/** The unit that a number has in a system. */
function unitIn({ unit }: { readonly unit: string }, units: UnitSystem): string {
  return inSystem(measure(1, unit), units).unit;
}

/** Where a limit would have to be, to two places on the side where it can be met. */
function movedCell(from: string, to: string, metric: string, units: UnitSystem): Cell {
  const { value, unit } = inSystem(measure(to, metric), units);
  const outward = toHundredths(dec(value), dec(to).lt(from) ? "down" : "up");
  return { text: groupDigits(outward), value: outward, unit };
}

/** The flours before and after, adding up to 100. */
export function sharesTable(changes: readonly Change[], totals: readonly Figure[]): Table {
  const all = changes.filter(({ id }) => isShare(id));
  const figuresOf = ({ before, after }: Change) => [before, after].filter((one) => one !== undefined);
  const places = Math.max(0, ...all.flatMap(figuresOf).map(({ value }) => Math.min(2, dec(value).decimalPlaces())));
  const even = (figure: Figure | undefined) => figure && { ...figure, places };
  const shares = all.map(({ before, after, difference, ...change }): Change => {
    const [old, now, moved] = [before, after, difference].map(even);
    return { ...change, ...(old && { before: old }), ...(now && { after: now }), ...(moved && { difference: moved }) };
  });
  return listing(
    "blend",
    shares,
    [[wordColumn("flour", "flour"), ({ label }) => label.replace(/^share of /u, "")], ...beforeAndNow(", %", "metric")],
    row(["all flours", ...totals.map((figure) => figureCell({ ...figure, places })), ""], "total"),
  );
}

/** The columns of what was, of what is, and of the change. */
function beforeAndNow(unit: string, units: UnitSystem) {
  const told = (figure: Figure | undefined) => figure && inSystem(figure, units);
  return [
    [numberColumn("before", `before${unit}`), ({ before }: Change) => cellOr(told(before))],
    [numberColumn("now", `now${unit}`), ({ after }: Change) => cellOr(told(after))],
    [
      numberColumn("change", "change"),
      ({ before, after, difference }: Change) => changeCell(told(before), told(after), told(difference)),
    ],
  ] as const;
}

/** What the blend comes to, before and after. */
function figuresTable(changes: readonly Change[], units: UnitSystem): Table {
  const figures = changes.filter(({ id }) => !isShare(id));
  return listing("figures", figures, [
    [wordColumn("figure", "figure"), ({ label }) => figureWords(label)],
    [wordColumn("unit", "unit"), ({ before, after }) => unitIn(after ?? before ?? { unit: "" }, units)],
    ...beforeAndNow("", units),
  ]);
}

/** `moisture of the blend` as a table of the blend says it: `moisture`. */
function figureWords(label: string): string {
  return label.replace(" of the blend", "");
}

/** The figures of a comparison: of both blends, of flours that are in one blend only, and the differences. */
function changeFigures(changes: readonly Change[]): readonly Figure[] {
  return changes.flatMap(({ before, after, difference }) =>
    [before, after, difference].filter((figure) => figure !== undefined),
  );
}

/** What was asked, what is reached, and what room each limit leaves. */
export function checksTable(checks: readonly Check[], units: UnitSystem, id = "limits"): Table {
  const sides = { whole: "whole bags of", least: "at least", most: "at most" };
  return listing(id, checks, [
    [wordColumn("limit", "limit"), ({ label }) => label],
    [wordColumn("side", ""), ({ side, within }) => (side === "near" ? `± ${within}` : sides[side])],
    [numberColumn("asked", "asked"), ({ bound, unit }) => shortCell(bound, unit, units)],
    [numberColumn("reached", "reached"), ({ reached, unit }) => shortCell(reached, unit, units)],
    [numberColumn("room", "room left"), (check) => roomCell(check, units)],
    [wordColumn("unit", "unit"), (one) => unitIn(one, units)],
    [wordColumn("met", "met"), metText],
  ]);
}

/** How far the value is from the nearer end of what it has to lie between. */
function roomCell(check: Check, units: UnitSystem): Cell {
  const { least, most } = endsOf(check);
  const rooms = [least && dec(check.reached).minus(least), most?.minus(check.reached)];
  const [room, other = room] = rooms.filter((one) => one !== undefined);
  if (room === undefined || other === undefined) return words("–");
  return shortCell(decimalText(other.lt(room) ? other : room), check.unit, units);
}

/** Whether a limit is met over all that the flours' labels and certificates leave open, or only likely. */
function metText(check: Check): string {
  const { holds, range } = check;
  if (range === undefined) return holds ? "yes" : "no";
  const { least = dec(range.low), most = dec(range.high) } = endsOf(check);
  if (holds && least.lte(range.low) && most.gte(range.high)) return "yes";
  if (!holds && (least.gt(range.high) || most.lt(range.low))) return "no";
  return `${holds ? "likely" : "perhaps"}, ${fixedText(range.low, 2)} to ${fixedText(range.high, 2)}`;
}

/** What a check has to lie between. */
function endsOf({ side, bound, within = "0" }: Check): { readonly least?: Decimal; readonly most?: Decimal } {
  return {
    ...((side === "least" || side === "near") && { least: dec(bound).minus(within) }),
    ...((side === "most" || side === "near") && { most: dec(bound).plus(within) }),
  };
}

const isDoubtful = (check: Check): boolean => /^(?:likely|perhaps)/u.test(metText(check));

/** The blend as it is against what is asked. */
export function unchangedSection(unchanged: readonly Check[], units: UnitSystem): Section {
  const missing = unchanged.filter((check) => !check.holds);
  const line =
    missing.length === 0
      ? "All of it is met: nothing has to be changed."
      : missing.every(isDoubtful)
        ? "What is missing lies within what is known of the flours: the blend as it is may meet it."
        : undefined;
  return section(
    "unchanged",
    "If nothing is changed",
    unchanged.length === 0 ? undefined : checksTable(unchanged, units, "unchanged"),
    unchanged.length === 0 || line === undefined ? [] : [line],
  );
}

/** The water of a changed blend: what moved it, and what is not known. */
export function waterSection(water: BlendWater | undefined): Section {
  const [before, ...others] = waterFigures(water);
  const figures = before ? [{ ...before, label: "added water before" }, ...others] : [];
  return section("water", "Water that follows", { kind: "figures", figures }, rangeLines(figures.slice(-1)));
}

/** The figures of the water of a changed blend. */
function waterFigures(water: BlendWater | undefined): readonly Figure[] {
  return water === undefined ? [] : [water.before, ...water.causes, water.added];
}

/** What is written into the spec of a blend: its flours, and the water where it changes. */
export interface BlendFragment {
  readonly flours: readonly { readonly name: string; readonly amount: string; readonly figures?: unknown }[];
  readonly water?: unknown;
}

/** The flours of a blend and its water as they are written into the spec. */
export function fragmentSection({ flours, water }: BlendFragment): Section {
  return section("spec", "To go on with, in the spec", [
    "flours:",
    ...flours.map((entry) => `  - ${flowText(entry)}`),
    ...(water === undefined ? [] : [`water: ${flowText(water)}`]),
    `# keep the figures that stand beside ${flours.some(({ figures }) => figures) ? "another" : "a"} name`,
  ]);
}

/** What every report of a blend tells alike: what the blend comes to, other blends, figures and notes. */
export function blendParts(
  { answer, changes, totals }: Pick<SpecBlend, "answer" | "changes" | "totals">,
  waters: readonly BlendWater[],
  units: UnitSystem,
) {
  const blend = shownBlend(answer);
  const found = answer.kind === "found";
  return {
    blend,
    comesTo: section(
      "figures",
      "What it comes to",
      blend && figuresTable(changes, units),
      rangeLines(blend === undefined ? [] : figuresIn(blend)),
    ),
    others: alternativesOf(found ? answer.blends : [], waters, units),
    figures: [
      ...changeFigures(changes),
      ...totals,
      ...waterFigures(waters[0]),
      ...(found ? [] : answer.flourNeeded.map(({ protein }) => protein)),
    ],
    notes: [
      ...(found ? [] : answer.notes),
      ...(blend?.checks.some(isDoubtful) ? [note("blend.likely", ["wanted", "wholeRange"], {})] : []),
    ],
  };
}

/** Sets the blends that were found side by side. */
function alternativesOf(blends: readonly FoundBlend[], water: readonly BlendWater[], units: UnitSystem) {
  const [first] = blends;
  if (first === undefined || blends.length < 2) return { block: [], figures: [] };
  const all = blends.map((blend, index) => [
    ...figuresIn(blend),
    ...water.slice(index, index + 1).map(({ added }) => added),
  ]);
  const named = (index: number, id: string): Figure | undefined =>
    all[index]?.find((figure) => ownId(blends[index] ?? first, figure) === id);
  const shareIn = (blend: FoundBlend, name: string): Figure | undefined =>
    blend.shares.find((one) => one.name === name)?.share;
  const names = [...new Set(blends.flatMap(({ shares }) => shares.map(({ name }) => name)))];
  const ids = idsAtBasis(first.figures.map((figure) => ownId(first, figure))).filter((id) => id !== "blend.moisture");
  const rowFor = (label: string, read: (blend: FoundBlend, index: number) => Figure | undefined) =>
    row([label, ...blends.map((blend, index) => cellOr(read(blend, index)))]);
  const rows = [
    ...names.map((name) => rowFor(`${name}, %`, (blend) => shareIn(blend, name))),
    ...[...ids, "water.after"].map((id) => {
      const figure = named(0, id);
      const label = `${figureWords(figure?.label ?? id)}, ${figure === undefined ? "" : unitIn(figure, units)}`;
      return rowFor(label, (_, index) => {
        const one = named(index, id);
        return one && inSystem(one, units);
      });
    }),
  ];
  const columns = [wordColumn("what", ""), ...blends.map((_, index) => numberColumn(`${index + 1}`, `${index + 1}`))];
  const lines = blends.slice(1).map((blend, index) => `${index + 2}: ${differenceText(first, blend)}.`);
  return { block: [table("alternatives", columns, rows), lines], figures: all.slice(1).flat() };
}

function differenceText(first: FoundBlend, other: FoundBlend): string {
  const shareIn = (blend: FoundBlend, name: string) =>
    dec(blend.shares.find((share) => share.name === name)?.share.value ?? 0);
  const names = [...new Set([first, other].flatMap(({ shares }) => shares.map(({ name }) => name)))];
  const parts = names.flatMap((name) => {
    const more = shareIn(other, name).minus(shareIn(first, name));
    if (more.isZero()) return [];
    return [`${decimalText(more.abs())} % ${more.gt(0) ? "more" : "less"} ${name}`];
  });
  return parts.join(", ");
}

/** How misses are set against one another, where there is more than one kind. */
function missLines(checks: readonly Check[]): readonly string[] {
  const words = missWords(checks);
  return words.includes(",") ? [`Nearest is what misses least in all; these misses weigh alike: ${words}.`] : [];
}

/** Why there is no blend: the limits in conflict, how far each would have to move, and other ways out. */
export function outOfReachSections(answer: OutOfReach, units: UnitSystem): readonly Section[] {
  const { problem, conflicts, reach, flourNeeded, finerStep, nearest } = answer;
  const said = toldIn(units)(problem);
  const moves = conflicts.flat().filter((move, index, all) => all.findIndex(({ id }) => id === move.id) === index);
  const moveTable = listing("conflict", moves, [
    [wordColumn("limit", "limit"), ({ label }) => label],
    [numberColumn("asked", "asked"), ({ from, unit }) => shortCell(from, unit, units)],
    [
      numberColumn("to", "would have to be"),
      ({ from, to, unit }) => (to === undefined ? "lifted" : movedCell(from, to, unit, units)),
    ],
    [wordColumn("unit", "unit"), (one) => unitIn(one, units)],
    [wordColumn("enough", "enough alone"), ({ settles, open }) => (open ? "not known" : settles ? "yes" : "no")],
  ]);
  const neededTable = listing("flour-needed", flourNeeded, [
    [wordColumn("flour", "in place of"), ({ name }) => name],
    [numberColumn("has", "protein it has"), ({ has, protein }) => shortCell(has, protein.unit, units)],
    [numberColumn("needs", "protein it would need"), ({ protein }) => figureCell(protein)],
    [wordColumn("unit", "unit"), ({ basis, protein }) => (basis.kind === "as is" ? "% as is" : protein.unit)],
    [numberColumn("moisture", "at a moisture of, %"), ({ moisture }) => shortCell(moisture, "%", units)],
  ]);
  const finer = finerStep === undefined ? [] : [`In steps of ${finerStep} % there is a blend.`];
  return [
    section("no-answer", problem.code === "blend.unfinished" ? "No blend found" : "No blend reaches it", [
      `${capital(said.found)}.`,
      ...(problem.code === "blend.unfinished" ? [`${capital(said.advice)}.`] : []),
      ...reach.map((one) => reachLine(one, reach.filter(({ without }) => without === undefined).length > 1, units)),
      ...finer,
    ]),
    section(
      "conflict",
      conflicts.every(({ length }) => length < 2)
        ? "What would have to be asked instead"
        : "Limits that conflict, and how far each would have to move",
      moveTable,
    ),
    section("flour-needed", "Or one stronger flour", neededTable),
    section(
      "nearest",
      "Limits, with the nearest blend",
      nearest && checksTable(nearest.checks, units),
      nearest ? [...missLines(nearest.checks), ...(reach.length > 0 ? [endOfReach] : [])] : [],
    ),
  ];
}

/** What the flours reach, to two places inwards. */
function reachLine({ label, unit, least, most, without }: Reach, severalAreOut: boolean, units: UnitSystem): string {
  const [low, high] = [inSystem(measure(least, unit), units), inSystem(measure(most, unit), units)];
  const [from, to] = [toHundredths(dec(low.value), "up"), toHundredths(dec(high.value), "down")];
  const kept = severalAreOut ? "With all limits kept that can be met" : "With all other limits kept";
  const but = without === undefined ? "" : `, but without the limit "${without}"`;
  return `${kept}${but}, the flours here reach ${label} from ${from} to ${to} ${low.unit}.`;
}

/** So that nobody takes the end of what is possible for a blend to make. */
const endOfReach =
  "The nearest blend goes as far towards what is out of reach as it can, whatever else that changes: look at all of its figures before you make it.";
