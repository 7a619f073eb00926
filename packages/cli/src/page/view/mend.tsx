import { standingOf } from "@noodlewright/core/sheet";
import type { Item } from "../answers.ts";
import { changesOf, useAnswer, useBench } from "../bench.ts";
import { weighedKey } from "../state.ts";
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
  const over = items.flatMap(({ id, kind, name, grams: listed, division }) => {
    const grams = state.weighed[weighedKey(load, id)]?.grams;
    const much = kind === "ingredient" && standingOf(listed, division, grams).kind === "over";
    return much && grams !== undefined ? [{ name, grams }] : [];
  });
  if (state.mended[load] !== undefined) {
    const back = () =>
      change((now) => ({
        ...now,
        mended: Object.fromEntries(Object.entries(now.mended).filter(([key]) => key !== String(load))),
      }));
    return (
      <div class="notice">
        <p>{weigh.mended}</p>
        <button type="button" onClick={back}>
          {weigh.unmend}
        </button>
      </div>
    );
  }
  if (over.length === 0) return undefined;
  return today.loads?.stocked ? <p class="notice">{weigh.noMend}</p> : <Mending load={load} over={over} />;
}

interface MendingProps {
  readonly load: number;
  readonly over: readonly { readonly name: string; readonly grams: string }[];
}

function Mending({ load, over }: MendingProps) {
  const { state, change } = useBench();
  const { weigh } = words;
  const { answer, fresh } = useAnswer("mend", { changes: changesOf(state), over });
  if (answer === undefined || !fresh) return undefined;
  const { problems, items, becomes } = answer;
  if (problems.length > 0) return problems.map((problem) => <ProblemText key={problem.found} problem={problem} />);
  const weights = items.map(({ id, grams, division, scale }) => [id, { grams, division, scale }]);
  const accept = () => change((now) => ({ ...now, mended: { ...now.mended, [load]: Object.fromEntries(weights) } }));
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
