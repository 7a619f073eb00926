import { useState } from "preact/hooks";
import { useBench } from "../bench.ts";
import { dayOf } from "../clock.ts";
import { freshState, weightsOf } from "../state.ts";
import { words } from "../words.ts";
import { Button } from "./parts.tsx";

/** Clears everything that was entered, when somebody is sure. */
export function Anew() {
  const { change } = useBench();
  const { take } = words;
  const [sure, beSure] = useState(false);
  const clear = () => {
    beSure(false);
    change(() => freshState, undefined, take.anewDone);
  };
  return (
    <div class="buttons">
      {sure ? (
        <>
          <Button on={clear}>{take.anewSure}</Button>
          <Button class="main" on={() => beSure(false)}>
            {take.anewKeep}
          </Button>
        </>
      ) : (
        <Button on={() => beSure(true)}>{take.anew}</Button>
      )}
    </div>
  );
}

/** Says so where a load was weighed on another day, so that nobody takes it for one of today. */
export function OtherDay() {
  const { state, load } = useBench();
  const last = weightsOf(state, load).at(-1);
  const day = last && dayOf(new Date(last.at));
  if (day === undefined || day === dayOf(new Date())) return undefined;
  return (
    <div class="notice">
      <p>{words.weigh.otherDay(load, day)}</p>
      <Anew />
    </div>
  );
}
