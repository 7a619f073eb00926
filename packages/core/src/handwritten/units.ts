import { type DecimalText, dec, decimalText, HUNDRED, sum } from "../number/decimal.ts";
import type { PlacedItem } from "./entries.ts";

/** What the numbers of a formula count, found from all of them together. */
interface UnitsFound {
  readonly items: readonly PlacedItem[];
  readonly remarks: readonly string[];
}

const total = (items: readonly PlacedItem[]) => sum(items.map(({ entry }) => dec(entry.value ?? 0)));

/**
 * Brings the amounts of a formula to one way of writing: bare numbers get the unit of the others, per cents of the dough
 * become grams in 100 g of it, starch beside flours that make 100 % goes to the ingredients.
 */
export function withUnits(items: readonly PlacedItem[]): UnitsFound {
  const found = inOneUnit(items);
  return { ...found, items: found.items.map((one) => (one.part === "rework" ? ofDough(one, found.items) : one)) };
}

const shareOfDough = /% of (?:the )?(?:whole )?dough(?! \p{L})/iu;

/** Rework as a spec that is made in any size states it: in % of the dough with the rework in it. */
function ofDough(one: PlacedItem, items: readonly PlacedItem[]): PlacedItem {
  const { amount, entry, item } = one;
  const dough = items.filter(({ part }) => part !== "dusting");
  if (amount.by === "share" && shareOfDough.test(item.line.text)) return one;
  if (amount.by !== "mass" || dough.some((other) => other.amount.by !== "mass"))
    return asked(one, "how much of the dough is that, with the rework in it? Write it like rework 8 % of the dough");
  const share = `${decimalText(dec(amount.value).times(HUNDRED).div(total(dough)).toSignificantDigits(4))} %`;
  const remark = `${amount.text} in ${total(dough).toString()} g of dough`;
  return { ...one, entry: { ...entry, amount: share, remarks: [...entry.remarks, remark] } };
}

function inOneUnit(items: readonly PlacedItem[]): UnitsFound {
  const { items: bare, remarks } = namedNumbers(items);
  const named = sharesChecked(wholeShares(restTaken(bare))).map(waterAsked);
  const dough = named.filter(({ part }) => part !== "dusting");
  const flours = named.filter(({ part }) => part === "flours");
  const shares = flours.filter(({ amount }) => amount.by === "share");
  if (shares.length === 0 || shares.length < flours.filter(({ amount }) => amount.by !== "open").length) {
    return { items: mixedFlours(named, flours, shares), remarks };
  }
  if (total(flours).eq(HUNDRED)) return { items: massesAsked(named), remarks };
  const wheaten = flours.filter(isFlour);
  if (total(wheaten).eq(HUNDRED)) {
    const moved = named.map((one) =>
      one.part === "flours" && !isFlour(one) ? { ...one, part: "ingredients" as const } : one,
    );
    return { items: massesAsked(moved), remarks };
  }
  const all = dough.every(({ amount }) => amount.by === "share") && total(dough).minus(HUNDRED).abs().lte("0.5");
  if (all && dough.some(({ part }) => part === "water")) {
    const remark = `the per cents make up 100 with the flour at ${total(flours).toString()}: they are of the dough, and are written as grams in 100 g of it`;
    return { items: named.map(inGrams), remarks: [...remarks, remark] };
  }
  const made = total(flours);
  const text = made.minus(1).abs().lte("0.006")
    ? "the shares of the flours make up 1, and not 100: write each of all the shares a hundred times as large, if that is meant"
    : `the flours make up ${made.toString()} %, and not 100: which share is missing, or too much?`;
  const last = flours.at(-1);
  return { items: askedOf(named, last ? [last] : [], text), remarks };
}

/** One flour without an amount beside others in %, all of them flours, is the rest of 100. */
function restTaken(items: readonly PlacedItem[]): readonly PlacedItem[] {
  const flours = items.filter(({ part }) => part === "flours");
  const [open, ...more] = flours.filter(({ amount }) => amount.by === "open");
  const others = flours.filter((one) => one !== open);
  const value = HUNDRED.minus(total(others));
  const shares = others.length > 0 && others.every((one) => one.amount.by === "share" && isFlour(one));
  if (open === undefined || more.length > 0 || open.item.amounts.length > 0 || !shares || value.lte(0)) return items;
  const why = open.amount.by === "open" ? open.amount.why : "";
  const { entry, ...rest } = restated(open, "share", "rest", decimalText(value));
  const remarks = entry.remarks.filter((one) => one !== why);
  const asks = open.asks.filter(({ about }) => about !== "amount");
  const taken = { ...rest, entry: { ...entry, value: decimalText(value), remarks }, asks };
  return items.map((one) => (one === open ? taken : one));
}

/** Beside weights, shares of which those of the flours make up 1 are of one, and not of a hundred. */
function wholeShares(items: readonly PlacedItem[]): readonly PlacedItem[] {
  const flours = items.filter(({ part }) => part === "flours");
  const stated = sum(flours.map(({ amount }) => dec(amount.by === "mass" ? (amount.share ?? 0) : 0)));
  if (!stated.minus(1).abs().lte("0.006")) return items;
  return items.map((one) => {
    const { amount } = one;
    if (amount.by !== "mass" || amount.share === undefined) return one;
    return { ...one, amount: { ...amount, share: decimalText(dec(amount.share).times(HUNDRED)) } };
  });
}

/** No dough is made of one per cent of water: such a share is of one, and not of a hundred. */
function waterAsked(one: PlacedItem): PlacedItem {
  if (one.part !== "water" || one.amount.by !== "share" || dec(one.amount.value).gt(1)) return one;
  const share = dec(one.amount.value).times(HUNDRED).toString();
  return asked(one, `${one.amount.text} would be no dough: is ${share} % meant?`);
}

/** A per cent beside a weight is its share of the flour or of the dough; where it is neither, it may be a strength. */
function sharesChecked(items: readonly PlacedItem[]): readonly PlacedItem[] {
  const mass = (parts: readonly PlacedItem[]) =>
    sum(parts.map(({ amount }) => dec(amount.by === "mass" ? amount.value : 0)));
  const wholes = [
    mass(items.filter(({ part }) => part === "flours")),
    mass(items.filter(({ part }) => part !== "dusting")),
  ];
  const flourOpen = items.some(({ part, amount }) => part === "flours" && amount.by === "open");
  return items.map((one) => {
    const { amount } = one;
    if (flourOpen || amount.by !== "mass" || amount.share === undefined) return one;
    const stated = dec(amount.share);
    const near = wholes.some((whole) =>
      whole.times(stated).div(HUNDRED).minus(amount.value).abs().lte(whole.times("0.006")),
    );
    const text = `${stated.toString()} % stands beside ${amount.text}, and is its share neither of the flour nor of the dough: what is it of?`;
    return near ? one : asked(one, text);
  });
}

function isFlour({ item: { thing } }: PlacedItem): boolean {
  return thing.is !== "material" || thing.material.kind === "flour";
}

/** Bare numbers count what the others do; grams where there are no others, for the proportions are the same. */
function namedNumbers(items: readonly PlacedItem[]): UnitsFound {
  const bare = items.filter(({ amount }) => amount.by === "number");
  if (bare.length === 0) return { items, remarks: [] };
  const units = new Set(
    items.flatMap(({ amount }) =>
      amount.by === "mass" || amount.by === "share" ? [amount.text.split(" ").at(-1)] : [],
    ),
  );
  const [only] = units;
  if (units.size > 1 || !(units.size === 0 || only === "g" || only === "%")) {
    return { items: askedOf(items, bare, "a number without a unit: grams, or what?"), remarks: [] };
  }
  const unit = only ?? "g";
  const why = only === undefined ? "the proportions would be the same in any one unit" : "as the others are";
  const eggs = only === "g" ? bare.filter(isEgg) : [];
  return {
    items: items.map((one) => {
      if (one.amount.by !== "number") return one;
      return eggs.includes(one) ? asked(one, eggsOrGrams) : withUnit(one, unit);
    }),
    remarks:
      eggs.length === bare.length
        ? []
        : [`numbers without a unit are taken as ${unit === "g" ? "grams" : "%"}: ${why}`],
  };
}

const eggsOrGrams = "so many eggs, or grams? Weigh them without the shell and write the grams";

function isEgg({ item: { thing } }: PlacedItem): boolean {
  return thing.is === "material" && thing.material.kind === "egg";
}

function withUnit(one: PlacedItem, unit: string): PlacedItem {
  if (one.amount.by !== "number") return one;
  const { text, value } = one.amount;
  return restated(one, unit === "%" ? "share" : "mass", `${text} ${unit}`, value);
}

function inGrams(one: PlacedItem): PlacedItem {
  const { amount } = one;
  return amount.by === "share" ? restated(one, "mass", `${amount.value} g`, amount.value) : one;
}

function restated(one: PlacedItem, by: "mass" | "share", text: string, value: DecimalText): PlacedItem {
  return { ...one, amount: { by, text, value }, entry: { ...one.entry, amount: text } };
}

/** With the flours in %, a mass says nothing. */
function massesAsked(items: readonly PlacedItem[]): readonly PlacedItem[] {
  const text = "a weight, while the flours are in %: write it in % of the flour, or every flour as a weight";
  return askedOf(
    items,
    items.filter(({ amount }) => amount.by === "mass"),
    text,
  );
}

function mixedFlours(
  items: readonly PlacedItem[],
  flours: readonly PlacedItem[],
  shares: readonly PlacedItem[],
): readonly PlacedItem[] {
  if (shares.length === 0 || shares.length === flours.length) return items;
  const text = "in %, while another flour is a weight: write every flour as a weight, or every one in %";
  return askedOf(items, shares, text);
}

function askedOf(items: readonly PlacedItem[], some: readonly PlacedItem[], text: string): readonly PlacedItem[] {
  return items.map((one) => (some.includes(one) ? asked(one, text) : one));
}

/** The same with a question about its amount, unless there is one already. */
export function asked(one: PlacedItem, text: string): PlacedItem {
  if (one.asks.some(({ about }) => about === "amount")) return one;
  const { value: _value, ...entry } = one.entry;
  return {
    ...one,
    amount: { by: "open", why: text },
    entry: { ...entry, amount: undefined, remarks: [...entry.remarks, `${one.entry.amount ?? ""}: ${text}`] },
    asks: [...one.asks, { about: "amount", text }],
  };
}
