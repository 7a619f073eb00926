import { measure } from "../in-system.ts";
import { type Counts, type Inner, input, type Lists, type Measures, noAnswer, remark, type Texts } from "./entry.ts";
import { didYouMean, oneOf } from "./words.ts";

const noP = "bicarbonates have no alkalinity P: hold M instead";

export type Where = "at the making temperature" | "where it is kept";

/** What a batch takes if it is of this strength, %. */
export interface BatchEnd extends Texts<"strength">, Measures<"added"> {
  readonly of: "water" | "salts";
}

/** What a burette may be off, and what that is worth, %. */
export type Burette = Texts<"millilitres" | "worth">;

/** What becomes of a solution that is not clear, or may not be. */
const unclear: Readonly<Record<string, string>> = {
  doubtful: "that may grow crystals",
  crystals: "that grow crystals",
  "not known": "of which it is not known whether they stay clear",
};

const phRuleLeft = {
  hydroxide: "for a hydroxide by itself the limits of its own entry go first, and the pH is not counted again",
  both: "hydroxide and carbonate are summed by their limits; whether the pH rule goes further stays open",
  salts: "what is known of the salts, irritants as powder and at 50 %, counts as such data",
};

export const chemistry = {
  "solutions.too-weak-salts": noAnswer(({ name, strength, target }: Texts<"name" | "strength" | "target">) => ({
    found: `${name} of ${strength} % to add`,
    expected: `more than the ${target} % aimed at`,
    advice: "add dry salts or a stronger stock",
  })),
  "solutions.amount": input(({ amount, of }: Texts<"amount"> & Partial<Texts<"of">>) => ({
    found: of === undefined ? `an amount of ${amount}` : `${amount} g of ${of}`,
    expected: "an amount above 0",
    advice: of === undefined ? "state how much to make" : "state how much there is",
  })),
  "baking.mass": input(() => ({
    found: "weights that do not fit together",
    expected: "weights above 0, moisture below the weight after baking, and an assay of at most 100 %",
    advice: "weigh the salt again, without its tray",
  })),
  "baking.heavier": input(() => ({
    found: "a salt heavier after the oven than before",
    expected: "a loss of mass",
    advice: "allow for the moisture it took up, or weigh again",
  })),
  "baking.lighter": input(({ left, least }: Texts<"left" | "least">) => ({
    found: `${left} % of the mass left`,
    expected: `at least ${least} %, what full conversion leaves`,
    advice: "weigh again: salt was spilt, or the tray was not taken off",
  })),
  "stock.too-much-water": noAnswer(({ least, room }: Texts<"least"> & Partial<Texts<"room">>, _, tell) => ({
    found: `a stock of which a load takes at least ${tell(measure(least, "g"))}`,
    expected:
      room === undefined
        ? "a scale that takes it"
        : `at most ${tell(measure(room, "g"))}, the salts and all the water of a load`,
    advice: "take a finer scale or allow a wider tolerance",
  })),
  "stock.scales": noAnswer(() => ({
    found: "scales on which no amount of the salts weighs within the tolerance",
    expected: "a scale that takes each salt of a stock",
    advice: "take a finer scale or allow a wider tolerance",
  })),
  "stock.not-clear": noAnswer(({ verdict }: Texts<"verdict">) => ({
    found: `salts ${unclear[verdict] ?? verdict} together, at any strength`,
    expected: "salts that stay clear together where the stock is kept",
    advice: "weigh them dry on a finer scale",
  })),
  "stock.wish": input(() => ({
    found: "no salt, or a dose, a scale step, a tolerance or a number of loads of 0 or less",
    expected: "a salt, and each of these above 0",
    advice: "name the salt, its dose, the step of the scale, the tolerance and the loads that the stock is for",
  })),
  "composition.unknown": input(({ name, names, nearest }: Texts<"name"> & Lists<"names" | "nearest">) => ({
    found: `"${name}"`,
    expected: oneOf(names, "a salt"),
    advice: didYouMean(nearest, "name the salt by its formula; what is no salt is inert, and left out"),
  })),
  "composition.negative": input(() => ({
    found: "a share below zero",
    expected: "shares of zero or more",
    advice: "correct the share",
  })),
  "composition.over-100": input(({ total }: Texts<"total">) => ({
    found: `parts that add up to ${total} %`,
    expected: "parts that add up to at most 100 % of the product",
    advice: "state every part in % of the product as it is, water included",
  })),
  "solution.too-strong": input(({ strength, most, unit }: Texts<"strength" | "most" | "unit">) => ({
    found: `a strength of ${strength} ${unit}`,
    expected: `above 0 and at most ${most} ${unit}, the strength of the product itself`,
    advice: "ask for a weaker solution or take a stronger product",
  })),
  "convert.dose": input(({ mass }: Texts<"mass">) => ({
    found: `a dose of ${mass} g`,
    expected: "a dose above 0",
    advice: "state the dose to swap",
  })),
  "convert.cannot-hold": noAnswer(({ names, what }: Lists<"names"> & Texts<"what">) => ({
    found: `${names.join(" and ")} without ${what}`,
    expected: `a product with ${what}`,
    advice: what === "alkalinity P" ? noP : "hold something else, or take another product",
  })),
  "density.no-model": noAnswer(({ unknown, modelled }: Lists<"unknown" | "modelled">) => ({
    found: `a solution with ${unknown.join(", ")}`,
    expected: `salts with a published fit of density: ${modelled.join(", ")}`,
    advice: "state the strength by mass; no density is needed then",
  })),
  "density.temperature": noAnswer(({ temperature, low, high }: Texts<"temperature" | "low" | "high">, _, tell) => ({
    found: tell(measure(temperature, "°C")),
    expected: `${tell(measure(low, "°C"))} to ${tell(measure(high, "°C"))} for these salts`,
    advice: "work within the range, or by mass",
  })),
  "density.too-strong": noAnswer(({ strength, most }: Texts<"strength" | "most">) => ({
    found: `${strength} % by mass of salts`,
    expected: `at most ${most} % by mass for these salts in this ratio, where the published fits end`,
    advice: "work by mass, or with a weaker solution",
  })),
  "density.powder": input(() => ({
    found: "a volume of what is no solution of known density: a powder or crystals, or too strong",
    expected: "a weight, since what fills a spoon of a powder weighs more or less by how it lies",
    advice: "weigh it",
  })),
  "hydrometer.error": input(({ error }: Texts<"error">) => ({
    found: `a reading error of ${error}`,
    expected: "zero or more, and less than the reading",
    advice: "state how exactly it can be read",
  })),
  "hydrometer.volume": input(() => ({
    found: "a mass or a volume of 0 or less",
    expected: "both above 0",
    advice: "weigh a known volume of the solution",
  })),
  "solutions.ratio": noAnswer(({ wanted, range }: Texts<"wanted"> & Lists<"range">) => ({
    found: `potassium carbonate as ${wanted} % of the carbonates`,
    expected: `between the shares of the two stocks, ${range.join(" and ")}`,
    advice: "take other stocks, or ask for a ratio between them",
  })),
  "solutions.parts": input(({ without }: Partial<Texts<"without">>) =>
    without === undefined
      ? {
          found: "parts below zero, or nothing but zeros",
          expected: "parts of zero or more, at least one of them above zero",
          advice: "state the ratio",
        }
      : {
          found: `${without} without alkaline salts`,
          expected: "products with alkaline salts",
          advice: "state the ratio by what is weighed",
        },
  ),

  "ph.phosphate": noAnswer(({ phosphates }: Lists<"phosphates">) => ({
    found: `a solution with ${phosphates.join(", ")}`,
    expected: "carbonates, bicarbonates, hydroxides and chlorides",
    advice: "measure the pH with an electrode",
  })),
  "ph.no-water": noAnswer(() => ({
    found: "no water",
    expected: "a solution",
    advice: "give the water the salts dissolve in",
  })),
  "ph.temperature": noAnswer(({ temperature }: Counts<"temperature">, _, tell) => ({
    found: tell(measure(temperature, "°C")),
    expected: `${tell(measure(0, "°C"))} to ${tell(measure(40, "°C"))}`,
    advice: "ask for a temperature in the range",
  })),
  "ph.no-salt": noAnswer(() => ({
    found: "hardly any alkaline salt",
    expected: "at least 0.000001 mol of it per kg of water",
    advice: "give the alkaline salts",
  })),
  "ph.too-strong": noAnswer(({ strength, most }: Texts<"strength"> & Counts<"most">) => ({
    found: `an ionic strength of ${strength} mol/kg or more`,
    expected: `at most ${most} mol/kg`,
    advice: "ask for the pH of the mixing water, or of a weaker solution",
  })),
  "solutions.division": input(({ division }: Texts<"division">) => ({
    found: `a scale that shows steps of ${division} g`,
    expected: "steps above 0 g",
    advice: "state the smallest step that the scale shows",
  })),
  "solutions.temperature": input(({ temperature }: Texts<"temperature">, _, tell) => ({
    found: `a solution made at ${tell(measure(temperature, "°C"))}`,
    expected: `${tell(measure(0, "°C"))} to ${tell(measure(100, "°C"))}, where water is liquid`,
    advice: "state the temperature of the water",
  })),
  "solubility.no-table": noAnswer(({ name, tables }: Texts<"name"> & Lists<"tables">) => ({
    found: name,
    expected: `a salt with a solubility table: ${tables.join(", ")}`,
    advice: "try a small amount first",
  })),
  "solubility.no-water": noAnswer(() => ({
    found: "no solution",
    expected: "salts and water",
    advice: "make up the solution first",
  })),
  "solubility.temperature": noAnswer(
    ({ temperature, name, first, last }: Texts<"temperature" | "name" | "first" | "last">, _, tell) => ({
      found: `${tell(measure(temperature, "°C"))} for ${name}`,
      expected: `${tell(measure(first, "°C"))} to ${tell(measure(last, "°C"))}, where its table ends`,
      advice: "ask for a temperature in the range",
    }),
  ),
  "strength.value": input(({ strength }: Texts<"strength">) => ({
    found: `a strength of ${strength}`,
    expected: "a strength above 0",
    advice: "state the strength",
  })),
  "strength.no-water": input(() => ({
    found: "a product without water",
    expected: "a solution",
    advice: "make up the solution first",
  })),
  "strength.no-salt": input(() => ({
    found: "no alkaline salt in the product",
    expected: "a product with an alkaline salt",
    advice: "name the salts of the product",
  })),
  "strength.degrees": input(({ degrees, modulus }: Texts<"degrees" | "modulus">) => ({
    found: `${degrees} degrees Baumé`,
    expected: `less than the modulus of the scale, ${modulus}`,
    advice: "read the hydrometer again",
  })),
  "strength.beyond-fit": noAnswer(
    ({
      measured,
      lowest,
      highest,
      unit,
      strongest,
    }: Texts<"measured" | "lowest" | "highest" | "unit" | "strongest">) => ({
      found: `a strength or density of ${measured} ${unit}`,
      expected: `between ${lowest} (water) and ${highest} ${unit} (${strongest} % by mass, where the published fits or the product itself end)`,
      advice:
        Number(measured) > Number(highest)
          ? "ask for a weaker solution or take a stronger product, or check the value, its unit and its temperature"
          : "check the value, its unit and its temperature, or state the strength by mass",
    }),
  ),
  "stock.too-weak": noAnswer(({ strength, weakest }: Texts<"strength" | "weakest">) => ({
    found: `a stock of ${strength} %`,
    expected: `at least ${weakest} %`,
    advice: "take a finer scale or allow a wider tolerance",
  })),
  "titration.value": input(() => ({
    found: "a reading or a percentage of 0 or less",
    expected: "the mL of acid, its normality, the weight of the sample and the percentage, each above 0",
    advice: "read them again, or copy the percentage from the label",
  })),
  "titration.no-alkalinity": input(() => ({
    found: "salts without alkalinity",
    expected: "alkaline salts",
    advice: "name the salts of the product",
  })),
  "titration.over-100": noAnswer(({ share, water }: Texts<"share" | "water">) => ({
    found: `${share} % of salts and ${water} % of water`,
    expected: "at most 100 % together",
    advice: "the salts named are too weak for this alkalinity: check them, the standard it is stated as, and the water",
  })),
  "titration.end-points": input(({ first, total }: Texts<"first" | "total">) => ({
    found: `a first end point at ${first} mL of ${total} mL in all`,
    expected: "a first end point from 0 to the total",
    advice: "read the burette from the beginning for both end points",
  })),

  "solutions.batch-within": remark(({ ends, salts }: { readonly ends: readonly BatchEnd[] } & Texts<"salts">, tell) => {
    const each = ends.map(
      ({ strength, added, of }) => `${strength} % takes ${tell(added)} of ${of === "water" ? of : salts}`,
    );
    return `by its reading the batch may be weaker or stronger: one of ${each.join(", one of ")}. Begin with the smaller amount, stir, and read again`;
  }),
  "solutions.tank-unknown": remark(
    "whether the corrected batch fits the tank is not known: no published fit covers its density",
  ),
  "solutions.tank": remark(
    ({ fills, tank, most }: Measures<"fills" | "tank" | "most">, tell) =>
      `the corrected batch fills ${tell(fills)}, more than the ${tell(tank)} of the tank: correct at most ${tell(most)} of it there, and the rest apart`,
  ),
  "solutions.coarse-scale": remark(
    ({ made, meant }: Texts<"made" | "meant">) =>
      `the scale is too coarse for this amount: the weights make ${made} % by mass, ${meant} % is meant`,
  ),
  "solutions.reaction": remark(
    "hydroxide and bicarbonate turn into carbonate where they meet in water; the shares given are as weighed in",
  ),
  "solutions.clarity-unknown": remark(
    ({ where, problem }: { readonly where: Where; readonly problem: Inner }, tell) =>
      `whether it stays clear ${where} is not known: ${tell(problem)}`,
  ),
  "solutions.doubtful": remark(
    ({ where, solid }: { readonly where: Where } & Texts<"solid">) =>
      `${where} it is so near its limit that crystals may grow (${solid})`,
  ),
  "solutions.crystals": remark(
    ({ where, solid }: { readonly where: Where } & Texts<"solid">) =>
      `${where} it is past its limit: it does not wholly dissolve, or crystals grow (${solid})`,
  ),
  "strength.undissolved": remark(
    ({ name, temperature, taken }: Texts<"name" | "taken"> & Measures<"temperature">, tell) =>
      `"${name}" holds more salt than dissolves at ${tell(temperature)} (${taken} of the limit): it is a slurry, whose salt sinks, crystals with their water, or a misread label. Read the label again before anything is weighed`,
  ),
  "solutions.crystal-water": remark(
    ({ names }: Lists<"names">) =>
      `the strength counts salts without their crystal water; ${names.join(" and ")} ${names.length === 1 ? "holds" : "hold"} some, and what to weigh counts it`,
  ),
  "solubility.mixed": remark(
    "for mixed salts the parts that each takes of its own limit are added up; no table of the mixture was at hand",
  ),
  "solubility.by-ions": remark(
    "in this mixture one salt can keep another from dissolving: the activities of all ions (Harvie, Møller and Weare 1984, at 25 °C) are taken as well as the sum of the parts of the limits, and the greater counts",
  ),
  "solubility.not-known": remark(
    "in this mixture one salt can keep another from dissolving, and how far is not known here: try a small amount, cold, before you make it",
  ),
  "solubility.exchange": remark(
    ({ temperature }: Measures<"temperature">, tell) =>
      `sodium and bicarbonate meet whatever salts they came with, and sodium bicarbonate is the least soluble of them at ${tell(temperature)}`,
  ),
  "baking.keep-dry": remark(
    ({ hydrate, gain }: Texts<"hydrate" | "gain">) =>
      `keep it closed and dry: as its hydrate ${hydrate} it weighs up to ${gain} % more`,
  ),
  "ph.not-estimated": remark(
    ({ problem }: { readonly problem: Inner }, tell) => `no pH is estimated: ${tell(problem)}`,
  ),
  "ph.of-the-solution": remark("the pH is that of the solution, not of the dough, which flour makes milder"),
  "ph.classification": remark(
    ({ known }: { readonly known: "hydroxide" | "both" | "salts" }) =>
      `a mixture of pH 11.5 or more counts as corrosive where there are no other data (Regulation (EC) No 1272/2008, Annex I, 3.2.3.1.2). The hazard class given here does not apply that rule: ${phRuleLeft[known]}. A supplier without data has to apply it`,
  ),
  "convert.ratio-not-met": remark(
    ({ names, what, points, way }: Lists<"names"> & Texts<"what" | "points"> & { readonly way: "more" | "less" }) =>
      `with ${names.join(" and ")} the ${what} ${what.includes(" and ") || what.endsWith("salts") ? "are" : "is"} held, the ratio of sodium to potassium is not: by moles, potassium has ${points} percentage points ${way} than before`,
  ),
  "convert.not-kept": remark(
    ({ changes }: { readonly changes: readonly (Texts<"label"> & Measures<"before" | "after">)[] }, tell) =>
      `not kept: ${changes.map(({ label, before, after }) => `${label} ${tell(before)} becomes ${tell(after)}`).join("; ")}`,
  ),
  "convert.bicarbonate": remark(
    "bicarbonate is not carbonate: at the same alkalinity M it brings no alkalinity P and twice the carbonic acid that acid can set free, and its solution is about three pH units milder",
  ),
  "convert.hydroxide": remark(({ without }: Partial<Texts<"without">>) => {
    const standards =
      without === undefined ? "" : `. Not all standards allow it in noodles: ${without}. Check the local code`;
    return `hydroxide is not carbonate: at the same alkalinity M it is all P, its solution is far more alkaline, and it burns${standards}`;
  }),
  "density.carried-on": remark(({ why }: Texts<"why">) => why),
  "density.mixed-beyond": remark(
    ({ total, strongest, salt }: Texts<"total" | "strongest" | "salt">) =>
      `the salts together come to ${total} %, more than the ${strongest} % to which ${salt} alone was measured`,
  ),
  "density.inert": remark(({ inert }: Texts<"inert">) => `${inert} % of inert matter is left out of the density`),
  "strength.no-density": remark(
    ({ problem }: { readonly problem: Inner }, tell) =>
      `no density, volume or degrees Baumé are given: ${tell(problem)}`,
  ),
  "strength.read-at": remark(
    (
      {
        degrees,
        temperature,
        stated,
      }: Measures<"temperature"> & Partial<Texts<"degrees">> & { readonly stated: boolean },
      tell,
    ) =>
      degrees === undefined
        ? `the strength is taken as measured at ${tell(temperature)}, the usual temperature of laboratory tables`
        : `${degrees} °Bé is taken as read at ${tell(temperature)}${stated ? "" : ", where this hydrometer reads true"}`,
  ),
  "strength.fit": remark(
    ({ share, low, high, why }: Texts<"share" | "low" | "high" | "why">) =>
      `by its density the solution is ${share} % by mass, and may be ${low} to ${high} %: ${why}`,
  ),
  "stock.not-needed": remark("the salts can be weighed dry on this scale within the tolerance"),

  "caution.burns": remark(
    "hydroxides burn skin and eyes, even diluted: wear goggles, gloves and sleeves, and keep running water at hand",
  ),
  "caution.into-water": remark(
    "give hydroxide to cold water a little at a time and stir, never water to hydroxide: it heats up and can boil and spit",
  ),
  "caution.eyes": remark(
    "carbonates irritate the eyes: wear goggles and gloves with powder and strong solutions, and rinse with plenty of water",
  ),
  "caution.heat": remark(
    "dry carbonates warm the water they dissolve in: strew them into the water while stirring, never water onto the powder",
  ),
  "caution.powder": remark("do not stir up or breathe the dust"),
  "caution.aluminium": remark(
    "no aluminium: alkaline solutions eat it and set hydrogen free; take stainless steel, glass or food-safe plastic",
  ),
  "caution.food-grade": remark("only food grade belongs in food: read the label"),
  "caution.keep": remark(
    "keep it closed, dry where it is a powder, labelled with name, strength and date, away from children and from drinks",
  ),
  "caution.sheet": remark(
    "the label, the safety data sheet of the product at hand and local rules go before these lines",
  ),

  "baking.assumed": remark(
    "taken as wholly baked: as if all bicarbonate had turned to carbonate, which leaves 63.1 % of its mass, and no moisture had been taken up since. What was baked less is weaker: its weight before and after tells how far it went",
  ),

  "titration.taken-as-whole": remark(
    ({ dried, most, source, burette }: Texts<"dried" | "most" | "source"> & Partial<Record<"burette", Burette>>) => {
      const reading =
        burette === undefined ? "" : `, and ${burette.millilitres} mL of acid are worth ${burette.worth} %`;
      return `${dried} % of salts in what is dry is more than there can be, but a pure salt may read so: pharmacopoeias allow up to ${most} % (${source})${reading}. It is taken as 100 %`;
    },
  ),

  "alkali.additive-limits": remark(
    "limits on the additives themselves, beside those on foods that name them, stand in the list of the salts",
  ),
};
