import { standingOf } from "@noodlewright/core/sheet";
import type { Item } from "../answers.ts";
import { changesOf, useAnswer, useBench } from "../bench.ts";
import { asOnList, mendOf, reopened } from "../items.ts";
import { weighedKey, without } from "../state.ts";
import { words } from "../words.ts";
import { ProblemText } from "./parts.tsx";

interface MendProps {
  readonly load: number;
  readonly items: readonly Item[];
}

/** What to do about a load that has too much of something in it, or that was mended. */
export function Mend({ load, items }: MendProps) {
  const { state, today, change } = useBench();
  const { weigh } = words;
  const listed = today.loads?.items ?? [];
  const mend = mendOf(listed, state, load);
  const gramsOf = ({ id }: Item) => state.weighed[weighedKey(load, id)]?.grams;
  const standing = (item: Item) => standingOf(item.grams, item.division, gramsOf(item)).kind;
  const over = items.filter((item) => item.kind !== "dusting" && standing(item) === "over");
  // What is in as listed counts as listed, so that the rounding of its scale mends nothing.
  const bowl = listed.filter((item) => mend === "holds" || standing(item) !== "right");
  return (
    <>
      {mend !== "none" && (
        <div class="notice" role={mend === "void" ? "alert" : undefined}>
          <p>{mend === "void" ? weigh.mendVoid : weigh.mended}</p>
          <button
            type="button"
            onClick={() => change((now) => reopened({ ...now, mended: without(now.mended, String(load)) }, load))}
          >
            {mend === "void" ? words.close : weigh.unmend}
          </button>
        </div>
      )}
      {over.length > 0 && today.loads?.stocked && (
        <p class="notice" role="alert">
          {over.some(({ kind }) => kind === "stock") ? weigh.stockOver : weigh.noMend}
        </p>
      )}
      {over.length > 0 && !today.loads?.stocked && (
        <Mending load={load} bowl={Object.fromEntries(bowl.map((item) => [item.id, gramsOf(item) ?? "0"]))} />
      )}
    </>
  );
}

interface MendingProps {
  readonly load: number;
  readonly bowl: Readonly<Record<string, string>>;
}

function Mending({ load, bowl }: MendingProps) {
  const { state, today, change } = useBench();
  const { weigh } = words;
  const { answer, fresh } = useAnswer("mend", { changes: changesOf(state), bowl });
  if (answer === undefined || !fresh) return undefined;
  const { problems, items, becomes } = answer;
  if (problems.length > 0) return problems.map((problem) => <ProblemText key={problem.found} problem={problem} />);
  const weights = items.flatMap(({ id, grams, division, scale }) => {
    const listed = today.loads?.items.find((item) => item.id === id);
    return listed === undefined ? [] : [[id, { grams, division, scale, of: asOnList(listed) }] as const];
  });
  const accept = () =>
    change((now) => reopened({ ...now, mended: { ...now.mended, [load]: Object.fromEntries(weights) } }, load));
  return (
    <div class="notice" role="status">
      <p>{weigh.tooMuch}</p>
      <dl class="figures">
        {items.map(({ id, figure }) => (
          <div key={id}>
            <dt>{figure.label}</dt>
            <dd>{figure.text}</dd>
          </div>
        ))}
      </dl>
      {becomes.map((text) => (
        <p key={text}>{text}</p>
      ))}
      <button type="button" class="main" onClick={accept}>
        {weigh.mend}
      </button>
    </div>
  );
}
