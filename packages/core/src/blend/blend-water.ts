import { type Open, rangeOf } from "../figure/corners.ts";
import { exact, type Figure, given, shown, worked } from "../figure/figure.ts";
import { graphOf, type Published, published } from "../figure/graph.ts";
import { loudNote, type Note, note } from "../figure/problem.ts";
import { fromSpec, massBalance } from "../figure/source.ts";
import { ofDough, ofFlour, percent } from "../formula/naming.ts";
import { withRange } from "../formula/ranges.ts";
import { dryRatio } from "../materials/moisture.ts";
import { type DecimalText, dec, decimalText, HUNDRED, sum } from "../number/decimal.ts";
import { mixedMoisture, shareOfAll, type WaterFlour, type WaterLine, waterLines, waterTaken } from "./water-flour.ts";
import { doughMoisture, glutenWater, noodleWater } from "./water-sources.ts";

/** What is known about the water of a new blend beside that of the old one. */
export interface BlendWater {
  /** Added water of the new blend, % of flour; with its range where moistures or own figures leave it open. */
  readonly added: Figure;
  readonly before: Figure;
  /** What moved it, one by one. */
  readonly causes: readonly Figure[];
  /** Flours whose share or lot changed, and of which it is not known how much water they take. */
  readonly notKnown: readonly string[];
  readonly notes: readonly Note[];
}

/** What a spec holds of its water whatever its flours are, % of the dough or, for added water, of the flour. */
export interface HeldWater {
  readonly of: "dough" | "added";
  readonly least: DecimalText;
  readonly most: DecimalText;
  /** What it is brought to where the flours would take it out of that; the nearer end unless given. */
  readonly aim?: DecimalText;
  /** Dry matter beside that of the flour, but salt that follows the dough, % of flour. */
  readonly others: DecimalText;
  /** Salt that follows the dough, % of it. */
  readonly salt: DecimalText;
  /** Moisture of the flours before, where all else is stated on flour of a moisture. */
  readonly onMoisture?: DecimalText;
}

/**
 * Works out the added water of a changed blend as far as a source or the kitchen's own figures reach.
 *
 * Where every flour that changed has an own figure, the difference of those counts; where that is known of all the new flours
 * alone, what they take. Otherwise dry gluten takes 1.5 times its mass (or what the kitchen found), and the flours beside it
 * keep their water to dry flour, so that flour that gluten replaces takes its water with it; what else the change of flours
 * does is not known, and the flours are named. More protein alone never means more water. What the spec holds of its water
 * goes before all of this.
 *
 * @param added - added water of the old blend, % of flour
 * @param held - what the spec holds of the water of the dough
 * @example waterAfter([{ name: "flour", share: "100", moisture: "14" }], [{ name: "flour", share: "98", moisture: "14" }, { name: "gluten", share: "2", moisture: "6.5", dryGluten: true }], "34").added.value // => "36.32"
 * Source: mass balance on the dry flour after ICC 115/1; gluten after Cauvain and Young; Park and Baik 2004 against the bread rule.
 */
export function waterAfter(
  flours: readonly WaterFlour[],
  newFlours: readonly WaterFlour[],
  added: DecimalText,
  held?: HeldWater,
): Published<BlendWater> {
  const { before, after } = waterLines(flours, newFlours);
  const start = given(ofFlour("water.before", "added water before"), added, "the spec", fromSpec);
  return published(withOpenRange(waterOf(before, after, start, held), [...before, ...after]));
}

/** The same of figures, without the range. */
export function waterOf(
  old: readonly WaterLine[],
  fresh: readonly WaterLine[],
  start: Figure,
  held?: HeldWater,
): BlendWater {
  const ruled = withinRule(old, start);
  const byRule = (all: readonly WaterLine[]): readonly WaterLine[] =>
    ruled ? all : all.map(({ dryGluten: _beyondRule, ...flour }) => flour);
  const after = byRule(fresh);
  const free = freeWater(byRule(old), after, start);
  const water = (held && heldWater(free.added, held, after)) ?? free;
  return { ...water, before: start };
}

/** What a way to the water tells of it. */
type Found = Omit<BlendWater, "before">;

/** By own figures as far as they reach: a lot at one share in both blends takes the same water in both, whatever that is. */
function freeWater(before: readonly WaterLine[], after: readonly WaterLine[], start: Figure): Found {
  const isOwn = ({ absorption }: WaterLine): boolean => absorption !== undefined;
  const isOpen = (flour: WaterLine): boolean => !isOwn(flour) && flour.dryGluten !== true;
  const isIn = (flours: readonly WaterLine[], flour: WaterLine): boolean =>
    flours.some((one) => isOneLot(one, flour) && exact(one.share).eq(exact(flour.share)));
  const openBefore = before.filter((flour) => isOpen(flour) && !isIn(after, flour));
  const openAfter = after.filter((flour) => isOpen(flour) && !isIn(before, flour));
  const [own, ownNow] = [before, after].map((flours) => flours.filter((flour) => !isOpen(flour)));
  if ([...before, ...after].some(isOwn) && openBefore.length + openAfter.length === 0) {
    const notes = before.some(isOpen) ? [] : apartNotes(before, start);
    return { ...byOwnFigures(own ?? [], ownNow ?? [], start), notKnown: [], notes };
  }
  if (after.some(isOwn) && !after.some(isOpen)) {
    // of a blend whose flours before took nobody knows what, the new water is what its own flours take
    const fresh = takenNow(after);
    const added = worked(addedNaming, "fresh", { fresh }, fromSpec);
    const facts = { names: namesOf(openBefore), added: shown(start) };
    return { added, causes: [fresh], notKnown: [], notes: [loudNote("blend.water-of-new", ["water"], facts)] };
  }
  const notKnown = changedFlours(before, after);
  const isUnused = (flour: WaterLine): boolean => isOwn(flour) && !flour.dryGluten && !isIn(before, flour);
  const unused = {
    names: namesOf(after.filter(isUnused)),
    open: namesOf(after.filter(isOpen)),
    before: namesOf(openBefore),
  };
  return {
    ...bySources(before, after, start),
    notKnown,
    notes: [
      ...(unused.names.length === 0 ? [] : [loudNote("blend.absorption-unused", ["water"], unused)]),
      ...(notKnown.length === 0
        ? []
        : [note("blend.water-not-known", ["water"], { names: notKnown, source: noodleWater.cite })]),
    ],
  };
}

/** Whether two flours are of one lot: the figures of one are those of the other. */
function isOneLot(one: WaterLine, other: WaterLine): boolean {
  const [lot, beside] = [one, other].map(({ name, moisture, absorption }) => [name, moisture.value, absorption?.value]);
  return lot?.join() === beside?.join();
}

/** The water that the spec holds, where the flours would take it elsewhere. */
function heldWater(free: Figure, held: HeldWater, after: readonly WaterLine[]): Found | undefined {
  const { of, least, most } = held;
  const moisture = mixedMoisture("after", after);
  const others = othersNow(held, moisture);
  const dough = exact(free).plus(exact(others)).plus(100).div(HUNDRED.minus(held.salt));
  const taken = of === "added" ? exact(free) : exact(free).plus(exact(moisture)).div(dough);
  if (taken.gte(least) && taken.lte(most)) return undefined;
  const inside = least === most ? "0" : writtenNear;
  const end = taken.lt(least) ? dec(least).plus(inside) : dec(most).minus(inside);
  const aim = held.aim ?? decimalText(end);
  const known = { notKnown: [], notes: [] };
  if (of === "added") {
    const kept = given(ofFlour("water.held", "added water that is held"), aim, "the spec", fromSpec);
    return { added: worked(addedNaming, "kept", { kept }, fromSpec), causes: [kept], ...known };
  }
  const doughWater = given(ofDough("water.held", "dough water that is held"), aim, "the spec", fromSpec);
  const salt = given(ofDough("water.salt", "salt that follows the dough"), held.salt, "the formula", fromSpec);
  const added = worked(
    addedNaming,
    "(100 - moisture + others) * dough / (100 - dough - salt) - moisture",
    { moisture, others, dough: doughWater, salt },
    massBalance,
  );
  return { added, causes: [doughWater, moisture], ...known };
}

/** Water is written to the hundredth: an end that it is brought to is kept by as much. */
const writtenNear = "0.01";

/** Dry matter beside that of the flour, which goes with that where all is stated on flour of a moisture. */
function othersNow({ others, onMoisture }: HeldWater, fresh: Figure): Figure {
  const naming = ofFlour("water.others", "dry matter of all but flour and what follows the dough");
  if (onMoisture === undefined) return given(naming, others, "the formula", fromSpec);
  const old = given(
    percent("water.flour-before", "moisture of the flours before"),
    onMoisture,
    "the formula",
    fromSpec,
  );
  const before = given({ ...naming, id: "water.others-before" }, others, "the formula", fromSpec);
  return worked(naming, `before * ${dryRatio("old", "fresh")}`, { before, old, fresh }, massBalance);
}

function namesOf(flours: readonly WaterLine[]): readonly string[] {
  return [...new Set(flours.map(({ name }) => name))];
}

const addedNaming = ofFlour("water.after", "added water");

function byOwnFigures(before: readonly WaterLine[], after: readonly WaterLine[], start: Figure) {
  const old = waterTaken({ id: "water.own.before", label: "water the flours before take" }, before, fromSpec);
  const fresh = takenNow(after);
  const added = worked(addedNaming, "start + fresh - old", { start, fresh, old }, fromSpec);
  return { added, causes: [old, fresh] };
}

function takenNow(after: readonly WaterLine[]): Figure {
  return waterTaken({ id: "water.own.after", label: "water the flours now take" }, after, fromSpec);
}

function bySources(before: readonly WaterLine[], after: readonly WaterLine[], start: Figure) {
  const isGluten = ({ dryGluten }: WaterLine): boolean => dryGluten === true;
  const side = (blend: "before" | "after", when: string, flours: readonly WaterLine[]) => {
    const others = flours.filter((flour) => !isGluten(flour));
    const naming = { id: `water.gluten.${blend}`, label: `water for dry gluten ${when}` };
    return {
      moisture: mixedMoisture(blend, others),
      share: shareOfAll(blend, `flours beside dry gluten ${when}`, others),
      gluten: waterTaken(naming, flours.filter(isGluten), glutenWater),
    };
  };
  const [old, fresh] = [side("before", "before", before), side("after", "now", after)];
  const moved = `(start + old) * ${dryRatio("old", "fresh")} - fresh`;
  const moisture = { old: old.moisture, fresh: fresh.moisture };
  const takes = (id: string, label: string, formula: string, from: Parameters<typeof worked>[2]): Figure =>
    worked({ id, label, unit: "% of flour", places: 2 }, formula, from, massBalance, doughMoisture);
  if (![...before, ...after].some(isGluten)) {
    const added = worked(addedNaming, moved, { start, ...moisture }, doughMoisture);
    return { added, causes: [old.moisture, fresh.moisture] };
  }
  const flours = takes(
    "water.by-flours",
    "added water for the flours beside it before",
    exact(old.share).isZero() ? "start" : "100 * (start - gluten) / share",
    exact(old.share).isZero() ? { start } : { start, gluten: old.gluten, share: old.share },
  );
  const now = takes("water.by-moisture", "added water for them now", moved, { start: flours, ...moisture });
  const added = worked(
    addedNaming,
    "share * flours / 100 + gluten",
    { share: fresh.share, flours: now, gluten: fresh.gluten },
    massBalance,
    glutenWater,
  );
  const causes = [old.gluten, flours, now, fresh.gluten];
  return { added, causes: causes.filter(({ value }) => !dec(value).isZero()) };
}

/** The rule of dry gluten holds where the dough before has the water for it. */
function withinRule(before: readonly WaterLine[], start: Figure): boolean {
  const gluten = before.filter(({ dryGluten }) => dryGluten === true);
  const naming = { id: "water.gluten", label: "water for dry gluten" };
  return exact(waterTaken(naming, gluten, glutenWater)).lte(exact(start));
}

/**
 * The water with its range, where a moisture or an own figure of a flour has one: exact, since it is worked out anew at the
 * ends. A lot that is in both blends is off by the same in both; the water before is as it was poured.
 */
export function withOpenRange(water: BlendWater, flours: readonly WaterLine[]): BlendWater {
  const { added, before } = water;
  const graph = graphOf([added]);
  const open = (words: string, figures: readonly (Figure | undefined)[]) =>
    new Map(
      figures.flatMap((figure) => {
        if (figure?.range === undefined || !Object.hasOwn(graph, figure.id)) return [];
        const [low, high] = [dec(figure.range.low), dec(figure.range.high)];
        const [value, plusMinus] = [low.plus(high), high.minus(low)].map((double) => decimalText(double.div(2)));
        return value === undefined || plusMinus === undefined
          ? []
          : [[figure.id, { id: figure.id, value, plusMinus, words }] as const];
      }),
    );
  const causes = [
    ...open(
      "moisture of the flours",
      flours.map(({ moisture }) => moisture),
    ).values(),
    ...open(
      "the kitchen's own figures",
      flours.map(({ absorption }) => absorption),
    ).values(),
  ];
  if (causes.length === 0) return water;
  const fixed: readonly Open[] = Object.hasOwn(graph, before.id)
    ? [{ id: before.id, value: before.value, plusMinus: "0" }]
    : [];
  const { low, high } = rangeOf(graph, added.id, [...causes, ...fixed]);
  if (low === high) return water;
  const why = `uncertainty of ${[...new Set(causes.map(({ words }) => words))].join(" and ")}`;
  return { ...water, added: withRange(added, { low, high, why }) };
}

function changedFlours(before: readonly WaterLine[], after: readonly WaterLine[]): readonly string[] {
  const share = (flours: readonly WaterLine[], name: string): string =>
    flours.find((flour) => flour.name === name)?.share.value ?? "0";
  const names = namesOf([...before, ...after].filter(({ dryGluten }) => dryGluten !== true));
  const fresh = namesOf(after.filter(({ newLot }) => newLot));
  return names.filter((name) => fresh.includes(name) || !dec(share(before, name)).eq(share(after, name)));
}

/** How far own figures may lie from the water of the spec beyond what they are sure of, % of flour: half a usual step of a trial. Common practice, no source. */
const ownMayBeOff = "0.5";

/** Own figures that do not come to the water of the spec: one of the two is off, and the new water keeps the difference. */
function apartNotes(before: readonly WaterLine[], start: Figure): readonly Note[] {
  const taken = waterTaken({ id: "water.own.before", label: "water the flours take" }, before, fromSpec);
  const plusMinus = sum(
    before.map(({ share, absorption }) =>
      dec(absorption?.range?.high ?? 0)
        .minus(absorption?.range ? absorption.value : 0)
        .times(share.value)
        .div(100),
    ),
  );
  if (exact(taken).minus(exact(start)).abs().lte(plusMinus.plus(ownMayBeOff))) return [];
  return [note("blend.water-apart", ["water"], { taken: shown(taken), added: shown(start) })];
}
