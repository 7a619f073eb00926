import type { Outcome, Report } from "@noodlewright/core";
import {
  fridge,
  type KitchenScale,
  loadsInStock,
  type StockNeeds,
  severalStock,
  stockNeeds,
  stockReport,
} from "@noodlewright/core/chemistry";
import { answer } from "@noodlewright/core/figure";
import type { Placed } from "../../input/placed-problem.ts";
import { ownProblem } from "../../input/problem.ts";
import type { Io } from "../../io.ts";
import { printProblems, printReport } from "../../shared/answer.ts";
import type { Asked, Command } from "../../shared/command.ts";
import { setFlag } from "../../shared/flags.ts";
import { type Asking, asking } from "./asking.ts";
import { productHelp, solutionFlags } from "./flags.ts";
import { noodleOf, ownMaterials } from "./member.ts";

/** `noodlewright alkali stock`: a solution to keep, so that little can be weighed on a coarse scale. */
export const stockCommand: Command = {
  positionals: { product: `The product: ${productHelp}; leave it out with --spec` },
  flags: {
    spec: { describe: "Spec whose salts, scales and loads count", placeholder: "noodle.yaml" },
    dose: { describe: "Product in one load; from the spec where there is one", placeholder: "8 g" },
    tolerance: { describe: "Most that weighing may be off; as the spec says, or 1 %", placeholder: "1 %" },
    loads: { describe: "Loads a day; those of the spec's batch, or 1", placeholder: "4" },
    keep: { describe: "How many days of loads it is to last; 1 d unless stated", placeholder: "5 d" },
    ...setFlag,
    ...solutionFlags,
    storage: { describe: `Temperature where it is kept; ${fridge} °C unless stated`, placeholder: "8 °C" },
    division: {
      describe: "Smallest step of the scale; the scales of the spec, or 1 g, 0.1 oz in US units",
      placeholder: "1 g",
    },
  },
  examples: {
    "noodlewright alkali stock 'sodium carbonate' --dose '8 g' --division '1 g' --loads 4 --keep '5 d'":
      "for a scale of 1 g",
    "noodlewright alkali stock --spec noodle.yaml --division '5 g' --storage '4 °C'":
      "for the loads of a spec, kept cold",
  },
  run: async (asked, io) => {
    const own = await ownMaterials(asked, io);
    if (!own.ok) return printProblems(own.problems, asked, io);
    const ask = asking(asked, own.materials);
    const kitchen = (await fromSpec(asked, io)) ?? one(ask);
    const told = kitchen.ok ? kitchen.kitchen : undefined;
    const wish = wishOf(ask, told);
    const problems = [...ask.problems, ...(kitchen.ok ? [] : kitchen.problems)];
    if (told === undefined || problems.length > 0) return printProblems(problems, asked, io);
    const outcome = stockOf(told, wish, ask);
    return outcome.ok ? printReport(outcome.value, asked, io) : printProblems(outcome.problems, asked, io);
  },
};

/** What a load takes, and what else a spec tells. */
type Kitchen = Pick<StockNeeds, "salts"> & Partial<StockNeeds>;

type Told = Placed<{ kitchen: Kitchen }>;

function one(ask: Asking): Told {
  const product = ask.product(ask.text("product"), "<product>");
  return { ok: true, kitchen: { salts: [{ ...product, mass: ask.quantity("dose", ["mass"]).value }] } };
}

async function fromSpec(asked: Asked, io: Io): Promise<Told | undefined> {
  const loading = await noodleOf(asked, io, "machines");
  if (loading?.ok !== true) return loading;
  const { noodle, place } = loading.loaded;
  const needs = stockNeeds(noodle);
  return needs.ok ? { ok: true, kitchen: needs.value } : { ok: false, problems: needs.problems.map(place) };
}

function wishOf(ask: Asking, kitchen: Kitchen | undefined) {
  const loads = (ask.text("loads") ?? kitchen?.loads ?? "1").trim();
  const whole = /^\d+$/u.test(loads);
  if (!whole) ask.wrong("--loads", ownProblem("stock.loads", { written: `"${loads}"` }));
  const temperature = ask.temperature;
  const division = ask.maybe("division", ["mass"]);
  const stated = division && [{ division: division.value, unit: division.unit }];
  const days = ask.text("keep") === undefined ? "1" : ask.days("keep");
  const usual = ask.units === "us" ? { division: "2.8349523125", unit: "oz" } : { division: "1", unit: "g" };
  const scales: readonly KitchenScale[] = stated ?? kitchen?.scales ?? [usual];
  return {
    scales,
    tolerance: ask.maybe("tolerance", ["share"])?.value ?? kitchen?.tolerance ?? "1",
    loads: loadsInStock(whole ? loads : "1", days),
    storage: ask.maybe("storage", ["temperature"])?.value ?? fridge,
    temperature,
  };
}

function stockOf({ salts, water }: Kitchen, wish: ReturnType<typeof wishOf>, ask: Asking): Outcome<Report> {
  const stock = severalStock({ ...wish, products: salts, scale: ask.scale, ...(water && { water }) });
  if (!stock.ok) return stock;
  const finest = wish.scales.reduce((a, b) => (Number(b.division) < Number(a.division) ? b : a));
  return answer(stockReport(stock.value, { divisionUnit: finest.unit, units: ask.units }, stock.notes));
}
