import { cornersOf, inputsAt, type Open, type Sides } from "../figure/corners.ts";
import { exact, type Figure, given, type Range, shown, worked } from "../figure/figure.ts";
import { type Published, published } from "../figure/graph.ts";
import { loudNote, type Note, note } from "../figure/problem.ts";
import { fromSpec, massBalance } from "../figure/source.ts";
import { ofDough, ofFlour, percent } from "../formula/naming.ts";
import { withRange } from "../formula/ranges.ts";
import { dryRatio } from "../materials/moisture.ts";
import { type Decimal, type DecimalText, dec, decimalText, HUNDRED, sum, ZERO } from "../number/decimal.ts";
import { mixedMoisture, type NumberedFlour, shareOfAll, type WaterFlour, waterTaken } from "./water-flour.ts";
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

/** The added water and what it came by. */
type Added = Pick<BlendWater, "added" | "causes">;

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
 * @param order - names of all flours of the question: the figures of a flour bear its place among them, from 1
 * @param held - what the spec holds of the water of the dough
 * @example waterAfter([{ name: "flour", share: "100", moisture: "14" }], [{ name: "flour", share: "98", moisture: "14" }, { name: "gluten", share: "2", moisture: "6.5", dryGluten: true }], "34").added.value // => "36.32"
 * Source: mass balance on the dry flour after ICC 115/1; gluten after Cauvain and Young; Park and Baik 2004 against the bread rule.
 */
export function waterAfter(
  flours: readonly WaterFlour[],
  newFlours: readonly WaterFlour[],
  added: DecimalText,
  order: readonly string[] = [...flours, ...newFlours].map(({ name }) => name),
  held?: HeldWater,
): Published<BlendWater> {
  const start = given(ofFlour("water.before", "added water before"), added, "the spec", fromSpec);
  const names = [...new Set(order)];
  const numbered = (all: readonly WaterFlour[]): readonly NumberedFlour[] =>
    all.map((flour) => ({ ...flour, number: names.indexOf(flour.name) + 1 }));
  const [old, fresh] = [numbered(flours), numbered(newFlours)];
  const ruled = withinRule(old, start);
  const byRule = (all: readonly NumberedFlour[]): readonly NumberedFlour[] =>
    ruled ? all : all.map(({ dryGluten: _beyondRule, ...flour }) => flour);
  const free = wayOf(byRule(old), byRule(fresh), start);
  const { work, before, after, notKnown, notes } = held === undefined ? free : heldWay(free, held, fresh, start);
  const water = work(before, after, start);
  const withOpen = withRange(
    water.added,
    openRange(before, after, (...flours) => work(...flours, start).added),
  );
  return published({ added: withOpen, before: start, causes: water.causes, notKnown, notes });
}

/** How the water of a blend is worked out, and from which figures of its flours. */
interface Way extends Pick<BlendWater, "notKnown" | "notes"> {
  readonly work: (before: readonly NumberedFlour[], after: readonly NumberedFlour[], start: Figure) => Added;
  readonly before: readonly NumberedFlour[];
  readonly after: readonly NumberedFlour[];
}

/** By own figures as far as they reach: a lot at one share in both blends takes the same water in both, whatever that is. */
function wayOf(before: readonly NumberedFlour[], after: readonly NumberedFlour[], start: Figure): Way {
  const isOwn = ({ ownWater }: NumberedFlour): boolean => ownWater !== undefined;
  const isOpen = (flour: NumberedFlour): boolean => !isOwn(flour) && flour.dryGluten !== true;
  const isIn = (flours: readonly NumberedFlour[], flour: NumberedFlour): boolean =>
    flours.some((one) => lotOf(one) === lotOf(flour) && dec(one.share).eq(flour.share));
  const openBefore = before.filter((flour) => isOpen(flour) && !isIn(after, flour));
  const openAfter = after.filter((flour) => isOpen(flour) && !isIn(before, flour));
  const own = (flours: readonly NumberedFlour[]): readonly NumberedFlour[] =>
    flours.filter((flour) => !isOpen(flour)).map(({ moistureRange: _without, ...flour }) => flour);
  const byOwn = { before: own(before), after: own(after), notKnown: [] };
  if ([...before, ...after].some(isOwn) && openBefore.length + openAfter.length === 0) {
    return { ...byOwn, work: byOwnFigures, notes: before.some(isOpen) ? [] : apartNotes(before, start) };
  }
  if (after.some(isOwn) && !after.some(isOpen)) {
    const facts = { names: namesOf(openBefore), added: shown(start) };
    return { ...byOwn, work: byNewFigures, notes: [loudNote("blend.water-of-new", ["water"], facts)] };
  }
  const notKnown = changedFlours(before, after);
  const isUnused = (flour: NumberedFlour): boolean => isOwn(flour) && !flour.dryGluten && !isIn(before, flour);
  const unused = {
    names: namesOf(after.filter(isUnused)),
    open: namesOf(after.filter(isOpen)),
    before: namesOf(openBefore),
  };
  const bySource = (flours: readonly NumberedFlour[]): readonly NumberedFlour[] =>
    flours.map(({ ownWater, ...flour }) => (flour.dryGluten && ownWater ? { ...flour, ownWater } : flour));
  return {
    work: bySources,
    before: bySource(before),
    after: bySource(after),
    notKnown,
    notes: [
      ...(unused.names.length === 0 ? [] : [loudNote("blend.absorption-unused", ["water"], unused)]),
      ...(notKnown.length === 0
        ? []
        : [note("blend.water-not-known", ["water"], { names: notKnown, source: noodleWater.cite })]),
    ],
  };
}

/** The water that the spec holds, where the flours would take it elsewhere. */
function heldWay(free: Way, held: HeldWater, after: readonly NumberedFlour[], start: Figure): Way {
  const { of, least, most } = held;
  const added = exact(free.work(free.before, free.after, start).added);
  const moisture = mixedMoisture("after", after);
  const dough = added
    .plus(exact(othersNow(held, moisture)))
    .plus(100)
    .div(HUNDRED.minus(held.salt));
  const taken = of === "added" ? added : added.plus(exact(moisture)).div(dough);
  if (taken.gte(least) && taken.lte(most)) return free;
  const inside = least === most ? "0" : writtenNear;
  const end = taken.lt(least) ? dec(least).plus(inside) : dec(most).minus(inside);
  const aim = held.aim ?? decimalText(end);
  return { work: (_before, flours) => byHeld(flours, held, aim), before: [], after, notKnown: [], notes: [] };
}

/** Water is written to the hundredth: an end that it is brought to is kept by as much. */
const writtenNear = "0.01";

function byHeld(after: readonly NumberedFlour[], held: HeldWater, aim: DecimalText): Added {
  if (held.of === "added") {
    const kept = given(ofFlour("water.held", "added water that is held"), aim, "the spec", fromSpec);
    return { added: worked(addedNaming, "kept", { kept }, fromSpec), causes: [kept] };
  }
  const dough = given(ofDough("water.held", "dough water that is held"), aim, "the spec", fromSpec);
  const salt = given(ofDough("water.salt", "salt that follows the dough"), held.salt, "the formula", fromSpec);
  const moisture = mixedMoisture("after", after);
  const added = worked(
    addedNaming,
    "(100 - moisture + others) * dough / (100 - dough - salt) - moisture",
    { moisture, others: othersNow(held, moisture), dough, salt },
    massBalance,
  );
  return { added, causes: [dough, moisture] };
}

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

function namesOf(flours: readonly NumberedFlour[]): readonly string[] {
  return [...new Set(flours.map(({ name }) => name))];
}

const addedNaming = ofFlour("water.after", "added water");

function byOwnFigures(before: readonly NumberedFlour[], after: readonly NumberedFlour[], start: Figure): Added {
  const naming = { id: "water.own.before", label: "water the flours before take" };
  const old = waterTaken(naming, "before", before, fromSpec);
  const fresh = takenNow(after);
  const added = worked(addedNaming, "start + fresh - old", { start, fresh, old }, fromSpec);
  return { added, causes: [old, fresh] };
}

/** Of a blend whose flours before took nobody knows what, the new water is what its own flours take. */
function byNewFigures(_before: readonly NumberedFlour[], after: readonly NumberedFlour[]): Added {
  const fresh = takenNow(after);
  return { added: worked(addedNaming, "fresh", { fresh }, fromSpec), causes: [fresh] };
}

function takenNow(after: readonly NumberedFlour[]): Figure {
  return waterTaken({ id: "water.own.after", label: "water the flours now take" }, "after", after, fromSpec);
}

function bySources(before: readonly NumberedFlour[], after: readonly NumberedFlour[], start: Figure): Added {
  const isGluten = ({ dryGluten }: NumberedFlour): boolean => dryGluten === true;
  const side = (blend: "before" | "after", when: string, flours: readonly NumberedFlour[]) => {
    const others = flours.filter((flour) => !isGluten(flour));
    const naming = { id: `water.gluten.${blend}`, label: `water for dry gluten ${when}` };
    return {
      moisture: mixedMoisture(blend, others),
      share: shareOfAll(blend, `flours beside dry gluten ${when}`, others),
      gluten: waterTaken(naming, blend, flours.filter(isGluten), glutenWater),
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
function withinRule(before: readonly NumberedFlour[], start: Figure): boolean {
  const gluten = before.filter(({ dryGluten }) => dryGluten === true);
  const naming = { id: "water.gluten", label: "water for dry gluten" };
  return exact(waterTaken(naming, "before", gluten, glutenWater)).lte(exact(start));
}

/** A flour of one lot: the same figures in the blend before and in that after. */
function lotOf({ name, moisture, ownWater }: NumberedFlour): string {
  return JSON.stringify([name, moisture, ownWater?.percent]);
}

/**
 * Least and greatest added water with every moisture and every own figure anywhere in its range: exact, since the water is
 * worked out anew at the ends. A lot that is in both blends is off by the same in both.
 */
function openRange(
  before: readonly NumberedFlour[],
  after: readonly NumberedFlour[],
  water: (before: readonly NumberedFlour[], after: readonly NumberedFlour[]) => Figure,
): Range | undefined {
  const lots = new Map([...before, ...after].map((flour) => [lotOf(flour), flour]));
  const causes = [...lots].flatMap(([lot, { moisture, moistureRange, ownWater }]): readonly Open[] => {
    const open = ({ low, high }: Pick<Range, "low" | "high">, id: string): Open => {
      const [least, most] = [dec(low), dec(high)];
      const [value, plusMinus] = [least.plus(most), most.minus(least)].map((double) => decimalText(double.div(2)));
      return { id, value: value ?? moisture, plusMinus: plusMinus ?? "0" };
    };
    return [
      ...(moistureRange === undefined ? [] : [open(moistureRange, `moisture ${lot}`)]),
      ...(ownWater === undefined
        ? []
        : [{ id: `water ${lot}`, value: ownWater.percent, plusMinus: ownWater.plusMinus }]),
    ].filter(({ plusMinus }) => !dec(plusMinus).isZero());
  });
  if (causes.length === 0) return undefined;
  const at = (inputs: Readonly<Record<string, Decimal>>, flours: readonly NumberedFlour[]): readonly NumberedFlour[] =>
    flours.map((flour) => {
      const [moisture, percent] = ["moisture", "water"].map((what) => inputs[`${what} ${lotOf(flour)}`]);
      return {
        ...flour,
        ...(moisture && { moisture: decimalText(moisture) }),
        ...(percent && flour.ownWater && { ownWater: { ...flour.ownWater, percent: decimalText(percent) } }),
      };
    });
  const waterAt = (sides: Sides): Decimal => {
    const inputs = inputsAt(causes, sides);
    return exact(water(at(inputs, before), at(inputs, after)));
  };
  const corners = cornersOf(causes.length, (sides) => waterAt(sides).toNumber());
  const [low, high] = [waterAt(corners.low), waterAt(corners.high)];
  if (low.eq(high)) return undefined;
  const of = [
    ["moisture ", "moisture of the flours"],
    ["water ", "the kitchen's own figures"],
  ] as const;
  const open = of.flatMap(([start, words]) => (causes.some(({ id }) => id.startsWith(start)) ? [words] : []));
  return { low: decimalText(low), high: decimalText(high), why: `uncertainty of ${open.join(" and ")}` };
}

function changedFlours(before: readonly NumberedFlour[], after: readonly NumberedFlour[]): readonly string[] {
  const share = (flours: readonly NumberedFlour[], name: string): Decimal =>
    dec(flours.find((flour) => flour.name === name)?.share ?? ZERO);
  const names = namesOf([...before, ...after].filter(({ dryGluten }) => dryGluten !== true));
  const fresh = namesOf(after.filter(({ newLot }) => newLot));
  return names.filter((name) => fresh.includes(name) || !share(before, name).eq(share(after, name)));
}

/** How far own figures may lie from the water of the spec beyond what they are sure of, % of flour: half a usual step of a trial. Common practice, no source. */
const ownMayBeOff = "0.5";

/** Own figures that do not come to the water of the spec: one of the two is off, and the new water keeps the difference. */
function apartNotes(before: readonly NumberedFlour[], start: Figure): readonly Note[] {
  const taken = waterTaken({ id: "water.own.before", label: "water the flours take" }, "before", before, fromSpec);
  const plusMinus = sum(
    before.map(({ share, ownWater }) =>
      dec(share)
        .times(ownWater?.plusMinus ?? 0)
        .div(100),
    ),
  );
  if (exact(taken).minus(exact(start)).abs().lte(plusMinus.plus(ownMayBeOff))) return [];
  return [note("blend.water-apart", ["water"], { taken: shown(taken), added: shown(start) })];
}
