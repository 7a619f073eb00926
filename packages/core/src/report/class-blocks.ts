import { citation } from "../figure/source.ts";
import type { Classed } from "../formula/classes.ts";
import type { FlourClass } from "../materials/flour-class-list.ts";
import type { ClassFit } from "../materials/flour-classes.ts";
import { fixedText } from "../number/decimal.ts";
import { listing, section, wordColumn } from "./build.ts";
import type { Section } from "./schema.ts";

const places: Readonly<Record<FlourClass["system"], string>> = {
  DE: "Germany",
  FR: "France",
  IT: "Italy",
  US: "USA",
  Codex: "Codex",
  AT: "Austria",
  JP: "Japan",
};

/** Tells the published classes of flours: a row for each flour, and the standards of each place below. */
export function classSection(classed: readonly Classed[]): Section {
  const all = classed.flatMap(({ fits }) => fits);
  const placesOf = (fits: readonly ClassFit[]) => [...new Set(fits.map(({ flourClass }) => flourClass.system))];
  const of = (fits: readonly ClassFit[], system: FlourClass["system"]) =>
    fits.map(({ flourClass }) => flourClass).filter((one) => one.system === system);
  const typesOf = (fits: readonly ClassFit[], system: FlourClass["system"]) =>
    `${places[system]} ${of(fits, system)
      .map(({ type }) => type)
      .join(", ")}`;
  const fitting = classed.filter(({ fits }) => fits.length > 0);
  const standards = placesOf(all).map((system) => {
    const cited = new Set(of(all, system).map(({ source }) => citation(source)));
    return `${places[system]}: ${[...cited].join("; ")}.`;
  });
  const classesOf = (fits: readonly ClassFit[]) => placesOf(fits).map((system) => typesOf(fits, system));
  const classes = listing("classes", fitting, [
    [wordColumn("flour", "flour"), ({ name }) => name],
    [wordColumn("class", "class"), ({ fits }) => classesOf(fits).join("; ")],
    [wordColumn("by", "by"), ({ fits }) => [...new Set(fits.flatMap(measured))].join(", ")],
  ]);
  return section("classes", "Published classes of flour", classes, standards);
}

/** What the flour was held against the limits with. */
function measured({ flourClass, limits }: ClassFit): readonly string[] {
  const on = flourClass.basis === "dry" ? "dry" : "as is";
  return limits.flatMap(({ what, value }) =>
    value === undefined || what === "moisture" ? [] : [`${what} ${fixedText(value.low, 2)} % ${on}`],
  );
}
