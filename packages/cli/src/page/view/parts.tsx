import { type Problem, type Report, told } from "@noodlewright/core";
import { type Figure, graphOf, type Path } from "@noodlewright/core/figure";
import { printable, shownGrouped, workings } from "@noodlewright/core/render";
import type { ComponentChildren } from "preact";
import { useEffect, useId, useRef } from "preact/hooks";
import { valueAt } from "../../input/put.ts";
import { problemsAt, useBench } from "../bench.ts";
import { entryAt, splitQuantity } from "../state.ts";
import { words } from "../words.ts";

/** A part of the page under a heading. */
export function Part({ heading, children }: { readonly heading: string; readonly children: ComponentChildren }) {
  const id = useId();
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{heading}</h2>
      {children}
    </section>
  );
}

/** A problem in the words of the core. */
export function ProblemText({ problem }: { readonly problem: Problem }) {
  const { found, expected, advice } = told(problem);
  return (
    <p class="problem">
      <b>{printable(found)}</b>. {words.needs(printable(expected))} {printable(advice)}
    </p>
  );
}

/** Goes from load to load; nothing where there is one. */
export function Loads({ of, turn }: { readonly of: number; readonly turn?: () => void }) {
  const { state, change } = useBench();
  const { weigh } = words;
  const load = Math.min(state.load, of);
  const go = (to: number) => {
    turn?.();
    change((now) => ({ ...now, load: to }), "load");
  };
  if (of < 2) return undefined;
  return (
    <div class="loads">
      <button type="button" aria-label={weigh.before} disabled={load <= 1} onClick={() => go(load - 1)}>
        ←
      </button>
      <b aria-live="polite">{weigh.load(load, of)}</b>
      <button type="button" aria-label={weigh.next} disabled={load >= of} onClick={() => go(load + 1)}>
        →
      </button>
    </div>
  );
}

interface FieldProps {
  readonly path: Path;
  readonly label: string;
  /** Units to choose from; `number` for a plain number. */
  readonly units: readonly string[];
  /** What the value is where the spec does not say. */
  readonly usual?: string | undefined;
  /** Values that this one takes the place of. */
  readonly instead?: readonly Path[];
  readonly whole?: boolean;
}

/** A value of the spec, as it is today. */
export function Field({ path, label, units, usual = "", instead = [], whole = false }: FieldProps) {
  const { data, state, today, enter } = useBench();
  const id = useId();
  const entry = entryAt(state, path);
  const written = splitQuantity(valueAt(data.spec, path));
  const choices = units.some((unit) => unit === written.unit || unit === "number" || written.unit === "")
    ? units
    : [written.unit, ...units];
  const unit = entry?.unit ?? (written.unit || (choices[0] ?? ""));
  const shown = entry?.text ?? written.text;
  const problems = entry === undefined ? [] : problemsAt(today.problems, path);
  const say = (text: string, of: string) => enter({ path: [...path], text, unit: of }, instead);
  const before = written.text === "" ? "" : `${written.text} ${written.unit}`.trim();
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <span class="entry">
        <input
          id={id}
          type="text"
          inputMode={whole ? "numeric" : "decimal"}
          autoComplete="off"
          enterKeyHint="done"
          placeholder={usual}
          value={shown}
          aria-invalid={problems.length > 0}
          aria-describedby={problems.length > 0 ? `${id}-problem` : undefined}
          onInput={(event) => say(event.currentTarget.value, unit)}
        />
        {choices.length > 1 ? (
          <select
            aria-label={words.unitOf(label)}
            value={unit}
            onChange={(event) => say(shown, event.currentTarget.value)}
          >
            {choices.map((one) => (
              <option key={one}>{one}</option>
            ))}
          </select>
        ) : (
          unit !== "number" && <span class="unit">{unit}</span>
        )}
      </span>
      {problems.length > 0 && (
        <div id={`${id}-problem`} role="alert">
          {problems.map((problem) => (
            <ProblemText key={problem.code} problem={problem} />
          ))}
        </div>
      )}
      {entry !== undefined && (
        <button type="button" class="quiet" onClick={() => say("", unit)}>
          {words.back(before)}
        </button>
      )}
    </div>
  );
}

type Graphs = readonly ReturnType<typeof graphOf>[];

/** A value whose working is one tap away. */
export function FigureButton({
  figure,
  graphs,
  text,
  label = figure.label,
}: {
  readonly figure: Figure;
  readonly graphs: Graphs;
  readonly text: string;
  readonly label?: string;
}) {
  const { ask } = useBench();
  return (
    <button
      type="button"
      class="figure"
      aria-label={`${printable(label)}: ${text}. ${words.working}`}
      onClick={() => ask({ figure, graph: graphOf([figure], ...graphs) })}
    >
      {text}
    </button>
  );
}

/** Figures with their labels. */
export function Figures({ figures, graphs }: { readonly figures: readonly Figure[]; readonly graphs: Graphs }) {
  return (
    <dl class="figures">
      {figures.map((figure) => (
        <div key={figure.id}>
          <dt>{printable(figure.label)}</dt>
          <dd>
            <FigureButton figure={figure} graphs={graphs} text={`${shownGrouped(figure)} ${figure.unit}`.trim()} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

type Section = Report["sections"][number];

interface ReportSectionProps {
  readonly section: Section;
  readonly report: Report;
  /** Where it is not that of the section. */
  readonly heading?: string;
}

/** A section of a report. */
export function ReportSection({ section, report, heading = section.heading }: ReportSectionProps) {
  return (
    <Part heading={heading}>
      {section.blocks.map((block) => (
        <ReportBlock
          key={block.kind === "table" ? block.id : block.kind}
          block={block}
          report={report}
          label={heading}
        />
      ))}
    </Part>
  );
}

interface ReportBlockProps {
  readonly block: Section["blocks"][number];
  readonly report: Report;
  readonly label: string;
}

function ReportBlock({ block, report, label }: ReportBlockProps) {
  switch (block.kind) {
    case "table":
      return <ReportTable table={block} report={report} label={label} />;
    case "figures":
      return <Figures figures={block.figures} graphs={[report.figures]} />;
    case "text":
      return (
        <>
          {block.lines.map((line) => (
            <p key={line}>{printable(line)}</p>
          ))}
        </>
      );
    case "working":
    case "picture":
      return undefined;
  }
}

type ReportTableProps = {
  readonly table: Extract<Section["blocks"][number], { readonly kind: "table" }>;
  readonly report: Report;
  readonly label: string;
};

function ReportTable({ table, report, label }: ReportTableProps) {
  const side = (column: number) => (table.columns[column]?.align === "right" ? "number" : undefined);
  return (
    <div class="scroll">
      <table aria-label={label}>
        <thead>
          <tr>
            {table.columns.map(({ id, label: head }, column) =>
              head === "" ? (
                <td key={id} />
              ) : (
                <th key={id} scope="col" class={side(column)}>
                  {printable(head)}
                </th>
              ),
            )}
          </tr>
        </thead>
        <tbody>
          {table.rows.map(({ cells, role }, row) => (
            <tr key={`${row.toString()} ${cells[0]?.text ?? ""}`} class={role}>
              {cells.map(({ text, figure: id }, column) => {
                const figure = id === undefined ? undefined : report.figures[id];
                const key = table.columns[column]?.id ?? column;
                const inside =
                  figure === undefined ? (
                    printable(text)
                  ) : (
                    <FigureButton
                      figure={figure}
                      graphs={[report.figures]}
                      text={text}
                      label={`${cells[0]?.text ?? ""}, ${table.columns[column]?.label ?? ""}`}
                    />
                  );
                return column === 0 && text !== "" ? (
                  <th key={key} scope="row">
                    {inside}
                  </th>
                ) : (
                  <td key={key} class={side(column)}>
                    {inside}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** The working of the figure that was asked for, and of all it rests on. */
export function WorkingDialog() {
  const { asked, ask } = useBench();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (asked !== undefined && dialog.current?.open === false) dialog.current.showModal();
    if (asked === undefined) dialog.current?.close();
  }, [asked]);
  const all = asked === undefined ? [] : Object.values(asked.graph);
  return (
    <dialog ref={dialog} aria-label={words.working} onClose={() => ask(undefined)}>
      <button type="button" class="main" onClick={() => ask(undefined)}>
        {words.close}
      </button>
      {workings([...all].reverse()).map(({ label, lines }, index) => (
        <div key={all.at(-1 - index)?.id ?? label}>
          <h3>{printable(label)}</h3>
          {lines.map((line) => (
            <p key={line}>{printable(line)}</p>
          ))}
        </div>
      ))}
    </dialog>
  );
}
