import type { Report } from "@noodlewright/core";
import type { Facts, Inner, NoteCode, NoteFacts } from "@noodlewright/core/figure";

const listAlkalis = "; `noodlewright materials --kind alkali` lists them";

const listedSalts = " (`noodlewright alkali list`)";

const gainKey = " (`cookGain` under `batch:`)";

const glutenKey = " (`glutenForming: true` beside `toasted:`)";

const trial = " (`noodlewright trial`)";

/** The command that tells more about an answer that a card lacks. */
const commandOf = { water: "water-temperature", sheet: "sheet", day: "plan" };

const listSalts = "; `noodlewright alkali list` lists the salts";

function severalHint({ kind, ask }: Facts["materials.several"]): string {
  if (kind === "flour") return "; `noodlewright materials` lists the catalogue";
  return ask.includes("titration") ? "; `noodlewright alkali assay` works a titration out" : "";
}

/** Facts of a problem or a note. */
type AllFacts = Facts & NoteFacts;

/** What hints need of a problem or a note. */
type WithFacts<Which extends keyof AllFacts> = {
  readonly [Each in Which]: { readonly code: Each; readonly facts: AllFacts[Each] };
}[Which];

/** What the words of a problem or a note of the library say besides on a command line: flags and commands. */
const hints: { readonly [Each in keyof AllFacts]?: (facts: AllFacts[Each]) => string } = {
  "alkali.additive-limits": () => listedSalts,
  "alkali.product": ({ says }) => hintWithin(says),
  "batch.usual-cook-gain": () => gainKey,
  "blend.basis-assumed": () => " (`proteinBasis: as is`)",
  "blend.likely": () => " (`wholeRange: true` under `wanted:`, or --whole-range)",
  "blend.water-apart": () => trial,
  "blend.water-not-known": () => " (`absorption`); `noodlewright trial` plans one",
  "card.long": ({ loads }) => (loads === "many" ? " (--loads)" : ""),
  "card.no-answer": ({ lacks }) => `; see noodlewright ${commandOf[lacks]}`,
  "cost.water-free": () => " under `prices:`",
  "materials.note": ({ says }) => hintWithin(says),
  "mend.amount": ({ name }) => `, as --weighed '${name}=3170 g'`,
  "mend.mixer": () => ", with --no-more",
  "nutrition.no-serving": () => " (`rawWeight` under `batch:`), or give --raw-weight or --cooked-weight",
  "scales.capacity-unknown": () => " (`capacity: 500 g`)",
  "settle.own-water": () => trial,
  "settle.preference": ({ value }) =>
    value ? " (`within:` and `prefer:` under `wanted:`)" : " (`prefer:` under `wanted:`)",
  "sheet.cooked-range": () => " It stands as `cookGain` under `batch:`.",
  "sheet.much-left-over": () => " The length stands as `strandLength` under `sheet:`.",
  "sheet.no-cutter": () => " Write `cutter: 20` or `cutter: 2 mm` under `sheet:`, or give --cutter.",
  "sheet.portions-short": () => " The loss stands as `sheeting` under `losses:`.",
  "sheet.spring-back-unmeasured": () => " It stands as `springBack` under `sheet:`.",
  "sheet.strand-length": () => " Another stands as `strandLength: 250 mm` under `sheet:`.",
  "temperature.no-mixer-work": () => " They stand as `mixerPower`, `mixingTime` and `mixingHeat` under `temperature:`.",
  "temperature.friction-alone": () =>
    " It stands as `mixingHeat` under `temperature:`; `noodlewright calibrate mixing` works it out.",
  "toasted.gluten": () => glutenKey,
  "substitute.absorption-kept": () => trial,
  "substitute.only-flour": () => " (--shelf, or `shelf:` in the spec)",
  "temperature.far-apart": () => " `noodlewright calibrate mixing` works them out.",

  "batch.not-stated": () => ", or give it as a flag such as --bowls 320 --raw-weight '130 g'",
  "compare.one": () => ", such as --set 'water.added=38 %'",
  "lot.none": () => ", or use --of, --protein and --moisture",
  "materials.none": ({ alkali }) => (alkali ? listAlkalis : ""),
  "materials.several": severalHint,
  "materials.unknown": ({ alkali }) => (alkali ? listAlkalis : "; `noodlewright materials` lists the catalogue"),
  "measured.cook-pair": () => ": give --raw '500 g' --cooked '880 g'",
  "picture.unknown": ({ names }) => (names.length === 0 ? "" : " with --picture"),
  "plan.serve-missing": () => ", or give --serve 12:15",
  "product.no-alkali": () => listSalts,
  "product.unknown": ({ alkali }) => (alkali ? listAlkalis : listSalts),
  "replace.kind": ({ wanted }) => `; \`noodlewright materials --kind ${wanted}\` lists them`,
  "search.several": severalHint,
  "solutions.parts": ({ without }) => (without === undefined ? "" : ": --ratio-by 'as weighed'"),
  "spec.missing": ({ example }) => (example === undefined ? schemaHint : ""),
  "spec.type": ({ example }) => (example === undefined ? schemaHint : ""),
  "spec.unknown-key": ({ key }) => (/^units?$/iu.test(key) ? "; answers are told in US units with --units us" : ""),
  "substitute.nothing": () => ", or with --shelf",
  "table.unknown": ({ names }) => (names.length === 0 ? ": --format json" : " with --table"),
  "words.none": () => " with `noodlewright words`",
  "temperature.missing": ({ key }) => `, or give --${key}-at '20 °C'`,
};

const schemaHint = " (`noodlewright schema`), or start from `noodlewright new`";

function hintWithin(says: string | Inner): string {
  return typeof says === "string" ? "" : (ofMaterials.get(says.code) ?? "");
}

/** What is said besides of a material. */
const ofMaterials: ReadonlyMap<string, string> = new Map<NoteCode, string>([
  ["baking.assumed", " (`noodlewright alkali bake`)"],
  ["materials.toasted", trial],
]);

/** What is said besides. */
export function hintOn<Which extends keyof AllFacts>({ code, facts }: WithFacts<Which>): string {
  return hints[code]?.(facts) ?? "";
}

/** The same report, its notes with what is said besides; they are all of the library, though a report may hold others. */
export function withHints(report: Report): Report {
  const notes = report.notes.map((note) => {
    const hint = hintOn(note as WithFacts<NoteCode>);
    return { ...note, text: `${note.text}${hint}` };
  });
  return { ...report, notes };
}
