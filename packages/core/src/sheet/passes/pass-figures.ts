import { type Figure, found, worked } from "../../figure/figure.ts";
import { definition, massBalance } from "../../figure/source.ts";
import type { DecimalText } from "../../number/decimal.ts";
import { asked, askedFigure } from "../inputs.ts";
import type { PassRequest } from "./pass-request.ts";

/** What a pass, or all of them, take off the thickness, %. */
export function reductionFigure(id: string, label: string, before: Figure, after: Figure): Figure {
  const formula = "(1 - after / before) * 100";
  return worked({ id, label, unit: "%", places: 1 }, formula, { before, after }, definition);
}

/** Length of the sheet after a pass, mm, its mass and width unchanged; none where no sheet is given. */
export function lengthFigure(request: PassRequest, thickness: Figure, pass: number): Figure | undefined {
  if (request.sheet === undefined) return undefined;
  const naming = { id: `pass-${pass}.length`, label: `sheet length after pass ${pass}`, unit: "mm", places: 0 };
  const from = { ...sheetFeeds(request.sheet), thickness };
  return worked(naming, "mass * 1000 / (density * width * thickness)", from, definition);
}

function sheetFeeds({ mass, density, width }: NonNullable<PassRequest["sheet"]>) {
  return {
    mass: askedFigure({ id: "passes.mass", label: "mass", unit: "g", places: 1 }, mass),
    density,
    width: asked({ id: "sheet.width", label: "sheet width", unit: "mm", places: 0 }, width),
  };
}

/** Thickness and length of the sheet after a pass, mm. */
export interface Rolled {
  readonly number: number;
  readonly thickness: Figure;
  readonly length: Figure;
}

/** Speed and time of a pass; `even` is the speed that the volume asks for where the machine states one for each stand. */
interface Running {
  readonly speed: Figure;
  readonly even?: Figure;
  readonly runningTime: Figure;
}

/**
 * Speeds and times of the passes that a sheet runs through in one trip. As much dough leaves each stand as the next one takes,
 * so that speed times thickness is the same at all of them; the width is taken as constant.
 */
export function runningOf(
  trip: readonly Rolled[],
  rollSpeed: DecimalText | readonly DecimalText[],
): readonly Running[] {
  const last = trip.at(-1);
  if (last === undefined) return [];
  const stated = (value: DecimalText, { number }: Rolled, stand = ""): Figure => {
    const naming = { ...speedNaming(number), label: `roll speed of pass ${number}` };
    const speed = asked({ ...naming, id: `rolls.speed${stand}`, label: "roll speed" }, value);
    return worked(naming, "speed", { speed }, definition);
  };
  if (typeof rollSpeed === "string") {
    const lastSpeed = stated(rollSpeed, last);
    return trip.map((pass) => {
      const speed = pass === last ? lastSpeed : evenSpeed(pass, last, lastSpeed, speedNaming(pass.number));
      return { speed, runningTime: timeOf(pass, speed) };
    });
  }
  const speeds = trip.map((pass, stand) => stated(rollSpeed[stand] ?? "0", pass, `-${stand + 1}`));
  return trip.flatMap((pass, stand) => {
    const [speed, lastSpeed] = [speeds[stand], speeds.at(-1)];
    if (speed === undefined || lastSpeed === undefined) return [];
    const naming = { ...speedNaming(pass.number), id: `pass-${pass.number}.even-speed` };
    return [{ speed, even: evenSpeed(pass, last, lastSpeed, naming), runningTime: timeOf(pass, speed) }];
  });
}

function speedNaming(pass: number) {
  const label = `roll speed that the volume asks of pass ${pass}`;
  return { id: `pass-${pass}.speed`, label, unit: "m/min", places: 2 };
}

function evenSpeed(pass: Rolled, last: Rolled, lastSpeed: Figure, naming: ReturnType<typeof speedNaming>): Figure {
  const from = { lastSpeed, lastThickness: last.thickness, thickness: pass.thickness };
  return worked(naming, "lastSpeed * lastThickness / thickness", from, massBalance);
}

function timeOf({ number, length }: Rolled, speed: Figure): Figure {
  const naming = { id: `pass-${number}.running-time`, label: `running time of pass ${number}`, unit: "s", places: 0 };
  return worked(naming, "length / 1000 / speed * 60", { length, speed }, definition);
}

/** Running time of all trips, s. A sheet is in all stands of a trip at once, so the longest of its passes counts. */
export function totalTime(trips: readonly (readonly Figure[])[]): Figure {
  const times = trips.map((passes, index) => tripTime(passes, index + 1));
  const naming = { id: "passes.running-time", label: "running time of all passes", unit: "s", places: 0 };
  return worked(naming, "sum(times)", { times }, definition);
}

function tripTime(passes: readonly Figure[], trip: number): Figure {
  const [only] = passes;
  if (only !== undefined && passes.length === 1) return only;
  const naming = { id: `trip-${trip}.running-time`, label: `running time of trip ${trip}`, unit: "s", places: 0 };
  return worked(naming, "max(passes)", { passes }, definition);
}

/** The passes that a schedule takes from its first to its final thickness. */
export function reducingPasses(number: number, on: readonly Figure[]): Figure {
  const naming = { id: "passes.reducing", label: "passes that make the sheet thinner", unit: "", places: 0 };
  return found(naming, number, "the schedule", on, definition);
}

/** Every compounding pass is a trip of its own, since the sheet is folded in between. */
export function tripsFigure(compounding: number, reducing: Figure, stands: number): Figure {
  const naming = { id: "passes.trips", label: "trips through the machine", unit: "", places: 0 };
  return worked(naming, "compounding + ceil(reducing / stands)", { compounding, reducing, stands }, definition);
}
