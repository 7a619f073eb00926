import { alkalinityM, type Composition, sharesOf, speciesOf } from "../chemistry/composition.ts";
import { alkaliBeyond, beyondUse, type Use } from "../chemistry/published-use.ts";
import { type FoodLimit, known } from "../chemistry/salts/record.ts";
import { type SpeciesName, speciesNames } from "../chemistry/species.ts";
import { exact, type Figure, worked } from "../figure/figure.ts";
import { loudNote, type Note, type Path, type Problem, problem } from "../figure/problem.ts";
import { citation, massBalance } from "../figure/source.ts";
import { type DecimalText, dec, fixedText } from "../number/decimal.ts";
import { type Acceptable, mostParts } from "../spec/believed.ts";
import type { AlkaliFigures } from "./alkali.ts";
import type { Role } from "./entries.ts";
import type { FormulaLine } from "./line.ts";
import { contentFigure } from "./made-of.ts";

const alkaliTried: Use = {
  percent: "5",
  source: {
    cite: "D. W. Hatcher, M. J. Anderson, Cereal Chemistry 84(3):253-259, 2007",
    at: "abstract",
    standing: "read",
  },
};
const hydroxideUsed: Use = {
  percent: "0.5",
  source: { cite: "G. Hou, M. Kruk, AIB Technical Bulletin XX(12), 1998, Malaysian hokkien", standing: "memory" },
};
const saltUsed: Use = {
  percent: "4",
  source: { cite: "fair-competition rule for noodles, Japan, Nagoya kishimen", standing: "copy" },
};
const saltMost = "10";

/** The problem of an amount that no dough takes, on 100 of flour. */
export function tooMuch(role: Exclude<Role, "flour">, name: string, parts: Figure, path: Path): Problem | undefined {
  if (exact(parts).lte(mostParts[role])) return undefined;
  return problem("quantity.out-of-range", path, { name, parts: fixedText(parts.value, 1), most: mostParts[role] });
}

/** Sodium carbonate and nothing else. */
const soda: Composition = { species: { Na2CO3: "100" }, water: "0", inert: "0" };

interface Doses {
  readonly alkali?: AlkaliFigures;
  readonly salt: Figure;
}

interface DosedLines extends Doses {
  readonly lines: readonly FormulaLine[];
  readonly legal: readonly LegalSalt[];
}

/** The most of a dose on 100 of flour that is not refused; none where the spec accepts more. */
export function mostDoses(accepted: readonly Acceptable[] = []) {
  const { percent } = alkaliTried;
  return {
    ...(!accepted.includes("high alkali") && {
      alkali: { anhydrous: dec(percent), alkalinity: alkalinityM(soda).times(percent) },
    }),
    ...(!accepted.includes("high salt") && { salt: dec(saltMost) }),
  };
}

/**
 * Doses that no noodle at hand was made with, unless the spec accepts them.
 *
 * Problems: `alkali.too-much` above 5 % of anhydrous salts on flour, or above the alkalinity of 5 % of sodium carbonate;
 * `salt.too-much` above 10 % of flour.
 */
export function doseProblems({ alkali, salt }: Doses, accepted: readonly Acceptable[] = []): readonly Problem[] {
  const most = mostDoses(accepted);
  return [
    ...(alkali &&
    most.alkali &&
    (exact(alkali.anhydrous).gt(most.alkali.anhydrous) || exact(alkali.alkalinityM).gt(most.alkali.alkalinity))
      ? [
          problem("alkali.too-much", ["alkali"], {
            anhydrous: fixedText(alkali.anhydrous.value, 2),
            alkalinity: fixedText(alkali.alkalinityM.value, 1),
            most: alkaliTried.percent,
            strongest: fixedText(most.alkali.alkalinity, 1),
            source: citation(alkaliTried.source),
          }),
        ]
      : []),
    ...(most.salt !== undefined && exact(salt).gt(most.salt)
      ? [
          problem("salt.too-much", ["salt"], {
            salt: fixedText(salt.value, 2),
            most: saltMost,
            used: saltUsed.percent,
            source: citation(saltUsed.source),
          }),
        ]
      : []),
  ];
}

/** Doses beyond the greatest published use, and above the limit of a food law that is known here. */
export function doseNotes({ lines, alkali, salt, legal }: DosedLines): readonly Note[] {
  const hydroxide = lines.reduce((total, { material, parts }) => {
    const shares = material.composition === undefined ? [] : sharesOf(material.composition);
    const caustic = shares.filter(([name]) => speciesOf(name).kind === "hydroxide");
    return caustic.reduce((more, [, share]) => more.plus(share.times(parts.value).div(100)), total);
  }, dec(0));
  return [
    ...(alkali === undefined ? [] : alkaliBeyond(alkali.anhydrous.value)),
    ...beyondUse("alkali.hydroxide", hydroxide, hydroxideUsed),
    ...beyondUse("salt.unusual", exact(salt), saltUsed),
    ...legal.flatMap((one) =>
      exact(one.figure).lte(one.limit.most) ? [] : [loudNote("alkali.food-law", ["alkali"], { limit: lawText(one) })],
    ),
  ];
}

/** A salt in the raw noodle, beside the limit that a food law sets. */
export interface LegalSalt {
  readonly salt: SpeciesName;
  readonly figure: Figure;
  readonly limit: FoodLimit & { readonly most: DecimalText };
}

/** The salts of a dough for which a limit in noodles is known here, in mg per kg of raw noodle, nothing lost. */
export function legalSalts(lines: readonly FormulaLine[], dough: Figure): readonly LegalSalt[] {
  return speciesNames.flatMap((salt) => {
    const holding = lines.filter(({ material }) => material.composition?.species[salt] !== undefined);
    if (holding.length === 0) return [];
    return (known(speciesOf(salt).foodLimits) ?? []).flatMap((limit): readonly LegalSalt[] => {
      const { most, counted } = limit;
      if (most === undefined || counted !== undefined) return [];
      return [{ salt, figure: inNoodle(salt, holding, dough), limit: { ...limit, most } }];
    });
  });
}

function inNoodle(name: SpeciesName, lines: readonly FormulaLine[], dough: Figure): Figure {
  const content = lines.map((line) => contentFigure(line, name));
  return worked(
    {
      id: `alkali.${name}-per-kg`,
      label: `${speciesOf(name).name} in the raw noodle, without water`,
      unit: "mg/kg",
      places: 0,
    },
    "10000 * sum(parts * content) / dough",
    { parts: lines.map(({ parts }) => parts), content, dough },
    massBalance,
  );
}

/** How a salt stands to a limit, in words. */
export function lawText({ salt, figure, limit: { most, source } }: LegalSalt): string {
  const within = exact(figure).lte(most) ? "within" : "above";
  return `${speciesOf(salt).name}, ${fixedText(figure.value, 0)} mg per kg of raw noodle: ${within} the ${most} of ${citation(source)}`;
}
