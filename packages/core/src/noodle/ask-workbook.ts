import type { Batch } from "../batch/batch.ts";
import { type Cost, costOf } from "../batch/cost.ts";
import { materialName } from "../batch/cost-prices.ts";
import { type Scale, scalesOf, type WeighedLine } from "../batch/weighing.ts";
import { alkalinityM, pure } from "../chemistry/composition.ts";
import { speciesNames } from "../chemistry/species.ts";
import { type Figure, given } from "../figure/figure.ts";
import { type Graph, plainFigure } from "../figure/graph.ts";
import { answer, type Outcome } from "../figure/problem.ts";
import { fromSpec } from "../figure/source.ts";
import { mostInAll } from "../materials/whole-food.ts";
import { dec, decimalText } from "../number/decimal.ts";
import type { Workbook } from "../render/workbook/cells.ts";
import { floorOf, justLess, justMore, literal, stepsOf } from "../render/workbook/formulas.ts";
import {
  type CellOf,
  type InputFigure,
  type InputGroup,
  type ResultGroup,
  type ResultRow,
  type RoundedFigures,
  type ShownFigure,
  type WorkbookCheck,
  workbookOf,
} from "../render/workbook/workbook.ts";
import { formulaCautions } from "../report/cautions.ts";
import { asScaleShows, inSystem } from "../report/show.ts";
import { mostParts } from "../spec/believed.ts";
import type { Noodle } from "./noodle.ts";
import { plannedBatch } from "./planned-batch.ts";

/** Formulas of figures that a procedure found, by id. */
type Rules = Record<string, (cell: CellOf) => string>;

/** What the pieces of a workbook are made from. */
interface Made {
  readonly noodle: Noodle;
  readonly batch: Batch;
  readonly cost: Cost | undefined;
  readonly scales: readonly Scale[];
  readonly weighed: readonly WeighedLine[];
  readonly graph: Graph;
}

/**
 * The noodle as a workbook that works itself out: what may be changed, what comes of it, and every figure as a formula.
 *
 * Problems: those of `askBatch`.
 * @example askWorkbook(example("school-noodle")).value.sheets.length // => 4
 */
export function askWorkbook(noodle: Noodle): Outcome<Workbook> {
  const batch = plannedBatch(noodle);
  if (!batch.ok) return batch;
  const scales = scalesOf(noodle.spec, noodle.units === "us");
  if (!scales.ok) return scales;
  const cost = costOf(noodle.spec, noodle.formula, batch.value);
  const { lines, dusting } = batch.value;
  const made: Made = {
    noodle,
    batch: batch.value,
    cost: cost.ok ? cost.value : undefined,
    scales: scales.value,
    weighed: [...lines, ...(dusting ? [dusting] : [])],
    graph: {
      ...noodle.formula.graph,
      ...batch.value.graph,
      ...(cost.ok && cost.value.graph),
      ...scaleFigures(scales.value),
    },
  };
  const notes = [...noodle.notes, ...batch.notes, ...(cost.ok ? cost.notes : [])];
  const workbook = workbookOf({
    title: noodle.formula.name,
    about: [
      "Change the coloured cells; everything else follows. The sheets are protected without a password.",
      ...(noodle.spec.notes === undefined ? [] : [noodle.spec.notes]),
    ],
    graph: made.graph,
    inputs: inputGroups(made),
    results: resultGroups(made),
    rules: { ...weighingRules(made), ...sizeRules(made), ...costRules(made) },
    roundings: roundings(made),
    checks: checks(made),
    notes: [...new Set(notes.map(({ text }) => text))],
    cautions: [...new Set(formulaCautions(noodle.formula))],
  });
  return answer(workbook, notes);
}

const scaleId = (index: number, what: "division" | "capacity"): string => `scale.${index + 1}.${what}`;

/** The scales as figures, which choose the division of each ingredient. */
function scaleFigures(scales: readonly Scale[]): Graph {
  const figures = scales.flatMap(({ name, division, capacity, assumed }, index): readonly Figure[] => {
    const naming = (what: "division" | "capacity") => ({
      id: scaleId(index, what),
      label: `${what} of ${name}`,
      unit: "g",
      places: Math.min(division.decimalPlaces(), 6),
      by: assumed ? "assumed" : "spec",
      sources: [fromSpec],
    });
    return [
      given({ ...naming("division"), value: division }),
      ...(capacity ? [given({ ...naming("capacity"), value: capacity })] : []),
    ];
  });
  return Object.fromEntries(figures.map((figure) => [figure.id, plainFigure(figure)]));
}

/** The division of the scale that takes a mass, as `chooseScale` chooses it. */
function divisionRule(mass: string, scales: readonly Scale[]): (cell: CellOf) => string {
  return (cell) => {
    const divisions = scales.map((_, index) => cell(scaleId(index, "division")));
    const capacity = (index: number): string => cell(scaleId(index, "capacity"));
    const fitting = scales.map((scale, index) =>
      scale.capacity === undefined
        ? divisions[index]
        : `IF(${cell(mass)}<=${capacity(index)}*${justMore},${divisions[index]},1000000000)`,
    );
    const finest = `MIN(${fitting.join(",")})`;
    if (scales.some((scale) => scale.capacity === undefined)) return finest;
    const greatest = `MAX(${scales.map((_, index) => capacity(index)).join(",")})`;
    const largest = scales.reduceRight(
      (otherwise, _, index) =>
        otherwise === ""
          ? `${divisions[index]}`
          : `IF(${capacity(index)}=${greatest},${divisions[index]},${otherwise})`,
      "",
    );
    return `IF(${finest}<1000000000,${finest},${largest})`;
  };
}

/** The name of the scale with the division of a line. */
function scaleNameRule(division: string, scales: readonly Scale[]): (cell: CellOf) => string {
  return (cell) =>
    scales.reduceRight(
      (otherwise, { name }, index) =>
        otherwise === ""
          ? quoted(name)
          : `IF(${cell(division)}=${cell(scaleId(index, "division"))},${quoted(name)},${otherwise})`,
      "",
    );
}

function quoted(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}

function weighingRules({ batch, scales, weighed, graph }: Made): Rules {
  const rules: Rules = {};
  for (const { line, exact, load, step, off, nearest } of weighed) {
    rules[step.id] = divisionRule(exact.id, scales);
    rules[off.id] = (cell) => `IF(${cell(exact.id)}=0,0,100*(${cell(load.id)}-${cell(exact.id)})/${cell(exact.id)})`;
    rules[nearest.id] = (cell) => `IF(${cell(exact.id)}=0,0,100*${cell(step.id)}/2/${cell(exact.id)})`;
    if (line.role === "dusting") {
      rules[load.id] = (cell) => `ROUND(${stepsOf(cell(exact.id), cell(step.id))}*${cell(step.id)},12)`;
    }
  }
  for (const { id, asked, weighed: real } of batch.rounding) {
    rules[`rounding.${id}.percent`] = (cell) =>
      `IF(${cell(asked.id)}=0,0,100*(${cell(real.id)}-${cell(asked.id)})/${cell(asked.id)})`;
  }
  if (batch.rework !== undefined) {
    const { mass } = batch.rework;
    const division = divisionRule("rework.exact", scales);
    const down = graph["rework.stated"]?.unit === "g";
    rules[mass.id] = (cell) => {
      const [exact, step] = [cell("rework.exact"), division(cell)];
      return `ROUND(${down ? floorOf(`${exact}/(${step})`) : stepsOf(exact, `(${step})`)}*(${step}),12)`;
    };
  }
  return rules;
}

function sizeRules({ noodle: { spec }, batch, graph }: Made): Rules {
  const rules: Rules = {};
  if (batch.target.bowls !== undefined && spec.batch?.bowls !== undefined) {
    rules[batch.target.bowls.id] = (cell) => cell("batch.bowls-stated");
  }
  if (spec.batch?.load === "largest" && graph["mixer.largest"] !== undefined) {
    const stated = graph["mixer.limit"] === undefined ? "batch.dough" : "mixer.limit";
    if (graph[stated]?.working.kind === "given") rules[stated] = (cell) => cell("mixer.largest");
  }
  return rules;
}

function costRules({ cost, weighed, graph }: Made): Rules {
  if (cost === undefined) return {};
  const rules: Rules = {};
  const prices = new Map<string, string>();
  for (const { line } of weighed) {
    const id = `cost.${line.id}.price`;
    if (graph[id] === undefined) continue;
    const name = materialName(line.name);
    const first = prices.get(name);
    if (first === undefined) prices.set(name, id);
    else rules[id] = (cell) => cell(first);
  }
  const places = cost.batch.places;
  for (const { line } of weighed) {
    const of = `shopping.${line.id}`;
    const price = `cost.${line.id}.price`;
    if (graph[`${of}.pay`] === undefined || graph[price] === undefined) continue;
    const bought = graph[`${of}.packs`] === undefined ? "buy" : "packs";
    rules[`${of}.pay`] = (cell) => {
      const much = bought === "buy" ? cell(`${of}.buy`) : `${cell(`${of}.packs`)}*${cell(`${of}.pack`)}`;
      return `ROUND(ROUND(${much}*${cell(price)}/1000,9),${places})`;
    };
  }
  const coin = literal(dec(10).pow(-places));
  for (const { over, groups } of cost.shared) {
    const [load, bowls] = ["loads.count", "batch.bowls"];
    const count = over === "load" ? load : bowls;
    const least = (cell: CellOf): string => floorOf(`${cell("cost.batch")}/${cell(count)}/${coin}`);
    const more = (cell: CellOf): string => `(ROUND(${cell("cost.batch")}/${coin},0)-${least(cell)}*${cell(count)})`;
    for (const { count: number, each, together } of groups) {
      const most = number.id.includes(".more.");
      rules[number.id] = (cell) => (most ? more(cell) : `${cell(count)}-${more(cell)}`);
      rules[each.id] = (cell) => `ROUND((${least(cell)}${most ? "+1" : ""})*${coin},10)`;
      rules[together.id] = (cell) => `${cell(number.id)}*${cell(each.id)}`;
    }
  }
  return rules;
}

function roundings({ batch, cost, scales, weighed }: Made): readonly RoundedFigures[] {
  const loads: RoundedFigures = {
    title: "Weights of a load, rounded to the scales with the total kept",
    least: "proportion",
    divisions: scales.length,
    lines: batch.lines.map(({ line, exact, load, step }) => ({
      name: line.name,
      exact: exact.id,
      rounded: load.id,
      division: step.id,
    })),
  };
  if (cost === undefined) return [loads];
  const columns = (["batch", "load", ...(cost.bowl ? ["bowl" as const] : [])] as const).map((what): RoundedFigures => {
    const places = (what === "batch" ? cost.batch : what === "load" ? cost.load : cost.bowl)?.places ?? 0;
    return {
      title: `Cost of ${what === "batch" ? "the batch" : `a ${what}`}, rounded with the total kept`,
      least: "change",
      divisions: 1,
      lines: weighed.flatMap(({ line }) =>
        cost.graph[`cost.${line.id}.${what}.exact`] === undefined
          ? []
          : [
              {
                name: line.name,
                exact: `cost.${line.id}.${what}.exact`,
                rounded: `cost.${line.id}.${what}`,
                division: { step: dec(10).pow(-places).toString() },
              },
            ],
      ),
    };
  });
  return [loads, ...columns.filter(({ lines }) => lines.length > 0)];
}

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

function inputGroups(made: Made): readonly InputGroup[] {
  const linked = new Set(Object.keys({ ...weighingRules(made), ...sizeRules(made), ...costRules(made) }));
  const changeable = Object.values(made.graph).filter(({ id, working }) => working.kind === "given" && !linked.has(id));
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

function shown(figure: Figure, { noodle: { units } }: Made): ShownFigure {
  const { id, unit, places } = inSystem(figure, units);
  return { id, unit, places };
}

function resultGroups(made: Made): readonly ResultGroup[] {
  const { batch, noodle, cost, scales } = made;
  const { formula } = noodle;
  const { blend, water, alkali } = formula;
  const plain = (heading: string, figures: readonly (Figure | undefined)[]): ResultGroup => ({
    heading,
    columns: ["", ""],
    rows: figures
      .filter((figure) => figure !== undefined)
      .map((figure): ResultRow => {
        const view = shown(figure, made);
        return { label: figure.label, figures: [view], words: { text: view.unit, formula: () => quoted(view.unit) } };
      }),
  });
  const scaleView = (figure: Figure, weighed: Pick<WeighedLine, "unit" | "division">): ShownFigure => {
    const { id, unit, places } = asScaleShows(figure, weighed);
    return { id, unit, places };
  };
  const unit = batch.lines[0]?.unit ?? "g";
  const row = (one: WeighedLine, label: string): ResultRow => ({
    label,
    figures: [scaleView(one.load, one), scaleView(one.batch, one)],
    words: { text: one.scale, formula: scaleNameRule(one.step.id, scales) },
  });
  const finest = batch.lines.reduce(
    (least, { division }) => (dec(division).lt(least) ? division : least),
    batch.lines[0]?.division ?? "1",
  );
  const weights: ResultGroup = {
    heading: "Weights",
    columns: [`one load, ${unit}`, `all loads, ${unit}`, "weigh on"],
    rows: [
      ...batch.lines.map((one) => row(one, one.line.name)),
      ...(batch.rework
        ? [
            {
              label: batch.rework.name,
              figures: [scaleView(batch.rework.mass, batch.rework), scaleView(batch.rework.batch, batch.rework)],
            },
          ]
        : []),
      {
        label: "dough",
        figures: [
          scaleView(batch.loadTotal, { unit, division: finest }),
          scaleView(batch.batchTotal, { unit, division: finest }),
        ],
      },
      ...(batch.dusting ? [row(batch.dusting, `${batch.dusting.line.name} (dusting, not in the dough)`)] : []),
    ],
  };
  const { target, loads } = batch;
  const size = plain("Batch", [target.bowls, target.dough, loads.count, loads.dough, loads.flour, target.strands]);
  const columns = cost && [cost.batch, cost.load, cost.bowl, cost.kilogram, cost.shopping.pay];
  return [
    size,
    weights,
    plain("Flours", [
      blend.moisture,
      ...["blend.protein.as-is", "blend.protein.14", "blend.gluten-protein.14", "blend.ash.14", "blend.wholegrain"].map(
        (id) => made.graph[id],
      ),
    ]),
    plain("Water", [water.tap, water.carried, water.added, water.flour, water.dough, water.doughWater]),
    plain("Salts", [...(alkali?.figures ?? []), formula.salt]),
    ...(columns ? [plain("Cost", columns)] : []),
  ];
}

function checks({ noodle: { spec, formula }, batch, weighed, graph }: Made): readonly WorkbookCheck[] {
  const flours = batch.lines.filter(({ line }) => line.role === "flour");
  const others = weighed.filter(({ line }) => line.role !== "flour");
  const most = (role: WeighedLine["line"]["role"]): string => (role === "flour" ? "100" : mostParts[role]);
  const alkali = formula.alkali;
  const strongest = literal(alkalinityM(pure("Na2CO3")).times(5));
  const accepts = (word: "high alkali" | "high salt"): boolean => spec.accept?.includes(word) === true;
  const tolerance = literal(batch.tolerance);
  const mixer = spec.mixer;
  const load = (cell: CellOf, asWeighed: boolean): string =>
    mixer?.of === "flour"
      ? asWeighed
        ? [
            ...flours.map(({ load: one }) => cell(one.id)),
            ...(batch.rework ? [`${cell(batch.rework.mass.id)}*100/${cell("dough.parts")}`] : []),
          ].join("+")
        : cell("load.flour")
      : cell(asWeighed ? "load.total" : "load.dough");
  const unused = Object.values(graph).some(
    ({ working }) => working.kind === "formula" && Object.hasOwn(working.from, "left"),
  );
  return [
    ...(unused
      ? [
          {
            of: "what is left unused",
            text: "noodlewright left a little unused, so that the weights stay within what there is: ask it again",
            fails: (_: CellOf, changed: string) => changed,
          },
        ]
      : []),
    {
      of: "shares of the flours",
      text: "the shares of the flours do not total 100 %",
      fails: (cell) =>
        `OR(ABS(SUM(${flours.map(({ line }) => cell(line.parts.id)).join(",")})-100)>0.000000001,MIN(${flours.map(({ line }) => cell(line.parts.id)).join(",")})<-0.000000001)`,
    },
    {
      of: "what flours and salts are made of",
      text: "the parts of one come to more than all of it",
      fails: (cell) =>
        `OR(${batch.lines
          .filter(({ line }) => line.role === "flour" || line.role === "alkali")
          .map(({ line: { id, material } }) => {
            const flour = ["moisture", "protein", "ash"].map((part) => `${id}.${part}`);
            const salts = speciesNames.map((salt) => `${id}.${salt}`);
            const parts = [...flour, ...salts].filter((part) => graph[part]);
            const most = material.composition ? dec(100) : mostInAll(material).minus(material.fat ?? 0);
            return `${parts.map(cell).join("+")}>${literal(most)}*${justMore}`;
          })
          .join(",")})`,
    },
    {
      of: "water to pour",
      text: "the other ingredients bring more water than the dough takes",
      fails: (cell) => `${cell("water.tap")}<-0.000000001`,
    },
    {
      of: "amounts",
      text: "more of an ingredient than any dough takes: check the number and its unit",
      fails: (cell) => `OR(${others.map(({ line }) => `${cell(line.parts.id)}>${most(line.role)}`).join(",")})`,
    },
    ...(alkali && !accepts("high alkali")
      ? [
          {
            of: "alkaline salts",
            text: "more alkaline salts than noodles were tried with",
            fails: (cell: CellOf) =>
              `OR(${cell(alkali.anhydrous.id)}>5*${justMore},${cell(alkali.alkalinityM.id)}>${strongest}*${justMore})`,
          },
        ]
      : []),
    ...(accepts("high salt")
      ? []
      : [
          {
            of: "salt",
            text: "more salt than any noodle takes",
            fails: (cell: CellOf) => `${cell(formula.salt.id)}>10*${justMore}`,
          },
        ]),
    ...(mixer === undefined
      ? []
      : [
          {
            of: "largest load",
            text: "a load as weighed is more than the mixer takes: ask noodlewright",
            fails: (cell: CellOf) => `${load(cell, true)}>${cell("mixer.largest")}*${justMore}`,
          },
        ]),
    ...(mixer?.smallest === undefined
      ? []
      : [
          {
            of: "smallest load",
            text: `a load is below the least of the mixer, ${mixer.smallest.text}: make more or fewer loads`,
            fails: (cell: CellOf) => `${load(cell, false)}<${literal(mixer.smallest?.value ?? "0")}*${justLess}`,
          },
        ]),
    ...(graph["batch.have"] === undefined
      ? []
      : [
          {
            of: "what there is of it",
            text: "more is weighed of what is short than there is: ask noodlewright",
            fails: (cell: CellOf) =>
              `${
                weighed
                  .filter(({ line }) => materialName(line.name) === materialName(spec.batch?.have?.name ?? ""))
                  .map(({ batch: whole }) => cell(whole.id))
                  .join("+") || "0"
              }>${cell("batch.have")}*${justMore}`,
          },
        ]),
    {
      of: "scales",
      text: "the weights hold, but an ingredient is too little for its scale: ask noodlewright for a stock solution or a finer scale",
      fails: (cell, changed) =>
        `AND(${changed},OR(${weighed.map(({ nearest, off }) => `${cell(nearest.id)}>${tolerance},ABS(${cell(off.id)})>${tolerance}`).join(",")}))`,
    },
  ];
}
