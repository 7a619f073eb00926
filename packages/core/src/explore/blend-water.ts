import { exact, type Figure, given, type Range, worked } from "../figure/figure.ts";
import type { Note } from "../figure/problem.ts";
import { fromSpec, massBalance } from "../figure/source.ts";
import { type Decimal, type DecimalText, dec, decimalText, sum, ZERO } from "../number/decimal.ts";
import { glutenShare, mixedMoisture, ownFigure, shareOf, type WaterFlour } from "./water-flour.ts";
import { doughMoisture, glutenWater, noodleWater } from "./water-sources.ts";

/** What is known about the water of a new blend beside that of the old one. */
export interface BlendWater {
  /** Added water of the new blend, % of flour; with its range where own figures with one stand behind it. */
  readonly added: Figure;
  readonly before: Figure;
  /** What moved it, one by one. */
  readonly causes: readonly Figure[];
  /** Flours whose share changed and of which it is not known how much water they take. */
  readonly notKnown: readonly string[];
  readonly notes: readonly Note[];
}

const glutenTakes = "1.5";

/**
 * Works out the added water of a changed blend as far as a source or the kitchen's own figures reach.
 *
 * Where every flour has an own figure, the difference of those counts. Otherwise the water follows the moisture of the
 * flours, so that water to dry flour stays the same, and dry gluten takes 1.5 times its mass; what else the change of
 * flours does is not known, and the flours are named. More protein alone never means more water.
 *
 * @param added - added water of the old blend, % of flour
 * @example waterAfter([{ name: "flour", share: "100", moisture: "14" }], [{ name: "flour", share: "98", moisture: "14" }, { name: "gluten", share: "2", moisture: "6.5", dryGluten: true }], "34").added.value // => "37"
 * Source: mass balance on the dry flour after ICC 115/1; gluten after Lehmann; Park and Baik 2004 against the bread rule.
 */
export function waterAfter(
  before: readonly WaterFlour[],
  after: readonly WaterFlour[],
  added: DecimalText,
): BlendWater {
  const start = given({
    id: "water.before",
    label: "added water before",
    unit: "% of flour",
    places: 2,
    value: added,
    by: "the spec",
    sources: [fromSpec],
  });
  const own = [...before, ...after].every(({ ownWater }) => ownWater !== undefined);
  return own ? byOwnFigures(before, after, start) : bySources(before, after, start);
}

function byOwnFigures(before: readonly WaterFlour[], after: readonly WaterFlour[], start: Figure): BlendWater {
  const takes = (id: string, label: string, flours: readonly WaterFlour[]): Figure =>
    worked({
      id: `water.own.${id}`,
      label,
      unit: "% of flour",
      places: 2,
      formula: "sum(share * water) / 100",
      from: { share: flours.map(shareOf(id)), water: flours.map(ownFigure(id)) },
      sources: [fromSpec],
    });
  const [old, fresh] = [
    takes("before", "water the flours before take", before),
    takes("after", "water the flours now take", after),
  ];
  const figure = worked({
    id: "water.after",
    label: "added water",
    unit: "% of flour",
    places: 2,
    formula: "start + fresh - old",
    from: { start, fresh, old },
    sources: [fromSpec],
  });
  return {
    added: { ...figure, range: ownRange(exact(figure), before, after) },
    before: start,
    causes: [old, fresh],
    notKnown: [],
    notes: [],
  };
}

/** A flour's own error comes in with the change of its share; those of an old and a new lot with the whole of their shares. */
function ownRange(value: Decimal, before: readonly WaterFlour[], after: readonly WaterFlour[]): Range {
  const names = [...new Set([...before, ...after].map(({ name }) => name))];
  const counts = ({ share, ownWater }: WaterFlour): Decimal => dec(share).times(ownWater?.plusMinus ?? 0);
  const error = sum(
    names.map((name) => {
      const [old, fresh] = [before, after].map((flours) => flours.find((flour) => flour.name === name));
      const [was, is] = [old, fresh].map((flour) => (flour === undefined ? ZERO : counts(flour)));
      const oneLot = old?.ownWater?.percent === fresh?.ownWater?.percent;
      const both = oneLot ? (is ?? ZERO).minus(was ?? ZERO).abs() : (is ?? ZERO).plus(was ?? ZERO);
      return both.div(100);
    }),
  );
  return {
    low: decimalText(value.minus(error)),
    high: decimalText(value.plus(error)),
    why: "uncertainty of the kitchen's own figures",
  };
}

function bySources(before: readonly WaterFlour[], after: readonly WaterFlour[], start: Figure): BlendWater {
  const [oldMoisture, newMoisture] = [mixedMoisture("before", before), mixedMoisture("after", after)];
  const moisture = worked({
    id: "water.by-moisture",
    label: "added water after the moisture of the flours",
    unit: "% of flour",
    places: 2,
    formula: "(start + old) * (100 - fresh) / (100 - old) - fresh",
    from: { start, old: oldMoisture, fresh: newMoisture },
    sources: [massBalance, doughMoisture],
  });
  const gluten = worked({
    id: "water.by-gluten",
    label: "water for dry gluten",
    unit: "% of flour",
    places: 2,
    formula: "takes * (fresh - old)",
    from: { takes: glutenTakes, fresh: glutenShare("after", after), old: glutenShare("before", before) },
    sources: [glutenWater],
  });
  const added = worked({
    id: "water.after",
    label: "added water",
    unit: "% of flour",
    places: 2,
    formula: "moisture + gluten",
    from: { moisture, gluten },
    sources: [massBalance, glutenWater],
  });
  const notKnown = changedFlours(before, after);
  return {
    added,
    before: start,
    causes: [moisture, gluten],
    notKnown,
    notes: notKnown.length === 0 ? [] : [notKnownNote(notKnown)],
  };
}

function changedFlours(before: readonly WaterFlour[], after: readonly WaterFlour[]): readonly string[] {
  const share = (flours: readonly WaterFlour[], name: string): Decimal =>
    dec(flours.find((flour) => flour.name === name)?.share ?? ZERO);
  const names = [
    ...new Set([...before, ...after].filter(({ dryGluten }) => dryGluten !== true).map(({ name }) => name)),
  ];
  return names.filter((name) => !share(before, name).eq(share(after, name)));
}

function notKnownNote(names: readonly string[]): Note {
  const text = `no source says how much water ${names.join(", ")} take in noodle dough (more protein is no reason for more water: ${noodleWater.cite}); find it out with a small trial`;
  return { code: "water.not-known", path: ["water"], text };
}
