import type { Path } from "@noodlewright/core/figure";
import type { ComponentChildren } from "preact";
import { useEffect, useId, useRef } from "preact/hooks";
import { valueAt } from "../../input/put.ts";
import type { Section, Shown, Told } from "../answers.ts";
import { type Bench, changesOf, problemsAt, useAnswer, useBench } from "../bench.ts";
import { loadCount } from "../items.ts";
import { entryAt, sameNumber, splitQuantity } from "../state.ts";
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

interface MindedProps {
  readonly notes: readonly string[];
  readonly allergens?: readonly string[];
  readonly cautions: readonly string[];
}

/** What is to be known of a part: what the dough holds that may harm, what to mind, and the rest. */
export function Minded({ notes, allergens = [], cautions }: MindedProps) {
  const parts = [
    [words.allergens, allergens],
    [words.cautions, cautions],
    [words.goodToKnow, notes],
  ] as const;
  return parts.map(
    ([heading, lines]) =>
      lines.length > 0 && (
        <Part key={heading} heading={heading}>
          <ul>
            {lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </Part>
      ),
  );
}

interface ButtonProps {
  readonly class?: "main" | "quiet";
  readonly on: () => void;
  readonly children: ComponentChildren;
}

export function Button({ class: look, on, children }: ButtonProps) {
  return (
    <button type="button" class={look} onClick={on}>
      {children}
    </button>
  );
}

/** Something to be heard at once. */
export function Alert({ children }: Pick<ButtonProps, "children">) {
  return (
    <p class="notice" role="alert">
      {children}
    </p>
  );
}

type Wrong = Pick<Told, "found" | "expected">;

/** Problems in the words of the core. */
export function Problems({ of }: { readonly of: readonly Wrong[] }) {
  return of.map(({ found, expected }) => (
    <p class="problem" key={found}>
      <b>{found}</b>. {words.needs(expected)}
    </p>
  ));
}

/** What ties a control to its label and to what is wrong with it. */
interface Tied {
  readonly id: string;
  readonly "aria-invalid": boolean;
  readonly "aria-describedby": string | undefined;
}

interface LabelledProps {
  readonly label: string;
  readonly wrong?: readonly Wrong[];
  readonly children: (tied: Tied) => ComponentChildren;
}

/** A control below its label, and what is wrong with what was entered below that. */
export function Labelled({ label, wrong = [], children }: LabelledProps) {
  const id = useId();
  const isWrong = wrong.length > 0;
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {children({ id, "aria-invalid": isWrong, "aria-describedby": isWrong ? `${id}-wrong` : undefined })}
      {isWrong && (
        <div id={`${id}-wrong`} role="alert">
          <Problems of={wrong} />
        </div>
      )}
    </div>
  );
}

/** Goes from load to load; nothing where there is one. */
export function Loads({ turn }: { readonly turn?: () => void }) {
  const { today, load, last, change } = useBench();
  const { weigh } = words;
  const go = (to: number) => {
    turn?.();
    change((now) => ({ ...now, load: to }), "load");
  };
  if (last < 2) return undefined;
  return (
    <div class="loads">
      <button type="button" aria-label={weigh.before} disabled={load <= 1} onClick={() => go(load - 1)}>
        ←
      </button>
      <b aria-live="polite">{weigh.load(load, loadCount(today))}</b>
      <button type="button" aria-label={weigh.next} disabled={load >= last} onClick={() => go(load + 1)}>
        →
      </button>
    </div>
  );
}

/** What is wrong with what was entered at a place. */
export function wrongAt({ state, today }: Bench, path: Path): readonly Told[] {
  return entryAt(state, path) === undefined ? [] : problemsAt(today.problems, path);
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
  const bench = useBench();
  const { data, state, enter } = bench;
  const entry = entryAt(state, path);
  const written = splitQuantity(valueAt(data.spec, path));
  const choices = units.some((unit) => unit === written.unit || unit === "number" || written.unit === "")
    ? units
    : [written.unit, ...units];
  const usualUnit = written.unit || (choices[0] ?? "");
  const unit = entry?.unit ?? usualUnit;
  const shown = entry?.text ?? written.text;
  const say = (text: string, of: string) => enter({ path: [...path], text, unit: of }, instead);
  // Typed to the end, what is as it was is no difference.
  const isAsItWas = entry !== undefined && sameNumber(entry.text, written.text || usual) && unit === usualUnit;
  const before = written.text === "" ? "" : `${written.text} ${written.unit}`.trim();
  return (
    <Labelled label={label} wrong={wrongAt(bench, path)}>
      {(tied) => (
        <>
          <span class="entry">
            <input
              {...tied}
              type="text"
              inputMode={whole ? "numeric" : "decimal"}
              autoComplete="off"
              enterKeyHint="done"
              placeholder={usual}
              value={shown}
              onInput={(event) => say(event.currentTarget.value, unit)}
              onBlur={() => isAsItWas && say("", unit)}
            />
            {choices.length > 1 ? (
              <select
                aria-label={words.unitOf(label)}
                value={unit}
                onChange={({ currentTarget: { value } }) =>
                  say(value === usualUnit && sameNumber(shown, written.text) ? "" : shown, value)
                }
              >
                {choices.map((one) => (
                  <option key={one}>{one}</option>
                ))}
              </select>
            ) : (
              unit !== "number" && <span class="unit">{unit}</span>
            )}
          </span>
          {entry !== undefined && (
            <Button class="quiet" on={() => say("", unit)}>
              {words.back(before)}
            </Button>
          )}
        </>
      )}
    </Labelled>
  );
}

/** A value whose working is one tap away. */
export function FigureButton({ figure }: { readonly figure: Shown }) {
  const { want } = useBench();
  const { label, text } = figure;
  return (
    <button
      type="button"
      class="figure"
      aria-label={`${label}: ${text}. ${words.working}`}
      onClick={() => want(figure)}
    >
      {text}
    </button>
  );
}

/** Figures with their labels. */
export function Figures({ figures }: { readonly figures: readonly Shown[] }) {
  return (
    <dl class="figures">
      {figures.map((figure) => (
        <div key={figure.id}>
          <dt>{figure.label}</dt>
          <dd>
            <FigureButton figure={figure} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

interface ReportSectionProps {
  readonly section: Section;
  /** Where it is not that of the section. */
  readonly heading?: string;
}

/** A section of a report. */
export function ReportSection({
  section: { blocks, from, ...section },
  heading = section.heading,
}: ReportSectionProps) {
  return (
    <Part heading={heading}>
      {blocks.map((block) =>
        block.kind === "table" ? (
          <ReportTable key={block.id} table={block} from={from} label={heading} />
        ) : block.kind === "figures" ? (
          <Figures key="figures" figures={block.figures} />
        ) : (
          block.lines.map((line) => <p key={line}>{line}</p>)
        ),
      )}
    </Part>
  );
}

type ReportTableProps = {
  readonly table: Extract<Section["blocks"][number], { readonly kind: "table" }>;
  readonly from: Section["from"];
  readonly label: string;
};

/** A table; on a narrow screen, one of many columns has each cell beside its label. */
export function ReportTable({ table: { columns, rows }, from, label }: ReportTableProps) {
  const side = (column: number) => (columns[column]?.align === "right" ? "number" : undefined);
  return (
    <div class="scroll">
      <table aria-label={label} class={columns.length > 3 ? "stacked" : undefined}>
        <thead>
          <tr>
            {columns.map(({ id, label: head }, column) =>
              head === "" ? (
                <td key={id} />
              ) : (
                <th key={id} scope="col" class={side(column)}>
                  {head}
                </th>
              ),
            )}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ cells, role }, row) => (
            <tr key={`${row.toString()} ${cells[0]?.text ?? ""}`} class={role}>
              {cells.map(({ text, figure: id }, column) => {
                const key = columns[column]?.id ?? column;
                const what = `${cells[0]?.text ?? ""}, ${columns[column]?.label ?? ""}`;
                const inside = id === undefined ? text : <FigureButton figure={{ from, id, label: what, text }} />;
                return column === 0 && text !== "" ? (
                  <th key={key} scope="row" data-label={columns[column]?.label}>
                    {inside}
                  </th>
                ) : (
                  <td key={key} class={side(column)} data-label={columns[column]?.label}>
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
  const { state, wanted, want } = useBench();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (wanted !== undefined && dialog.current?.open === false) dialog.current.showModal();
    if (wanted === undefined) dialog.current?.close();
  }, [wanted]);
  const asked = wanted && wanted.said === undefined && { changes: changesOf(state), from: wanted.from, id: wanted.id };
  const { answer, fresh } = useAnswer("working", asked || undefined);
  const said = wanted?.said && [{ label: wanted.label, lines: [`= ${wanted.text} (${wanted.said})`] }];
  return (
    <dialog ref={dialog} aria-label={words.working} onClose={() => want(undefined)}>
      <Button class="main" on={() => want(undefined)}>
        {words.close}
      </Button>
      {(said || (fresh ? answer : undefined))?.map(({ label, lines }, index) => (
        <div key={`${index.toString()} ${label}`}>
          <h3>{label}</h3>
          {lines.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      ))}
    </dialog>
  );
}
