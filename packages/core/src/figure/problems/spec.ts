import { input, type Lists, type Texts } from "./entry.ts";

export const spec = {
  "path.unreadable": input(({ said }: Texts<"said">) => ({
    found: `"${said}"`,
    expected: "a key of the spec, = and its value",
    advice: "write it like 'water.added=38 %', 'flours[0].amount=60 %' or 'flours.bread flour.amount=60 %'",
  })),
  "path.no-entry": input(({ entry, names, nearest: [nearest] }: Texts<"entry"> & Lists<"names" | "nearest">) => ({
    found: `"${entry}"`,
    expected: names.length === 0 ? "a list with entries" : `an entry of the list: ${names.join(", ")}`,
    advice: nearest === undefined ? "name an entry, or count them from [0]" : `did you mean "${nearest}"?`,
  })),
  "path.several": input(({ name }: Texts<"name">) => ({
    found: `"${name}", which the list has more than once`,
    expected: "one entry",
    advice: "say which by its number, counted from [0]",
  })),
  "path.deeper": input(() => ({
    found: "a key within a single value",
    expected: "the key of the value itself",
    advice: "leave out the last key",
  })),
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
