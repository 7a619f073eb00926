import { type Figure, given, worked } from "../../figure/figure.ts";
import { definition, type Source } from "../../figure/source.ts";
import { choiOkos } from "./choi-okos.ts";
import { waterSpecificHeat } from "./heat-balance.ts";

const crcFusion: Source = {
  cite: "CRC Handbook of Chemistry and Physics, enthalpy of fusion of water 6.01 kJ/mol",
  standing: "copy",
};

/** The heat that ice takes up as it melts, kJ/kg. @example heatOfMelting().value.slice(0, 5) // => "333.6" */
export function heatOfMelting(): Figure {
  const naming = { id: "ice.melting", label: "heat of melting of ice", unit: "kJ/kg", places: 1 };
  return worked(naming, "melting / molarMass * 1000", { melting: "6.01", molarMass: "18.015" }, crcFusion);
}

/** The heat that ice takes up on its way to 0 °C, melted, kJ/kg. @example heatToMelt(meltingIce).value.slice(0, 5) // => "333.6" */
export function heatToMelt(temperature: Figure): Figure {
  const naming = { id: "ice.heat", label: "heat taken up by ice until it has melted", unit: "kJ/kg", places: 1 };
  const from = { melting: heatOfMelting(), t: temperature };
  return worked(naming, "melting - (2.0623 + 0.0060769 * t / 2) * t", from, choiOkos, crcFusion);
}

/** How much of the water has to be ice for the rest, from the tap, to come to the wanted temperature; g. */
export function iceMass(water: Figure, tap: Figure, wanted: Figure, ice: Figure): Figure {
  return worked(
    { id: "water.ice", label: "ice", unit: "g", places: 1 },
    "water * heat * (tap - wanted) / (heat * tap + melting)",
    { water, heat: waterSpecificHeat, tap, wanted, melting: heatToMelt(ice) },
    definition,
  );
}

/** The usual ice, as it lies in water. */
export const meltingIce: Figure = given(
  { id: "ice.temperature", label: "temperature of the ice", unit: "°C", places: 0 },
  "0",
  "ice that is just melting",
  definition,
);
