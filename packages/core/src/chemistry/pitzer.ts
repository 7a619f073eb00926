import type { Source } from "../figure/source.ts";

/**
 * Activity coefficients of the ions of carbonate waters at 25 °C after Pitzer, as an iteration in binary numbers.
 * Nothing weighed comes of it: only pH, which is stated to two places, and whether a solution stays clear.
 */
export const harvieMollerWeare: Source = {
  cite: "C. E. Harvie, N. Møller and J. H. Weare, Geochim. Cosmochim. Acta 48 (1984) 723, parameters at 25 °C",
  standing: "copy",
};

export type Cation = "Na" | "K";
/** Anions that the activity model knows. */
export type Anion = "Cl" | "OH" | "HCO3" | "CO3";

/** mol per kg of water */
export type Molalities = Readonly<Record<Cation | Anion, number>>;

const cations = ["Na", "K"] as const;
const anions = ["Cl", "OH", "HCO3", "CO3"] as const;
const charge: Readonly<Record<Cation | Anion, number>> = { Na: 1, K: 1, Cl: 1, OH: 1, HCO3: 1, CO3: 2 };

/** β0, β1 and Cφ of each cation with each anion. */
const binary: Readonly<Record<Cation, Readonly<Record<Anion, readonly [number, number, number]>>>> = {
  Na: {
    Cl: [0.0765, 0.2664, 0.00127],
    OH: [0.0864, 0.253, 0.0044],
    HCO3: [0.0277, 0.0411, 0],
    CO3: [0.0399, 1.389, 0.0044],
  },
  K: {
    Cl: [0.04835, 0.2122, -0.00084],
    OH: [0.1298, 0.32, 0.0041],
    HCO3: [0.0296, -0.013, -0.008],
    CO3: [0.1488, 1.43, -0.0015],
  },
};

const thetaCations = -0.012;
/** θ of two anions and ψ of the two with sodium and with potassium; a pair is written in the order of `anions`. */
const anionPairs: Readonly<Record<string, Readonly<{ theta: number; Na: number; K: number }>>> = {
  "Cl OH": { theta: -0.05, Na: -0.006, K: -0.006 },
  "Cl HCO3": { theta: 0.03, Na: -0.015, K: 0 },
  "Cl CO3": { theta: -0.02, Na: 0.0085, K: 0.004 },
  "OH HCO3": { theta: 0, Na: 0, K: 0 },
  "OH CO3": { theta: 0.1, Na: -0.017, K: -0.01 },
  "HCO3 CO3": { theta: -0.04, Na: 0.002, K: 0.012 },
};
/** ψ of sodium and potassium with an anion. */
const psiCations: Readonly<Record<Anion, number>> = { Cl: -0.0018, OH: 0, HCO3: -0.003, CO3: 0.003 };

/** Debye and Hückel's slope for the osmotic coefficient at 25 °C, from memory; b and α as usual. */
const SLOPE = 0.3915;
const B = 1.2;
const ALPHA = 2;

/** Natural logarithms of the activity coefficients of the ions (as the equations give them) and of the activity of water. */
export interface Activities {
  readonly cations: Readonly<Record<Cation, number>>;
  readonly anions: Readonly<Record<Anion, number>>;
  readonly water: number;
  readonly ionicStrength: number;
}

/** Works out the activities of a solution. @example activities({ Na: 0.1, K: 0, Cl: 0.1, OH: 0, HCO3: 0, CO3: 0 }).ionicStrength // => 0.1 */
export function activities(m: Molalities): Activities {
  const ions = [...cations, ...anions];
  const strength = ions.reduce((total, ion) => total + m[ion] * charge[ion] ** 2, 0) / 2;
  const equivalents = ions.reduce((total, ion) => total + m[ion] * charge[ion], 0);
  const root = Math.sqrt(strength);
  let f = -SLOPE * (root / (1 + B * root) + (2 / B) * Math.log(1 + B * root));
  let pairs = 0;
  let osmotic = (-SLOPE * strength ** 1.5) / (1 + B * root);
  for (const cation of cations) {
    for (const anion of anions) {
      const [b0, b1] = binary[cation][anion];
      const both = m[cation] * m[anion];
      f += both * ((b1 * slopeOfG(ALPHA * root)) / strength);
      pairs += both * thirdOrder(cation, anion);
      osmotic += both * (b0 + b1 * Math.exp(-ALPHA * root) + equivalents * thirdOrder(cation, anion));
    }
  }
  const sodiumPotassium = m.Na * m.K;
  osmotic +=
    sodiumPotassium * (thetaCations + anions.reduce((total, anion) => total + m[anion] * psiCations[anion], 0));
  for (const [one, other] of pairsOf(anions)) {
    const both = m[one] * m[other];
    const { theta, Na, K } = pair(one, other);
    const electric = unsymmetrical(charge[one], charge[other], strength);
    f += both * electric.slope;
    osmotic += both * (theta + electric.value + strength * electric.slope + m.Na * Na + m.K * K);
  }
  const coefficient = (anion: Anion): number => {
    const z = charge[anion];
    let ln = z * z * f + z * pairs + sodiumPotassium * psiCations[anion];
    for (const cation of cations) {
      const [b0, b1] = binary[cation][anion];
      ln += m[cation] * (2 * (b0 + b1 * g(ALPHA * root)) + equivalents * thirdOrder(cation, anion));
    }
    for (const other of anions) {
      if (other === anion) continue;
      const { theta, Na, K } = pair(anion, other);
      const electric = unsymmetrical(z, charge[other], strength).value;
      ln += m[other] * (2 * (theta + electric) + m.Na * Na + m.K * K);
    }
    return ln;
  };
  const ofCation = (cation: Cation): number => {
    const other = cation === "Na" ? "K" : "Na";
    let ln = f + pairs + 2 * m[other] * thetaCations;
    for (const anion of anions) {
      const [b0, b1] = binary[cation][anion];
      ln += m[anion] * (2 * (b0 + b1 * g(ALPHA * root)) + equivalents * thirdOrder(cation, anion));
      ln += m[other] * m[anion] * psiCations[anion];
    }
    for (const [one, another] of pairsOf(anions)) ln += m[one] * m[another] * pair(one, another)[cation];
    return ln;
  };
  const particles = ions.reduce((total, ion) => total + m[ion], 0);
  return {
    cations: { Na: ofCation("Na"), K: ofCation("K") },
    anions: { Cl: coefficient("Cl"), OH: coefficient("OH"), HCO3: coefficient("HCO3"), CO3: coefficient("CO3") },
    water: (-(2 * osmotic + particles) * 18.015) / 1000,
    ionicStrength: strength,
  };
}

/** ln γ of chloride in a potassium chloride solution, where MacInnes takes cation and anion to be alike. */
export function chlorideInPotassiumChloride(ionicStrength: number): number {
  return activities({ Na: 0, K: ionicStrength, Cl: ionicStrength, OH: 0, HCO3: 0, CO3: 0 }).anions.Cl;
}

function thirdOrder(cation: Cation, anion: Anion): number {
  return binary[cation][anion][2] / (2 * Math.sqrt(charge[anion]));
}

function pairsOf(list: readonly Anion[]): readonly (readonly [Anion, Anion])[] {
  return list.flatMap((one, index) => list.slice(index + 1).map((other) => [one, other] as const));
}

function pair(one: Anion, other: Anion): { readonly theta: number; readonly Na: number; readonly K: number } {
  return anionPairs[`${one} ${other}`] ?? anionPairs[`${other} ${one}`] ?? { theta: 0, Na: 0, K: 0 };
}

function g(x: number): number {
  return (2 * (1 - (1 + x) * Math.exp(-x))) / (x * x);
}

function slopeOfG(x: number): number {
  return (-2 * (1 - (1 + x + (x * x) / 2) * Math.exp(-x))) / (x * x);
}

/** Pitzer's electrostatic term for two ions of like sign and unlike charge, and its slope with ionic strength. */
function unsymmetrical(
  one: number,
  other: number,
  strength: number,
): { readonly value: number; readonly slope: number } {
  if (one === other) return { value: 0, slope: 0 };
  const x = (a: number, b: number): number => 6 * a * b * SLOPE * Math.sqrt(strength);
  const [mixed, first, second] = [x(one, other), x(one, one), x(other, other)];
  const factor = (one * other) / (4 * strength);
  const value = factor * (integral(mixed) - integral(first) / 2 - integral(second) / 2);
  const turned = mixed * slopeOfJ(mixed) - (first * slopeOfJ(first)) / 2 - (second * slopeOfJ(second)) / 2;
  return { value, slope: -value / strength + (factor / (2 * strength)) * turned };
}

/** Pitzer's J(x) in his closed form (J. Solution Chem. 4 (1975) 249, from memory). */
function integral(x: number): number {
  return x / (4 + 4.581 * x ** -0.7237 * Math.exp(-0.012 * x ** 0.528));
}

function slopeOfJ(x: number): number {
  const step = x * 1e-5;
  return (integral(x + step) - integral(x - step)) / (2 * step);
}
