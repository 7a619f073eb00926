import {
  alkaliOfLoad,
  answer,
  formulaOf,
  inputProblem,
  type Outcome,
  planBatch,
  type Report,
  refuse,
  severalStock,
  stockReport,
  type Weighed,
} from "@noodlewright/core";
import { printProblems, printReport } from "../command/answer.ts";
import type { Asked, Command } from "../command/command.ts";
import type { PlacedProblem } from "../input/document.ts";
import { loadSpec } from "../input/load-spec.ts";
import type { Io } from "../io.ts";
import { type Asking, asking } from "./asking.ts";
import { productHelp, solutionFlags } from "./flags.ts";
import { ownMaterials } from "./member.ts";

/** `noodlewright alkali stock`: a solution to keep, so that little can be weighed on a coarse scale. */
export const stockCommand: Command = {
  positionals: { product: `The product: ${productHelp}; leave it out with --spec` },
  flags: {
    spec: { describe: "Spec whose alkaline products and loads count", kind: "text", placeholder: "noodle.yaml" },
    dose: { describe: "Product in one load; from the spec where there is one", kind: "text", placeholder: "8 g" },
    tolerance: { describe: "Most that weighing may be off", kind: "text", placeholder: "1 %", fallback: "1 %" },
    loads: { describe: "Loads a day", kind: "text", placeholder: "4", fallback: "1" },
    keep: { describe: "How long the stock is kept", kind: "text", placeholder: "5 d", fallback: "5 d" },
    ...solutionFlags,
    division: { describe: "Smallest step of the scale", kind: "text", placeholder: "1 g", fallback: "1 g" },
  },
  examples: [
    [
      "noodlewright alkali stock 'sodium carbonate' --dose '8 g' --division '1 g' --loads 4 --keep '5 d'",
      "for a scale of 1 g",
    ],
    [
      "noodlewright alkali stock --spec noodle.yaml --division '5 g' --storage '4 °C'",
      "for the loads of a spec, kept cold",
    ],
  ],
  run: async (asked, io) => {
    const own = await ownMaterials(asked, io);
    if (!own.ok) return printProblems(own.problems, asked, io);
    const ask = asking(asked, own.materials);
    const products = asked.text("spec") === undefined ? one(ask) : await fromSpec(asked, io);
    const wish = wishOf(ask);
    const problems = [...ask.problems, ...(products.ok ? [] : products.problems)];
    if (!products.ok || problems.length > 0) return printProblems(problems, asked, io);
    const outcome = stockOf(products.weighed, wish, ask);
    return outcome.ok ? printReport(outcome.value, asked, io) : printProblems(outcome.problems, asked, io);
  },
};

type Products =
  | { readonly ok: true; readonly weighed: readonly Weighed[] }
  | { readonly ok: false; readonly problems: readonly PlacedProblem[] };

function one(ask: Asking): Products {
  const product = ask.product(ask.text("product"), "<product>");
  return { ok: true, weighed: [{ ...product, mass: ask.quantity("dose", ["mass"]).value }] };
}

async function fromSpec(asked: Asked, io: Io): Promise<Products> {
  const loading = await loadSpec(asked.text("spec") ?? "-", [], io);
  if (!loading.ok) return loading;
  const { data, included, place } = loading.spec;
  const formula = formulaOf(data, included);
  const batch = formula.ok ? planBatch(formula.value.spec, formula.value.formula) : formula;
  if (!batch.ok) return { ok: false, problems: batch.problems.map(place) };
  const weighed = alkaliOfLoad(batch.value);
  if (weighed.length > 0) return { ok: true, weighed };
  const problem = inputProblem(
    "stock.no-alkali",
    [],
    "a spec without alkaline products",
    "some to make a stock of",
    "name a product instead",
  );
  return { ok: false, problems: [place(problem)] };
}

interface Wish {
  readonly division: string;
  readonly divisionUnit: string;
  readonly tolerance: string;
  readonly loadsPerDay: string;
  readonly keepingDays: string;
  readonly storage: string;
  readonly temperature: string;
}

function wishOf(ask: Asking): Wish {
  const loads = ask.text("loads")?.trim() ?? "";
  if (!/^\d+$/u.test(loads)) {
    ask.wrong("--loads", "stock.loads", `"${loads}"`, "a whole number of loads a day", "write it like 4");
  }
  const temperature = ask.temperature;
  const division = ask.quantity("division", ["mass"]);
  return {
    division: division.value,
    divisionUnit: division.unit,
    tolerance: ask.quantity("tolerance", ["share"]).value,
    loadsPerDay: /^\d+$/u.test(loads) ? loads : "1",
    keepingDays: ask.days("keep"),
    storage: ask.maybe("storage", ["temperature"])?.value ?? temperature,
    temperature,
  };
}

function stockOf(weighed: readonly Weighed[], wish: Wish, ask: Asking): Outcome<Report> {
  const [first, ...others] = weighed;
  if (first === undefined) return refuse();
  const stock = severalStock({ ...wish, products: [first, ...others], scale: ask.scale });
  if (!stock.ok) return stock;
  const { division, divisionUnit, temperature } = wish;
  const telling = { division, divisionUnit, temperature, scale: ask.scale, units: ask.units };
  return answer(stockReport(stock.value, weighed, telling, stock.notes));
}
