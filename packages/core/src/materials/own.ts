import type { Product } from "../chemistry/carried.ts";
import { type Composition, potassiumShare, sharesOf, sodiumShare } from "../chemistry/composition.ts";
import type { Range } from "../figure/figure.ts";
import { table } from "../figure/frozen.ts";
import { answer, type Note, type Outcome, type Path, problem, refuse } from "../figure/problem.ts";
import { fromSpec, type Source } from "../figure/source.ts";
import { type Decimal, type DecimalInput, type DecimalText, dec, decimalText, HUNDRED } from "../number/decimal.ts";
import type { Quantity } from "../number/quantity.ts";
import { findMaterial, isAlkaliLike, materialNamed, nearestAlkalis, nearestMaterials } from "./catalogue.ts";
import { findPart } from "./composition-parts.ts";
import {
  assumedMoisture,
  assumedNote,
  moistureDoubt,
  onlyTheBag,
  type ProteinOfLabel,
  proteinDoubt,
  readFigureLabels,
} from "./doubt.ts";
import type { MoistureBasis, Price } from "./fields.ts";
import type { Material, MaterialKind } from "./material.ts";
import { flourBasis, onMoisture } from "./moisture.ts";
import { plainName } from "./nearest.ts";
import { flourFactor, labelFactor } from "./nitrogen.ts";
import { type NutrientFigure, nutrients, ofStated } from "./nutrients.ts";
import type { RecordedFigures } from "./recorded.ts";
import type { MaterialFigures } from "./schema.ts";
import { type DoseBeside, severalOf, severalProblem } from "./several.ts";
import { fitUncertainty, statedComposition, statesComposition, undissolved } from "./stated-composition.ts";
import { toastedLayer, toastedNote } from "./toasted.ts";
import { withinWhole } from "./whole-food.ts";

/** A value as it was stated, before it was turned into % as is. */
export interface Stated {
  readonly value: DecimalText;
  readonly basis: MoistureBasis;
  /** Nobody stated the basis: it is the usual one. */
  readonly assumed?: true;
}

/** What a material states of itself that goes with its dry matter. */
export type StatedShare = "protein" | "ash" | NutrientFigure;

/** A material as a spec uses it: the catalogue's figures, the kitchen's own, or the one over the other. */
export interface KitchenMaterial extends Material {
  readonly price?: Price;
  /** What there is of it in the store. */
  readonly stock?: Quantity;
  /** Its water is what its other parts leave. */
  readonly waterIsRest?: true;
  /** What it is made of at the moisture that this is known at, where it is used at another. */
  readonly composedAt?: Composition;
  readonly stated: Readonly<Partial<Record<StatedShare, Stated>>>;
  /** Moisture and protein as somebody wrote them: the digits say how exact they are meant. */
  readonly written?: { readonly moisture?: string; readonly protein?: string };
  /** Where each of the main figures comes from. */
  readonly figureSources: {
    readonly moisture: Source;
    readonly protein: Source;
    readonly ash: Source;
    readonly composition: Source;
  };
  /** What the moisture and the protein are in words, where they are not as stated. */
  readonly by?: { readonly moisture?: string; readonly protein?: string };
  /** Least and greatest moisture and protein, % as is, where a label or a stated uncertainty leaves them open. */
  readonly ranges?: { readonly moisture?: Range; readonly protein?: Range };
  /** How far the strength of an alkaline product may be off, ± in % of it. */
  readonly strengthUncertainty?: DecimalText;
  /** Added water the flour takes in this kitchen, % of it, and how sure that is. */
  readonly absorption?: { readonly percent: DecimalText; readonly plusMinus: DecimalText };
  /** What its certificate says beside. */
  readonly recorded?: RecordedFigures;
  /** Where the nutrients come from that the kitchen states; the others are those of the table. */
  readonly nutrientSources?: Readonly<Partial<Record<NutrientFigure, Source>>>;
}

/** A kitchen's own materials by name. */
export type OwnMaterials = Readonly<Record<string, MaterialFigures>>;

/**
 * Finds the material that a name stands for: the kitchen's own first, then the catalogue, with the figures given beside
 * the name over both.
 *
 * Where only the moisture is replaced, protein, ash and the rest keep their share of the dry matter, and the kitchen's own
 * absorption the water of the dough.
 *
 * @param figures - given beside the name; where there are several, the nearest first
 * @param beside - a dose that stands beside the name, for the range of doses of a name that stands for several things
 *
 * Problems: `materials.unknown` (with the nearest names), `materials.several`, `materials.moisture-missing`, `materials.composition`,
 * `materials.composition-missing`, and those of `statedComposition`, `readFigureLabels` and `withinWhole`.
 */
export function resolveMaterial(
  name: string,
  path: Path,
  figures: MaterialFigures | readonly MaterialFigures[] | undefined,
  own: OwnMaterials = {},
  beside?: DoseBeside,
): Outcome<KitchenMaterial> {
  const ownFigures = ownByName(name, own);
  const layers = [...[figures].flat(), ownFigures].filter((layer) => layer !== undefined);
  const base = findBase(name, path, layers, { own, beside });
  if (!base.ok) return base;
  const start = base.value === undefined ? undefined : fromCatalogue(base.value);
  return layers.reduceRight<Outcome<KitchenMaterial | undefined>>(
    (before, layer) => (before.ok ? withToasting(name, path, before.value, layer, layer !== ownFigures) : before),
    answer(start),
  ) as Outcome<KitchenMaterial>;
}

/** The kitchen's own figures of a material by its name; of two kitchens put together, those of the later. */
export function ownByName(name: string, own: OwnMaterials): MaterialFigures | undefined {
  const wanted = plainName(name);
  return Object.entries(own).findLast(([key]) => plainName(key) === wanted)?.[1];
}

/** Whether a name is one of the kitchen's own, of the catalogue, or one that stands for several things. */
export function isMaterialName(name: string, own: OwnMaterials): boolean {
  return ownByName(name, own) !== undefined || materialNamed(name) !== undefined || severalOf(name) !== undefined;
}

function findBase(
  name: string,
  path: Path,
  layers: readonly MaterialFigures[],
  { own, beside }: { readonly own: OwnMaterials; readonly beside: DoseBeside | undefined },
): Outcome<Material | undefined> {
  const like = layers.find((layer) => layer.like !== undefined)?.like;
  const looked = like ?? name;
  const known = materialNamed(looked);
  if (known !== undefined) return answer(known);
  const several = severalOf(looked);
  const described = several?.kind !== "flour" ? layers.some(statesComposition) : layers.length > 0;
  if (several !== undefined && !(like === undefined && described))
    return refuse(severalProblem(several, looked, path, beside));
  if (like === undefined && layers.length > 0) return answer(undefined);
  const found = findMaterial(looked);
  const ownNearest = like === undefined ? nearestMaterials(looked, Object.keys(own)) : [];
  const nearest = [...new Set([...ownNearest, ...(found.ok ? [] : found.nearest)])].slice(0, 3);
  return refuse(
    problem("materials.unknown", path, {
      name: looked,
      nearest,
      alkali: isAlkaliLike(looked),
      alike: nearestAlkalis(looked),
    }),
  );
}

const inKitchens = new WeakMap<Material, KitchenMaterial>();

function fromCatalogue(material: Material): KitchenMaterial {
  const known = inKitchens.get(material);
  if (known !== undefined) return known;
  const { source } = material;
  const figureSources = { moisture: source, protein: source, ash: source, composition: source };
  const made = table({ ...material, stated: {}, figureSources });
  inKitchens.set(material, made);
  return made;
}

/** Lays figures over a material; where the kitchen dried or toasted it, then those that follow from that. */
function withToasting(
  name: string,
  path: Path,
  before: KitchenMaterial | undefined,
  figures: MaterialFigures,
  inline: boolean,
): Outcome<KitchenMaterial> {
  const raw = overlay(name, path, before, figures, inline);
  if (!raw.ok) return raw;
  const { moisture, ranges } = raw.value;
  const place = inline ? [...path.slice(0, -1), "figures"] : path;
  const layer = toastedLayer(figures, { moisture, range: ranges?.moisture }, place);
  if (!layer.ok) return layer;
  if (layer.value === undefined) return raw;
  const toasted = overlay(name, path, raw.value, layer.value, inline);
  if (!toasted.ok) return toasted;
  const note = toastedNote(figures, toasted.value.moisture);
  return answer({ ...toasted.value, notes: [...toasted.value.notes, note] });
}

function overlay(
  name: string,
  path: Path,
  before: KitchenMaterial | undefined,
  figures: MaterialFigures,
  inline: boolean,
): Outcome<KitchenMaterial> {
  const place = inline ? [...path.slice(0, -1), "figures"] : path;
  const kind: MaterialKind = figures.kind ?? before?.kind ?? (statesComposition(figures) ? "alkali" : "flour");
  const composition = statedComposition(figures, place);
  if (!composition.ok) return composition;
  const made = composition.value ?? before?.composition;
  const other = figures.moisture && made && dec(made.water).lt(HUNDRED) ? figures.moisture.value : undefined;
  const chosen = made && other !== undefined ? atMoisture(made, other) : made;
  const knownMoisture = figures.moisture?.value ?? composition.value?.water ?? before?.moisture;
  const assumed = knownMoisture === undefined && onlyTheBag(figures);
  const moisture = assumed ? assumedMoisture.value : knownMoisture;
  if ((kind === "alkali" || kind === "salt") && chosen === undefined) {
    return refuse(problem("materials.composition-missing", place, { name }));
  }
  if (moisture === undefined) return refuse(problem("materials.moisture-missing", place, { name }));
  const flourLike = kind === "flour" || kind === "gluten" || kind === "starch" || kind === "bran";
  const usual = flourLike ? ({ kind: "at", moisture: flourBasis.value } as const) : ({ kind: "as is" } as const);
  const usualFactor = flourLike ? flourFactor : labelFactor;
  const labelled = readFigureLabels(figures, usualFactor, place);
  if (!labelled.ok) return labelled;
  const protein =
    restated(figures.protein, figures.proteinBasis, usual) ??
    ofLabel(labelled.value) ??
    kept(before, "protein", moisture);
  const ash = restated(figures.ash, figures.ashBasis, usual) ?? kept(before, "ash", moisture);
  const others = {
    ...(before && ofStated(before, (value, name) => held(value, name, before, moisture))),
    ...ofStated(figures, ({ value }, name): Stated => ({ value: inMg(value, name), basis: { kind: "as is" } })),
  };
  const replaced = figures.protein !== undefined || labelled.value !== undefined;
  const factor = labelled.value
    ? usualFactor
    : (figures.nitrogenFactor ?? (replaced ? usualFactor : before?.protein?.nitrogenFactor));
  const source: Source = { cite: figures.source ?? fromSpec.cite, standing: "user" };
  const sources = before?.figureSources;
  const stays = before === undefined ? blank(name, kind, source) : whatStays(before, figures, moisture);
  const { waterIsRest, composedAt: known, ...start } = stays;
  const rest = figures.moisture === undefined && (composition.value ? isRest(figures) : waterIsRest);
  const composedAt = other !== undefined ? made : composition.value ? undefined : known;
  const material: KitchenMaterial = {
    ...start,
    kind,
    moisture,
    stated: { ...before?.stated, ...(protein && { protein }), ...(ash && { ash }), ...others },
    ...(protein && { protein: { value: asIs(protein, moisture), ...(factor && { nitrogenFactor: factor }) } }),
    ...(ash && { ash: asIs(ash, moisture) }),
    ...ofStated(others, (one) => asIs(one, moisture)),
    ...(figures.price && { price: figures.price }),
    ...(figures.stock && { stock: figures.stock }),
    ...(figures.recorded && { recorded: figures.recorded }),
    ...(chosen && { composition: chosen }),
    ...(composedAt && { composedAt }),
    ...(rest && { waterIsRest: true }),
    written: {
      ...before?.written,
      ...(figures.moisture && { moisture: figures.moisture.text }),
      ...(figures.protein && { protein: figures.protein.text }),
    },
    by: inWords(figures, before, assumed, labelled.value),
    ...doubtOf(figures, before, { moisture, assumed, labelled: labelled.value, protein }),
    notes: [
      ...(composition.value ? composition.notes : start.notes),
      ...(composition.value && isRest(figures) ? undissolved(name, composition.value, place) : []),
      ...(labelled.value?.notes ?? []),
      ...(assumed ? [assumedNote] : []),
    ],
    glutenForming: figures.glutenForming ?? before?.glutenForming ?? (kind === "flour" || kind === "gluten"),
    wholegrain: figures.wholegrain ?? before?.wholegrain ?? false,
    allergens: figures.allergens ?? before?.allergens ?? [],
    allergensKnown: figures.allergens !== undefined || (before?.allergensKnown ?? false),
    nutrientSources: { ...start.nutrientSources, ...ofStated(figures, () => source) },
    figureSources: {
      moisture: assumed ? assumedMoisture.source : figures.moisture ? source : (sources?.moisture ?? source),
      protein: replaced ? source : (sources?.protein ?? source),
      ash: figures.ash ? source : (sources?.ash ?? source),
      composition: composition.value ? source : (sources?.composition ?? source),
    },
  };
  return withinWhole(name, material, place);
}

/** What the figures are that nobody stated: of this layer, or of the one before where this one does not say. */
function inWords(
  figures: MaterialFigures,
  before: KitchenMaterial | undefined,
  assumed: boolean,
  labelled: ProteinOfLabel | undefined,
): NonNullable<KitchenMaterial["by"]> {
  const moisture = assumed ? assumedMoisture.by : figures.moisture === undefined ? before?.by?.moisture : undefined;
  const protein = labelled?.by ?? (figures.protein === undefined ? before?.by?.protein : undefined);
  return { ...(moisture !== undefined && { moisture }), ...(protein !== undefined && { protein }) };
}

interface Laid {
  readonly moisture: DecimalText;
  readonly assumed: boolean;
  readonly labelled: ProteinOfLabel | undefined;
  readonly protein: Stated | undefined;
}

/** What is not exact of a material. */
function doubtOf(
  figures: MaterialFigures,
  before: KitchenMaterial | undefined,
  { moisture, assumed, labelled, protein }: Laid,
): Pick<KitchenMaterial, "ranges" | "strengthUncertainty" | "absorption"> {
  const moistureRange = moistureDoubt(figures, moisture, assumed, before?.ranges?.moisture);
  const range = before?.ranges?.protein;
  const earlier = range && before?.protein && { value: before.protein.value, range };
  const proteinRange =
    protein && proteinDoubt(figures, labelled, protein.value, { before: earlier, value: asIs(protein, moisture) });
  const ranges = { ...(moistureRange && { moisture: moistureRange }), ...(proteinRange && { protein: proteinRange }) };
  const { absorption, absorptionUncertainty } = figures;
  const strengthUncertainty = figures.strengthUncertainty?.value ?? fitUncertainty(figures);
  return {
    ...(Object.keys(ranges).length > 0 && { ranges }),
    ...(strengthUncertainty && { strengthUncertainty }),
    ...(absorption && {
      absorption: { percent: absorption.value, plusMinus: absorptionUncertainty?.value ?? usualAbsorptionUncertainty },
    }),
  };
}

/** How far a kitchen's own absorption may be off unless it says so, %: half a step of a trial of doughs 1 % apart. */
const usualAbsorptionUncertainty = "0.5";

/** A nutrient as a material has it: % of it, or mg in 100 g. */
function inMg(value: DecimalText, name: NutrientFigure): DecimalText {
  return nutrients[name].unit === "mg" ? decimalText(dec(value).times(1000)) : value;
}

function ofLabel(labelled: ProteinOfLabel | undefined): Stated | undefined {
  return labelled && { value: labelled.value, basis: { kind: "as is" } };
}

function restated(
  quantity: Quantity | undefined,
  basis: MoistureBasis | undefined,
  usual: MoistureBasis,
): Stated | undefined {
  const assumed = basis === undefined && usual.kind === "at";
  return quantity && { value: quantity.value, basis: basis ?? usual, ...(assumed && { assumed }) };
}

/** Whether what is said of a product leaves its water to be the rest. */
function isRest({ composition = {}, solution }: MaterialFigures): boolean {
  const isWater = ([part, share]: readonly [string, string]): boolean =>
    share.trim().toLowerCase() === "rest" && findPart(part)?.name === "water";
  return solution !== undefined || Object.entries(composition).some(isWater);
}

/** What a product is made of where its moisture is another one: its dry matter stays what it is. */
function atMoisture(composition: Composition, moisture: DecimalText): Composition {
  const { water, inert } = composition;
  if (dec(water).eq(moisture)) return composition;
  const moved = (share: DecimalInput): DecimalText => decimalText(onMoisture(dec(share), water, moisture));
  const shares = sharesOf(composition).map(([name, share]) => [name, moved(share)] as const);
  return { species: Object.fromEntries(shares), water: moisture, inert: moved(inert) };
}

/** What a share that stays was stated on. One as is holds at the moisture it was found at; where that was only assumed, it says nothing of another one. */
function held(value: DecimalText, what: StatedShare, before: KitchenMaterial, moisture: DecimalText): Stated {
  const stated = before.stated[what];
  if (stated?.basis.kind === "at") return stated;
  const same = dec(moisture).eq(before.moisture) || before.by?.moisture === assumedMoisture.by;
  return { value, basis: same ? { kind: "as is" } : { kind: "at", moisture: before.moisture } };
}

/** What stays of a protein or an ash that is not replaced. */
function kept(before: KitchenMaterial | undefined, what: "protein" | "ash", moisture: DecimalText): Stated | undefined {
  const asFound = what === "protein" ? before?.protein?.value : before?.ash;
  return before === undefined || asFound === undefined ? undefined : held(asFound, what, before, moisture);
}

/** A table row whose figures the kitchen replaces loses what went with them: their spread, the carbohydrate, the energy, the remarks. */
function whatStays(before: KitchenMaterial, figures: MaterialFigures, moisture: DecimalText): KitchenMaterial {
  const { spread, energy, allergensPossible, absorption, ranges: _ranges, nutrientSources = {}, ...rest } = before;
  const { carbohydrate: _carbohydrate, ...besides } = nutrientSources;
  const measured = ["moisture", "protein", "label", "ash", "fat", "carbohydrate"] as const;
  const replaced = measured.some((figure) => figures[figure] !== undefined);
  return {
    ...rest,
    nutrientSources: replaced ? besides : nutrientSources,
    ...(spread && !replaced && { spread }),
    ...(energy !== undefined && !replaced && { energy }),
    ...(absorption && { absorption: absorptionAt(absorption, before, moisture) }),
    ...(allergensPossible && figures.allergens === undefined && { allergensPossible }),
    ...(replaced && { notes: [] }),
  };
}

/**
 * Added water that a flour takes, brought to another moisture: the dough keeps its dry flour and its water. A figure that was
 * found while the moisture was only assumed belongs to the flour as it was.
 */
function absorptionAt(
  { percent, plusMinus }: NonNullable<KitchenMaterial["absorption"]>,
  before: KitchenMaterial,
  moisture: DecimalText,
): NonNullable<KitchenMaterial["absorption"]> {
  if (before.by?.moisture === assumedMoisture.by) return { percent, plusMinus };
  const moved = (value: Decimal): Decimal => onMoisture(value, before.moisture, moisture);
  const added = moved(dec(percent).plus(before.moisture)).minus(moisture);
  return { percent: decimalText(added), plusMinus: decimalText(moved(dec(plusMinus))) };
}

/** A product that was written in one line as a material; its salts and water bring no allergens. */
export function writtenProduct({ name, composition }: Product, about: readonly Note[]): KitchenMaterial {
  return {
    ...blank(name, "alkali", fromSpec),
    composition,
    moisture: composition.water,
    ...(dec(composition.inert).isZero() && !dec(composition.water).isZero() && { waterIsRest: true }),
    sodium: decimalText(sodiumShare(composition).times(1000)),
    potassium: decimalText(potassiumShare(composition).times(1000)),
    allergensKnown: true,
    notes: about,
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
  return decimalText(onMoisture(dec(stated.value), stated.basis.moisture, moisture));
}
