import type { Graph } from "@noodlewright/core/figure";
import { type Data, isData } from "./kit.ts";

/** A change of one input: its figure, its new value there, and the spec that says the same. */
export interface Change {
  readonly id: string;
  readonly value: number;
  readonly apply: (data: Data) => Data;
}

type Path = readonly (string | number)[];

function put(data: unknown, path: Path, value: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  if (typeof key === "number") {
    const list: readonly unknown[] = Array.isArray(data) ? data : [];
    return list.map((item, index) => (index === key ? put(item, rest, value) : item));
  }
  const section = isData(data) ? data : {};
  return { ...section, [key]: put(section[key], rest, value) };
}

function at(data: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (part, key) =>
      typeof key === "number" ? (Array.isArray(part) ? part[key] : undefined) : isData(part) ? part[key] : undefined,
    data,
  );
}

/** Figures of a graph that a spec states, with where it states them and how. */
export function changeable(
  data: Data,
  graph: Graph,
): readonly { readonly id: string; readonly apply: (value: number) => (data: Data) => Data }[] {
  return Object.keys(graph).flatMap((id) => {
    const write = writerOf(id, data, graph);
    return write === undefined || graph[id]?.working.kind !== "given"
      ? []
      : [
          {
            id,
            apply: (value: number) => (before: Data) =>
              write(value).reduce<Data>((changed, [path, text]) => {
                const after = put(changed, path, text);
                return isData(after) ? after : changed;
              }, before),
          },
        ];
  });
}

type Writer = (value: number) => readonly (readonly [Path, unknown])[];

/** How a spec says the value of a figure; undefined where it does not. */
function writerOf(id: string, data: Data, graph: Graph): Writer | undefined {
  const one =
    (path: Path, unit: string): Writer =>
    (value) => [[path, unit === "" ? value : `${value} ${unit}`]];
  const fixed: Readonly<Record<string, Writer>> = {
    "batch.bowls-stated": one(["batch", "bowls"], ""),
    "bowl.raw": one(["batch", "rawWeight"], "g"),
    "bowl.cooked": one(["batch", "cookedWeight"], "g"),
    "bowl.cook-gain": one(["batch", "cookGain"], ""),
    "batch.dough": one(["batch", "dough"], "g"),
    "batch.have": one(["batch", "have", "amount"], "g"),
    "mixer.largest": one(["mixer", "largest"], "g"),
    "loss.mixing": one(["losses", "mixing"], "%"),
    "loss.sheeting": one(["losses", "sheeting"], "%"),
    "loss.cutting": one(["losses", "cutting"], "%"),
    "water.added-stated": one(["water", "added"], "%"),
    "water.added-written": one(["water", "added"], String(at(data, ["water", "added"])).includes("%") ? "%" : "g"),
    "water.tap-written": one(["water", "tap"], "g"),
    "flour.reference-moisture": one(["water", "onFlourMoisture"], "%"),
    "salt.parts": one(["salt"], "%"),
    "salt.stated": one(["salt"], String(at(data, ["salt"])).includes("%") ? "%" : "g"),
    "dusting.parts": one(["dusting", "amount"], "%"),
  };
  if (fixed[id] !== undefined) return fixed[id];
  const [, list = "", number = "", what = ""] = /^(flour|alkali|ingredient|scale)\.(\d+)\.([\w-]+)$/u.exec(id) ?? [];
  if (list === "") return undefined;
  const index = Number(number) - 1;
  const key = { flour: "flours", alkali: "alkali", ingredient: "ingredients", scale: "scales" }[list] ?? "";
  const place: Path = [key, index];
  if (at(data, place) === undefined || at(data, [...place, "replaceWith"]) !== undefined) return undefined;
  const factor = graph[`flour.${number}.nitrogen-factor`]?.value;
  const standing: readonly (readonly [Path, unknown])[] =
    factor === undefined ? [] : [[[...place, "figures", "nitrogenFactor"], Number(factor)]];
  const written = at(data, [...place, "amount"]);
  const amount = typeof written === "string" ? written : "";
  const mixed = ["Na2CO3", "K2CO3"].every((salt) => Number(graph[`${list}.${number}.${salt}`]?.value ?? 0) > 0);
  switch (what) {
    case "division":
    case "capacity":
      return one([...place, what], "g");
    case "written":
      return one([...place, "amount"], "g");
    case "parts":
    case "stated":
      return one([...place, "amount"], amount.includes("%") ? "%" : "g");
    case "Na2CO3": {
      if (list !== "alkali" || !mixed) return undefined;
      // Of a mixture, what is left beside the salts is inert; the other salt and the water stay as they are.
      const salts = ["Na2CO3", "K2CO3"].map(
        (salt) => [salt, graph[`${list}.${number}.${salt}`]?.value ?? "0"] as const,
      );
      return (value) => [
        [
          [...place, "figures", "composition"],
          Object.fromEntries([
            ...salts.map(([salt, share]) => [salt, `${salt === what ? value : share} %`] as const),
            ["water", `${graph[`${list}.${number}.moisture`]?.value} %`] as const,
            ["inert", "rest"] as const,
          ]),
        ],
      ];
    }
    case "moisture":
      return list === "flour" ? one([...place, "figures", "moisture"], "%") : undefined;
    case "protein":
    case "ash":
      return (value) => [
        ...standing,
        [[...place, "figures", what], `${value} %`],
        [[...place, "figures", `${what}Basis`], `${graph[`flour.${number}.moisture`]?.value} % mb`],
      ];
    case "protein-stated":
    case "ash-stated": {
      const name = what.replace("-stated", "");
      return (value) => [
        ...standing,
        [[...place, "figures", name], `${value} %`],
        [[...place, "figures", `${name}Basis`], "14 % mb"],
      ];
    }
    default:
      return undefined;
  }
}
