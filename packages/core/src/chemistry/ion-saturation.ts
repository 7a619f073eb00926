import { type Decimal, type DecimalText, dec } from "../number/decimal.ts";
import { type Composition, sharesOf, speciesOf } from "./composition.ts";
import { type Activities, type Anion, activities, type Cation, type Molalities } from "./pitzer.ts";
import { type SpeciesName, speciesNames } from "./species.ts";

/** A salt by its ions. */
interface Ions {
  readonly salt: SpeciesName;
  readonly cation: Cation;
  readonly cations: number;
  readonly anion: Anion;
  /** Potassium carbonate and the hydroxides dissolve to far beyond what the parameters cover: nothing tells when they grow. */
  readonly grows: boolean;
}

function ionsOf(salt: SpeciesName): Ions | undefined {
  const { ions, sodium, potassium } = speciesOf(salt);
  if (ions === "not known") return undefined;
  return { salt, cation: sodium > 0 ? "Na" : "K", cations: sodium + potassium, ...ions };
}

/** mol/kg: the greatest ionic strength at which the parameters give a solubility back, that of natron at 25 °C. */
const GREATEST_STRENGTH = 8.3;

/** What is known of one salt at the temperature: g anhydrous in 100 g of water, and the water of its crystals, mol. */
export interface Limit {
  readonly grams: DecimalText;
  readonly crystalWater: number;
}

/**
 * The salt that comes nearest to its limit when ions are free to change partners, and how near in %: 100 is saturation.
 *
 * The ions' activities after Pitzer are held against those in the saturated solution of each salt by itself, whose
 * strength the tables give; the per cent are those of the mean activity of the ions. Activity coefficients are those at
 * 25 °C. Undefined where a salt has no parameters, or where the solution is stronger than they cover.
 *
 * @param limitOf - the limit of a salt by itself at the temperature
 */
export function nearestByIons(
  composition: Composition,
  limitOf: (salt: SpeciesName) => Limit | undefined,
): { readonly salt: SpeciesName; readonly taken: Decimal } | undefined {
  const molalities = molalitiesOf(composition);
  if (molalities === undefined) return undefined;
  const active = activities(molalities);
  if (active.ionicStrength > GREATEST_STRENGTH) return undefined;
  const near = speciesNames.flatMap((name) => {
    const solid = ionsOf(name);
    const limit = solid?.grows === true ? limitOf(name) : undefined;
    if (solid === undefined || limit === undefined || molalities[solid.cation] <= 0 || molalities[solid.anion] <= 0)
      return [];
    const alone = solutionOfOne(solid, limit.grams);
    const product = logProduct(solid, limit, molalities, active);
    const saturated = logProduct(solid, limit, alone, activities(alone));
    const taken = 100 * Math.exp((product - saturated) / (solid.cations + 1));
    return [{ salt: solid.salt, taken }];
  });
  const [first, ...others] = near;
  if (first === undefined) return undefined;
  const nearest = others.reduce((best, one) => (one.taken > best.taken ? one : best), first);
  return { salt: nearest.salt, taken: dec(nearest.taken.toFixed(6)) };
}

const none: Molalities = { Na: 0, K: 0, Cl: 0, OH: 0, HCO3: 0, CO3: 0 };

/** Ions of all salts, mol per kg of water; hydroxide has turned bicarbonate into carbonate as far as both go. */
function molalitiesOf(composition: Composition): Molalities | undefined {
  const kilograms = Number(composition.water) / 1000;
  const found = { ...none };
  for (const [name, share] of sharesOf(composition)) {
    const parts = ionsOf(name);
    if (parts === undefined) return undefined;
    const molality = Number(share.div(speciesOf(name).molarMass)) / kilograms;
    found[parts.cation] += parts.cations * molality;
    found[parts.anion] += molality;
  }
  const turned = Math.min(found.OH, found.HCO3);
  return { ...found, OH: found.OH - turned, HCO3: found.HCO3 - turned, CO3: found.CO3 + turned };
}

function solutionOfOne({ salt, cation, cations, anion }: Ions, grams: DecimalText): Molalities {
  const molality = Number(dec(grams).times(10).div(speciesOf(salt).molarMass));
  return { ...none, [cation]: cations * molality, [anion]: molality };
}

/** Natural logarithm of the activities that a solid is made of. */
function logProduct({ cation, cations, anion }: Ions, limit: Limit, m: Molalities, active: Activities): number {
  return (
    cations * (Math.log(m[cation]) + active.cations[cation]) +
    Math.log(m[anion]) +
    active.anions[anion] +
    limit.crystalWater * active.water
  );
}
