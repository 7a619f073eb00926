import { isFoundByWants } from "../../explore/found-figures.ts";
import type { Figure } from "../../figure/figure.ts";
import { inSystem } from "../../figure/in-system.ts";
import { everyLine } from "../../formula/line.ts";
import { dryRatio } from "../../materials/moisture.ts";
import { dec, decimalText } from "../../number/decimal.ts";
import { findUnit } from "../../number/units.ts";
import type { InputLimits } from "../../render/workbook/cells.ts";
import { literal } from "../../render/workbook/formulas.ts";
import type { InputFigure, InputGroup } from "../../render/workbook/workbook.ts";
import type { Made, Rules } from "./made.ts";
import { unpricedFigures } from "./wants.ts";

/** What a salt or another ingredient is made of. */
const contents = /^(?:alkali|ingredient)\.\d+\.(?:moisture|[A-Z]\w+)$/u;

/** Headings of the inputs, and the figures under each, in the order in which a sheet has them. */
const inputHeadings: readonly (readonly [heading: string, ...ids: RegExp[]])[] = [
  ["Batch", /^(?:batch\.(?:bowls|dough|flour-stated|have)|bowl\.|mixer\.|rework\.stated$|loss\.)/u],
  [
    "Flours",
    /^flour\.(?:\d+\.(?:parts|written|moisture|(?:protein|ash)(?:-stated|-basis)?|nitrogen-factor)|reference-moisture)$/u,
  ],
  ["Water", /^water\.(?:added|tap|dough)-(?:stated|written)$|^water\.tap$/u],
  ["Salts and other ingredients", /^(?:(?:alkali|ingredient)\.\d+|salt|dusting)\.(?:parts|stated)$/u, contents],
  ["Scales", /^scale\./u, /^weighing\.tolerance$/u],
  ["Prices", /^(?!wanted\.).*\.price$/u],
  ["Wanted", /^wanted\./u],
  ["Store", /^shopping\..*\.(?:on-hand|pack)$/u],
];

/** Which numbers the spec takes, by the figure that they become; the others may be anything from zero on. */
const limits: readonly (readonly [ids: RegExp, takes: InputLimits])[] = [
  [/^batch\.bowls$/u, { least: 1, most: 1_000_000, whole: true }],
  [/^bowl\.cook-gain$/u, { above: 0.5, most: 5 }],
  [/^(?:batch|bowl|mixer|scale)\.|\.pack$/u, { above: 0 }],
  [/^loss\./u, { most: 90 }],
  [/^wanted\.sodium/u, { above: 0 }],
  [/^weighing\.tolerance$/u, { above: 0, most: 100 }],
  [/\.nitrogen-factor$/u, { above: 4, most: 7 }],
  [/^flour\.reference-moisture$/u, { most: 40 }],
  [/^water\.dough-stated$/u, { above: 0, most: 70 }],
];

/**
 * What may be changed: what was given or found for the spec, and of what a product is made of, what it has. What the spec has
 * none of is not weighed, so that no amount of it can be typed.
 */
export function inputGroups(made: Made, rules: Rules): readonly InputGroup[] {
  const unweighed = everyLine(made.noodle.formula).filter(
    ({ id }) => id !== "water" && !made.weighed.some(({ line }) => line.id === id),
  );
  const changeable = Object.values(made.graph).filter((figure) => {
    const { id, working, value } = figure;
    if (working.kind !== "given" && !isFoundByWants(figure)) return false;
    if (id in rules || (contents.test(id) && dec(value).isZero())) return false;
    return !unweighed.some((line) => id.startsWith(`${line.id}.`));
  });
  return inputHeadings.flatMap(([heading, ...ids]) => {
    const figures = ids.flatMap((some) => changeable.filter(({ id }) => some.test(id)));
    return figures.length === 0 ? [] : [{ heading, figures: figures.map((figure) => inputShown(figure, made)) }];
  });
}

/** The most that a unit lets a number be: of a share all of it, of a mass but that of a pack 1000 tonnes. */
function mostOf({ id }: Figure, unit: string): InputLimits {
  if (unit === "%" || (id.startsWith("wanted.") && unit.startsWith("%"))) return { most: 100 };
  const { dimension, factor = 1 } = findUnit(unit) ?? {};
  const most = dec(1_000_000_000).div(factor).floor().toNumber();
  return dimension === "mass" && !id.endsWith(".pack") ? { most } : {};
}

/** Where the number of an input is from, in a word, where the spec does not say it. */
function originOf(figure: Figure, made: Made): string | undefined {
  const { id, working, sources } = figure;
  const [source] = sources;
  if (isFoundByWants(figure)) return "found";
  if (unpricedFigures(made).includes(id) || source?.standing === "practice") return "not stated";
  if (working.kind === "given" && working.by.startsWith("assumed")) return "assumed";
  return source?.standing === "user" ? undefined : "catalogue";
}

/** Whether it is the dose of a product that another takes the place of: of none there is nothing to replace. */
function isReplaced({ id }: Figure, { noodle: { spec } }: Made): boolean {
  const [, number] = /^alkali\.(\d+)\.(?:parts|stated)$/u.exec(id) ?? [];
  return number !== undefined && spec.alkali?.[Number(number) - 1]?.replaceWith !== undefined;
}

/** Masses of a kitchen that speaks in US units are typed in these, but what a scale in grams shows; prices by weight too. */
function inputShown(figure: Figure, made: Made): InputFigure {
  const { noodle, graph, scales } = made;
  const { units, formula } = noodle;
  const { id } = figure;
  const scale = scales[Number(/^scale\.(\d+)\./u.exec(id)?.[1]) - 1];
  const unit = scale?.unit.endsWith("g") || id.startsWith("wanted.") ? figure.unit : inSystem(figure, units).unit;
  const places = Math.min(unit === figure.unit ? Math.max(figure.places, dec(figure.value).decimalPlaces()) : 3, 6);
  const takes = {
    ...mostOf(figure, unit),
    ...limits.find(([ids]) => ids.test(id))?.[1],
    ...(isReplaced(figure, made) && { above: 0 }),
    ...(unpricedFigures(made).includes(id) && { optional: true as const }),
  };
  const from = originOf(figure, made);
  const [, of = "", what = ""] = /^(flour\.\d+)\.(protein|ash)$/u.exec(id) ?? [];
  const line = formula.lines.find((one) => one.id === of);
  const moisture = graph[`${of}.moisture`];
  const source = line?.material.figureSources[what === "ash" ? "ash" : "protein"];
  const input = { id, unit, places, takes, from };
  if (source === undefined || source.standing === "user" || moisture === undefined) return input;
  // What a table tells holds at the moisture of the table: it goes with the dry matter when the moisture is another.
  const { value } = moisture;
  return {
    ...input,
    label: `${figure.label.replace(/ as is$/u, "")} at ${decimalText(dec(value))} % mb`,
    factor: (cell) => dryRatio(literal(value), cell(moisture.id)),
  };
}
