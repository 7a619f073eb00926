import type { PlanRequest } from "@noodlewright/core/sheet";
import highsModule, { type Highs } from "highs";

/** The package is typed as CommonJS, but what is imported is the loader itself. */
const loadHighs = highsModule as unknown as typeof highsModule.default;

/** The shortest day by an independent solver. Machines with several stages have one unit. */
export class DaySolver {
  readonly #highs: Highs;

  private constructor(highs: Highs) {
    this.#highs = highs;
  }

  static async load(): Promise<DaySolver> {
    return new DaySolver(await loadHighs());
  }

  shortest(request: PlanRequest): number {
    const result = this.#highs.solve(programOf(request), { output_flag: false, mip_rel_gap: 0 });
    if (result.Status !== "Optimal") throw new Error(`the independent solver ended with ${result.Status}`);
    return Math.round(result.ObjectiveValue);
  }
}

/** Moments of the loads at their stages as a program of linear rows; which of two goes first at a machine is a choice of 0 or 1. */
function programOf({ stages, machines, loads, longestGap }: PlanRequest): string {
  const work = stages.flatMap((stage, index) => (stage.kind === "work" ? [{ ...stage, next: stages[index + 1] }] : []));
  const name = (load: number, at: number): string => `s${load}x${at}`;
  const all = Array.from({ length: loads }, (_, load) => load);
  const long =
    loads * stages.reduce((total, stage) => total + (stage.kind === "work" ? stage.minutes : stage.least), 0);
  const rows: string[] = [];
  const choices: string[] = [];
  const later = (one: string, other: string, minutes: number): unknown => rows.push(`${one} - ${other} >= ${minutes}`);
  for (const [at, { minutes, machine, next }] of work.entries()) {
    const units = machines.find((kind) => kind.name === machine)?.count ?? 1;
    for (const load of all) {
      const here = name(load, at);
      if (at === work.length - 1) later("span", here, minutes);
      else {
        const least = next?.kind === "wait" ? next.least : 0;
        const greatest = next?.kind === "wait" ? next.greatest : longestGap;
        later(name(load, at + 1), here, minutes + least);
        if (greatest !== undefined) later(here, name(load, at + 1), -minutes - greatest);
      }
      if (load + units < loads) later(name(load + units, at), here, minutes);
      for (const [other, { minutes: its }] of work.entries()) {
        if (other <= at || work[other]?.machine !== machine) continue;
        for (const another of all.filter((one) => one !== load)) {
          const choice = `c${load}x${at}x${another}x${other}`;
          choices.push(choice);
          rows.push(`${name(another, other)} - ${here} - ${long} ${choice} >= ${minutes - long}`);
          rows.push(`${here} - ${name(another, other)} + ${long} ${choice} >= ${its}`);
        }
      }
    }
  }
  const named = rows.map((row, index) => `r${index}: ${row}`);
  return [
    "Minimize",
    "span: span",
    "Subject To",
    ...named,
    ...(choices.length > 0 ? ["Binary", ...choices] : []),
    "End",
  ].join("\n");
}
