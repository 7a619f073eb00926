import type { Figure } from "../figure/figure.ts";
import { frozen } from "../figure/frozen.ts";
import type { MoistureBasis } from "../materials/fields.ts";
import { type Decimal, type DecimalText, dec, decimalText, sum, ZERO } from "../number/decimal.ts";
import { atBasis, proteinBounds, reached } from "./blend-limits.ts";
import type { BlendQuestion, BlendTargets, Candidate, GivenShare } from "./blend-question.ts";
import type { HeldWater } from "./blend-water.ts";
import type { WaterFlour } from "./water-flour.ts";

/** A flour with what is known of the water it takes. */
export type StockedFlour = Candidate & Pick<WaterFlour, "dryGluten" | "ownWater" | "newLot">;

/** What of the old blend the new one can keep. */
export type HeldFigure = "protein" | "ash" | "gluten protein" | "wholegrain share";

/** A figure that is kept on both sides, or may only rise, or only fall. */
export type Hold = HeldFigure | `${HeldFigure} or more` | `${HeldFigure} or less`;

/** What is held unless asked otherwise: protein, and no less of it that forms gluten. */
export const usualHold: readonly Hold[] = frozen(["protein", "gluten protein or more"]);

/** What a new lot of a flour that is still there keeps unless asked otherwise: a white noodle stays white besides. */
export const usualLotHold: readonly Hold[] = frozen([...usualHold, "wholegrain share"]);

/** A blend whose flour is not to be had, and the flours at hand. */
export interface SubstituteQuestion
  extends Pick<
    BlendQuestion,
    "step" | "flourMass" | "alternatives" | "currency" | "mostFlours" | "leastShare" | "batch"
  > {
  /** The blend as it was, % of flour, adding up to 100. */
  readonly blend: readonly GivenShare[];
  /** Every flour of the blend and every flour at hand. */
  readonly flours: readonly StockedFlour[];
  readonly missing: string;
  readonly hold: readonly Hold[];
  /** What the blend has to reach besides; it goes before what is held. */
  readonly wanted?: BlendTargets;
  readonly basis: MoistureBasis;
  /** How near protein and gluten-forming protein have to come, ± %; 0.05 unless given. Ash: a fifth of it; wholegrain share: ± 5 % of flour. */
  readonly within?: DecimalText;
  /** Added water of the old dough, % of flour. */
  readonly water: DecimalText | Figure;
  /** What the batch is a mass of, where that is not flour: how much flour goes into it follows the new blend. */
  readonly size?: {
    /** On 100 of flour of the old blend. */
    readonly parts: DecimalText;
    /** Whether it grows with the water. */
    readonly water: boolean;
    /** The flours that it is a mass of, and their share of the old blend, %. */
    readonly flours: readonly string[];
    readonly share: DecimalText;
  };
  /** What the spec holds of its water. */
  readonly held?: HeldWater;
}

export type BatchSize = NonNullable<SubstituteQuestion["size"]>;

/** A flour of the blend comes as a new lot with its own certificate. */
export interface NewLotQuestion extends Omit<SubstituteQuestion, "missing"> {
  /** The new lot: the name of the flour it follows, with its own figures. */
  readonly lot: StockedFlour;
}

/** The figures of the old blend as targets of the new one, with what is wanted besides. */
export function heldTargets(
  { hold, basis, within = "0.05", wanted = {} }: Omit<SubstituteQuestion, "missing">,
  old: readonly StockedFlour[],
  shares: readonly Decimal[],
): BlendTargets {
  const of = (name: HeldFigure): Decimal => {
    if (name === "wholegrain share") return sum(shares.filter((_, index) => old[index]?.wholegrain === true));
    const figures = old.map((flour) => dec(flour[figureKeys[name]] ?? 0));
    return (reached(atBasis(old, figures, basis), shares) ?? ZERO).toDecimalPlaces(3);
  };
  const held = (name: HeldFigure, off: Decimal): Ends => {
    const value = of(name);
    const [rises, falls] = [hold.includes(`${name} or more`), hold.includes(`${name} or less`)];
    return {
      ...((hold.includes(name) || rises) && { least: value.minus(off) }),
      ...((hold.includes(name) || falls) && { most: value.plus(off) }),
    };
  };
  const off = dec(within);
  const protein = { ...meeting(held("protein", off), wanted.protein && proteinBounds(wanted.protein)), basis };
  const ash = { ...meeting(held("ash", off.div(5)), wanted.ash), basis };
  const glutenProtein = { ...meeting(held("gluten protein", off), wanted.glutenProtein), basis };
  const wholegrain = meeting(held("wholegrain share", moreWholegrain), wanted.wholegrain);
  const isSet = ({ least, most }: TextEnds): boolean => least !== undefined || most !== undefined;
  const value = decimalText(of("protein"));
  return {
    ...wanted,
    // a value and not its ends, so that the search may come as near to it as its steps allow
    ...(hold.includes("protein") && wanted.protein === undefined
      ? { protein: { value, within, basis } }
      : isSet(protein) && { protein }),
    ...(isSet(ash) && { ash }),
    ...(isSet(glutenProtein) && { glutenProtein }),
    ...(isSet(wholegrain) && { wholegrain }),
  };
}

/** By how much the wholegrain share may move where it is held, % of flour: the project's own choice. */
const moreWholegrain = dec(5);

const figureKeys = { protein: "protein", ash: "ash", "gluten protein": "glutenProtein" } as const;

interface Ends {
  readonly least?: Decimal | DecimalText;
  readonly most?: Decimal | DecimalText;
}

type TextEnds = { readonly [end in keyof Ends]: DecimalText };

/** What lies within what is held and what is wanted; where there is nothing, what is wanted counts. */
function meeting(held: Ends, wanted: Ends = {}): TextEnds {
  const inner = (end: "least" | "most"): Decimal | undefined => {
    const [one, other] = [held[end], wanted[end]].map((bound) => (bound === undefined ? undefined : dec(bound)));
    if (one === undefined || other === undefined) return one ?? other;
    return one.gt(other) === (end === "least") ? one : other;
  };
  const [least, most] = [inner("least"), inner("most")];
  const ends = least !== undefined && most !== undefined && least.gt(most) ? wanted : { least, most };
  return {
    ...(ends.least !== undefined && { least: decimalText(dec(ends.least)) }),
    ...(ends.most !== undefined && { most: decimalText(dec(ends.most)) }),
  };
}
