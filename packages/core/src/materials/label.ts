import { known } from "../chemistry/salts/record.ts";
import { type Figure, worked } from "../figure/figure.ts";
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
import {
  type Bounds,
  disagreement,
  isEmpty,
  narrower,
  type ProteinRange,
  printedFigure,
  printedSource,
  withMiddle,
} from "./label-range.ts";
import { flourFactor, labelFactor } from "./nitrogen.ts";
import { nutrients } from "./nutrients.ts";
import { type RuleBookName, ruleBooks } from "./rounding-rules.ts";

/** The protein line of a nutrition label. */
export interface ProteinLabel {
  readonly book: RuleBookName;
  /** As printed: `4`, `<1`, `12`, `9.6`. */
  readonly printed: string;
  /** What the printed value is for, g: the serving in the United States; 100 elsewhere where left out. */
  readonly serving?: DecimalText;
  /** Whether the serving may be off by half its last digit. */
  readonly servingRounded?: boolean;
  /** The nitrogen factor behind the label; where left out, what the rule book says, or else any from 5.7 to 6.25. */
  readonly nitrogenFactor?: DecimalText;
}

/** Factors a label may rest on where it does not say. Between 5.7 and 6.25 lie all that are in use for flour. */
const possibleFactors: Readonly<Record<RuleBookName, readonly [DecimalText, DecimalText]>> = {
  US: [flourFactor, labelFactor],
  EU: [labelFactor, labelFactor],
  JP: [flourFactor, labelFactor],
};

/**
 * The protein content that nutrition labels of one flour leave open, as is.
 *
 * Several labels (other packs, another country's pack) narrow the range to what all of them allow. In the United States
 * and the European Union the range is that of the rounding; in Japan it is the tolerance of the standard.
 *
 * Problems: `label.serving`, those of `impliedBy`, and `label.disagree` when no protein content fits all the labels.
 * @param labels - one or more
 * @param factor - nitrogen factor that the protein is wanted with; that of flour specifications unless stated
 * @example readLabels([{ book: "US", printed: "4", serving: "30", nitrogenFactor: "5.7" }]).value.high.value // => "15"
 */
export function readLabels(labels: readonly ProteinLabel[], factor: DecimalText = flourFactor): Outcome<ProteinRange> {
  const read = labels.map((label, index) => readOne(label, index, factor));
  const problems = read.flatMap((one, index) =>
    problemsOf(one).map((problem) => ({ ...problem, path: [index, ...problem.path] })),
  );
  if (problems.length > 0) return refuse(...problems);
  const common = read.flatMap((one) => (one.ok ? [one.value] : [])).reduce(narrower);
  if (isEmpty(common)) return refuse(disagreement(common));
  return answer(withMiddle(common, "label.as-is", `protein as is, N × ${factor}`), notesFor(labels));
}

function readOne(label: ProteinLabel, index: number, to: DecimalText): Outcome<Bounds> {
  const { book, printed, serving = ruleBooks[book].per === "100 g" ? "100" : undefined, nitrogenFactor } = label;
  const rule = nutrients.protein.label[book];
  const implied = impliedBy(rule, printed, book);
  const problems: Problem[] = problemsOf(implied).map((problem) => ({ ...problem, path: ["printed"] }));
  if (serving === undefined) problems.push(problem("label.serving", ["serving"], {}));
  if (!implied.ok || serving === undefined) return refuse(...problems);
  const span = book === "JP" ? withinTolerance(printed, implied.value, serving) : implied.value;
  const [least, most] = nitrogenFactor === undefined ? possibleFactors[book] : [nitrogenFactor, nitrogenFactor];
  const slack = label.servingRounded === true ? halfLastDigit(serving) : ZERO;
  const place = `label.${index + 1}`;
  const percent = (end: "least" | "greatest", value: DecimalText, mass: DecimalInput, factor: DecimalText): Figure =>
    worked(
      { id: `label.${end}`, label: `${end} protein of label ${index + 1}`, unit: "%", places: 2 },
      "protein * 100 / serving * to / from",
      {
        protein: printedFigure(`${place}.protein.${end}`, `${end} protein printed as ${printed}`, "g", value),
        serving: printedFigure(`${place}.serving.${end}`, "serving", "g", mass),
        to: printedFigure("label.factor-wanted", "nitrogen factor wanted", "", to),
        from: printedFigure(`${place}.factor.${end}`, "nitrogen factor of the label", "", factor),
      },
      printedSource,
      rule.source,
    );
  return answer({
    low: percent("least", span.low, dec(serving).plus(slack), most),
    lowIncluded: span.lowIncluded,
    high: percent("greatest", span.high, dec(serving).minus(slack), least),
    highIncluded: span.highIncluded,
  });
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
  return {
    low: decimalText(low.lt(ZERO) ? ZERO : low),
    lowIncluded: true,
    high: decimalText(dec(declared).plus(slack)),
    highIncluded: true,
  };
}

function notesFor(labels: readonly ProteinLabel[]): readonly Note[] {
  const open = labels.some(({ book, nitrogenFactor }) => nitrogenFactor === undefined && book !== "EU");
  return [
    ...(open ? [note("label.factor-unknown", [], {})] : []),
    ...(labels.some(({ book }) => book !== "JP") ? [note("label.rounding-only", [], {})] : []),
  ];
}
