import { bowlWeight } from "../batch/bowl.ts";
import { contentsOf } from "../batch/composition.ts";
import { keptInBoiling } from "../batch/nutrition-cooked.ts";
import { roomBy } from "../batch/nutrition-room.ts";
import { roomAround, roomOf } from "../blend/met.ts";
import { alkalinityM, anhydrousShare } from "../chemistry/composition.ts";
import { answer, note, type Outcome, problem, refuse } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import { mostDoses } from "../formula/limits.ts";
import type { FormulaLine } from "../formula/line.ts";
import { type Decimal, dec, HUNDRED, ONE, sum, ZERO } from "../number/decimal.ts";
import type { Bounds } from "../spec/blend-schema.ts";
import type { Spec } from "../spec/spec.ts";
import type { Quotient, Sum } from "./extreme.ts";
import type { OpenPlaces } from "./settle-places.ts";

/** Something that a spec wants, as a quotient over the amounts to be found. */
export interface Want extends Quotient {
  readonly label: string;
  readonly unit: string;
  /** As it is said in a conflict. */
  readonly wanted: string;
  readonly least?: Decimal;
  readonly most?: Decimal;
  /** What is aimed at within the bounds, where they leave room; none for what has only to be kept. */
  readonly aim?: Decimal;
  /** The share of a value that may be missing or too much where it is asked for. */
  readonly room: Decimal;
  readonly isValue: boolean;
}

/** What a line brings of something, for each part of it on 100 of flour. */
type Per = (line: FormulaLine) => Decimal;

const mass: Per = () => ONE;
const water: Per = ({ material }) => dec(material.moisture).div(HUNDRED);
const added: Per = (line) => (line.role === "flour" ? ZERO : water(line));
const tap: Per = ({ role }) => (role === "water" ? ONE : ZERO);
const salt: Per = ({ material }) => (material.kind === "salt" ? ONE : ZERO);
const alkalinity: Per = (line) => ofAlkali(line, alkalinityM);
const anhydrous: Per = (line) => ofAlkali(line, (composition) => anhydrousShare(composition).div(HUNDRED));
const sodaAsh: Per = (line) => ofAlkali(line, ({ species }) => dec(species.Na2CO3 ?? 0).div(HUNDRED));
const potash: Per = (line) => ofAlkali(line, ({ species }) => dec(species.K2CO3 ?? 0).div(HUNDRED));

function ofAlkali(
  { role, material: { composition } }: FormulaLine,
  what: (composition: NonNullable<FormulaLine["material"]["composition"]>) => Decimal,
): Decimal {
  return role === "alkali" && composition !== undefined ? what(composition) : ZERO;
}

/** mg of sodium; what is not stated counts as the most there is room for. */
const sodium: Per = (line) => {
  const contents = contentsOf(line);
  return dec((contents.sodium ?? roomBy("EU")(contents, "sodium")).value).div(HUNDRED);
};

/** Lines whose amounts are sought, and the rest. The tap water always is: where the spec states the water, that is a want. */
export interface Sought {
  readonly unknowns: readonly FormulaLine[];
  readonly sums: (per: Per) => Sum;
}

export function soughtIn({ lines }: Formula, open: OpenPlaces): Sought {
  const isOpen = ({ role, path }: FormulaLine): boolean =>
    role === "water" || (role === "salt" && open.salt) || (role === "alkali" && open.alkali.includes(Number(path[1])));
  const [unknowns, rest] = [lines.filter(isOpen), lines.filter((line) => !isOpen(line))];
  const sums = (per: Per): Sum => [
    ...unknowns.map(per),
    sum(rest.map((line) => dec(line.parts.value).times(per(line)))),
  ];
  return { unknowns, sums };
}

/** What each part of water in the dough, of tap water and of the dough comes to, for the way in which water is stated. */
export function waterSums({ sums }: Sought) {
  return { added: sums(added), water: sums(water), tap: sums(tap), mass: sums(mass) };
}

/**
 * All that is wanted of the amounts to be found, what is stated of the water among it.
 *
 * A value is met as one of stated amounts is, and all values come first, to be aimed at before the middle of any range.
 * Problems: `settle.alkali`, `settle.salt`, `settle.water` (what is missing in the spec), and those of `bowlWeight`.
 */
export function wantsOf(spec: Spec, formula: Formula, open: OpenPlaces, sought: Sought): Outcome<readonly Want[]> {
  const parts = [
    alkaliWants(spec, open, sought),
    saltWants(spec, open, sought),
    waterWants(spec, formula, open, sought),
  ];
  const problems = parts.flatMap((one) => (one.ok ? [] : one.problems));
  if (problems.length > 0) return refuse(...problems);
  const wants = parts.flatMap((one) => (one.ok ? one.value : []));
  return answer(
    [true, false].flatMap((is) => wants.filter(({ isValue }) => isValue === is)),
    parts.flatMap((one) => (one.ok ? one.notes : [])),
  );
}

/** Doses that are not refused, as sums that are zero or more. */
export function doseRows({ accept }: Spec, { sums }: Sought): readonly Sum[] {
  const most = mostDoses(accept);
  const below = (per: Per, bound: Decimal | undefined): readonly Sum[] =>
    bound === undefined
      ? []
      : [sums(per).map((value, index, all) => (index === all.length - 1 ? bound : ZERO).minus(value))];
  return [
    ...below(anhydrous, most.alkali?.anhydrous),
    ...below(alkalinity, most.alkali?.alkalinity),
    ...below(salt, most.salt),
  ];
}

/** A want without its bounds. */
type Asked = readonly [naming: Pick<Want, "label" | "unit">, quotient: Quotient, bounds: Bounds | undefined];

function wantsFrom(asked: readonly Asked[], spec: Spec): readonly Want[] {
  return asked.flatMap(([naming, quotient, bounds]) => {
    if (bounds === undefined) return [];
    const { text, value, aim } = bounds;
    const ends = roomOf(bounds, spec);
    const [low, high] = [ends.least, ends.most].map((end) => end && dec(end));
    if (!low && !high) return [];
    const middle = low && high ? low.plus(high).div(2) : (low ?? high ?? ZERO);
    return {
      ...naming,
      ...quotient,
      wanted: text,
      ...(low && { least: low }),
      ...(high && { most: high }),
      aim: dec(value ?? aim ?? middle),
      room: dec(roomAround("1", spec)),
      isValue: value !== undefined,
    };
  });
}

/** As many wants as there are products to be found, at least: strength and ratio. */
function alkaliWants(spec: Spec, { alkali: open }: OpenPlaces, { sums }: Sought): Outcome<readonly Want[]> {
  if (open.length === 0) return answer([]);
  const { wanted = {} } = spec;
  const flour = sums(mass).map((_, index, all) => (index === all.length - 1 ? ONE : ZERO));
  const [soda, potassium] = [sums(sodaAsh), sums(potash)];
  const strength: Asked = [
    { label: "alkalinity M", unit: "meq/100 g flour" },
    { top: sums(alkalinity), bottom: flour },
    wanted.alkalinity,
  ];
  const salts: Asked = [
    { label: "anhydrous alkaline salts", unit: "% of flour" },
    { top: sums(anhydrous), bottom: flour },
    wanted.anhydrousSalts,
  ];
  const ratio: Asked = [
    { label: "potassium carbonate", unit: "% of the carbonates" },
    { top: potassium.map((one) => one.times(HUNDRED)), bottom: plus(soda, potassium) },
    wanted.potassiumShare,
  ];
  const isStated = ([, , bounds]: Asked): boolean => bounds !== undefined && bounds.text !== "any";
  const wants = wantsFrom(isStated(strength) ? [strength, ratio, salts] : [salts, ratio], spec);
  if (wants.length >= open.length) return answer(wants);
  const ratioIsStated = wants.some(({ label }) => label === ratio[0].label);
  const lacking = [
    ...(wants.length > (ratioIsStated ? 1 : 0) ? [] : ["strength"]),
    ...(open.length === 1 || ratioIsStated ? [] : ["ratio"]),
  ];
  return refuse(problem("settle.alkali", ["wanted"], { open: open.length, stated: wants.length, lacking }));
}

function plus(one: Sum, other: Sum): Sum {
  return one.map((value, index) => value.plus(other[index] ?? ZERO));
}

/** Salt of the dough or of a cooked bowl, and the most sodium of a bowl. */
function saltWants(spec: Spec, open: OpenPlaces, { sums }: Sought): Outcome<readonly Want[]> {
  if (!open.salt && open.alkali.length === 0) return answer([]);
  const { saltInDough, saltInBowl, sodium: mostSodium } = spec.wanted ?? {};
  const weight = bowlWeight(spec);
  if (!weight.ok) return weight;
  const raw = weight.value.raw?.value;
  const bottom = sums(mass);
  const kept = dec(raw ?? 0)
    .times(keptInBoiling().sodium.value)
    .div(100);
  const inDough: Asked = [
    { label: "salt in the dough", unit: "% of dough" },
    { top: sums(salt).map((one) => one.times(HUNDRED)), bottom },
    saltInDough,
  ];
  const inBowl: Asked = [
    { label: "salt in a cooked bowl", unit: "g" },
    { top: sums(salt).map((one) => one.times(kept)), bottom },
    raw === undefined ? undefined : saltInBowl,
  ];
  const wants = open.salt ? wantsFrom([inDough, inBowl], spec) : [];
  if (open.salt && wants.length === 0) {
    const bowl = saltInBowl === undefined ? "" : "without the weight of a bowl";
    return refuse(problem("settle.salt", ["wanted"], { bowl }));
  }
  const ofSodium: readonly Want[] =
    mostSodium === undefined || raw === undefined
      ? []
      : [
          {
            label: "sodium of a cooked bowl",
            unit: "mg",
            wanted: `at most ${mostSodium.text}`,
            top: sums(sodium).map((one) => one.times(kept)),
            bottom,
            most: dec(mostSodium.value).times(1000),
            room: ZERO,
            isValue: false,
          },
        ];
  return answer(
    [...wants, ...ofSodium],
    open.salt && saltInDough === undefined ? [note("settle.boiled", ["wanted", "saltInBowl"], {})] : [],
  );
}

/** The water as stated; or, where it is open, as wanted; or as the flours take it by the kitchen's own figures. */
function waterWants(spec: Spec, formula: Formula, open: OpenPlaces, sought: Sought): Outcome<readonly Want[]> {
  const all = waterSums(sought);
  const flour = all.mass.map((_, index) => (index === all.mass.length - 1 ? ONE : ZERO));
  const ofDough = [
    { label: "dough water", unit: "% of dough" },
    { top: all.water.map((one) => one.times(HUNDRED)), bottom: all.mass },
  ] as const;
  const ofFlour = [
    { label: "added water", unit: "% of flour" },
    { top: all.added, bottom: flour },
  ] as const;
  const poured = { label: "water poured in", unit: "% of flour", top: all.tap, bottom: flour };
  const { doughWater, addedWater } = spec.wanted ?? {};
  const asked: readonly Asked[] = [
    [...ofDough, doughWater],
    [...ofFlour, addedWater],
  ];
  const wants = open.water === undefined ? [] : wantsFrom(asked, spec);
  if (wants.length > 0) return answer(wants);
  const stated = open.water === undefined ? statedWater(spec, formula) : takenWater(formula, open.water);
  if (!stated.ok) return stated;
  const { key, value, text } = stated.value;
  const [naming, quotient] = key === "dough" ? ofDough : key === "added" ? ofFlour : [poured, poured];
  const want = { ...naming, ...quotient, wanted: text, least: value, most: value, room: ZERO, isValue: false };
  return answer([want], stated.notes);
}

interface StatedWater {
  readonly key: "added" | "tap" | "dough";
  readonly value: Decimal;
  readonly text: string;
}

function statedWater({ water: stated }: Spec, { water: of }: Formula): Outcome<StatedWater> {
  const key = stated.dough !== undefined ? "dough" : stated.added !== undefined ? "added" : "tap";
  const figure = key === "dough" ? of.doughWater : of[key];
  return answer({ key, value: dec(figure.value), text: `${stated[key]?.text ?? ""} as the spec states` });
}

function takenWater({ lines }: Formula, place: NonNullable<OpenPlaces["water"]>): Outcome<StatedWater> {
  const flours = lines.filter(({ role, parts }) => role === "flour" && !dec(parts.value).isZero());
  const unknown = flours.filter(({ material }) => material.absorption === undefined).map(({ name }) => name);
  if (unknown.length > 0) return refuse(problem("settle.water", ["water", place], { names: unknown }));
  const taken = flours.map(({ parts, material }) =>
    dec(parts.value)
      .times(material.absorption?.percent ?? 0)
      .div(100),
  );
  return answer({ key: "added" as const, value: sum(taken), text: "what the flours take" }, [
    note("settle.own-water", ["water"], {}),
  ]);
}
