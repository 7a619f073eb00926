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
import { type Interval, impliedBy, ruleFor } from "./declare.ts";
import {
  type Bounds,
  disagreement,
  isEmpty,
  moveBasis,
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

/** What the protein is wanted as. */
export interface LabelWish {
  /** Nitrogen factor; 5.7 where left out, as in flour specifications. */
  readonly nitrogenFactor?: DecimalText;
  /** Moisture of the flour, %, as a range; without it there is no value at a moisture basis. */
  readonly moisture?: { readonly low: DecimalText; readonly high: DecimalText };
  /** Moisture basis, %; 14 where left out. */
  readonly basis?: DecimalText;
}

/** What labels tell of the protein of a flour. */
export interface LabelReading {
  readonly asIs: ProteinRange;
  /** At the moisture basis; only where the moisture is known. */
  readonly onBasis?: ProteinRange;
}

/** Factors a label may rest on where it does not say. Between 5.7 and 6.25 lie all that are in use for flour. */
const possibleFactors: Readonly<Record<RuleBookName, readonly [DecimalText, DecimalText]>> = {
  US: [flourFactor, labelFactor],
  EU: [labelFactor, labelFactor],
  JP: [flourFactor, labelFactor],
};

/**
 * The protein content that nutrition labels of one flour leave open, as is and, given its moisture, at 14 % mb.
 *
 * Several labels (other packs, another country's pack) narrow the range to what all of them allow. In the United States
 * and the European Union the range is that of the rounding; in Japan it is the tolerance of the standard.
 *
 * Problems: `label.none`, `label.serving`, `label.factor`, `label.moisture-range`, those of `impliedBy`, and
 * `label.disagree` when no protein content fits all the labels.
 * @example readLabels([{ book: "US", printed: "4", serving: "30", nitrogenFactor: "5.7" }]).value.asIs.high.value // => "15"
 */
export function readLabels(labels: readonly ProteinLabel[], wish: LabelWish = {}): Outcome<LabelReading> {
  const to = wish.nitrogenFactor ?? flourFactor;
  const problems = wishProblems(wish);
  const ranges: Bounds[] = [];
  labels.forEach((label, index) => {
    const one = readOne(label, index, to);
    if (one.ok) ranges.push(one.value);
    else problems.push(...one.problems.map((problem) => ({ ...problem, path: [index, ...problem.path] })));
  });
  if (labels.length === 0) problems.push(problem("label.none", [], {}));
  if (problems.length > 0) return refuse(...problems);
  const common = ranges.reduce(narrower);
  if (isEmpty(common)) return refuse(disagreement(common));
  const asIs = withMiddle(common, "label.as-is", `protein as is, N × ${to}`);
  const notes = notesFor(labels);
  if (wish.moisture === undefined) return answer({ asIs }, notes);
  const basis = wish.basis ?? "14";
  const moved = moveBasis(common, wish.moisture, basis);
  return answer({ asIs, onBasis: withMiddle(moved, "label.on-basis", `protein at ${basis} % mb, N × ${to}`) }, notes);
}

function wishProblems({ moisture, basis = "14", nitrogenFactor = flourFactor }: LabelWish): Problem[] {
  const problems: Problem[] = [];
  const moistures = [basis, ...(moisture === undefined ? [] : [moisture.low, moisture.high])].map(dec);
  const turned = moisture !== undefined && dec(moisture.low).gt(moisture.high);
  if (turned || moistures.some((one) => one.lt(ZERO) || one.gte(HUNDRED))) {
    problems.push(problem("label.moisture-range", ["moisture"], moisture ?? { basis }));
  }
  if (dec(nitrogenFactor).lte(ZERO)) problems.push(factorProblem(nitrogenFactor));
  return problems;
}

function factorProblem(factor: DecimalText): Problem {
  return problem("label.factor", ["nitrogenFactor"], { factor });
}

function readOne(label: ProteinLabel, index: number, to: DecimalText): Outcome<Bounds> {
  const { book, printed, serving = ruleBooks[book].per === "100 g" ? "100" : undefined, nitrogenFactor } = label;
  const implied = impliedBy("protein", printed, book);
  const problems: Problem[] = problemsOf(implied).map((problem) => ({ ...problem, path: ["printed"] }));
  if (serving === undefined || dec(serving).lte(0)) {
    problems.push(problem("label.serving", ["serving"], serving === undefined ? {} : { serving }));
  }
  if (nitrogenFactor !== undefined && dec(nitrogenFactor).lte(ZERO)) problems.push(factorProblem(nitrogenFactor));
  if (!implied.ok || serving === undefined || problems.length > 0) return refuse(...problems);
  const span = book === "JP" ? withinTolerance(printed, implied.value, serving) : implied.value;
  const [least, most] = nitrogenFactor === undefined ? possibleFactors[book] : [nitrogenFactor, nitrogenFactor];
  const slack = label.servingRounded === true ? halfLastDigit(serving) : ZERO;
  const rule = ruleFor("protein", book);
  const sources = rule.ok ? [printedSource, rule.value.source] : [printedSource];
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
      ...sources,
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
