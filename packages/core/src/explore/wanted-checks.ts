import type { Batch } from "../batch/batch.ts";
import { costOf } from "../batch/cost.ts";
import { nutritionOf } from "../batch/nutrition.ts";
import { checksOfShares, checkTexts } from "../blend/blend-figures.ts";
import type { Check } from "../blend/blend-question.ts";
import { flourShelf } from "../blend/flour-shelf.ts";
import { roomOf } from "../blend/met.ts";
import { sharedQuestion, sharesNow, targetsOf } from "../blend/spec-question.ts";
import { type Figure, shown } from "../figure/figure.ts";
import { loudNote, type Note, note } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import type { OwnMaterials } from "../materials/own.ts";
import { dec, fixedText } from "../number/decimal.ts";
import type { Bounds } from "../spec/blend-schema.ts";
import type { Spec } from "../spec/spec.ts";

/** One thing that a spec wants, beside what its noodle comes to. */
export interface WantedCheck {
  readonly label: string;
  /** What it comes to, with its unit. */
  readonly reached: string;
  readonly wanted: string;
  readonly holds: boolean;
  /** What of a price that is missed costs most. */
  readonly dearest?: { readonly name: string; readonly cost: string };
}

/** The checks that can be made, and what cannot be told. */
export interface WantedChecks {
  readonly checks: readonly WantedCheck[];
  readonly notes: readonly Note[];
}

/**
 * Holds a formula against all that its spec wants: the blend, water, alkali and salt; and, of a batch, what a bowl costs.
 * What is reached counts as it is shown, and a value is met as `roomOf` says; protein within `within` where that is stated.
 */
export function wantedChecks(
  spec: Spec,
  formula: Formula,
  batch: Batch | undefined,
  extra: OwnMaterials = {},
): WantedChecks {
  const limits = { checks: shareChecks(spec, formula), notes: [] };
  if (spec.wanted === undefined) return limits;
  const parts = [
    limits,
    blendChecks(spec, formula, extra),
    formulaChecks(spec, formula),
    bowlChecks(spec, formula, batch),
  ];
  return { checks: parts.flatMap(({ checks }) => checks), notes: parts.flatMap(({ notes }) => notes) };
}

/** What is wanted and not met, one loud note each. */
export function missedNotes({ checks }: WantedChecks): readonly Note[] {
  return checks
    .filter(({ holds }) => !holds)
    .map(({ label, reached, wanted, dearest }) =>
      loudNote("wanted.missed", ["wanted"], { label, reached, wanted, ...(dearest && { dearest }) }),
    );
}

/** The shares of the flours that have a least or a most of their own. */
function shareChecks(spec: Spec, { lines }: Formula): readonly WantedCheck[] {
  return spec.flours.flatMap(({ name, least, most }, index) => {
    const share = lines.find(({ path }) => path[0] === "flours" && path[1] === index)?.parts;
    const ends = [least && `at least ${least.text}`, most && `at most ${most.text}`].filter((end) => end !== undefined);
    if (share === undefined || ends.length === 0) return [];
    const bounds = { text: ends.join(", "), ...(least && { least: least.value }), ...(most && { most: most.value }) };
    return check(`the share of ${name}`, share, bounds, spec);
  });
}

function blendChecks(spec: Spec, formula: Formula, extra: OwnMaterials): WantedChecks {
  const targets = targetsOf(spec);
  if (Object.keys(targets).length === 0) return { checks: [], notes: [] };
  const shelf = flourShelf(spec, formula, extra);
  const shared = shelf.ok ? sharedQuestion(spec, formula, shelf.value) : shelf;
  if (!shelf.ok || !shared.ok) {
    const problems = shelf.ok ? (shared.ok ? [] : shared.problems) : shelf.problems;
    return {
      checks: [],
      notes: problems.slice(0, 1).map((one) => note("wanted.no-blend", ["wanted"], { problem: one })),
    };
  }
  const inUse = shelf.value.flours.filter(({ share }) => !dec(share).isZero());
  const whole = spec.wanted?.wholeRange === true ? { ...targets, wholeRange: true } : targets;
  const prefer = { kind: "nearest" as const, to: sharesNow(shelf.value) };
  const question = { ...shared.value, flours: inUse.map(({ flour }) => flour), targets: whole, prefer };
  const checks = checksOfShares(
    question,
    inUse.map(({ share }) => share),
  ).filter(({ id }) => !id.startsWith("share."));
  return { checks: checks.map(asWanted), notes: [] };
}

function asWanted(check: Check): WantedCheck {
  const { label, holds } = check;
  return { label, ...checkTexts(check), holds };
}

function formulaChecks(spec: Spec, { water, alkali, salt }: Formula): WantedChecks {
  const { wanted = {} } = spec;
  const none = (unit: string) => ({ value: "0", unit, places: 2 });
  const saltInDough = {
    value: dec(salt.value).times(100).div(water.dough.value).toFixed(),
    unit: "% of dough",
    places: 2,
  };
  const checks = [
    check("added water", water.added, wanted.addedWater, spec),
    check("dough water", water.doughWater, wanted.doughWater, spec),
    check("alkalinity M", alkali?.alkalinityM ?? none("meq/100 g flour"), wanted.alkalinity, spec),
    check("anhydrous alkaline salts", alkali?.anhydrous ?? none("% of flour"), wanted.anhydrousSalts, spec),
    check("potassium carbonate", alkali?.potassiumShare ?? none("% of the carbonates"), wanted.potassiumShare, spec),
    check("salt in the dough", saltInDough, wanted.saltInDough, spec),
  ];
  return { checks: checks.flat(), notes: [] };
}

/** What a bowl holds when it is cooked, and what it costs. */
function bowlChecks(spec: Spec, formula: Formula, batch: Batch | undefined): WantedChecks {
  const { saltInBowl, sodium: mostSodium, bowlPrice } = spec.wanted ?? {};
  const checks: WantedCheck[] = [];
  const notes: Note[] = [];
  if (saltInBowl !== undefined || mostSodium !== undefined) {
    const nutrition = nutritionOf(spec, formula, { rules: "EU" });
    const bowl = nutrition.ok ? nutrition.value.bowl : undefined;
    if (!nutrition.ok || bowl === undefined) notes.push(note("wanted.no-bowl", ["wanted"], {}));
    else {
      const { amounts, kept } = nutrition.value;
      const salt = dec(formula.salt.value)
        .div(formula.water.dough.value)
        .times(bowl.raw.value)
        .times(kept.sodium.value)
        .div(100);
      checks.push(...check("salt in a cooked bowl", { value: salt.toFixed(), unit: "g", places: 2 }, saltInBowl, spec));
      const amount = amounts.find(({ name }) => name === "sodium");
      const figure = (amount?.most ?? amount)?.cooked.bowl;
      if (mostSodium !== undefined && figure !== undefined) {
        checks.push(atMost("sodium of a cooked bowl", figure, dec(mostSodium.value).times(1000).toFixed()));
        const { missing = [] } = amount ?? {};
        if (missing.length > 0) notes.push(note("wanted.sodium", ["wanted"], { names: missing }));
      }
    }
  }
  if (bowlPrice !== undefined) {
    const cost = batch && costOf(spec, formula, batch);
    const bowl = cost?.ok ? cost.value.bowl : undefined;
    if (bowl === undefined || bowl.unit !== bowlPrice.currency)
      notes.push(note("wanted.cost", ["wanted"], { currency: bowlPrice.currency }));
    else {
      const check = atMost("the cost of a bowl", bowl, bowlPrice.amount);
      const costs = cost?.ok
        ? cost.value.lines.flatMap(({ weighed, bowl: own }) => (own ? [{ weighed, own }] : []))
        : [];
      const [most] = costs.toSorted((one, other) => dec(other.own.value).cmp(one.own.value));
      const dearest = !check.holds && most && { dearest: { name: most.weighed.line.name, cost: shown(most.own) } };
      checks.push({ ...check, ...dearest });
    }
    if (cost?.ok && cost.value.unpriced.length > 0)
      notes.push(note("wanted.prices", ["wanted"], { names: cost.value.unpriced }));
  }
  return { checks, notes };
}

type Shown = Pick<Figure, "value" | "unit" | "places">;

function atMost(label: string, { value, unit, places }: Shown, most: string): WantedCheck {
  const reached = fixedText(value, places);
  return { label, reached: `${reached} ${unit}`, wanted: `at most ${most} ${unit}`, holds: dec(reached).lte(most) };
}

function check(
  label: string,
  { value, unit, places }: Shown,
  bounds: Bounds | undefined,
  spec: Spec,
): readonly WantedCheck[] {
  if (bounds === undefined) return [];
  const { least, most, plusMinus } = roomOf(bounds, spec);
  const reached = fixedText(value, places);
  const tooLittle = least !== undefined && dec(reached).lt(fixedText(least, places));
  const tooMuch = most !== undefined && dec(reached).gt(fixedText(most, places));
  const wanted = plusMinus === undefined ? bounds.text : `${bounds.text}, ± ${plusMinus}`;
  return [{ label, reached: `${reached} ${unit}`, wanted, holds: !tooLittle && !tooMuch }];
}
