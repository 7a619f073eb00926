import { type Composition, fromMasses, hydrate } from "../chemistry/composition.ts";
import { type HydrateName, hydrates, type SpeciesName, speciesNames } from "../chemistry/species.ts";
import { answer, inputProblem, type Outcome, type Path, type Problem, refuse } from "../figure/problem.ts";
import { fromSpec, type Source } from "../figure/source.ts";
import { type Decimal, type DecimalText, dec, decimalText, HUNDRED, sum, ZERO } from "../number/decimal.ts";
import { parseQuantity, type Quantity } from "../number/quantity.ts";
import { findMaterial, nearestNames } from "./catalogue.ts";
import type { MoistureBasis, Price } from "./fields.ts";
import type { Material, MaterialKind } from "./material.ts";
import { plainName } from "./nearest.ts";
import type { MaterialFigures } from "./schema.ts";

/** A value as it was stated, before it was turned into % as is. */
export interface Stated {
  readonly value: DecimalText;
  readonly basis: MoistureBasis;
}

/** A material as a spec uses it: the catalogue's figures, the kitchen's own, or the one over the other. */
export interface KitchenMaterial extends Material {
  readonly price?: Price;
  /** What there is of it in the store. */
  readonly stock?: Quantity;
  readonly stated: { readonly protein?: Stated; readonly ash?: Stated };
  /** Where each of the main figures comes from. */
  readonly figureSources: {
    readonly moisture: Source;
    readonly protein: Source;
    readonly ash: Source;
    readonly composition: Source;
  };
}

/** A kitchen's own materials by name. */
export type OwnMaterials = Readonly<Record<string, MaterialFigures>>;

/**
 * Finds the material that a name stands for: the kitchen's own first, then the catalogue, with the figures given beside
 * the name over both.
 *
 * Where only the moisture is replaced, protein, ash and the rest keep their share of the dry matter.
 *
 * Problems: `materials.unknown` (with the nearest names), `materials.moisture-missing`, `materials.composition`,
 * `materials.composition-part`, `materials.composition-missing`, `quantity.unreadable`.
 */
export function resolveMaterial(
  name: string,
  path: Path,
  figures: MaterialFigures | undefined,
  own: OwnMaterials = {},
): Outcome<KitchenMaterial> {
  const ownFigures = ownByName(name, own);
  const layers = [figures, ownFigures].filter((layer): layer is MaterialFigures => layer !== undefined);
  const base = findBase(name, path, layers, own);
  if (!base.ok) return base;
  const start = base.value === undefined ? undefined : fromCatalogue(base.value);
  return layers.reduceRight<Outcome<KitchenMaterial | undefined>>(
    (before, layer) => (before.ok ? overlay(name, path, before.value, layer, layer === figures) : before),
    answer(start),
  ) as Outcome<KitchenMaterial>;
}

function ownByName(name: string, own: OwnMaterials): MaterialFigures | undefined {
  const wanted = plainName(name);
  return Object.entries(own).find(([key]) => plainName(key) === wanted)?.[1];
}

function findBase(
  name: string,
  path: Path,
  layers: readonly MaterialFigures[],
  own: OwnMaterials,
): Outcome<Material | undefined> {
  const like = layers.find((layer) => layer.like !== undefined)?.like;
  const looked = like ?? name;
  const found = findMaterial(looked);
  if (found.ok) return answer(found.material);
  if (like === undefined && layers.length > 0) return answer(undefined);
  const ownNearest = like === undefined ? nearestNames(looked, Object.keys(own)) : [];
  const nearest = [...new Set([...ownNearest, ...found.nearest])].slice(0, 3);
  return refuse(
    inputProblem(
      "materials.unknown",
      path,
      `"${looked}"`,
      "a material of the catalogue, or one of the kitchen's own with its figures",
      nearest.length === 0
        ? "look it up with `noodlewright materials`, or give its figures under `figures:`"
        : `did you mean ${nearest.map((one) => `"${one}"`).join(" or ")}? Otherwise give its figures under \`figures:\``,
    ),
  );
}

function fromCatalogue(material: Material): KitchenMaterial {
  const { source } = material;
  return {
    ...material,
    stated: {},
    figureSources: { moisture: source, protein: source, ash: source, composition: source },
  };
}

function overlay(
  name: string,
  path: Path,
  before: KitchenMaterial | undefined,
  figures: MaterialFigures,
  inline: boolean,
): Outcome<KitchenMaterial> {
  const place = inline ? [...path.slice(0, -1), "figures"] : path;
  const kind: MaterialKind = figures.kind ?? before?.kind ?? (figures.composition === undefined ? "flour" : "alkali");
  const composition = readComposition(figures, place);
  if (!composition.ok) return composition;
  const chosen = composition.value ?? before?.composition;
  const moisture = figures.moisture?.value ?? composition.value?.water ?? before?.moisture;
  if ((kind === "alkali" || kind === "salt") && chosen === undefined) {
    return refuse(
      inputProblem(
        "materials.composition-missing",
        place,
        `"${name}" without a composition`,
        "what it is made of, such as { Na2CO3: 90 %, K2CO3: 10 % }",
        "copy the composition from its label or certificate",
      ),
    );
  }
  if (moisture === undefined) {
    return refuse(
      inputProblem(
        "materials.moisture-missing",
        place,
        `"${name}" without its moisture`,
        "moisture in % as weighed, such as 13.8 %",
        "copy it from the certificate; for a flour of unknown moisture write 14 %, the basis flours are quoted on, and take the water as a first try",
      ),
    );
  }
  const flourLike = kind === "flour" || kind === "gluten" || kind === "starch" || kind === "bran";
  const usual: MoistureBasis = flourLike ? { kind: "at", moisture: "14" } : { kind: "as is" };
  const protein = restated(figures.protein, figures.proteinBasis ?? usual) ?? kept(before, "protein", moisture);
  const ash = restated(figures.ash, figures.ashBasis ?? usual) ?? kept(before, "ash", moisture);
  const usualFactor = figures.protein === undefined ? before?.protein?.nitrogenFactor : flourLike ? "5.7" : "6.25";
  const factor = figures.nitrogenFactor ?? usualFactor;
  const source: Source = { cite: figures.source ?? fromSpec.cite, standing: "user" };
  const sources = before?.figureSources;
  const material: KitchenMaterial = {
    ...(before === undefined ? blank(name, kind, source) : whatStays(before, figures, moisture)),
    kind,
    moisture,
    stated: { ...before?.stated, ...(protein && { protein }), ...(ash && { ash }) },
    ...(protein && { protein: { value: asIs(protein, moisture), ...(factor && { nitrogenFactor: factor }) } }),
    ...(ash && { ash: asIs(ash, moisture) }),
    ...(figures.fat && { fat: figures.fat.value }),
    ...(figures.carbohydrate && { carbohydrate: figures.carbohydrate.value }),
    ...(figures.fibre && { fibre: figures.fibre.value }),
    ...(figures.sodium && { sodium: decimalText(dec(figures.sodium.value).times(1000)) }),
    ...(figures.potassium && { potassium: decimalText(dec(figures.potassium.value).times(1000)) }),
    ...(figures.price && { price: figures.price }),
    ...(figures.stock && { stock: figures.stock }),
    ...(chosen && { composition: chosen }),
    glutenForming: figures.glutenForming ?? before?.glutenForming ?? (kind === "flour" || kind === "gluten"),
    wholegrain: figures.wholegrain ?? before?.wholegrain ?? false,
    allergens: figures.allergens ?? before?.allergens ?? [],
    allergensKnown: figures.allergens !== undefined || (before?.allergensKnown ?? false),
    figureSources: {
      moisture: figures.moisture ? source : (sources?.moisture ?? source),
      protein: figures.protein ? source : (sources?.protein ?? source),
      ash: figures.ash ? source : (sources?.ash ?? source),
      composition: composition.value ? source : (sources?.composition ?? source),
    },
  };
  return answer(material);
}

function restated(quantity: Quantity | undefined, basis: MoistureBasis): Stated | undefined {
  return quantity && { value: quantity.value, basis };
}

/** A figure as is holds at the moisture it was found at. */
function held(value: DecimalText, before: KitchenMaterial, moisture: DecimalText): Stated {
  const same = dec(moisture).eq(before.moisture);
  return { value, basis: same ? { kind: "as is" } : { kind: "at", moisture: before.moisture } };
}

/** What stays of a protein or an ash that is not replaced. */
function kept(before: KitchenMaterial | undefined, what: "protein" | "ash", moisture: DecimalText): Stated | undefined {
  const stated = before?.stated[what];
  if (stated?.basis.kind === "at") return stated;
  const asFound = what === "protein" ? before?.protein?.value : before?.ash;
  return before === undefined || asFound === undefined ? undefined : held(asFound, before, moisture);
}

/** A table row whose figures the kitchen replaces loses what went with them: their spread, the energy, the remarks. */
function whatStays(before: KitchenMaterial, figures: MaterialFigures, moisture: DecimalText): KitchenMaterial {
  const { spread, energy, energyFactors, allergensPossible, ...rest } = before;
  const nutrients = ["fat", "carbohydrate", "fibre", "sodium", "potassium"] as const;
  const asDamp = nutrients.flatMap((name) => {
    const value = before[name];
    return value === undefined ? [] : [[name, asIs(held(value, before, moisture), moisture)] as const];
  });
  const measured = [figures.moisture, figures.protein, figures.ash, figures.fat, figures.carbohydrate];
  const replaced = measured.some((figure) => figure !== undefined);
  return {
    ...rest,
    ...Object.fromEntries(asDamp),
    ...(spread && !replaced && { spread }),
    ...(energy !== undefined && !replaced && { energy }),
    ...(energyFactors && !replaced && { energyFactors }),
    ...(allergensPossible && figures.allergens === undefined && { allergensPossible }),
    ...(replaced && { notes: [] }),
  };
}

function blank(name: string, kind: MaterialKind, source: Source): KitchenMaterial {
  return {
    key: `own ${plainName(name)}`,
    name,
    aliases: [],
    kind,
    moisture: "0",
    glutenForming: false,
    wholegrain: false,
    allergens: [],
    allergensKnown: false,
    notes: [],
    source,
    stated: {},
    figureSources: { moisture: source, protein: source, ash: source, composition: source },
  };
}

function asIs(stated: Stated, moisture: DecimalText): DecimalText {
  if (stated.basis.kind === "as is") return stated.value;
  const dry = HUNDRED.minus(moisture);
  return decimalText(dec(stated.value).times(dry).div(HUNDRED.minus(stated.basis.moisture)));
}

/** Reads what a product is made of; formulas may carry crystal water. */
function readComposition(figures: MaterialFigures, path: Path): Outcome<Composition | undefined> {
  if (figures.composition === undefined) return answer(undefined);
  const problems: Problem[] = [];
  const parts: { readonly part: Part; readonly share: Decimal | "rest" }[] = [];
  for (const [key, written] of Object.entries(figures.composition)) {
    const place = [...path, "composition", key];
    const part = findPart(key);
    const share = readShare(written, place, problems);
    if (part === undefined) problems.push(unknownPart(key, place));
    else if (share !== undefined) parts.push({ part, share });
  }
  const stated = sum(parts.map(({ share }) => (share === "rest" ? ZERO : share)));
  const rests = parts.filter(({ share }) => share === "rest").length;
  const whole = rests === 0 ? stated.eq(HUNDRED) : rests === 1 && stated.lte(HUNDRED);
  if (problems.length === 0 && !whole) {
    problems.push(
      inputProblem(
        "materials.composition",
        [...path, "composition"],
        `parts that add up to ${decimalText(stated)} %${rests > 1 ? ", and more than one rest" : ""}`,
        "parts that add up to 100 % of the product, or one of them written as rest",
        "write `water: rest` for a solution, or `inert: rest` for what takes no part",
      ),
    );
  }
  if (problems.length > 0) return refuse(...problems);
  const masses: Record<string, Decimal> = {};
  let water = ZERO;
  let inert = ZERO;
  for (const { part, share } of parts) {
    const percent = share === "rest" ? HUNDRED.minus(stated) : share;
    if (part.kind === "water") water = water.plus(percent);
    if (part.kind === "inert") inert = inert.plus(percent);
    if (part.kind === "species") masses[part.name] = (masses[part.name] ?? ZERO).plus(percent);
    if (part.kind === "hydrate") {
      const crystal = hydrate(part.name);
      for (const [name, inCrystal] of Object.entries(crystal.species)) {
        masses[name] = (masses[name] ?? ZERO).plus(percent.times(inCrystal).div(HUNDRED));
      }
      water = water.plus(percent.times(crystal.water).div(HUNDRED));
    }
  }
  return answer(fromMasses({ species: masses, water, inert }));
}

type Part =
  | { readonly kind: "species"; readonly name: SpeciesName }
  | { readonly kind: "hydrate"; readonly name: HydrateName }
  | { readonly kind: "water" }
  | { readonly kind: "inert" };

function findPart(key: string): Part | undefined {
  const wanted = key.trim().toLowerCase().replaceAll("·", ".");
  if (wanted === "water" || wanted === "h2o") return { kind: "water" };
  if (wanted === "inert") return { kind: "inert" };
  const name = speciesNames.find((one) => one.toLowerCase() === wanted);
  if (name !== undefined) return { kind: "species", name };
  const crystal = (Object.keys(hydrates) as HydrateName[]).find((one) => one.toLowerCase() === wanted);
  return crystal === undefined ? undefined : { kind: "hydrate", name: crystal };
}

function unknownPart(key: string, path: Path): Problem {
  const names = [...speciesNames, ...Object.keys(hydrates), "water", "inert"];
  const nearest = nearestNames(key, names, 2);
  return inputProblem(
    "materials.composition-part",
    path,
    `"${key}"`,
    `a formula known here (${speciesNames.slice(0, 6).join(", ")} …), water or inert`,
    nearest.length > 0 ? `did you mean ${nearest.join(" or ")}?` : "count what takes no part as inert",
  );
}

function readShare(written: string | number, path: Path, problems: Problem[]): Decimal | "rest" | undefined {
  if (typeof written === "string" && written.trim().toLowerCase() === "rest") return "rest";
  const reading = parseQuantity(written, ["share"]);
  if (reading.ok) return dec(reading.quantity.value);
  const { expected, advice } = reading;
  problems.push(
    inputProblem("quantity.unreadable", path, JSON.stringify(written), `${expected}, or the word rest`, advice),
  );
  return undefined;
}
