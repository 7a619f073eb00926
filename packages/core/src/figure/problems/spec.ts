import { input } from "./entry.ts";

export const spec = {
  "spec.too-deep": input(() => ({
    found: "lists within lists",
    expected: "at most 20 levels",
    advice: "write a spec by its schema",
  })),
  // HAND spec/read-spec.ts:91 code code not literal | found: CallExpression say(input) | expected: identifier expected | advice: identifier advice
  // HAND spec/read-spec.ts:97 "spec.choice" found: CallExpression say(input) | advice: ConditionalExpression nearest === undefined ? "take one of these" : `did you mean "${nearest}"?`
  // HAND spec/read-spec.ts:101 "spec.size" found: CallExpression say(input) | expected: CallExpression sizeText(issue)
  // HAND spec/read-spec.ts:112 "spec.missing" expected: const used twice words | advice: CallExpression exampleAdvice(path, meaning)
  // HAND spec/read-spec.ts:114 "spec.type" found: CallExpression say(input) | expected: const used twice words | advice: CallExpression exampleAdvice(path, meaning)
  // HAND spec/read-spec.ts:143 "spec.unknown-key" hand code
  // HAND spec/read-spec.ts:153 "spec.unknown-key" hand code | advice: const used twice advice
};
