import { type Figure, worked } from "../figure/figure.ts";
import { definition } from "../figure/source.ts";
import { asked, askedFigure } from "./inputs.ts";
import type { PassRequest } from "./pass-request.ts";

/** What a pass, or all of them, take off the thickness, %. */
export function reductionFigure(id: string, label: string, before: Figure, after: Figure): Figure {
  const formula = "(1 - after / before) * 100";
  return worked({ id, label, unit: "%", places: 1, formula, from: { before, after }, sources: [definition] });
}

/** Length of the sheet after a pass, mm, its mass and width unchanged; none where no sheet is given. */
export function lengthFigure(request: PassRequest, thickness: Figure, pass: number): Figure | undefined {
  if (request.sheet === undefined) return undefined;
  return worked({
    id: `pass-${pass}.length`,
    label: `sheet length after pass ${pass}`,
    unit: "mm",
    places: 0,
    formula: "mass * 1000 / (density * width * thickness)",
    from: { ...sheetFeeds(request.sheet), thickness },
    sources: [definition],
  });
}

function sheetFeeds({ mass, density, width }: NonNullable<PassRequest["sheet"]>): Readonly<Record<string, Figure>> {
  return {
    mass: askedFigure({ id: "passes.mass", label: "mass", unit: "g", places: 1 }, mass),
    density,
    width: asked({ id: "sheet.width", label: "sheet width", unit: "mm", places: 0 }, width),
  };
}

/** Time that a sheet runs through the rolls, s; none where no roll speed is given. */
export function timed(request: PassRequest, length: Figure, pass: number): { readonly runningTime?: Figure } {
  if (request.rollSpeed === undefined) return {};
  const speed = asked({ id: "rolls.speed", label: "roll speed", unit: "m/min", places: 1 }, request.rollSpeed);
  return {
    runningTime: worked({
      id: `pass-${pass}.running-time`,
      label: `running time of pass ${pass}`,
      unit: "s",
      places: 0,
      formula: "length / 1000 / speed * 60",
      from: { length, speed },
      sources: [definition],
    }),
  };
}

/** Running time of several passes, s. */
export function totalTime(times: readonly Figure[]): Figure {
  const naming = { id: "passes.running-time", label: "running time of all passes", unit: "s", places: 0 };
  return worked({ ...naming, formula: "sum(times)", from: { times }, sources: [definition] });
}

/** Every compounding pass is a trip of its own, since the sheet is folded in between. */
export function tripsFigure(compounding: number, reducing: number, stands: number): Figure {
  return worked({
    id: "passes.trips",
    label: "trips through the machine",
    unit: "",
    places: 0,
    formula: "compounding + ceil(reducing / stands)",
    from: { compounding, reducing, stands },
    sources: [definition],
  });
}
