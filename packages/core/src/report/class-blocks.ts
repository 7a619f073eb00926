import { citation } from "../figure/source.ts";
import type { Classed } from "../formula/classes.ts";
import type { FlourClass } from "../materials/flour-class-list.ts";
import type { ClassFit } from "../materials/flour-classes.ts";
import { fixedText } from "../number/decimal.ts";
import { row, section, table, wordColumn } from "./build.ts";
import type { Section } from "./schema.ts";
import { words } from "./show.ts";

const places: Readonly<Record<FlourClass["system"], string>> = {
  DE: "Germany",
  FR: "France",
  IT: "Italy",
  US: "United States",
  Codex: "Codex Alimentarius",
  AT: "Austria",
  JP: "Japan",
};

/** Tells the published classes of flours: a row for each flour and place, and the standards below. */
export function classSection(classed: readonly Classed[]): Section {
  const groups = classed.flatMap(({ name, fits }) => {
    const systems = [...new Set(fits.map(({ flourClass }) => flourClass.system))];
    return systems.map((system) => ({ name, system, fits: fits.filter((fit) => fit.flourClass.system === system) }));
  });
  const rows = groups.map(({ name, system, fits }) =>
    row([
      words(name),
      words(places[system]),
      words(fits.map(({ flourClass }) => flourClass.type).join(", ")),
      words([...new Set(fits.flatMap(measured))].join(", ")),
    ]),
  );
  const standards = groups.flatMap(({ system, fits }) =>
    fits.map(({ flourClass }) => `${places[system]}: ${citation(flourClass.source)}.`),
  );
  return section(
    "classes",
    "Published classes of flour",
    table(
      "classes",
      [
        wordColumn("flour", "flour"),
        wordColumn("place", "place"),
        wordColumn("class", "class"),
        wordColumn("by", "by"),
      ],
      rows,
    ),
    { kind: "text", lines: [...new Set(standards)] },
  );
}

/** What the flour was held against the limits with. */
function measured({ flourClass, limits }: ClassFit): readonly string[] {
  const on = flourClass.basis === "dry" ? "dry" : "as is";
  return limits.flatMap(({ what, value }) =>
    what === "moisture" ? [] : [`${what} ${fixedText(value.low, 2)} % ${on}`],
  );
}
