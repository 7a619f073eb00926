import { input, type Lists, type Texts } from "./entry.ts";

export const figure = {
  "figure.unknown": input(({ id }: Texts<"id">) => ({
    found: `"${id}"`,
    expected: "the id of a figure in the graph",
    advice: "take an id of the graph",
  })),
  "figure.worked-out": input(({ id, inputs }: Texts<"id"> & Lists<"inputs">) => ({
    found: `"${id}", which is worked out`,
    expected: "a figure that was given or found",
    advice: `change what it rests on: ${inputs.length === 0 ? "nothing that can change" : inputs.join(", ")}`,
  })),
};
