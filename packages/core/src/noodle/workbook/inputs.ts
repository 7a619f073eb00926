import type { Figure } from "../../figure/figure.ts";
import { dec, decimalText } from "../../number/decimal.ts";
import { literal } from "../../render/workbook/formulas.ts";
import type { InputFigure, InputGroup } from "../../render/workbook/workbook.ts";
import { inSystem } from "../../report/show.ts";
import type { Made, Rules } from "./made.ts";

/** Headings of the inputs, and the figures under each, in the order in which a sheet has them. */
const inputHeadings: readonly (readonly [heading: string, ids: RegExp])[] = [
  ["Batch", /^(?:batch\.(?:bowls-stated|dough|flour-stated|have)|bowl\.|mixer\.|rework\.stated$|loss\.)/u],
  [
    "Flours",
    /^flour\.(?:\d+\.(?:parts|written|moisture|(?:protein|ash)(?:-stated|-basis)?|nitrogen-factor)|reference-moisture)$/u,
  ],
  ["Water", /^water\.(?:added|tap|dough)-(?:stated|written)$|^water\.tap$/u],
  [
    "Salts and other ingredients",
    /^(?:(?:alkali|ingredient)\.[\d.]+|salt|dusting)\.(?:parts|stated|moisture|[A-Z]\w+)$/u,
  ],
  ["Scales", /^scale\./u],
  ["Prices", /^cost\..*\.price$/u],
  ["Store", /^shopping\..*\.(?:on-hand|pack)$/u],
];

/** What may be changed: what was given and follows from nothing else. */
export function inputGroups(made: Made, rules: Rules): readonly InputGroup[] {
  const changeable = Object.values(made.graph).filter(({ id, working }) => working.kind === "given" && !(id in rules));
  return inputHeadings.flatMap(([heading, ids]) => {
    const figures = changeable.filter(({ id }) => ids.test(id));
    return figures.length === 0 ? [] : [{ heading, figures: figures.map((figure) => inputShown(figure, made)) }];
  });
}

/** Masses of a kitchen that speaks in US units are typed in these. */
function inputShown(figure: Figure, { noodle: { units, formula }, graph }: Made): InputFigure {
  const { id, unit } = inSystem(figure, units);
  const places = Math.min(unit === figure.unit ? Math.max(figure.places, dec(figure.value).decimalPlaces()) : 3, 6);
  const [, of = "", what = ""] = /^(flour\.\d+)\.(protein|ash)$/u.exec(id) ?? [];
  const line = formula.lines.find((one) => one.id === of);
  const moisture = graph[`${of}.moisture`];
  if (line === undefined || moisture === undefined || line.material.stated[what === "ash" ? "ash" : "protein"]) {
    return { id, unit, places };
  }
  // What a table tells holds at the moisture of the table: it goes with the dry matter when the moisture is another.
  const { value } = moisture;
  return {
    id,
    unit,
    places,
    label: `${figure.label.replace(/ as is$/u, "")} at ${decimalText(dec(value))} % mb`,
    factor: (cell) => `(100-${cell(moisture.id)})/${literal(dec(100).minus(value))}`,
  };
}
