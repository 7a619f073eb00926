import { printable } from "../figure/printable.ts";
import { problem } from "../figure/problem.ts";
import type { Block, Report } from "../report/schema.ts";
import type { Rendering } from "./rendering.ts";

type PictureBlock = Extract<Block, { readonly kind: "picture" }>;

/**
 * Prints one picture of a report as SVG: the named one, or the first.
 *
 * @example renderSvg(askFormula(example("school-noodle")).report()).text.slice(0, 4) // => "<svg"
 */
export function renderSvg(report: Report, name: string | undefined): Rendering {
  const pictures = report.sections.flatMap(({ blocks }) =>
    blocks.filter((block): block is PictureBlock => block.kind === "picture"),
  );
  const picture = name === undefined ? pictures[0] : pictures.find(({ id }) => id === name);
  if (picture !== undefined) return { ok: true, text: `${printable(picture.svg)}\n` };
  const facts = { names: pictures.map(({ id }) => id), ...(name !== undefined && { name }) };
  return { ok: false, problem: problem("picture.unknown", [], facts) };
}
