import type { Item } from "../answers.ts";
import { changesOf, useAnswer, useBench } from "../bench.ts";
import { asOnList, type Bowl, listOfLoad, mendOf, reopened } from "../items.ts";
import { without } from "../state.ts";
import { words } from "../words.ts";
import { Alert, Button, Problems } from "./parts.tsx";

/** What to do about a load that has too much of something in it, or that was mended. */
export function Mend({ items, bowl }: { readonly items: readonly Item[]; readonly bowl: Bowl }) {
  const { state, listed: all, load, change } = useBench();
  const { weigh } = words;
  const listed = listOfLoad(all, state, load);
  const mend = mendOf(all, state, load);
  const over = items.filter((item) => item.kind !== "dusting" && bowl.standing(item).kind === "over");
  // What is in as listed counts as listed, so that the rounding of its scale mends nothing.
  const told = listed.filter((item) => mend === "holds" || bowl.standing(item).kind !== "right");
  const stock = listed.find(({ kind }) => kind === "stock");
  return (
    <>
      {mend !== "none" && (
        <div class="notice" role={mend === "void" ? "alert" : undefined}>
          <p>{mend === "void" ? weigh.mendVoid : weigh.mended}</p>
          <Button on={() => change((now) => reopened({ ...now, mended: without(now.mended, String(load)) }, load))}>
            {mend === "void" ? words.close : weigh.unmend}
          </Button>
        </div>
      )}
      {over.length > 0 && stock && <Alert>{over.includes(stock) ? weigh.stockOver : weigh.noMend}</Alert>}
      {over.length > 0 && !stock && (
        <Mending listed={listed} bowl={Object.fromEntries(told.map((item) => [item.id, bowl.inAll(item) ?? "0"]))} />
      )}
    </>
  );
}

interface MendingProps {
  readonly listed: readonly Item[];
  readonly bowl: Readonly<Record<string, string>>;
}

function Mending({ listed, bowl }: MendingProps) {
  const { state, load, change } = useBench();
  const { weigh } = words;
  const { answer, fresh } = useAnswer("mend", { changes: changesOf(state), bowl });
  if (answer === undefined || !fresh) return undefined;
  const { problems, items, becomes } = answer;
  if (problems.length > 0) return <Problems of={problems} />;
  const weights = items.flatMap(({ id, grams, division, scale, ice }) => {
    const item = listed.find((one) => one.id === id);
    return item === undefined
      ? []
      : [[id, { grams, division, scale, of: asOnList(item), ...(ice && { ice }) }] as const];
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
      <Button class="main" on={accept}>
        {weigh.mend}
      </Button>
    </div>
  );
}
