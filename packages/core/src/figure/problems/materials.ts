import { input, type Lists, noAnswer, type Texts } from "./entry.ts";

export const materials = {
  // HAND materials/composition-parts.ts:28 "materials.composition" found: complex rests > 1 ? ", and more than one rest" : ""
  "materials.composition-part": input(({ key, parts }: Texts<"key"> & Lists<"parts">) => ({
    found: `"${key}"`,
    expected: "the formula of a salt, water or inert",
    advice: `write one of: ${parts.join(", ")}; count what takes no part as inert`,
  })),
  // HAND materials/composition-parts.ts:91 "quantity.unreadable" hand code | found: CallExpression JSON.stringify(written) | expected: word expected | advice: identifier advice
  "label.negative": input(({ amount }: Texts<"amount">) => ({
    found: amount,
    expected: "zero or more",
    advice: "check the value",
  })),
  // HAND materials/declare.ts:50 "label.no-rule" advice: ConditionalExpression nutrient === "salt" ? "this book declares sodium" : "choose another nutrient or another rule book"
  "label.unreadable": input(({ printed }: Texts<"printed">) => ({
    found: `"${printed}"`,
    expected: 'a number as printed, such as "4" or "<1"',
    advice: "copy it from the label",
  })),
  // HAND materials/declare.ts:135 "label.not-by-the-book" expected: complex less ? bands .map((band) => band.lessThan) .filter(Boolean) .join(", ") : near
  "materials.protein-twice": input(() => ({
    found: "a protein and a label",
    expected: "the protein of a certificate, or that of a label",
    advice: "keep the certificate's",
  })),
  "label.disagree": noAnswer(({ low, high }: Texts<"low" | "high">) => ({
    found: `at least ${low} % by one label and at most ${high} % by another`,
    expected: "labels of one and the same flour",
    advice: "check that they are of one flour; allow for rounded servings or leave the nitrogen factors open",
  })),
  "label.none": input(() => ({
    found: "no label",
    expected: "one label or more",
    advice: "copy the protein line of the label",
  })),
  // HAND materials/label.ts:107 "label.moisture-range" found: ConditionalExpression moisture === undefined ? `a basis of ${basis} %` : `${moisture.low} to ${moisture.high} %`
  "label.factor": input(({ factor }: Texts<"factor">) => ({
    found: `a nitrogen factor of ${factor}`,
    expected: "a factor above zero",
    advice: "use 5.7 or 6.25",
  })),
  // HAND materials/label.ts:131 "label.serving" found: ConditionalExpression serving === undefined ? "no serving" : `a serving of ${serving} g`
  // HAND materials/own.ts:118 "materials.unknown" advice: CallExpression nameAdvice(looked, nearest, "look it up with `noodlewright materials`, or give its figures under `figures:`")
  "materials.composition-missing": input(({ name }: Texts<"name">) => ({
    found: `"${name}" without a composition`,
    expected: "what it is made of, such as { Na2CO3: 90 %, K2CO3: 10 % }",
    advice: "copy the composition from its label or certificate",
  })),
  "materials.moisture-missing": input(({ name }: Texts<"name">) => ({
    found: `"${name}" without its moisture`,
    expected: "moisture in % as weighed, such as 13.8 %",
    advice:
      "copy it from the certificate; for a flour of unknown moisture write 14 %, the basis flours are quoted on, and take the water as a first try",
  })),
  "product.no-alkali": input(({ name, productForms }: Texts<"name" | "productForms">) => ({
    found: `"${name}"`,
    expected: `a product with a salt: ${productForms}`,
    advice: "name its salts",
  })),
  "product.strength": input(({ strength, strengthForms }: Texts<"strength" | "strengthForms">) => ({
    found: `"${strength}"`,
    expected: `a strength: ${strengthForms}`,
    advice: "write it so",
  })),
  // HAND materials/product-text.ts:95 code code not literal | expected: identifier productForms | advice: CallExpression nameAdvice(name, near, "look it up with `noodlewright alkali list`, or write what is in it")
  // HAND materials/several.ts:339 "materials.several" found: complex kind === "no alkali" ? "is no noodle alkali: it is" : "may be" | advice: ElementAccessExpression { alkali: `the label or the supplier must tell ${ask}; then name that, or write the composition`, flour: `the label or the supplier must tell ${ask}; then write \`label:\`, or \`moisture:\` an
  "materials.composition-twice": input(({ said }: Lists<"said">) => ({
    found: said.join(" and "),
    expected: "one way to say what the product is made of",
    advice: "keep the one you mean",
  })),
  "materials.strength": input(({ strength, strengthForms }: Texts<"strength" | "strengthForms">) => ({
    found: `"${strength}"`,
    expected: `a strength: ${strengthForms}`,
    advice: "write it so",
  })),
  // HAND materials/stated-composition.ts:92 "materials.alkalinity" expected: identifier alkalinityForms
  // HAND materials/stated-composition.ts:113 "materials.assay" hand code | found: PropertyAccessExpression stated.of
  // HAND materials/stated-composition.ts:121 "materials.assay" hand code
  // HAND materials/stated-composition.ts:153 "materials.salts" hand code
  // HAND materials/stated-composition.ts:162 "materials.salts" hand code
  "materials.beyond-whole": input(({ name, parts, total }: Texts<"name" | "total"> & Lists<"parts">) => ({
    found: `"${name}" of ${parts.join(" + ")} = ${total} %`,
    expected: "parts of at most 100 % in all, as is",
    advice: "check the figures against the certificate, and the moisture they are quoted on",
  })),
};
