import { type Cause, causeWords } from "../explore/cause.ts";
import type { BatchTolerance } from "../explore/spec-tolerance.ts";
import type { Tolerance } from "../explore/tolerance.ts";
import { isSpreadShown, shareBar, trialPicture } from "../explore/tolerance-picture.ts";
import type { Figure } from "../figure/figure.ts";
import { inSystem, inUnit, type UnitSystem } from "../figure/in-system.ts";
import type { Formula } from "../formula/formula.ts";
import { type DecimalText, dec, decimalText, fixedText } from "../number/decimal.ts";
import { listing, numberColumn, type Part, pictureBlock, report, section, wordColumn } from "./build.ts";
import { barPicture } from "./pictures/bar.ts";
import type { Report, Section, Table, Telling } from "./schema.ts";
import { alkalinityEnds, capital, figureCell, numberCell } from "./show.ts";

/** Signs of the longest bar of a picture in text. */
const barWidth = 32;
/** Causes with less of the spread than this, %, are told together. */
const leastShown = 0.5;

/** Tells what errors do to a load: the range of each figure, the share of each cause, and which error matters most. */
export function toleranceReport(
  formula: Formula,
  tolerance: BatchTolerance,
  { notes, units = "metric" }: Telling,
): Report {
  const { outputs: metric, causes: metricCauses, exact } = tolerance;
  const outputs = metric.map((output) => inUnits(output, units));
  const causes = metricCauses.map((cause) => causeIn(cause, units));
  const errors = listing("errors", causes, [[wordColumn("cause", "what"), causeText], ...errorColumns("±")]);
  return report({
    command: "tolerance",
    title: `${formula.name}, what errors do to one load`,
    main: "ranges",
    sections: [
      section("unstated", "Errors that nobody stated", ...unstatedBlocks(causes, exact)),
      section("ranges", "How far each figure may be off", rangesTable(outputs), [
        `Least and greatest: every error ${exact.length === 0 ? "" : "that is told "}at its worst, exactly. 95 of 100: by random trials, each error evenly spread.`,
        ...(outputs.some(({ id }) => id === "alkali") ? [alkalinityEnds] : []),
      ]),
      section("matters", "Which error matters", outputs.flatMap(mattersMost)),
      ...outputs.flatMap(shareSections),
      section("errors", "Errors that were reckoned with", errors),
    ],
    figures: metric.flatMap(({ figure, deviation, shares }) => [
      figure,
      deviation,
      ...shares.flatMap(({ share, reach }) => [share, reach]),
    ]),
    from: [tolerance, formula],
    units,
    notes,
  });
}

/** An output in the units of a system, with the trials and what each cause does to it. */
function inUnits(output: Tolerance, units: UnitSystem): Tolerance {
  const { id, figure, simulated, deviation, shares } = output;
  const shown = (one: Figure): Figure => inSystem(one, units, figure);
  const number = (value: DecimalText): DecimalText => shown({ ...figure, value }).value;
  const { low, high, middle, classes } = simulated;
  return {
    id,
    figure: shown(figure),
    simulated: {
      ...simulated,
      low: number(low),
      high: number(high),
      deviation: number(simulated.deviation),
      middle: { low: number(middle.low), high: number(middle.high) },
      classes: classes.map((one) => ({ ...one, from: number(one.from), to: number(one.to) })),
    },
    deviation: shown(deviation),
    shares: shares.map((one) => ({ ...one, cause: causeIn(one.cause, units), reach: shown(one.reach) })),
  };
}

/** A cause as a scale of the system shows it. */
function causeIn(cause: Cause, units: UnitSystem): Cause {
  const [value, plusMinus] = [cause.value, cause.plusMinus].map((one) => {
    const mass = { value: one, unit: cause.unit, places: 0 };
    return units === "us" ? inUnit(mass, "oz") : mass;
  });
  return value && plusMinus ? { ...cause, value: value.value, plusMinus: plusMinus.value, unit: value.unit } : cause;
}

function rangesTable(outputs: readonly Tolerance[]): Table {
  const cell = (value: string, { figure: { unit, places } }: Tolerance, more = 0) =>
    numberCell(value, unit, places + more);
  return listing("ranges", outputs, [
    [wordColumn("figure", "figure"), ({ figure }) => figure.label],
    [wordColumn("unit", "unit"), ({ figure }) => figure.unit],
    [numberColumn("value", "value"), ({ figure }) => figureCell(figure)],
    [numberColumn("least", "least"), (one) => cell(one.figure.range?.low ?? one.figure.value, one)],
    [numberColumn("greatest", "greatest"), (one) => cell(one.figure.range?.high ?? one.figure.value, one)],
    [numberColumn("low-95", "95 of 100, from"), (one) => cell(one.simulated.middle.low, one)],
    [numberColumn("high-95", "to"), (one) => cell(one.simulated.middle.high, one)],
    [numberColumn("deviation", "standard deviation"), ({ deviation }) => figureCell(deviation)],
    [numberColumn("deviation-trials", "in the trials"), (one) => cell(one.simulated.deviation, one, 1)],
  ]);
}

/** What was taken as exact. */
export function exactLines(exact: readonly string[]): readonly string[] {
  return exact.length === 0 ? [] : [`Taken as exact, since nothing tells an error: ${exact.join("; ")}.`];
}

/** Errors that had to be assumed, and what was taken as exact. */
function unstatedBlocks(causes: BatchTolerance["causes"], exact: readonly string[]): readonly Part[] {
  const assumed = causes.filter((cause) => cause.assumed !== undefined);
  const lines = [
    ...(assumed.length === 0
      ? []
      : ["These are assumed, and the answer is no better than they are: ask the mill, and state the errors."]),
    ...exactLines(exact),
  ];
  const unstated = listing("unstated", assumed, [
    [wordColumn("cause", "what"), causeWords],
    ...errorColumns("± assumed"),
    [wordColumn("from", "from"), (cause) => cause.assumed ?? ""],
  ]);
  return [unstated, lines];
}

/** A cause, and whether its error had to be assumed. */
function causeText(cause: Cause): string {
  return cause.assumed === undefined ? causeWords(cause) : `${causeWords(cause)} (error assumed)`;
}

function mattersMost(output: Tolerance): readonly string[] {
  const { figure, shares } = output;
  const [first] = shares;
  if (first === undefined || dec(first.share.value).isZero()) return [`${figure.label}: no error reaches it.`];
  if (!isSpreadShown(output)) return [`${figure.label}: no error moves it as far as its last digit.`];
  const { cause, share, reach } = first;
  return [
    `${figure.label}: ${causeText(cause)} makes ${fixedText(share.value, 0)} % of the spread; alone it moves it by ± ${fixedText(reach.value, figure.places)} ${figure.unit}.`,
  ];
}

function shareSections(output: Tolerance): readonly Section[] {
  const { id, figure, shares, simulated } = output;
  const seen = shares.filter(({ share }) => dec(share.value).gte(leastShown));
  if (seen.length === 0 || !isSpreadShown(output)) return [];
  const rest = shares.filter(({ share }) => dec(share.value).lt(leastShown) && !dec(share.value).isZero());
  const causes = listing(`${id}-causes`, seen, [
    [wordColumn("cause", "cause"), ({ cause }) => causeText(cause)],
    [numberColumn("share", "share, %"), ({ share }) => figureCell(share)],
    [numberColumn("reach", `alone, ± ${figure.unit}`), ({ reach }) => figureCell(reach)],
    [wordColumn("bar", ""), (one) => shareBar(one, barWidth)],
  ]);
  const parts = seen.map(({ cause, share }) => ({ words: causeText(cause), value: share.value }));
  const restValue = rest.reduce((total, { share }) => total.plus(share.value), dec(0));
  const all = restValue.isZero() ? parts : [...parts, { words: "all others", value: decimalText(restValue) }];
  const picture = barPicture({ id: `${id}-causes`, title: `Shares of the spread: ${figure.label}` }, all, "%", 1);
  const heading = capital(figure.label);
  const trials = listing(`${id}-trials`, trialPicture(output, barWidth), [
    [wordColumn("class", figure.unit), ({ label }) => label],
    [numberColumn("count", "trials"), ({ shown }) => shown],
    [wordColumn("bar", ""), ({ bar }) => bar],
  ]);
  return [
    section(
      `${id}-causes`,
      `${heading}: causes`,
      causes,
      rest.length === 0
        ? []
        : [`${rest.length} ${rest.length === 1 ? "other" : "others"}, together ${fixedText(restValue, 1)} %.`],
      pictureBlock(picture),
    ),
    section(`${id}-trials`, `${heading}: ${simulated.draws} trials, seed ${simulated.seed}`, trials),
  ];
}

function errorColumns(plusMinus: string) {
  const cell = (value: string, cause: Cause) =>
    numberCell(value, cause.unit, Math.min(3, Math.max(1, dec(cause.plusMinus).decimalPlaces())));
  return [
    [numberColumn("value", "value"), (cause: Cause) => cell(cause.value, cause)],
    [numberColumn("plus-minus", plusMinus), (cause: Cause) => cell(cause.plusMinus, cause)],
    [wordColumn("unit", "unit"), ({ unit }: Cause) => unit],
  ] as const;
}
