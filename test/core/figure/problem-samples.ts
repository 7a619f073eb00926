import type { Code, NoteCode } from "@noodlewright/core/figure";

/** What the calls of the samples build on, as text, so that the page of all problems can show it. */
export const given = {
  about: `(spec, ask) => { const read = readNoodleData(spec); return read.ok ? ask(read.value) : read; }`,
  noodle: `{ name: "school noodle", flours: [{ name: "bread flour", amount: "100 %" }], water: { added: "36 %" }, salt: "1 %" }`,
  withFlours: `(amounts) => ({ ...noodle, flours: Object.entries(amounts).map(([name, amount]) => ({ name, amount })) })`,
  flourWith: `(name, figures) => ({ ...noodle, flours: [{ name, amount: "100 %", figures }] })`,
  labelled: `(label) => flourWith("house", { label })`,
  onPack: `{ protein: "4 g", serving: "30 g", rules: "US" }`,
  withAlkali: `(name, amount, more) => ({ ...noodle, alkali: [{ name, amount, ...more }] })`,
  itsGraph: `readNoodle(noodle).value.formula.graph`,
  mending: `(name, amount) => (one) => askMend(one, { weighed: [{ name, amount }] })`,
  ofTenKilos: `{ ...noodle, batch: { dough: "10 kg" } }`,
  ofFourHundred: `{ ...withAlkali("sodium carbonate", "0.6 %"), batch: { flour: "400 g" } }`,
  wished: `{ ...noodle, flours: [{ name: "bread flour", amount: "find" }, { name: "cake flour", amount: "find" }], wanted: { protein: "10 %" } }`,
  egg: `{ ...noodle, ingredients: [{ name: "whole egg", amount: "20 %" }] }`,
  house: `{ moisture: "14 %" }`,
  milled: `(moisture) => ({ materials: { "mill flour": { moisture } } })`,
  mine: `{ width: "240 mm", gap: { least: "1 mm", greatest: "8 mm" }, cutters: [{ size: 20 }] }`,
  rollerWith: `(changes) => ({ machines: { roller: { ...mine, ...changes } } })`,
  day: `{ ...ofTenKilos, plan: { serve: "12:15", mix: "15 min", boil: "10 min" } }`,
  sheet: `{ ...ofTenKilos, machines: { roller: mine }, sheet: { machine: "roller", thickness: "1.5 mm", cutter: 20, start: "7 mm" } }`,
  soda: `{ name: "soda", composition: pure("Na2CO3") }`,
  potash: `{ name: "potash", composition: pure("K2CO3") }`,
  bicarbonate: `{ name: "bicarbonate of soda", composition: pure("NaHCO3") }`,
  water: `{ species: {}, water: "100", inert: "0" }`,
  solved: `(species, water) => ({ species, water, inert: "0" })`,
  here: `{ temperature: "20", scale: "145" }`,
  replacing: `(missing, by) => (one) => askIngredientReplacement(one, { missing, by })`,
  brine: `{ name: "brine", active: "25", water: "75" }`,
  tenPercent: `{ measure: "mass-percent", value: "10" }`,
  stock: `{ products: [{ ...soda, mass: "8" }], scales: [{ division: "1" }], tolerance: "1", loads: "20", storage: "20", ...here }`,
  asIs: `{ kind: "as is" }`,
  soft: `{ name: "soft flour", protein: "8.3", moisture: "14" }`,
  strong: `{ name: "strong flour", protein: "12.6", moisture: "14" }`,
  question: `{ flours: [soft, strong], targets: { protein: { least: "10", basis: asIs } }, prefer: { kind: "fewest" } }`,
  blended: `{ blend: [{ name: "strong flour", share: "100" }], flours: [soft, strong], missing: "strong flour", hold: ["protein"], basis: asIs, water: "34" }`,
  dial: `{ kind: "dial", settings: ["4.8", "3.8", "3.3", "2.6", "2", "1.5", "1"].map((gap, index) => ({ name: String(index), gap })) }`,
  free: `{ kind: "free", least: "0.3", greatest: "12" }`,
  from: `(gaps, firstThickness, finalThickness) => ({ gaps, firstThickness, finalThickness })`,
  bench: `{ name: "bench sheeter", rolls: { width: "300", gaps: free }, cutters: [{ size: { kind: "number", number: 20 }, workingWidth: "140" }], longestSheet: "3000" }`,
  rolled: `{ width: "140", length: "2900", cutter: { kind: "number", number: 20 } }`,
  cut: `{ dough: "10000", density: givenDensity("1.24"), thickness: "1.5", width: "300", cutter: { kind: "number", number: 20 }, portion: "130" }`,
  serving: `{ serve: "12:15", loads: 5, machines: [{ name: "mixer", count: 1 }, { name: "pot", count: 1 }], stages: [{ kind: "work", name: "mix", machine: "mixer", minutes: 15 }, { kind: "work", name: "boil", machine: "pot", minutes: 20 }] }`,
  dough: `{ flour: { mass: "7000", temperature: "24" }, water: "2450" }`,
  measuredHeat: `(perKilogram) => ({ kind: "measured", perKilogram })`,
  strip: `{ mass: "278 g", length: "1 m", width: "150 mm", gap: "1.35 mm" }`,
  nothing: `{ water: "0", protein: "0", fat: "0", carbohydrate: "0", fibre: "0", ash: "0" }`,
  weakBatch: `{ batch: { name: "batch", composition: solved({ Na2CO3: "9" }, "91"), mass: "1000" }, target: tenPercent, salts: soda, ...here }`,
  tenOfSoda: `{ products: [{ ...soda, parts: 1 }], ratioBy: "anhydrous", target: tenPercent, amount: { grams: 100 }, ...here }`,
  unknownFlour: `{ name: "house flour", amount: "100 %", figures: { label: { protein: "12 g", rules: "EU" } } }`,
  tight: `(least, most) => ({ least, most, basis: asIs })`,
  spread: `(least, index, prime, by) => (least + ((index * prime) % 997) / by).toFixed(6)`,
  manyFlours: `{ flours: [...Array(40).keys()].map((index) => ({ name: "flour " + index, moisture: "14", price: spread(1, index, 31, 700), protein: spread(8, index, 7919, 131), ash: spread(0.3, index, 104729, 811), glutenProtein: spread(5, index, 1299709, 217) })), step: "0.1", prefer: { kind: "cheapest" }, targets: { protein: tight("11.23", "11.24"), ash: tight("0.712", "0.713"), glutenProtein: tight("7.12", "7.13") } }`,
  crowded: `{ serve: "12:15", loads: 12, machines: ["scale", "mixer", "sheeter", "pot"].map((name) => ({ name, count: 2 })), stages: [["weigh", "scale", 10], ["mix", "mixer", 15], ["compound", "sheeter", 8], ["roll", "sheeter", 12], ["cut", "sheeter", 6], ["boil", "pot", 20]].flatMap(([name, machine, minutes]) => [{ kind: "work", name, machine, minutes }, ...(name === "mix" || name === "roll" ? [{ kind: "wait", name: "rest after " + name, least: 20, greatest: 30 }] : [])]), longestGap: 10 }`,
  rolling: `{ ...sheet, sheet: { ...sheet.sheet, portion: "130 g" } }`,
  surveyed: `{ ...unknownFlour, figures: { moisture: "14 %", protein: "12 %", proteinUncertainty: "0.3 %" } }`,
  priced: `{ ...ofTenKilos, prices: { "bread flour": "1 EUR/kg" } }`,
  warm: `{ ...ofTenKilos, temperature: { dough: "25 °C", flour: "21 °C", room: "22 °C", mixingHeat: "11 kJ/kg" } }`,
} as const;

/** How a problem or a note comes about: the path that it points at, and a call that is answered with it. */
export type Sample = readonly [path: string, call: string];

/** A sample of every problem and every note of the library. */
export const samples: Readonly<Record<Code | NoteCode, Sample>> = {
  // quantities and the shape of a spec
  "quantity.unreadable": ["salt", `readSpec({ ...noodle, salt: "1" })`],
  "quantity.out-of-range": ["salt", `readSpec({ ...noodle, salt: "21 %" })`],
  "figure.unknown": ["water", `recalculated(itsGraph, { water: "36" })`],
  "figure.worked-out": ['"water.tap"', `recalculated(itsGraph, { "water.tap": "36" })`],
  "figure.no-number": ['"flour.1.moisture"', `recalculated(itsGraph, { "flour.1.moisture": "1e99" })`],
  "figure.impossible": ['"flour.1.moisture"', `recalculated(itsGraph, { "flour.1.moisture": "150" })`],
  "figure.no-value": [
    "b",
    `recalculated({ a: { id: "a", label: "a", value: "2", unit: "", places: 0, working: { kind: "given", by: "spec" }, sources: [] }, b: { id: "b", label: "b", value: "3", unit: "", places: 0, working: { kind: "formula", formula: "6 / a", from: { a: { figure: "a" } } }, sources: [] } }, { a: "0" })`,
  ],
  "figure.found-before": [
    "",
    `recalculated(askBatch(readNoodle(ofTenKilos).value).value.graph, { "batch.dough": "12000" })`,
  ],
  "basis.unreadable": [
    "flours[0].figures.proteinBasis",
    `readSpec(flourWith("bread flour", { protein: "12 %", proteinBasis: "wet" }))`,
  ],
  "price.unreadable": ["prices.salt", `readSpec({ ...noodle, prices: { salt: "cheap" } })`],
  "cutter.unreadable": ["machines.roller.cutters[0].size", `readKitchenFile(rollerWith({ cutters: [{ size: 61 }] }))`],
  "bounds.unreadable": ["wanted.protein", `readSpec({ ...noodle, wanted: { protein: "at least 11" } })`],
  "shelf.ratio": [
    'shelf."rye flour".ratio.times',
    `readSpec({ ...noodle, shelf: { "rye flour": { ratio: { to: "bread flour", times: 0 } } } })`,
  ],
  "shelf.too-many": [
    "shelf",
    `readSpec({ ...noodle, shelf: Object.fromEntries([...Array(41).keys()].map((index) => ["flour " + index, {}])) })`,
  ],
  "wanted.prefer": ["wanted.prefer", `readSpec({ ...noodle, wanted: { prefer: "cheap" } })`],
  "weighing.unreadable": ["mixing", `measuredLosses({ mixing: "10 kg" })`],
  "machine.gaps-stated": ["machines.roller", `readKitchenFile(rollerWith({ dial: { "1": "2 mm" } }))`],
  "machine.gaps-reversed": [
    "machines.roller.gap",
    `readKitchenFile(rollerWith({ gap: { least: "8 mm", greatest: "1 mm" } }))`,
  ],
  "machine.speeds-count": [
    "machines.roller.speed",
    `readKitchenFile(rollerWith({ stands: 3, speed: ["2 m/min", "6 m/min"] }))`,
  ],
  "machine.settings-count": [
    "machines.roller.sticks",
    `readKitchenFile({ machines: { roller: { width: "240 mm", sticks: {}, cutters: [{ size: 20 }] } } })`,
  ],
  "materials.modulus": [
    "materials.lye.solution.modulus",
    `readKitchenFile({ materials: { lye: { solution: { salts: { K2CO3: 1 }, strength: "30 °Bé", modulus: 140 } } } })`,
  ],
  "spec.too-deep": [
    `notes${"[0]".repeat(20)}`,
    `readSpec({ ...noodle, notes: JSON.parse("[".repeat(30) + "]".repeat(30)) })`,
  ],
  "spec.too-large": ["", `readSpec({ ...noodle, flours: Array.from({ length: 20000 }, () => ({})) })`],
  "spec.not-data": ["notes", `readSpec({ ...noodle, notes: new Uint8Array(4) })`],
  "spec.choice": ["mixer.of", `readSpec({ ...noodle, mixer: { largest: "1 kg", of: "dow" } })`],
  "spec.size": ["name", `readSpec({ ...noodle, name: " " })`],
  "spec.missing": ["water", `readSpec({ ...noodle, water: undefined })`],
  "spec.type": ["flours", `readSpec({ ...noodle, flours: "bread flour" })`],
  "spec.unknown-key": ["watr", `readSpec({ ...noodle, watr: "36 %" })`],

  // materials and labels
  "materials.named-twice": [
    'prices."table salt"',
    `readNoodleData({ ...noodle, prices: { salt: "1 EUR/kg", "table salt": "5 EUR/kg" } })`,
  ],
  "materials.unknown": ["flours[0].name", `readNoodleData(withFlours({ "bred flour": "100 %" }))`],
  "materials.several": ["alkali[0].name", `readNoodleData(withAlkali("kansui", "1 %"))`],
  "search.several": ["", `listMaterials("kansui")`],
  "materials.composition-missing": [
    "alkali[0].figures",
    `readNoodleData(withAlkali("harbour powder", "1 %", { figures: { kind: "alkali" } }))`,
  ],
  "materials.moisture-missing": ["flours[0].figures", `readNoodleData(flourWith("house", { protein: "12 %" }))`],
  "materials.composition": [
    "alkali[0].figures.composition",
    `readNoodleData(withAlkali("harbour powder", "1 %", { figures: { composition: { Na2CO3: "60 %", K2CO3: "30 %" } } }))`,
  ],
  "materials.composition-part": [
    "alkali[0].figures.composition.Na2C03",
    `readNoodleData(withAlkali("harbour powder", "1 %", { figures: { composition: { Na2C03: "100 %" } } }))`,
  ],
  "materials.composition-twice": [
    "alkali[0].figures",
    `readNoodleData(withAlkali("lye", "1 %", { figures: { composition: { Na2CO3: "100 %" }, solution: { salts: { Na2CO3: 1 }, strength: "20 %" } } }))`,
  ],
  "materials.strength": [
    "alkali[0].figures.solution.strength",
    `readNoodleData(withAlkali("lye", "1 %", { figures: { solution: { salts: { K2CO3: 1 }, strength: "strong" } } }))`,
  ],
  "materials.alkalinity": [
    "alkali[0].figures.certificate.alkalinity",
    `readNoodleData(withAlkali("harbour powder", "1 %", { figures: { certificate: { salts: { K2CO3: 1 }, alkalinity: "high" } } }))`,
  ],
  "materials.assay": [
    "alkali[0].figures.assay.of",
    `readNoodleData(withAlkali("harbour powder", "1 %", { figures: { assay: { of: "water", content: "99 %" } } }))`,
  ],
  "materials.salts": [
    "alkali[0].figures.solution.salts",
    `readNoodleData(withAlkali("lye", "1 %", { figures: { solution: { salts: { K2CO3: 0 }, strength: "20 %" } } }))`,
  ],
  "materials.beyond-whole": [
    "flours[0].figures",
    `readNoodleData(flourWith("house", { moisture: "14 %", protein: "12 %", fat: "80 %" }))`,
  ],
  "materials.protein-twice": [
    "flours[0].figures.label",
    `readNoodleData(flourWith("house", { moisture: "13 %", protein: "12 %", label: { protein: "4 g", serving: "30 g", rules: "US" } }))`,
  ],
  "materials.crystals": [
    "flours[0].figures.solution",
    `readNoodleData(flourWith("house", { solution: { salts: "Na2CO3.10H2O", strength: "1 to 5" } }))`,
  ],
  "product.unclear": ["", `readProduct("30 Baumé", {}, {}, [])`],
  "product.unknown": ["", `readProduct("harbor powder", {}, {}, [])`],
  "product.no-alkali": ["", `readProduct("bread flour", {}, {}, [])`],
  "product.strength": ["", `readProduct("K2CO3 at 20 parts", {}, {}, [])`],
  "label.unreadable": [
    "flours[0].figures.label.protein",
    `readNoodle(labelled({ protein: "four", serving: "30 g", rules: "US" }))`,
  ],
  "label.not-by-the-book": [
    "flours[0].figures.label.protein",
    `readNoodle(labelled({ protein: "4.3 g", serving: "30 g", rules: "US" }))`,
  ],
  "label.disagree": ["flours[0].figures.label", `readNoodle(labelled([onPack, { ...onPack, protein: "6 g" }]))`],
  "label.serving": ["flours[0].figures.label.serving", `readNoodle(labelled({ protein: "4 g", rules: "US" }))`],

  // the formula
  "flours.mixed-amounts": ["flours", `readNoodleData(withFlours({ "bread flour": "90 %", "cake flour": "50 g" }))`],
  "flours.rest-twice": ["flours", `readNoodleData(withFlours({ "bread flour": "rest", "cake flour": "rest" }))`],
  "flours.rest-with-masses": ["flours", `readNoodleData(withFlours({ "bread flour": "90 g", "cake flour": "rest" }))`],
  "flours.shares-total": ["flours", `readNoodleData(withFlours({ "bread flour": "90 %" }))`],
  "flours.none": ["flours", `readNoodleData(withFlours({ "bread flour": "0 g" }))`],
  "flours.no-dry-matter": [
    "flours[0]",
    `readNoodleData(flourWith("bread flour", { moisture: "100 %", protein: "3 %" }))`,
  ],
  "amounts.mass-without-flour-mass": ["salt", `readNoodleData({ ...noodle, salt: "10 g" })`],
  "alkali.no-composition": ["alkali[0].name", `readNoodleData(withAlkali("whole egg", "1 %"))`],
  "alkali.no-strength": ["alkali[0].name", `readNoodleData(withAlkali("table salt", "10 meq"))`],
  "alkali.dose-unit": [
    "alkali[0].as",
    `readNoodleData(withAlkali("sodium carbonate", "17 meq", { as: "anhydrous salts" }))`,
  ],
  "alkali.replace-with": [
    "alkali[0].holding",
    `readNoodleData(withAlkali("sodium carbonate", "1 %", { holding: "alkalinity M" }))`,
  ],
  "alkali.too-much": ["alkali", `readNoodleData(withAlkali("sodium carbonate", "5.1 %"))`],
  "salt.too-much": ["salt", `readNoodleData({ ...noodle, salt: "11 %" })`],
  "water.not-stated": ["water", `readNoodleData({ ...noodle, water: {} })`],
  "water.stated-twice": ["water", `readNoodleData({ ...noodle, water: { added: "36 %", tap: "34 %" } })`],
  "water.mass-without-flour-mass": ["water.tap", `readNoodleData({ ...noodle, water: { tap: "170 g" } })`],
  "water.below-own": ["water.dough", `readNoodleData({ ...noodle, water: { dough: "8 %" } })`],
  "water.below-carried": ["water.added", `readNoodleData({ ...egg, water: { added: "10 %" } })`],
  "water.below-flour": [
    "water.added",
    `readNoodleData({ ...noodle, flours: [{ name: "house", amount: "100 %", figures: { moisture: "40 %" } }], water: { added: "1 %", onFlourMoisture: "14 %" } })`,
  ],

  // the batch and its cost
  "batch.not-stated": ["batch", `about(noodle, askBatch)`],
  "batch.stated-twice": ["batch", `about({ ...noodle, batch: { dough: "1 kg", flour: "1 kg" } }, askBatch)`],
  "batch.bowl-weight-missing": ["batch", `about({ ...noodle, batch: { bowls: 3 } }, askBatch)`],
  "batch.bowl-weight-twice": [
    "batch",
    `about({ ...noodle, batch: { bowls: 3, rawWeight: "130 g", cookedWeight: "230 g" } }, askBatch)`,
  ],
  "batch.unknown-ingredient": [
    "batch.have.name",
    `about({ ...noodle, batch: { have: { name: "bread flower", amount: "1 kg" } } }, askBatch)`,
  ],
  "batch.ingredient-zero": [
    "batch.have.name",
    `about({ ...noodle, salt: "0 %", batch: { have: { name: "table salt", amount: "1 kg" } } }, askBatch)`,
  ],
  "mixer.needed": ["batch.load", `about({ ...noodle, batch: { load: "largest" } }, askBatch)`],
  "mixer.limits": ["mixer.largest", `about({ ...ofTenKilos, mixer: { smallest: "3 kg", largest: "2 kg" } }, askBatch)`],
  "mixer.no-equal-loads": ["mixer", `about({ ...ofTenKilos, mixer: { smallest: "8 kg", largest: "9 kg" } }, askBatch)`],
  "scales.mixed-systems": [
    "scales",
    `about({ ...ofTenKilos, scales: [{ division: "1 g" }, { division: "0.1 oz" }] }, askBatch)`,
  ],
  "scales.capacity-below-division": [
    "scales[0].capacity",
    `about({ ...ofTenKilos, scales: [{ division: "5 g", capacity: "1 g" }] }, askBatch)`,
  ],
  "weighing.no-flour": ["batch", `about({ ...noodle, batch: { dough: "0.4 g" } }, askBatch)`],
  "rework.no-new-dough": [
    "rework.amount",
    `about({ ...noodle, rework: { amount: "2 kg" }, batch: { dough: "2 kg" } }, askBatch)`,
  ],
  "rework.beyond-own-limit": [
    "rework.amount",
    `about({ ...ofTenKilos, rework: { amount: "12 %", most: "10 %" } }, askBatch)`,
  ],
  "cost.no-prices": ["prices", `about(ofTenKilos, askCost)`],
  "cost.mixed-currencies": [
    "prices",
    `about({ ...ofTenKilos, prices: { "bread flour": "1 EUR/kg", salt: "1 USD/kg" } }, askCost)`,
  ],
  "cost.unknown-currency": [
    'prices."bread flour"',
    `about({ ...ofTenKilos, prices: { "bread flour": "1 EUE/kg" } }, askCost)`,
  ],
  "cost.two-prices": [
    "dusting.figures.price",
    `about({ ...ofTenKilos, flours: [{ name: "bread flour", amount: "100 %", figures: { price: "1 EUR/kg" } }], dusting: { name: "bread flour", amount: "2 %", figures: { price: "2 EUR/kg" } } }, askCost)`,
  ],
  "materials.none": ["", `listMaterials("tapioca sago")`],
  "alkali.none": ["", `listSalts("sugar")`],
  "words.none": ["", `listWords("spaghetto")`],
  "compare.one": ["", `about(noodle, (one) => askCompare([{ name: "as written", noodle: one }]))`],
  "compare.name": [
    "[1].name",
    `about(noodle, (one) => askCompare([{ name: "as written", noodle: one }, { name: "as written", noodle: one }]))`,
  ],
  "materials.unusual": ["flours[0]", `readNoodle(flourWith("bread flour", { moisture: "40 %" }))`],
  "noodle.not-handed-over": [
    "include",
    `readNoodle({ ...withFlours({ "harbour flour": "100 %" }), include: ["store.yaml"] })`,
  ],
  "noodle.not-included": ["include", `readNoodle({ ...noodle, include: ["store.yaml"] })`],
  "noodle.named-twice": [
    "include",
    `readNoodle({ ...withFlours({ "mill flour": "100 %" }), include: ["mill.yaml", "store.yaml"] }, { kitchens: [milled("12 %"), milled("13 %")] })`,
  ],
  "spec.unusual": ["losses.mixing", `readNoodle({ ...noodle, losses: { mixing: "60 %" } })`],
  "path.no-entry": ['flours."rye flour"', `keyPathIn(noodle, ["flours", "rye flour", "amount"])`],
  "path.several": [
    'flours."bread flour"',
    `keyPathIn({ ...noodle, flours: [...noodle.flours, ...noodle.flours] }, ["flours", "bread flour", "amount"])`,
  ],
  "path.deeper": ["name.short", `keyPathIn(noodle, ["name", "short"])`],
  "card.date": ["date", `about(ofTenKilos, (one) => askCard(one, { date: "2026-99-99" }))`],
  "card.loads": ["loads", `about(ofTenKilos, (one) => askCard(one, { date: "2026-11-25", files: [], loads: "9" }))`],
  "convert.not-there": ["from", `about(ofTenKilos, (one) => standingDose(one, "baking soda"))`],
  "convert.several": [
    "from",
    `about({ ...noodle, alkali: [{ name: "sodium carbonate", amount: "0.6 %" }, { name: "sodium carbonate", amount: "0.4 %" }] }, (one) => standingDose(one, "sodium carbonate"))`,
  ],
  "stock.no-alkali": ["", `about(ofTenKilos, stockNeeds)`],

  // blends and what takes the place of what
  "blend.step": ["step", `searchBlend({ ...question, step: "0.3" })`],
  "blend.flour-mass": ["flourMass", `searchBlend({ ...question, flours: [soft, { ...strong, store: "100" }] })`],
  "blend.flours": ["flours", `searchBlend({ ...question, flours: [] })`],
  "blend.flour-twice": ["flours[1].name", `searchBlend({ ...question, flours: [soft, soft] })`],
  "blend.percentage": ["flours[0].protein", `searchBlend({ ...question, flours: [{ ...soft, protein: "-1" }] })`],
  "blend.fixed": ["flours[0].fixed", `searchBlend({ ...question, flours: [{ ...soft, fixed: "33.3" }, strong] })`],
  "blend.ratio-to": [
    "flours[0].ratioTo",
    `searchBlend({ ...question, flours: [{ ...soft, ratioTo: { name: "sand", times: "1" } }, strong] })`,
  ],
  "blend.ratio-times": [
    "flours[0].ratioTo",
    `searchBlend({ ...question, flours: [{ ...soft, ratioTo: { name: "strong flour", times: "0" } }, strong] })`,
  ],
  "blend.figure-missing": [
    "flours[0].price",
    `searchBlend({ ...question, flours: [soft], prefer: { kind: "cheapest" } })`,
  ],
  "blend.unknown-flour": ["prefer.flour", `searchBlend({ ...question, prefer: { kind: "most", flour: "sand" } })`],
  "blend.shares-total": [
    "prefer.to",
    `searchBlend({ ...question, prefer: { kind: "nearest", to: [{ name: "soft flour", share: "99" }] } })`,
  ],
  "blend.alternatives": ["alternatives", `searchBlend({ ...question, alternatives: 0 })`],
  "blend.out-of-reach": [
    "targets",
    `[searchBlend({ ...question, targets: { protein: { least: "20", basis: asIs } } }).value.problem]`,
  ],
  "blend.unfinished": [
    "",
    `[searchBlend({ flours: [...Array(20).keys()].map((index) => ({ name: "flour " + index, moisture: "14", protein: String(8 + ((index * 7919) % 131) / 20), ash: String(0.3 + ((index * 104729) % 811) / 900), glutenProtein: String(5 + ((index * 1299709) % 217) / 40) })), prefer: { kind: "fewest" }, targets: { protein: { least: "11.234567", most: "11.234568", basis: asIs }, ash: { least: "0.7123456", most: "0.7123457", basis: asIs }, glutenProtein: { least: "7.123456", most: "7.123457", basis: asIs } } }).value.problem]`,
  ],
  "shelf.protein-missing": [
    'shelf."own bran"',
    `about({ ...noodle, wanted: { protein: "11 %" }, shelf: { "own bran": { figures: { moisture: "12 %" } } } }, askBlend)`,
  ],
  "shelf.currencies": [
    "prices",
    `about({ ...noodle, wanted: { prefer: "cheapest" }, shelf: { "cake flour": {} }, prices: { "bread flour": "2 USD/kg", "cake flour": "1 EUR/kg" } }, askBlend)`,
  ],
  "wanted.nothing": ["wanted", `about({ ...noodle, wanted: {} }, askBlend)`],
  "style.unknown": ["style", `styleNotes("harbour style", [])`],
  "square.same-protein": [
    "other.protein",
    `squareRule({ one: soft, other: { ...soft, name: "soft too" }, target: "8.3", basis: asIs })`,
  ],
  "square.out-of-reach": ["target", `squareRule({ one: soft, other: strong, target: "13", basis: asIs })`],
  "substitute.missing": ["missing", `substitute({ ...blended, missing: "rye flour" })`],
  "substitute.nothing": ["missing", `substitute({ ...blended, flours: [strong] })`],
  "substitute.lot": ["lot.name", `newLot({ ...blended, lot: { name: "rye flour", protein: "9", moisture: "14" } })`],
  "substitute.flour": [
    "blend",
    `substitute({ ...blended, flours: [strong], missing: "strong flour", blend: [{ name: "strong flour", share: "50" }, { name: "sand", share: "50" }] })`,
  ],
  "hold.unknown": [
    "hold",
    `about(noodle, (one) => askFlourReplacement(one, { missing: "bread flour", hold: "protein, price" }))`,
  ],
  "lot.none": ["lot", `about(noodle, (one) => askLot(one, {}))`],
  "replace.active": ["active", `replaceProduct("10", brine, { ...brine, active: "0" })`],
  "replace.mass": ["mass", `replaceProduct("-1", brine, brine)`],
  "replace.ingredient": ["missing", `about(egg, replacing("milk", "dried whole egg"))`],
  "replace.kind": ["with", `about(egg, replacing("whole egg", "bread flour"))`],
  "replace.no-water": [
    "with",
    `about({ ...noodle, water: { added: "12 %" }, ingredients: [{ name: "dried whole egg", amount: "10 %" }] }, replacing("dried whole egg", "whole egg"))`,
  ],

  // salts and solutions
  "composition.unknown": ["species.Na2C03", `compositionOf({ species: JSON.parse('{ "Na2C03": "60" }') })`],
  "composition.negative": ["", `compositionOf({ species: { K2CO3: "-1" } })`],
  "composition.over-100": ["", `compositionOf({ species: { K2CO3: "60", Na2CO3: "41" } })`],
  "solution.too-strong": ["", `solutionAt(pure("K2CO3", "50"), { measure: "mass-percent", value: "51" })`],
  "strength.value": ["", `solutionAt(pure("Na2CO3"), { measure: "mass-percent", value: "0" })`],
  "strength.degrees": ["", `solutionAt(pure("Na2CO3"), { measure: "degrees-baume", scale: "145", value: "145" })`],
  "strength.no-salt": ["", `solutionAt(pure("NaCl"), { measure: "mass-percent", value: "5" })`],
  "strength.no-water": ["", `strengthOf(pure("Na2CO3"), 20, "145")`],
  "strength.beyond-fit": ["", `solutionAt(pure("Na2CO3"), { measure: "density", value: "1.5" })`],
  "density.too-strong": ["", `solutionDensity(solved({ Na2CO3: "25" }, "75"), 20)`],
  "density.powder": ["", `gramsOf(pure("K2CO3"), { millilitres: 10 }, 20)`],
  "density.temperature": ["", `solutionDensity(solved({ K2CO3: "25" }, "75"), 4)`],
  "density.no-model": ["", `solutionDensity(solved({ Na3PO4: "5" }, "95"), 20)`],
  "hydrometer.error": ["", `readHydrometer(pure("Na2CO3"), { measure: "density", value: "1.1" }, "1.1")`],
  "hydrometer.volume": [
    "",
    `readWeighedVolume(pure("Na2CO3"), { mass: 0, volume: 100, temperature: "20", massError: 0, volumeError: 0 })`,
  ],
  "solubility.no-table": ["", `solubilityOf("Na5P3O10", 20)`],
  "solubility.temperature": ["", `solubilityOf("NaOH", 5)`],
  "solubility.no-water": ["", `staysClear(pure("Na2CO3"), 20)`],
  "ph.phosphate": ["", `solutionPh(solved({ Na3PO4: "1" }, "99"), 25)`],
  "ph.too-strong": ["", `solutionPh(solved({ K2CO3: "40" }, "60"), 25)`],
  "ph.no-water": ["", `solutionPh(pure("K2CO3"), 25)`],
  "ph.temperature": ["", `solutionPh(solved({ K2CO3: "1" }, "99"), 60)`],
  "ph.no-salt": ["", `solutionPh(solved({ NaCl: "1" }, "99"), 25)`],
  "solutions.division": ["division", `makeUp({ ...tenOfSoda, division: "0" })`],
  "solutions.temperature": ["", `makeUp({ ...tenOfSoda, temperature: "-5" })`],
  "solutions.amount": ["", `makeUp({ ...tenOfSoda, amount: { grams: 0 } })`],
  "solutions.parts": ["", `makeUp({ ...tenOfSoda, products: [{ ...soda, parts: 0 }] })`],
  "solutions.ratio": [
    "",
    `blendStocks({ stocks: [potash, potash], amount: { grams: 1000 }, target: tenPercent, potassiumShare: 50, ...here })`,
  ],
  "solutions.too-weak-salts": [
    "",
    `correct({ batch: { ...soda, composition: solved({ Na2CO3: "9" }, "91"), mass: "1000" }, target: tenPercent, salts: { ...soda, composition: solved({ Na2CO3: "10" }, "90") }, ...here })`,
  ],
  "stock.wish": ["", `severalStock({ ...stock, tolerance: "0" })`],
  "stock.too-weak": ["", `severalStock({ ...stock, scales: [{ division: "1000" }], tolerance: "0.1" })`],
  "stock.too-much-water": ["", `severalStock({ ...stock, water: "40" })`],
  "stock.scales": ["", `severalStock({ ...stock, scales: [{ division: "1", capacity: "60" }], loads: "9" })`],
  "stock.not-clear": [
    "",
    `severalStock({ ...stock, products: [{ ...soda, mass: "8" }, { name: "phosphate", composition: pure("Na2HPO4"), mass: "4" }] })`,
  ],
  "convert.dose": ["", `convert({ from: { ...soda, mass: 0 }, to: [potash], hold: "M" })`],
  "convert.cannot-hold": ["", `convert({ from: { ...soda, mass: 10 }, to: [bicarbonate], hold: "P" })`],
  "baking.mass": ["", `bakedSalt({ salt: "NaHCO3", before: 0, after: 300 })`],
  "baking.heavier": ["", `bakedSalt({ salt: "NaHCO3", before: 500, after: 510 })`],
  "baking.lighter": ["", `bakedSalt({ salt: "NaHCO3", before: 500, after: 300 })`],
  "titration.value": ["", `assayed({ as: "Na2CO3", percent: "0" }, pure("K2CO3"))`],
  "titration.no-alkalinity": ["", `assayed({ as: "Na2CO3", percent: "9" }, pure("NaCl"))`],
  "titration.over-100": ["", `assayed({ as: "Na2CO3", percent: "99" }, pure("K2CO3"))`],
  "titration.end-points": [
    "",
    `splitByEndPoints({ phenolphthalein: "11", total: "10", normality: "1", sample: "1", potassium: 0 })`,
  ],

  // errors and trials
  "trial.flour": ["flour", `waterTrial({ flour: "0", water: "34" })`],
  "trial.water": ["water", `waterTrial({ flour: "200", water: "0.5" })`],

  // rolling and cutting
  "sheet.not-stated": ["sheet", `about(ofTenKilos, askSheet)`],
  "machine.unknown": ["sheet.machine", `about({ ...sheet, sheet: { ...sheet.sheet, machine: "rollers" } }, askSheet)`],
  "machine.too-many-settings": [
    "gaps",
    `passSchedule(from({ kind: "dial", settings: [...Array(200).keys()].map((index) => ({ name: String(index), gap: "2" })) }, "7", "1.5"))`,
  ],
  "machine.no-settings": ["gaps", `passSchedule(from({ kind: "dial", settings: [] }, "7", "1.5"))`],
  "machine.same-setting": [
    "rolls.gaps",
    `machineProblems({ ...bench, rolls: { width: "150", gaps: { kind: "dial", settings: [{ name: "1", gap: "2" }, { name: "1", gap: "1" }] } } })`,
  ],
  "sheet.out-of-range": ["firstThickness", `passSchedule(from(free, "-7", "1.5"))`],
  "compounding.gap-not-there": [
    "compounding.gap",
    `passSchedule({ gaps: dial, finalThickness: "1.5", compounding: { gap: "5", folds: 1 } })`,
  ],
  "passes.first-thickness": ["firstThickness", `passSchedule({ gaps: free, finalThickness: "1.5" })`],
  "passes.not-thinner": ["finalThickness", `passSchedule(from(free, "1.5", "1.5"))`],
  "passes.no-gaps": ["gaps.gaps", `passSchedule(from({ kind: "list", gaps: [] }, "4", "3"))`],
  "passes.list-misses-final": ["gaps.gaps", `passSchedule(from({ kind: "list", gaps: ["2"] }, "3", "1.5"))`],
  "passes.final-not-on-setting": ["finalThickness", `passSchedule(from(dial, "7", "1.25"))`],
  "passes.step-too-big": ["gaps", `passSchedule(from(dial, "8", "1.5"))`],
  "passes.final-outside-gap": ["finalThickness", `passSchedule(from(free, "7", "0.2"))`],
  "passes.first-too-thick": ["firstThickness", `passSchedule(from(free, "30", "1.5"))`],
  "fits.rolls-too-narrow": [
    "width",
    `fitProblems({ ...rolled, width: "310" }, { ...bench, cutters: [{ size: rolled.cutter }] })`,
  ],
  "fits.cutter-too-narrow": ["width", `fitProblems({ ...rolled, width: "290" }, bench)`],
  "fits.cutter-not-there": ["cutter", `fitProblems({ ...rolled, cutter: { kind: "number", number: 22 } }, bench)`],
  "fits.sheet-too-long": ["length", `fitProblems({ ...rolled, length: "7000" }, bench)`],
  "geometry.no-cut": ["portion", `cutPlan({ ...cut, portion: undefined })`],
  "geometry.too-narrow": ["width", `cutPlan({ ...cut, edgeTrim: "149.5" })`],
  "geometry.too-short": ["dough", `cutPlan({ ...cut, dough: "100" })`],

  // the pot, the water and the day
  "cook.dried": ["cookedWater", `gainFromWater({ rawWater: "33", cookedWater: "30", solidsLoss: "0" })`],
  "cook.range-reversed": ["gain", `cookedMass("100", { gain: "1.8", low: "1.9", high: "1.7" })`],
  "food.empty": ["composition", `poreFreeDensity({ composition: nothing, temperature: "25" })`],
  "food.denser-than-solid": ["density", `airFromDensity(givenDensity("1.4"), givenDensity("1.3"))`],
  "inverse.no-stages": ["", `lossesFrom([])`],
  "inverse.gained": ["[0].after", `lossesFrom([{ stage: "roll", before: "100", after: "101" }])`],
  "measured.implausible": ["mass", `measuredSheet({ ...strip, thickness: "15 mm" })`],
  "measured.thickness-or-density": ["thickness", `measuredSheet(strip)`],
  "measured.cook-pair": ["raw", `measuredCooking({ raw: "500 g" })`],
  "temperature.missing": ["temperature.flour", `about({ ...ofTenKilos, temperature: { dough: "25 °C" } }, askWater)`],
  "temperature.unknown-ingredient": [
    'temperature.ingredients."whole egg"',
    `about({ ...ofTenKilos, temperature: { dough: "25 °C", flour: "21 °C", room: "22 °C", ingredients: { "whole egg": "4 °C" } } }, askWater)`,
  ],
  "temperature.no-flour-left": [
    "temperature.ingredients",
    `about({ ...ofTenKilos, temperature: { dough: "25 °C", flour: "21 °C", room: "22 °C", ingredients: { "bread flour": "4 °C" } } }, askWater)`,
  ],
  "temperature.no-tap-water": [
    "water",
    `about({ ...ofTenKilos, water: { tap: "0 %" }, ingredients: [{ name: "whole egg", amount: "45 %" }], temperature: { dough: "25 °C", flour: "21 °C", room: "22 °C" } }, askWater)`,
  ],
  "temperature.needs-ice": ["tap", `waterTemperature({ ...dough, wanted: "15", heat: measuredHeat("20") })`],
  "temperature.too-warm": [
    "flour.temperature",
    `waterTemperature({ flour: { mass: "7000", temperature: "90" }, water: "2450", wanted: "20", heat: measuredHeat("20"), tap: "20" })`,
  ],
  "temperature.too-cold": [
    "flour.temperature",
    `waterTemperature({ flour: { mass: "7000", temperature: "-20" }, water: "2450", wanted: "40", heat: measuredHeat("0") })`,
  ],
  "plan.not-stated": ["plan", `about(ofTenKilos, askDay)`],
  "plan.serve-missing": ["plan.serve", `about({ ...day, plan: { mix: "15 min", boil: "10 min" } }, askDay)`],
  "plan.whole-minutes": ["plan.mix", `about({ ...day, plan: { ...day.plan, mix: "90 s" } }, askDay)`],
  "plan.too-many-loads": [
    "mixer",
    `about({ ...day, batch: { dough: "10000 kg" }, mixer: { largest: "5 kg" } }, askDay)`,
  ],
  "pot.water-out-of-range": [
    "plan.pot.water",
    `about({ ...day, plan: { ...day.plan, pot: { basket: "1.1 kg", water: "1 L" } } }, askDay)`,
  ],
  "plan.serve-time": ["serve", `timePlan({ ...serving, serve: "24:00" })`],
  "plan.open-ended": ["stages", `timePlan({ ...serving, stages: [] })`],
  "plan.machine-twice": [
    "machines",
    `timePlan({ ...serving, machines: [...serving.machines, { name: "pot", count: 1 }] })`,
  ],
  "plan.machine-not-there": ["stages[0].machine", `timePlan({ ...serving, machines: serving.machines.slice(1) })`],
  "plan.stands-too-long": ["longestHold", `timePlan({ ...serving, longestHold: 10 })`],

  // a flour that was toasted
  "toasted.gained": ["after", `measuredToasting({ before: "940 g", after: "1 kg", moisture: "13.6 %" })`],
  "toasted.beyond-water": ["after", `measuredToasting({ before: "1 kg", after: "800 g", moisture: "13.6 %" })`],

  // what is found, and what is mended at the bowl
  "settle.masses": [
    "flours",
    `readNoodle({ ...wished, flours: [{ name: "bread flour", amount: "700 g" }, { name: "cake flour", amount: "find" }] })`,
  ],
  "settle.alkali": ["wanted", `readNoodle(withAlkali("sodium carbonate", "find"))`],
  "settle.replaced": [
    "alkali[0].replaceWith",
    `readNoodle({ ...noodle, alkali: [{ name: "sodium carbonate", amount: "find", replaceWith: "potassium carbonate" }], wanted: { alkalinity: "17 meq" } })`,
  ],
  "settle.salt": ["wanted", `readNoodle({ ...noodle, salt: "find" })`],
  "settle.water": ["water.added", `readNoodle({ ...noodle, water: { added: "find" } })`],
  "settle.alike": [
    "alkali",
    `readNoodle({ ...noodle, alkali: [{ name: "sodium carbonate", amount: "find" }, { name: "sodium carbonate", amount: "find" }], wanted: { alkalinity: "17 meq", potassiumShare: "0 %" } })`,
  ],
  "settle.conflict": [
    "wanted",
    `readNoodle({ ...noodle, alkali: [{ name: "sodium carbonate", amount: "find" }], wanted: { alkalinity: "17 meq", anhydrousSalts: "1.4 %" } })`,
  ],
  "settle.out-of-reach": ["wanted", `readNoodle({ ...wished, wanted: { protein: "at least 16 %" } })`],
  "mend.nothing": ["weighed", `about(ofTenKilos, (one) => askMend(one, { weighed: [] }))`],
  "mend.unknown": ["weighed", `about(ofTenKilos, mending("tap watr", "3170 g"))`],
  "mend.several": [
    "weighed",
    `about({ ...ofTenKilos, alkali: [{ name: "sodium carbonate", amount: "0.4 %" }, { name: "sodium carbonate", amount: "0.5 %" }] }, mending("sodium carbonate", "1 g"))`,
  ],
  "mend.twice": [
    "weighed",
    `about(ofTenKilos, (one) => askMend(one, { weighed: [{ name: "tap water", amount: "3170 g" }, { name: "tap water", amount: "1 g" }] }))`,
  ],
  "mend.beyond": ["weighed", `about(ofTenKilos, mending("tap water", "900 kg"))`],
  "mend.amount": ["weighed", `about(ofTenKilos, mending("tap water", "much"))`],
  "mend.stock": ["weighed", `about(ofFourHundred, mending("tap water", "150 g"))`],

  // forms of an answer
  "table.unknown": ["", `[renderCsv(about(noodle, askFormula).report(), "flors").problem]`],
  "picture.unknown": ["", `[renderSvg(about(noodle, askFormula).report(), "cake").problem]`],

  // notes: salts and solutions
  "solutions.batch-within": ["", `correct({ ...weakBatch, within: { low: "8.9", high: "9.1" } })`],
  "solutions.tank": ["", `correct({ ...weakBatch, tank: 500 })`],
  "solutions.tank-unknown": [
    "",
    `correct({ ...weakBatch, batch: { name: "batch", composition: solved({ Na3PO4: "9" }, "91"), mass: "1000" }, salts: { name: "phosphate", composition: pure("Na3PO4") }, tank: 500 })`,
  ],
  "solutions.coarse-scale": ["", `makeUp({ ...tenOfSoda, division: 7 })`],
  "solutions.reaction": [
    "",
    `readNoodle({ ...noodle, alkali: [{ name: "sodium hydroxide", amount: "0.2 %" }, { name: "sodium bicarbonate", amount: "0.5 %" }] })`,
  ],
  "solutions.clarity-unknown": [
    "",
    `makeUp({ ...tenOfSoda, products: [{ name: "phosphate", composition: pure("Na5P3O10"), parts: 1 }] })`,
  ],
  "solutions.doubtful": ["", `makeUp({ ...tenOfSoda, target: { measure: "mass-percent", value: "17.5" } })`],
  "solutions.crystals": ["", `makeUp({ ...tenOfSoda, storage: 5 })`],
  "strength.undissolved": ["", `readProduct("Na2CO3 45 %, water rest", {}, {}, [])`],
  "solutions.crystal-water": [
    "",
    `makeUp({ products: [{ name: "crystals", composition: { species: { Na2CO3: "37" }, water: "63", inert: "0" }, parts: 1 }], ratioBy: "as-weighed", target: { measure: "mass-percent", value: "10" }, amount: { grams: 1000 }, temperature: 20, scale: "145" })`,
  ],
  "solubility.mixed": ["", `staysClear(solved({ Na2CO3: "1", K2CO3: "1" }, "98"), 20)`],
  "solubility.by-ions": ["", `staysClear(solved({ NaHCO3: "7", Na2CO3: "7" }, "86"), 25)`],
  "solubility.not-known": ["", `staysClear(solved({ Na2HPO4: "5", K2CO3: "40" }, "55"), 20)`],
  "solubility.exchange": ["", `staysClear(solved({ KHCO3: "5", Na2CO3: "5" }, "90"), 25)`],
  "baking.keep-dry": ["", `bakedSalt({ salt: "NaHCO3", before: 500, after: 330 })`],
  "baking.assumed": ["", `readNoodle(withAlkali("baked soda", "1 %")).value.formula.lines[2].material.notes`],
  "ph.not-estimated": ["", `strengthOf(solved({ Na3PO4: "5" }, "95"), 20, "145")`],
  "ph.of-the-solution": ["", `solutionPh(solved({ Na2CO3: "1" }, "99"), 25)`],
  "ph.classification": ["", `solutionPh(solved({ Na2CO3: "5" }, "95"), 25)`],
  "convert.ratio-not-met": [
    "",
    `convert({ from: { name: "powder", composition: solved({ Na2CO3: "60", K2CO3: "40" }, "0"), mass: 10 }, to: [soda], hold: "M" })`,
  ],
  "convert.not-kept": ["", `convert({ from: { ...soda, mass: 10 }, to: [potash], hold: "M" })`],
  "convert.bicarbonate": ["", `convert({ from: { ...soda, mass: 10 }, to: [bicarbonate], hold: "M" })`],
  "convert.hydroxide": [
    "",
    `convert({ from: { ...soda, mass: 10 }, to: [{ name: "lye", composition: pure("NaOH") }], hold: "M" })`,
  ],
  "density.carried-on": ["", `solutionDensity(solved({ K2CO3: "10" }, "90"), 15)`],
  "density.mixed-beyond": ["", `solutionDensity(solved({ Na2CO3: "2", K2CO3: "22" }, "76"), 20)`],
  "density.inert": ["", `solutionDensity({ species: { Na2CO3: "10" }, water: "89", inert: "1" }, 20)`],
  "strength.no-density": ["", `strengthOf(solved({ Na3PO4: "5" }, "95"), 20, "145")`],
  "strength.read-at": ["", `solutionAt(pure("K2CO3"), { measure: "degrees-baume", scale: "145", value: "28" })`],
  "strength.fit": ["", `solutionAt(pure("K2CO3"), { measure: "density", value: "1.2" })`],
  "stock.not-needed": ["", `severalStock({ ...stock, scales: [{ division: "0.01" }] })`],
  "titration.taken-as-whole": ["", `assayed({ as: "K2CO3", percent: "100.3" }, pure("K2CO3"))`],
  "alkali.additive-limits": ["", `assayReport(assayed({ as: "K2CO3", percent: "99" }, pure("K2CO3")).value, []).notes`],
  "caution.burns": ["", `assayReport(assayed({ as: "NaOH", percent: "99" }, pure("NaOH")).value, []).cautions`],
  "caution.into-water": ["", `assayReport(assayed({ as: "NaOH", percent: "99" }, pure("NaOH")).value, []).cautions`],
  "caution.eyes": ["", `assayReport(assayed({ as: "Na2CO3", percent: "99" }, soda.composition).value, []).cautions`],
  "caution.heat": ["", `assayReport(assayed({ as: "Na2CO3", percent: "99" }, soda.composition).value, []).cautions`],
  "caution.powder": ["", `assayReport(assayed({ as: "Na2CO3", percent: "99" }, soda.composition).value, []).cautions`],
  "caution.aluminium": [
    "",
    `assayReport(assayed({ as: "Na2CO3", percent: "99" }, soda.composition).value, []).cautions`,
  ],
  "caution.food-grade": [
    "",
    `assayReport(assayed({ as: "Na2CO3", percent: "99" }, soda.composition).value, []).cautions`,
  ],
  "caution.keep": ["", `assayReport(assayed({ as: "Na2CO3", percent: "99" }, soda.composition).value, []).cautions`],
  "caution.sheet": ["", `assayReport(assayed({ as: "Na2CO3", percent: "99" }, soda.composition).value, []).cautions`],

  // notes: materials and labels
  "materials.note": ["flours[0]", `readNoodleData({ ...noodle, flours: [unknownFlour] })`],
  "materials.moisture-assumed": [
    "",
    `readNoodleData({ ...noodle, flours: [unknownFlour] }).value.formula.lines[0].material.notes`,
  ],
  "materials.toasted": [
    "",
    `readNoodleData(flourWith("bread flour", { moisture: "14 %", toasted: { before: "1 kg", after: "940 g" } })).value.formula.lines[0].material.notes`,
  ],
  "caution.material": ["", `readProduct("baked soda", {}, {}, [])`],
  "label.factor-unknown": ["", `readNoodle(labelled(onPack)).value.formula.lines[0].material.notes`],
  "label.rounding-only": ["", `readNoodle(labelled(onPack)).value.formula.lines[0].material.notes`],
  "allergens.supplier": ["", `about(noodle, askNutrition).value.allergens.notes`],
  "allergens.list-date": ["", `about(noodle, askNutrition).value.allergens.notes`],
  "allergens.unknown": ["", `about(flourWith("house", { moisture: "14 %" }), askNutrition).value.allergens.notes`],

  // notes: the formula
  "alkali.unusual": ["alkali", `readNoodleData(withAlkali("sodium carbonate", "2 %"))`],
  "alkali.hydroxide": ["alkali", `readNoodleData(withAlkali("sodium hydroxide", "0.8 %"))`],
  "alkali.food-law": ["alkali", `readNoodleData(withAlkali("sodium carbonate", "2 %"))`],
  "alkali.product": ["alkali[0]", `readNoodleData(withAlkali("sodium bicarbonate", "1 %"))`],
  "alkali.replaced": [
    "alkali[0].replaceWith",
    `readNoodleData(withAlkali("sodium carbonate", "1 %", { replaceWith: "potassium carbonate" }))`,
  ],
  "salt.unusual": ["salt", `readNoodleData({ ...noodle, salt: "5 %" })`],
  "water.unusual": ["water", `readNoodleData({ ...noodle, water: { added: "52 %" } })`],
  "water.reference-moisture": [
    "water.onFlourMoisture",
    `readNoodleData({ ...noodle, water: { added: "36 %", onFlourMoisture: "14 %" } })`,
  ],
  "blend.protein-missing": [
    "flours[0]",
    `readNoodleData({ ...noodle, flours: [{ ...unknownFlour, figures: house }] })`,
  ],
  "blend.ash-missing": ["flours[0]", `readNoodleData({ ...noodle, flours: [{ ...unknownFlour, figures: house }] })`],
  "blend.basis-assumed": ["flours", `readNoodleData(flourWith("mill flour", { moisture: "13 %", protein: "12 %" }))`],
  "blend.factor-unknown": ["flours[0]", `readNoodleData(withFlours({ "usda 20623": "100 %" }))`],
  "rework.same-dough": ["rework", `readNoodleData({ ...noodle, rework: { amount: "5 %" } })`],
  "rework.rule": ["rework", `readNoodleData({ ...noodle, rework: { amount: "5 %" } })`],

  // notes: the batch and its cost
  "weighing.nothing": [
    "scales",
    `about({ ...noodle, batch: { flour: "200 g" }, scales: [{ division: "5 g" }] }, askBatch)`,
  ],
  "weighing.lots": ["flours[0]", `about({ ...ofTenKilos, scales: [{ division: "1 g", capacity: "5 kg" }] }, askBatch)`],
  "scales.capacity-unknown": [
    "scales",
    `about({ ...ofTenKilos, scales: [{ division: "1 g" }, { division: "0.1 g" }] }, askBatch)`,
  ],
  "scales.assumed": ["scales", `about(ofTenKilos, askBatch)`],
  "scales.metric": [
    "",
    `askBatch(readNoodle({ ...ofTenKilos, scales: [{ division: "1 g" }] }, { units: "us" }).value).report().notes`,
  ],
  "batch.usual-cook-gain": ["batch", `about({ ...noodle, batch: { bowls: 3, cookedWeight: "230 g" } }, askBatch)`],
  "prices.not-used": [
    'prices."bred flour"',
    `about({ ...priced, prices: { ...priced.prices, "bred flour": "1 EUR/kg" } }, askCost)`,
  ],
  "stock.not-used": ["stock.rye", `about({ ...priced, stock: { rye: "1 kg" } }, askCost)`],
  "stock.not-stated": ["stock", `about({ ...priced, stock: { "bread flour": "9 kg" } }, askCost)`],
  "cost.rework-free": ["rework", `about({ ...priced, rework: { amount: "5 %" } }, askCost)`],
  "cost.not-priced": ["prices", `about(priced, askCost)`],
  "cost.water-free": ["prices", `about(priced, askCost)`],
  "cost.ingredients-only": ["", `about(priced, askCost)`],
  "mend.mixer": ["mixer", `about({ ...ofTenKilos, mixer: { largest: "10 kg" } }, mending("tap water", "4 kg"))`],
  "mend.mixer-holds": ["mixer", `about({ ...ofTenKilos, mixer: { largest: "20 kg" } }, mending("tap water", "4 kg"))`],
  "mend.no-nearer": [
    "noMore",
    `about(ofTenKilos, (one) => askMend(one, { weighed: [{ name: "table salt", amount: "400 g" }], noMore: ["tap water"] }))`,
  ],
  "mend.further": [
    "noMore",
    `about(ofTenKilos, (one) => askMend(one, { weighed: [{ name: "tap water", amount: "4 kg" }], noMore: ["table salt"] }))`,
  ],
  "mend.off": [
    "noMore",
    `about(ofTenKilos, (one) => askMend(one, { weighed: [{ name: "tap water", amount: "3 kg" }], noMore: ["bread flour"] }))`,
  ],
  "mend.coarse": ["scales", `about(ofFourHundred, mending("sodium carbonate", "4 g"))`],
  "mend.dry": ["scales", `about(ofFourHundred, mending("sodium carbonate", "4 g"))`],
  "mend.fewer-loads": [
    "batch",
    `about({ ...ofTenKilos, salt: "2 %", mixer: { largest: "5 kg" } }, mending("tap water", "2700 g"))`,
  ],
  "mend.rework": ["weighed", `about({ ...ofTenKilos, rework: { amount: "500 g" } }, mending("rework", "600 g"))`],
  "mend.fine": ["weighed", `about(ofTenKilos, mending("tap water", "1 kg"))`],
  "nutrition.not-stated": ["", `about({ ...noodle, flours: [unknownFlour] }, askNutrition)`],
  "nutrition.factor": [
    "",
    `about({ ...noodle, ingredients: [{ name: "vital wheat gluten", amount: "1 %" }] }, askNutrition)`,
  ],
  "nutrition.inert": [
    "",
    `about(withAlkali("harbour powder", "1 %", { figures: { composition: { Na2CO3: "60 %", inert: "40 %" } } }), askNutrition)`,
  ],
  "nutrition.dusting": ["", `about({ ...noodle, dusting: { name: "potato starch", amount: "2 %" } }, askNutrition)`],
  "nutrition.tap-water": ["", `about(noodle, askNutrition)`],
  "nutrition.boiling-salts": ["", `about(noodle, askNutrition)`],
  "nutrition.boiling-solids": ["", `about(noodle, askNutrition)`],
  "nutrition.no-serving": ["", `about(noodle, (one) => askNutrition(one, { rules: "US" }))`],
  "nutrition.more-lines": ["", `about(noodle, (one) => askNutrition(one, { rules: "JP" }))`],
  "nutrition.not-on-flour": ["", `about(noodle, askNutrition)`],

  // notes: blends
  "blend.whole-steps": [
    "step",
    `searchBlend({ ...question, targets: { protein: { least: "20", basis: asIs } } }).value.notes`,
  ],
  "blend.fewer-alternatives": ["alternatives", `searchBlend({ ...question, alternatives: 20 })`],
  "blend.not-proven": ["", `searchBlend(manyFlours)`],
  "blend.step-coarse": [
    "step",
    `searchBlend({ ...question, step: "5", targets: { protein: { value: "10.1", within: "0.05", basis: asIs } } })`,
  ],
  "blend.bags": [
    'shelf."cake flour".bag',
    `about({ ...ofTenKilos, wanted: { protein: "10.5 to 11.5 %" }, shelf: { "cake flour": { bag: "1 kg" } } }, askBlend)`,
  ],
  "blend.store-short": [
    "flours[0]",
    `about({ ...ofTenKilos, wanted: { protein: "10.5 to 11.5 %" }, stock: { "bread flour": "5 kg" }, shelf: { "cake flour": {} } }, askBlend)`,
  ],
  "blend.store-open": [
    "batch",
    `about({ ...noodle, wanted: { protein: "10.5 to 11.5 %" }, stock: { "cake flour": "5 kg" }, shelf: { "cake flour": {} } }, askBlend)`,
  ],
  "blend.style": ["style", `about({ ...noodle, style: "yellow alkaline", shelf: { "cake flour": {} } }, askBlend)`],
  "blend.likely": [
    "",
    `about({ ...noodle, flours: [surveyed], wanted: { protein: "at least 11.8 %" }, shelf: { "cake flour": {} } }, askBlend).report().notes`,
  ],
  "blend.water-apart": [
    "water",
    `waterAfter([{ ...soft, share: "100", ownWater: { percent: "40", plusMinus: "0.5" } }], [{ ...soft, share: "100", ownWater: { percent: "40", plusMinus: "0.5" } }], "35").notes`,
  ],
  "blend.water-not-known": [
    "water",
    `waterAfter([{ ...soft, share: "100" }], [{ ...strong, share: "100" }], "35").notes`,
  ],
  "blend.water-of-new": [
    "water",
    `waterAfter([{ ...soft, share: "100" }], [{ ...strong, share: "100", ownWater: { percent: "38", plusMinus: "0.5" } }], "35").notes`,
  ],
  "blend.absorption-unused": [
    "water",
    `waterAfter([{ ...soft, share: "100" }], [{ ...soft, share: "40" }, { ...strong, share: "60", ownWater: { percent: "38", plusMinus: "0.5" } }], "35").notes`,
  ],
  "style.outside": ["style", `styleNotes("hokkien", { salt: "3" })`],
  "substitute.only-flour": [
    "lot",
    `about({ ...noodle, lot: { of: "bread flour", figures: { protein: "10 %" } } }, (one) => askLot(one))`,
  ],
  "substitute.stated-kept": [
    "lot.figures",
    `about({ ...noodle, flours: [{ name: "bread flour", amount: "100 %", figures: { protein: "14 %", proteinBasis: "dry" } }], lot: { of: "bread flour", figures: { protein: "13.8 %" } } }, (one) => askLot(one))`,
  ],
  "substitute.absorption-kept": [
    "lot.figures",
    `about({ ...noodle, flours: [{ name: "bread flour", amount: "100 %", figures: { absorption: "36 %" } }], lot: { of: "bread flour", figures: { moisture: "14.5 %" } } }, (one) => askLot(one))`,
  ],
  "substitute.moved": [
    "missing",
    `about({ ...noodle, flours: [{ name: "bread flour", amount: "60 %" }, { name: "cake flour", amount: "30 %" }, { name: "rye flour", amount: "10 %" }] }, (one) => askFlourReplacement(one, { missing: "rye flour" }))`,
  ],

  // notes: what is found and wanted
  "settle.found": ["wanted", `readNoodle(wished)`],
  "settle.preference": ["wanted", `readNoodle(wished)`],
  "settle.boiled": [
    "wanted.saltInBowl",
    `readNoodle({ ...noodle, salt: "find", wanted: { saltInBowl: "1 g" }, batch: { bowls: 10, rawWeight: "130 g" } })`,
  ],
  "settle.own-water": [
    "water",
    `readNoodle({ ...noodle, flours: [{ ...unknownFlour, figures: { moisture: "14 %", protein: "12 %", absorption: "38 %" } }], water: { added: "find" } })`,
  ],
  "wanted.missed": ["wanted", `about({ ...ofTenKilos, wanted: { protein: "at least 15 %" } }, askBatch)`],
  "wanted.no-blend": [
    "wanted",
    `about({ ...noodle, flours: [{ ...unknownFlour, figures: house }], wanted: { protein: "11 %" } }, askSettle)`,
  ],
  "wanted.no-bowl": ["wanted", `about({ ...noodle, wanted: { saltInBowl: "1 g" } }, askSettle)`],
  "wanted.sodium": [
    "wanted",
    `about({ ...noodle, flours: [unknownFlour], wanted: { sodium: "900 mg" }, batch: { bowls: 10, rawWeight: "130 g" } }, askSettle)`,
  ],
  "wanted.cost": ["wanted", `about({ ...ofTenKilos, wanted: { bowlPrice: "1 EUR" } }, askSettle)`],
  "wanted.prices": [
    "wanted",
    `about({ ...priced, batch: { bowls: 10, rawWeight: "130 g" }, wanted: { bowlPrice: "1 EUR" } }, askSettle)`,
  ],

  // notes: rolling and cutting
  "passes.uneven-speeds": [
    "rollSpeed",
    `passSchedule({ gaps: { kind: "list", gaps: ["3", "2"] }, firstThickness: "4", finalThickness: "2", sheet: { mass: "5000", density: givenDensity("1.25"), width: "250" }, rollSpeed: ["5", "6"], stands: 2 })`,
  ],
  "passes.above-limit": ["gaps.gaps[1]", `passSchedule(from({ kind: "list", gaps: ["4", "2"] }, "5", "2"))`],
  "sheet.portions-short": [
    "losses.sheeting",
    `about({ ...rolling, batch: { bowls: 20, rawWeight: "100 g" }, sheet: { ...sheet.sheet, edgeTrim: "20 mm" } }, askSheet)`,
  ],
  "sheet.much-left-over": [
    "sheet.strandLength",
    `about({ ...rolling, batch: { dough: "461 g" }, machines: { roller: { ...mine, width: "145 mm", longestSheet: "600 mm" } }, sheet: { ...rolling.sheet, thickness: "1.3 mm", start: "2.9 mm", density: "1.24 g/mL", portion: "130 g", strandLength: "300 mm" } }, askSheet)`,
  ],
  "sheet.strand-length": ["sheet", `about(rolling, askSheet)`],
  "sheet.spring-back-unmeasured": ["sheet", `about(rolling, askSheet)`],
  "sheet.layers": [
    "sheet.compounding",
    `about({ ...rolling, sheet: { ...rolling.sheet, start: undefined, compounding: { gap: "5 mm", folds: 1 } } }, askSheet)`,
  ],
  "sheet.no-cutter": ["sheet", `about({ ...rolling, sheet: { ...rolling.sheet, cutter: undefined } }, askSheet).notes`],
  "sheet.cooked-range": ["", `about({ ...sheet, batch: { bowls: 20, rawWeight: "100 g" } }, askSheet).report().notes`],
  "sheet.denser-than-solid": [
    "sheet.density",
    `about({ ...rolling, sheet: { ...rolling.sheet, density: "1.45 g/mL" } }, askSheet)`,
  ],
  "sheet.thinner-than-gap": [
    "sheet.springBack",
    `about({ ...rolling, sheet: { ...rolling.sheet, springBack: 0.9 } }, askSheet)`,
  ],
  "dough.density-estimate": ["", `about(rolling, askSheet)`],
  "food.not-stated": ["flours[0]", `about({ ...rolling, flours: [{ ...unknownFlour, figures: house }] }, askSheet)`],

  // notes: the pot, the water and the day
  "toasted.gluten": ["", `measuredToasting({ before: "1 kg", after: "940 g", moisture: "14 %" })`],
  "temperature.textbook-hydration": [
    "heat",
    `waterTemperature({ ...dough, wanted: "25", heat: { kind: "estimated" } })`,
  ],
  "temperature.no-mixer-work": ["heat", `waterTemperature({ ...dough, wanted: "25", heat: { kind: "estimated" } })`],
  "temperature.friction-alone": [
    "temperature.friction",
    `about({ ...warm, temperature: { ...warm.temperature, mixingHeat: undefined, friction: "8 K" } }, askWater)`,
  ],
  "temperature.hot-water": ["", `waterTemperature({ ...dough, wanted: "38", heat: measuredHeat("5") })`],
  "temperature.no-heat-of-solution": [
    "alkali[0]",
    `about({ ...warm, alkali: [{ name: "potassium hydroxide", amount: "0.4 %" }] }, askWater)`,
  ],
  "temperature.far-apart": [
    "temperature",
    `about({ ...warm, temperature: { ...warm.temperature, mixingHeat: "30 kJ/kg", friction: "2 K" } }, askWater)`,
  ],
  "temperature.ice-melts": [
    "temperature",
    `about({ ...warm, temperature: { ...warm.temperature, flour: "27 °C", tap: "24 °C" } }, askWater)`,
  ],
  "temperature.much-ice": [
    "temperature",
    `about({ ...warm, temperature: { ...warm.temperature, dough: "17 °C", flour: "36 °C", tap: "24 °C", mixingHeat: "42 kJ/kg" } }, askWater)`,
  ],
  "temperature.rule-without-masses": ["", `threeTemperatureWater({ dough: "25", flour: "21", room: "22" }, "4")`],
  "measured.cold-mix": [
    "",
    `measuredMixing({ flour: "10 kg", flourAt: "25 °C", water: "3.5 kg", waterAt: "25 °C", doughAt: "15 °C" })`,
  ],
  "cook.lighter": ["cooked", `measuredCooking({ raw: "500 g", cooked: "480 g" })`],
  "pot.estimate": ["", `about({ ...day, plan: { ...day.plan, pot: { basket: "1.1 kg", power: "9 kW" } } }, askDay)`],
  "plan.rolling-too-short": [
    "plan.roll",
    `about({ ...rolling, machines: { roller: { ...mine, speed: "1 m/min" } }, plan: { serve: "12:15", mix: "15 min", roll: "1 min", boil: "10 min" } }, askDay)`,
  ],
  "plan.not-proved": ["stages", `timePlan(crowded)`],
  "plan.no-dusting": ["", `about(day, askDay).report().notes`],
  "caution.rolls": ["", `sheetCautions(["rolls"])`],
  "caution.cutter": ["", `sheetCautions(["cutter"])`],
  "caution.dust": ["", `sheetCautions(["dust"])`],
  "caution.pot": ["", `sheetCautions(["pot"])`],
  "caution.standing-dough": ["", `sheetCautions(["standing-dough"])`],
  "caution.packed": ["", `sheetCautions(["packed"])`],

  // notes: cards, comparisons and words
  "card.no-answer": [
    "temperature.tap",
    `about({ ...ofTenKilos, temperature: { dough: "5 °C", flour: "21 °C", room: "22 °C" } }, (one) => askCard(one, { date: "2026-11-25" }).value.missing)`,
  ],
  "card.metric": [
    "scales",
    `askCard(readNoodle({ ...ofTenKilos, scales: [{ division: "1 g" }] }, { units: "us" }).value, { date: "2026-11-25" }).value.remarks`,
  ],
  "card.long": [
    "",
    `[longCard(about({ ...ofTenKilos, batch: { dough: "400 kg" }, mixer: { largest: "5 kg" } }, (one) => askCard(one, { date: "2026-11-25" })).value.card, "a4")]`,
  ],
  "compare.no-batch": [
    "batch",
    `about(noodle, (one) => askCompare([{ name: "one", noodle: one }, { name: "other", noodle: one }]))`,
  ],
  "words.unexplained": ["", `listWords("meq pot")`],
};
