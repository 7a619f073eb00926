import type { Graph } from "@noodlewright/core/figure";
import { type Data, isData, type Typed } from "./kit.ts";

type Path = readonly (string | number)[];

const grams: Readonly<Record<string, number>> = { g: 1, oz: 28.349523125, lb: 453.59237 };

/** The spec that says what was typed into its workbook; every input has its place in a spec. */
export function changedSpec(data: Data, graph: Graph, typed: ReadonlyMap<string, Typed>): Data {
  const has = (id: string): boolean => typed.has(id) || graph[id] !== undefined;
  const now = (id: string): Typed =>
    typed.get(id) ?? { value: Number(graph[id]?.value ?? 0), unit: graph[id]?.unit ?? "" };
  const said = (id: string): string | number => {
    const { value, unit } = now(id);
    const short = unit.replace(/ of (?:flour|dough|.*mixer.*)$|\/100 g flour$/u, "");
    return short === "" ? value : `${value} ${short}`;
  };
  const figuresOfFlour = (id: string): Data => {
    const factor = `${id}.nitrogen-factor`;
    const main = (what: "protein" | "ash"): Data => {
      const asIs = `${id}.${what}`;
      const [stated, basis] = [`${asIs}-stated`, `${asIs}-basis`];
      const told = [asIs, stated, basis, ...(what === "protein" ? [factor] : [])].some((one) => typed.has(one));
      if (!told) return {};
      if (has(stated)) return { [what]: said(stated), [`${what}Basis`]: `${said(basis)} mb` };
      // What a table tells holds at the moisture of the table.
      const own = graph[asIs]?.sources.some(({ standing }) => standing === "user");
      return { [what]: said(asIs), [`${what}Basis`]: own ? "as is" : `${graph[`${id}.moisture`]?.value} % mb` };
    };
    const protein = main("protein");
    const kept = has(factor) && "protein" in protein ? { nitrogenFactor: now(factor).value } : {};
    return {
      ...(typed.has(`${id}.moisture`) && { moisture: said(`${id}.moisture`) }),
      ...protein,
      ...main("ash"),
      ...kept,
    };
  };
  const compositionOf = (id: string): Data => {
    const salts = Object.keys(graph).filter((one) => one.startsWith(`${id}.`) && /\.[A-Z]\w+$/u.test(one));
    const parts = salts.filter((one) => now(one).value !== 0).map((one) => [one.slice(id.length + 1), said(one)]);
    return { ...Object.fromEntries(parts), water: said(`${id}.moisture`), inert: "rest" };
  };
  const priceOf = (line: string): string => {
    const [price, pack] = [now(`cost.${line}.price`), `shopping.${line}.pack`];
    const currency = price.unit.replace("/kg", "");
    if (!has(pack)) return `${price.value} ${price.unit}`;
    const kilograms = (now(pack).value * (grams[now(pack).unit] ?? 1)) / 1000;
    return `${Number((price.value * kilograms).toPrecision(14))} ${currency} per ${said(pack)}`;
  };
  const lists: Readonly<Record<string, string>> = { flour: "flours", alkali: "alkali", ingredient: "ingredients" };
  const placeOf = (id: string): readonly [Path, unknown] => {
    const [room = "", ...rest] = id.split(".");
    const [what = "", last = ""] = rest;
    const plain: Readonly<Record<string, Path>> = {
      "batch.bowls": ["batch", "bowls"],
      "bowl.raw": ["batch", "rawWeight"],
      "bowl.cooked": ["batch", "cookedWeight"],
      "bowl.cook-gain": ["batch", "cookGain"],
      "batch.dough": ["batch", "dough"],
      "batch.flour-stated": ["batch", "flour"],
      "batch.have": ["batch", "have", "amount"],
      "mixer.largest": ["mixer", "largest"],
      "mixer.smallest": ["mixer", "smallest"],
      "rework.stated": ["rework", "amount"],
      "flour.reference-moisture": ["water", "onFlourMoisture"],
    };
    if (plain[id] !== undefined) return [plain[id], said(id)];
    if (room === "loss") return [["losses", what], said(id)];
    if (room === "water") return [["water", what.split("-")[0] ?? ""], said(id)];
    if (room === "salt") return [["salt"], said(id)];
    if (room === "dusting") return [["dusting", "amount"], said(id)];
    if (room === "cost" || room === "shopping") {
      const line = rest.slice(0, -1).join(".");
      const name = graph[`cost.${line}.price`]?.label.replace("price of ", "") ?? "";
      const onHand = id.endsWith(".on-hand");
      return [[onHand ? "stock" : "prices", name], onHand ? said(id) : priceOf(line)];
    }
    const index = Number(what) - 1;
    if (room === "scale") {
      if (data["scales"] === undefined) return [["scales"], [{ division: said(id) }]];
      const ounces = JSON.stringify(data["scales"]).includes(" oz");
      return [["scales", index, last], ounces ? said(id) : `${now(id).value * (grams[now(id).unit] ?? 1)} g`];
    }
    const [line, place]: [string, Path] = [`${room}.${what}`, [lists[room] ?? "", index]];
    if (["parts", "written", "stated"].includes(last)) return [[...place, "amount"], said(id)];
    if (room === "flour") return [[...place, "figures"], figuresOfFlour(line)];
    if (room === "alkali") return [[...place, "figures", "composition"], compositionOf(line)];
    return [[...place, "figures", "moisture"], said(id)];
  };
  return [...typed.keys()].map(placeOf).reduce<Data>((changed, [path, value]) => {
    const after = put(changed, path, value);
    return isData(after) ? after : changed;
  }, data);
}

/** Puts a value where a path leads; what stands beside it stays. */
function put(data: unknown, path: Path, value: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined && isData(data) && isData(value)) {
    const { label, ...others } = data;
    return { ...others, ...(label !== undefined && !("protein" in value) && { label }), ...value };
  }
  if (key === undefined) return value;
  if (typeof key === "number") {
    const list: readonly unknown[] = Array.isArray(data) ? data : [];
    return list.map((item, index) => (index === key ? put(item, rest, value) : item));
  }
  const section = isData(data) ? data : {};
  return { ...section, [key]: put(section[key], rest, value) };
}
