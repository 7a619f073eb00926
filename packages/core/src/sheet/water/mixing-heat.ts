import type { DissolvingSalt } from "../../chemistry/species.ts";
import { type Figure, given, worked } from "../../figure/figure.ts";
import type { Problem } from "../../figure/problem.ts";
import { definition } from "../../figure/source.ts";
import type { DecimalText } from "../../number/decimal.ts";
import { asked, askedFigure, askedOr, type Given, outsideLimits } from "../inputs.ts";
import { doughProblem, massOf } from "./heat-balance.ts";
import { crcEnthalpies, heatOfSolution } from "./heat-of-solution.ts";

/**
 * Heat that the mix makes of itself: measured by the kitchen for this mixer and dough, or estimated. Salts count only where
 * they go in dry, since a solution has given its heat off before.
 */
export type MixingHeat =
  | { readonly kind: "measured"; readonly perKilogram: DecimalText }
  | {
      readonly kind: "estimated";
      /** kJ/kg of dough; 15 where it is left out. */
      readonly hydration?: DecimalText;
      /** kJ/kg of dough; 0 where it is left out. */
      readonly mixerWork?: Given;
      /** Dough in the mix that has given off its heat of hydration before, g. */
      readonly rework?: Given;
      readonly drySalts?: readonly { readonly salt: DissolvingSalt; readonly mass: Given }[];
    };

/** Heat the mix makes of itself, kJ. */
export function heatMade(heat: MixingHeat, dough: Figure): Figure {
  const naming = { id: "mix.heat-made", label: "heat made in the mix", unit: "kJ", places: 0 };
  const each = { unit: "kJ/kg", places: 1 };
  if (heat.kind === "measured") {
    const perKilogram = asked({ id: "mix.heat", label: "measured heat of mixing", ...each }, heat.perKilogram);
    return worked(naming, "heat * dough / 1000", { heat: perKilogram, dough }, definition);
  }
  const salts = heat.drySalts ?? [];
  const hydration = askedOr({ id: "mix.hydration", label: "heat of hydration", ...each }, heat.hydration, {
    value: "15",
    source: doughProblem,
  });
  const working = { id: "mix.work", label: "mixer work", ...each };
  const work =
    heat.mixerWork === undefined ? given(working, 0, "none stated", definition) : askedFigure(working, heat.mixerWork);
  const { rework } = heat;
  const mixed = worked(
    salts.length === 0 ? naming : { ...naming, id: "mix.heat-of-mixing", label: "heat of hydration and mixer work" },
    rework === undefined ? "(hydration + work) * dough / 1000" : "(hydration * (dough - rework) + work * dough) / 1000",
    { hydration, work, dough, ...(rework !== undefined && { rework: massOf("rework", rework) }) },
    ...hydration.sources,
  );
  if (salts.length === 0) return mixed;
  return worked(
    naming,
    "mixed + sum(salts / 1000 * heats)",
    {
      mixed,
      salts: salts.map((dry) => massOf(dry.salt, dry.mass)),
      heats: salts.map((dry) => heatOfSolution(dry.salt)),
    },
    ...mixed.sources,
    crcEnthalpies,
  );
}

/** What the heat of a mix has to keep to. */
export function heatProblems(heat: MixingHeat): readonly Problem[] {
  const share = { unit: "kJ/kg", least: "-50", most: "200" };
  if (heat.kind === "measured")
    return outsideLimits([{ path: ["heat", "perKilogram"], value: heat.perKilogram, ...share }]);
  return outsideLimits([
    { path: ["heat", "hydration"], value: heat.hydration, ...share },
    { path: ["heat", "mixerWork"], value: heat.mixerWork, ...share },
    ...(heat.drySalts ?? []).map(({ mass: value }, index) => ({
      path: ["heat", "drySalts", index, "mass"],
      value: value,
      unit: "g",
      least: "0",
    })),
  ]);
}
