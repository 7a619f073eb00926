import type { WeighedLine } from "../../batch/weighing.ts";
import { alkalinityM, pure } from "../../chemistry/composition.ts";
import { speciesNames } from "../../chemistry/species.ts";
import { mostInAll } from "../../materials/whole-food.ts";
import { dec } from "../../number/decimal.ts";
import { joined, justLess, justMore, literal } from "../../render/workbook/formulas.ts";
import type { CellOf, Typed, WorkbookCheck } from "../../render/workbook/workbook.ts";
import { mostParts } from "../../spec/believed.ts";
import { usualMost } from "../unusual.ts";
import { beyondRule, limitsOf } from "./limits.ts";
import type { Made } from "./made.ts";
import { behindStock } from "./results.ts";
import { tooLittleRule } from "./scales.ts";
import { wantedChecks } from "./wants.ts";

const limitTexts = {
  "batch.have": {
    of: "what there is of it",
    text: "more is weighed of what is short than there is: make the workbook anew",
  },
  "mixer.largest": {
    of: "largest load",
    text: "a load as weighed is more than the mixer takes: make the workbook anew",
  },
} as const;

/** What has to hold for the answers to hold: where the command would refuse, or decide anew, one of them speaks. */
export function checks(made: Made): readonly WorkbookCheck[] {
  const { noodle, batch, weighed, graph } = made;
  const { spec, formula } = noodle;
  const flours = batch.lines.filter(({ line }) => line.role === "flour");
  const rests = flours.filter(({ line }) => spec.flours[Number(line.path[1])]?.amount === "rest");
  const others = weighed.filter(({ line }) => line.role !== "flour");
  const most = (role: WeighedLine["line"]["role"]): string => (role === "flour" ? "100" : mostParts[role]);
  const alkali = formula.alkali;
  const capacities = Object.keys(graph).filter((id) => /^scale\.\d+\.capacity$/u.test(id));
  const strongest = literal(alkalinityM(pure("Na2CO3")).times(5));
  const accepts = (word: "high alkali" | "high salt"): boolean => spec.accept?.includes(word) === true;
  const mixer = spec.mixer;
  const small = {
    of: "scales",
    text: "an ingredient is too little for its scale",
    failing: batch.remedies.tooLittle.length > 0,
    fails: tooLittleRule(weighed),
  };
  const usual = usualMost(spec).filter(({ id }) => graph[id] !== undefined);
  const stocked = batch.withStock !== undefined;
  const all: readonly (WorkbookCheck | false)[] = [
    {
      of: "shares of the flours",
      refuses: true,
      text: "the shares of the flours do not total 100 %",
      fails: (cell) =>
        `OR(ABS(SUM(${flours.map(({ line }) => cell(line.parts.id)).join(",")})-100)>0.000000001,MIN(${flours.map(({ line }) => cell(line.parts.id)).join(",")})<-0.000000001${rests.map(({ line }) => `,${cell(line.parts.id)}<0.000000001`).join("")})`,
    },
    {
      of: "what flours and salts are made of",
      refuses: true,
      text: "the parts of one come to more than all of it",
      fails: (cell) =>
        `OR(${batch.lines
          .filter(({ line }) => line.role === "flour" || line.role === "alkali")
          .map(({ line: { id, material } }) => {
            const flour = ["moisture", "protein", "ash"].map((part) => `${id}.${part}`);
            const salts = [...speciesNames, "inert"].map((salt) => `${id}.${salt}`);
            const isRest = (part: string): boolean => material.waterIsRest === true && part === `${id}.moisture`;
            const parts = [...flour, ...salts].filter((part) => graph[part] && !isRest(part));
            const most = material.composition ? dec(100) : mostInAll(material).minus(material.fat ?? 0);
            return `${parts.map(cell).join("+")}>${literal(most)}*${justMore}`;
          })
          .join(",")})`,
    },
    {
      of: "water to pour",
      refuses: true,
      text: "the other ingredients bring more water than the dough takes",
      fails: (cell) => `${cell("water.tap")}<-0.000000001`,
    },
    {
      of: "amounts",
      refuses: true,
      text: "more of an ingredient than any dough takes: check the number and its unit",
      fails: (cell) => `OR(${others.map(({ line }) => `${cell(line.parts.id)}>${most(line.role)}`).join(",")})`,
    },
    {
      of: "flour of a load",
      refuses: true,
      text: "none of the flour that the scale can show: make more, or weigh on a finer scale",
      fails: (cell) =>
        `${joined(
          "SUM",
          flours.map((one) => cell(one.load.id)),
        )}<=0`,
    },
    capacities.length > 0 && {
      of: "capacities of the scales",
      refuses: true,
      text: "a scale takes less than one of its steps",
      fails: (cell) =>
        `OR(${capacities.map((id) => `${cell(id)}<${cell(id.replace("capacity", "division"))}`).join(",")})`,
    },
    alkali !== undefined &&
      !accepts("high alkali") && {
        of: "alkaline salts",
        refuses: true,
        text: "more alkaline salts than noodles were tried with",
        fails: (cell) =>
          `OR(${cell(alkali.anhydrous.id)}>5*${justMore},${cell(alkali.alkalinityM.id)}>${strongest}*${justMore})`,
      },
    !accepts("high salt") && {
      of: "salt",
      refuses: true,
      text: "more salt than any noodle takes",
      fails: (cell) => `${cell(formula.salt.id)}>10*${justMore}`,
    },
    ...limitsOf(made).map((limit) => ({ ...limitTexts[limit.id], fails: beyondRule(limit) })),
    mixer?.smallest !== undefined && {
      of: "smallest load",
      text: "a load is below the least of the mixer: make more or fewer loads",
      fails: (cell) =>
        `AND(${cell("mixer.smallest")}<=${cell("mixer.largest")},${cell(mixer.of === "flour" ? "load.flour" : "load.dough")}<${cell("mixer.smallest")}*${justLess})`,
    },
    mixer?.smallest !== undefined && {
      of: "limits of the mixer",
      refuses: true,
      text: "the two limits contradict: the smallest load is above the largest",
      fails: (cell) => `${cell("mixer.smallest")}>${cell("mixer.largest")}`,
    },
    usual.length > 0 && {
      of: "weight of a bowl, losses",
      text: "one is more than kitchens have: check the number and its unit",
      failing: usual.some(({ value, most }) => dec(value).gt(most)),
      fails: (cell) => `OR(${usual.map(({ id, most }) => `${cell(id)}>${most}*${justMore}`).join(",")})`,
    },
    ...wantedChecks(made),
    {
      ...small,
      text: `${small.text}: ${stocked ? "go by the stock solution beside" : "weigh it on a finer one, or have a stock solution worked out"}`,
      ...(stocked && {
        fails: (cell: CellOf, { changed }: Typed) => `AND(${small.fails(cell)},NOT(${changed(behindStock(made))}))`,
      }),
    },
    stocked && {
      of: "the stock solution",
      text: `${small.text}: for a stock solution of what was changed make the workbook anew`,
      fails: (cell, { changed }) => `AND(${small.fails(cell)},${changed(behindStock(made))})`,
    },
  ];
  return all.filter((one) => one !== false);
}
