import { type Figure, shownValue } from "@noodlewright/core/figure";
import { inSystem } from "@noodlewright/core/render";
import { textAt } from "../input/put.ts";
import type { Changes, Following, Item, Place } from "./answers.ts";
import type { Today } from "./today.ts";
import { words } from "./words.ts";

/** What follows from what is different, each with its reason in a line. */
export function followings(before: Today, today: Today, changes: Changes, items: ItemsOf): readonly Following[] {
  const shown = (figure: Figure): Figure => inSystem(figure, today.noodle?.units ?? "metric");
  return moved(before, today, changes, items)
    .map(({ was, now, ...rest }) => ({ ...rest, was: was && shown(was), now: shown(now) }))
    .filter(({ was, now }) => was === undefined || shownValue(was) !== shownValue(now))
    .map(({ was, now, from, label = now.label, why }) => {
      const text = words.today.from(was === undefined ? "–" : shownValue(was), `${shownValue(now)} ${now.unit}`);
      return { now: { from, id: now.id, label, text }, why };
    });
}

/** What is weighed for a load, each with its mass. */
export type ItemsOf = (today: Today) => readonly (Pick<Item, "id" | "name" | "kind"> & { readonly mass: Figure })[];

interface Moved {
  readonly was: Figure | undefined;
  readonly now: Figure;
  readonly from: Place;
  readonly label?: string;
  readonly why: string;
}

function moved(before: Today, today: Today, changes: Changes, itemsOf: ItemsOf): readonly Moved[] {
  const { because } = words.today;
  const formula = today.noodle?.formula;
  if (before.noodle === undefined || formula === undefined || today.batch === undefined) return [];
  const was = before.noodle.formula;
  const entered = (...sections: readonly (string | number)[]): boolean =>
    changes.entries.some(({ path }) => sections.includes(path[0] ?? ""));
  const differs = (now: Figure): boolean => {
    const then = was.graph[now.id];
    return then !== undefined && shownValue(now) !== shownValue(then);
  };
  const drier = differs(formula.blend.moisture);
  const { added, tap, doughWater } = formula.water;
  const replaced = formula.lines.some(
    ({ id, name, role }) => role === "alkali" && was.lines.find((line) => line.id === id)?.name !== name,
  );
  const wetness = drier && (differs(doughWater) ? because.flour : because.water(shownValue(was.water.doughWater)));
  const stronger = changes.entries.some(({ path }) => path.at(-1) === "strength") && because.strength;
  const product = reasons(replaced && because.product, stronger);
  const blend = [formula.blend.protein?.at14, formula.blend.moisture].filter((figure) => figure !== undefined);
  const ofBatch = (now: Figure, ...why: readonly (string | false)[]): Moved => {
    return { was: was.graph[now.id], now, from: "batch", why: reasons(...why) };
  };
  // What is found follows from all that is wanted.
  const found = today.noodle?.settled !== undefined;
  const doses = formula.lines
    .filter(({ role }) => (found ? ["flour", "alkali", "salt"] : ["alkali"]).includes(role))
    .map(({ id, name, parts, path }): Moved => {
      const old = was.lines.find((line) => line.id === id && line.name === name)?.parts;
      const held = textAt(today.spec, [...path, "holding"]) || "alkalinity M";
      const dosed = old ? reasons(drier && because.flour, stronger) : because.alkali(name, held);
      return { was: old, now: parts, label: name, from: "batch", why: found ? because.found : dosed };
    });
  const size = entered("batch", "losses") && because.size;
  const oldItems = itemsOf(before);
  const items = itemsOf(today);
  const nameAndMass = (one: (typeof items)[number]): string => {
    const mass = inSystem(one.mass, today.noodle?.units ?? "metric");
    return `${one.name} ${shownValue(mass)} ${mass.unit}`;
  };
  const isIn = (some: typeof items, { id, name }: (typeof items)[number]) =>
    some.find((item) => item.id === id && item.name === name);
  const gone = oldItems.filter((item) => isIn(items, item) === undefined);
  const weights = items.map((item): Moved & Pick<Item, "kind"> => {
    const { mass, name, kind } = item;
    const old = isIn(oldItems, item)?.mass;
    const [purpose] = item.id.split(".");
    const taken = gone.filter(({ id }) => kind === "stock" || id.split(".")[0] === purpose);
    const made =
      kind === "stock" ? because.stock(taken.map((one) => one.name)) : because.instead(taken.map(nameAndMass));
    const why = reasons(size, entered("scales") && because.scale, product, !old && taken.length > 0 && made);
    return { was: old, now: mass, label: name, from: "batch", why, kind };
  });
  const [plan, oldPlan] = [today.water?.value, before.water?.value];
  const whyWarm = reasons(entered("temperature") && because.temperature, size, (drier || replaced) && because.poured);
  const ofWater = (old: Figure | undefined, now: Figure | undefined): readonly Moved[] =>
    now === undefined ? [] : [{ was: old, now, from: "water", why: whyWarm }];
  return [
    ...blend.map((now) => ofBatch(now, because.flour)),
    ...[added, tap, doughWater].map((now) => ofBatch(now, wetness, product)),
    ...doses,
    ...ofWater(oldPlan?.plan.temperature, plan?.plan.temperature),
    ...ofWater(oldPlan?.weighed.ice?.ice, plan?.weighed.ice?.ice),
    ...weights.filter(({ kind, was: old }) => !drier || (kind === "stock" && old === undefined)),
  ];
}

/** The reasons that hold, one after the other. */
function reasons(...all: readonly (string | false)[]): string {
  return all.filter((one) => one !== false && one !== "").join(" ");
}
