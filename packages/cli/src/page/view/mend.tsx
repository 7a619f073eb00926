import { askMend } from "@noodlewright/core";
import { printable, shownGrouped } from "@noodlewright/core/render";
import { standingOf } from "@noodlewright/core/sheet";
import { useBench } from "../bench.ts";
import { weighedKey } from "../state.ts";
import { asShown, type Item } from "../today.ts";
import { words } from "../words.ts";
import { ProblemText } from "./parts.tsx";

/** What to do about a load that has too much of something in it, or that was mended. */
export function Mend({ load, items }: { readonly load: number; readonly items: readonly Item[] }) {
  const { state, today, change } = useBench();
  const { weigh } = words;
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
  const inBowl = items.flatMap((item) => {
    const grams = state.weighed[weighedKey(load, item.id)]?.grams;
    return grams === undefined || item.kind !== "ingredient" ? [] : [{ item, grams }];
  });
  const over = inBowl.filter(({ item, grams }) => standingOf(item.mass.value, item.division, grams).kind === "over");
  if (over.length === 0 || today.noodle === undefined) return undefined;
  if (today.batch?.value.withStock !== undefined) return <p class="notice">{weigh.noMend}</p>;
  const answer = askMend(today.noodle, {
    weighed: over.map(({ item, grams }) => ({ name: item.name, amount: `${grams} g` })),
  });
  if (!answer.ok) return answer.problems.map((problem) => <ProblemText key={problem.code} problem={problem} />);
  const { lines, times, bowls } = answer.value;
  const rows = items.flatMap((item) => {
    const line = lines.find(({ planned }) => planned.line.id === item.id);
    if (line === undefined || item.kind !== "ingredient") return [];
    const added = line.scale === "" ? item : { scale: line.scale, division: String(line.division) };
    return [{ ...item, ...added, mass: line.total }];
  });
  const weights = rows.map(({ id, mass, division, scale }) => [id, { grams: mass.value, division, scale }]);
  const accept = () => change((now) => ({ ...now, mended: { ...now.mended, [load]: Object.fromEntries(weights) } }));
  return (
    <div class="notice" role="status">
      <p>{weigh.tooMuch}</p>
      <dl class="figures">
        {rows.map((row) => (
          <div key={row.id}>
            <dt>{printable(row.name)}</dt>
            <dd>{`${asShown(row)} ${row.unit}`}</dd>
          </div>
        ))}
      </dl>
      <p>
        {weigh.becomes(shownGrouped(times))} {bowls && weigh.bowls(shownGrouped(bowls))}
      </p>
      {answer.notes
        .filter(({ loud, code }) => loud || code.startsWith("mend."))
        .map(({ text }) => (
          <p key={text}>{printable(text)}</p>
        ))}
      <button type="button" class="main" onClick={accept}>
        {weigh.mend}
      </button>
    </div>
  );
}
