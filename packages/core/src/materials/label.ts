import { known } from "../chemistry/salts/record.ts";
import { answer, type Note, note, type Outcome, type Problem, problem, problemsOf, refuse } from "../figure/problem.ts";
import {
  type Decimal,
  type DecimalInput,
  type DecimalText,
  dec,
  decimalText,
  HUNDRED,
  ZERO,
} from "../number/decimal.ts";
import { type Interval, impliedBy } from "./declare.ts";
import type { LabelFigures } from "./doubt-schema.ts";
import { flourFactor, labelFactor } from "./nitrogen.ts";
import { nutrients } from "./nutrients.ts";
import { type RuleBookName, ruleBooks } from "./rounding-rules.ts";

/** The protein line of a nutrition label; a serving in g, which is 100 g outside the United States where it is left out. */
export interface ProteinLabel extends Pick<LabelFigures, "protein" | "servingRounded" | "rules"> {
  readonly serving?: DecimalText | undefined;
  /** The nitrogen factor behind the label; where left out, what the rule book says, or else any from 5.7 to 6.25. */
  readonly nitrogenFactor?: DecimalText | undefined;
}

/** Factors a label may rest on where it does not say. Between 5.7 and 6.25 lie all that are in use for flour. */
const possibleFactors: Readonly<Record<RuleBookName, readonly [DecimalText, DecimalText]>> = {
  US: [flourFactor, labelFactor],
  EU: [labelFactor, labelFactor],
  JP: [flourFactor, labelFactor],
};

/**
 * The protein content that nutrition labels of one flour leave open, % as is.
 *
 * Several labels (other packs, another country's pack) narrow the range to what all of them allow. In the United States
 * and the European Union the range is that of the rounding; in Japan it is the tolerance of the standard.
 *
 * @param labels - one or more
 * @param to - nitrogen factor that is wanted
 * Problems: `label.serving`, those of `impliedBy`, and `label.disagree` when no protein content fits all the labels.
 * @example readLabels([{ rules: "US", protein: "4", serving: "30", nitrogenFactor: "5.7" }]).value.high // => "15"
 */
export function readLabels(labels: readonly ProteinLabel[], to = flourFactor): Outcome<Interval> {
  const readings = labels.map((label) => readOne(label, to));
  const problems = readings.flatMap((reading, index) =>
    problemsOf(reading).map((problem) => ({ ...problem, path: [index, ...problem.path] })),
  );
  if (problems.length > 0) return refuse(...problems);
  const common = readings.flatMap((reading) => (reading.ok ? [reading.value] : [])).reduce(narrower);
  const { low, lowIncluded, high, highIncluded } = common;
  if (dec(low).lt(high) || (dec(low).eq(high) && lowIncluded && highIncluded)) return answer(common, notesFor(labels));
  return refuse(problem("label.disagree", [], { low: dec(low).toFixed(2), high: dec(high).toFixed(2) }));
}

function readOne(label: ProteinLabel, to: DecimalText): Outcome<Interval> {
  const { rules, protein, serving = ruleBooks[rules].per === "100 g" ? "100" : undefined, nitrogenFactor } = label;
  const implied = impliedBy(nutrients.protein.label[rules], protein, rules);
  const problems: Problem[] = problemsOf(implied).map((problem) => ({ ...problem, path: ["protein"] }));
  if (serving === undefined) problems.push(problem("label.serving", ["serving"], {}));
  if (!implied.ok || serving === undefined) return refuse(...problems);
  const span = rules === "JP" ? withinTolerance(protein, implied.value, serving) : implied.value;
  const [least, most] = nitrogenFactor === undefined ? possibleFactors[rules] : [nitrogenFactor, nitrogenFactor];
  const slack = label.servingRounded === true ? halfLastDigit(serving) : ZERO;
  const percent = (grams: DecimalText, mass: Decimal, factor: DecimalInput): DecimalText =>
    decimalText(dec(grams).times(HUNDRED).div(mass).times(to).div(factor));
  const low = percent(span.low, dec(serving).plus(slack), most);
  return answer({ ...span, low, high: percent(span.high, dec(serving).minus(slack), least) });
}

/** What two ranges have in common; the ends may then be the wrong way round. */
function narrower(a: Interval, b: Interval): Interval {
  const lowOf = dec(a.low).comparedTo(b.low);
  const highOf = dec(a.high).comparedTo(b.high);
  return {
    low: lowOf >= 0 ? a.low : b.low,
    lowIncluded: (lowOf < 0 || a.lowIncluded) && (lowOf > 0 || b.lowIncluded),
    high: highOf <= 0 ? a.high : b.high,
    highIncluded: (highOf > 0 || a.highIncluded) && (highOf < 0 || b.highIncluded),
  };
}

/** Half of the last digit of a number as printed. @example halfLastDigit("30").toString() // => "0.5" */
export function halfLastDigit(printed: DecimalText): Decimal {
  const places = printed.split(".")[1]?.length ?? 0;
  return dec(10).pow(-places).div(2);
}

/** What Japan's tolerance leaves open about a declared value. */
function withinTolerance(printed: string, implied: Interval, serving: DecimalText): Interval {
  const declared = /\d+(?:\.\d+)?|\.\d+/u.exec(printed)?.[0] ?? "0";
  const perHundred = dec(declared).times(HUNDRED).div(serving);
  const tolerance = known(nutrients.protein.tolerance)?.findLast(({ from }) => perHundred.gte(from));
  if (tolerance === undefined) return implied;
  const { allowed } = tolerance;
  const slack =
    "percent" in allowed
      ? dec(declared).times(allowed.percent).div(HUNDRED)
      : dec(allowed.grams).times(serving).div(HUNDRED);
  const low = dec(declared).minus(slack);
  const high = decimalText(dec(declared).plus(slack));
  return { low: decimalText(low.lt(ZERO) ? ZERO : low), lowIncluded: true, high, highIncluded: true };
}

function notesFor(labels: readonly ProteinLabel[]): readonly Note[] {
  const open = labels.some(({ rules, nitrogenFactor }) => nitrogenFactor === undefined && rules !== "EU");
  return [
    ...(open ? [note("label.factor-unknown", [], {})] : []),
    ...(labels.some(({ rules }) => rules !== "JP") ? [note("label.rounding-only", [], {})] : []),
  ];
}
