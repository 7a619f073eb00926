import type { Problem } from "@noodlewright/core";
import { parseQuantity } from "@noodlewright/core/figure";
import { readSpec } from "@noodlewright/core/spec";

/** What a kitchen says beside its formula, as written; undefined where nobody said it. */
export interface KitchenWords {
  readonly bowls?: string | undefined;
  readonly rawWeight?: string | undefined;
  /** The smallest step of each scale. */
  readonly scales?: readonly string[];
  /** Width, gaps and cutter in one line. */
  readonly rolls?: string | undefined;
}

/** Turns what a kitchen says into sections of a spec, and what it does not say into lines to fill in. */
export function kitchenSections({ bowls, rawWeight, scales = [], rolls }: KitchenWords) {
  const machine = rolls === undefined ? undefined : machineOf(rolls);
  const batch = {
    ...(bowls !== undefined && { bowls: /^-?\d+$/u.test(bowls) ? Number(bowls) : bowls }),
    ...(rawWeight !== undefined && { rawWeight: withPoints(rawWeight) }),
  };
  const whole = bowls !== undefined && rawWeight !== undefined;
  const missing = [
    ...(whole
      ? []
      : [
          "# How much to make: noodlewright batch",
          `# batch:\n#   bowls: ${bowls ?? "40"}\n#   rawWeight: ${rawWeight ?? "130 g"}    raw noodles for a bowl`,
        ]),
    ...(scales.length > 0 ? [] : ["# The smallest step that the scale shows", "# scales:\n#   - division: 1 g"]),
  ];
  return {
    sections: {
      ...(whole && { batch }),
      ...(scales.length > 0 && { scales: scales.map(scaleOf) }),
      ...(machine && { machines: { rolls: machine } }),
    },
    toFillIn: missing.length === 0 ? "" : `\n${missing.join("\n")}\n`,
  };
}

/** Commas that can only stand before decimals as points; in `1,250 g` it may be either. */
function withPoints(text: string): string {
  return text.replaceAll(/(?<=\d),(?=\d{1,2}(?![\d,]))|(?<=\b0),(?=\d)/gu, ".");
}

/** A scale by its smallest step and what it takes, such as `0.1 g up to 500 g`. */
function scaleOf(text: string): Readonly<Record<string, string>> {
  const [division = "", capacity] = withPoints(text).split(/,? up to /iu);
  return { division, ...(capacity !== undefined && { capacity }) };
}

const length = String.raw`\d+(?:[.,]\d+)? ?(?:mm|cm|in)`;

/** Reads rolls and a cutter from one line, such as `145 mm wide, 1 to 6 mm, cutter 2 mm`; undefined without width or cutter. */
function machineOf(said: string): Readonly<Record<string, unknown>> | undefined {
  const text = withoutFractions(said);
  const cutter = new RegExp(`cutters? ?(?:number|no\\.?)? ?(${length}|\\d+)`, "iu").exec(text);
  const rest = text.replace(cutter?.[0] ?? "", "");
  const gap = new RegExp(`(\\d+(?:[.,]\\d+)? ?(?:mm|in)?) ?(?:to|–|-) ?(${length})`, "iu").exec(rest);
  const width = new RegExp(length, "iu").exec(rest.replace(gap?.[0] ?? "", ""))?.[0];
  const size = cutter?.[1];
  if (width === undefined || size === undefined) return undefined;
  const [least, greatest] = [gap?.[1], gap?.[2]];
  const unit = /[a-z]+$/iu.exec(greatest ?? "")?.[0] ?? "mm";
  return {
    width: point(width),
    ...(least !== undefined &&
      greatest !== undefined && {
        gap: { least: point(/[a-z]$/iu.test(least) ? least : `${least.trim()} ${unit}`), greatest: point(greatest) },
      }),
    cutters: [{ size: /^\d+$/u.test(size) ? Number(size) : point(size) }],
  };
}

/** Fractions as decimals: `1 1/4 in` and `1¼ in` as `1.25 in`. */
function withoutFractions(text: string): string {
  return text
    .replaceAll(/[¼-¾⅐-⅞]/gu, (sign) => ` ${sign.normalize("NFKC")}`)
    .replaceAll(/(?:(\d+) +)?(\d+)[/⁄]([1-9]\d*)/gu, (_, whole = "0", over, under) =>
      String(Number((Number(whole) + Number(over) / Number(under)).toPrecision(6))),
    );
}

function point(text: string): string {
  const plain = text.replace(",", ".").trim();
  const reading = parseQuantity(plain, ["length"]);
  return reading.ok ? plain.replace(/(?<=\d)(?=[a-z])/iu, " ") : plain;
}

/** What is wrong with what a kitchen said: the key of the spec, and in words. */
export function kitchenProblems(
  words: KitchenWords,
): readonly { readonly key: keyof KitchenWords; readonly problem: Problem }[] {
  const { sections } = kitchenSections(words);
  const formula = { name: "noodles", flours: [{ name: "bread flour", amount: "100 %" }], water: { added: "36 %" } };
  const outcome = readSpec({ ...formula, ...sections });
  const keys: Readonly<Record<string, keyof KitchenWords>> = { scales: "scales", machines: "rolls" };
  return outcome.ok
    ? []
    : outcome.problems.map((problem) => ({
        key: problem.path[1] === "rawWeight" ? "rawWeight" : (keys[String(problem.path[0])] ?? "bowls"),
        problem,
      }));
}
