import { useEffect, useState } from "preact/hooks";
import { isSection, textAt, valueAt } from "../../input/put.ts";
import { useBench } from "../bench.ts";
import { words } from "../words.ts";
import { Field, Figures, Labelled, Part, wrongAt } from "./parts.tsx";

const ways = ["bowls", "dough", "flour", "have"] as const;
type Way = (typeof ways)[number];

const pathsOf: Readonly<Record<Way, readonly (readonly string[])[]>> = {
  bowls: [["batch", "bowls"]],
  dough: [["batch", "dough"]],
  flour: [["batch", "flour"]],
  have: [
    ["batch", "have", "name"],
    ["batch", "have", "amount"],
  ],
};

/** How many bowls, how much dough or flour, and what is lost on the way. */
export function SizePart() {
  const bench = useBench();
  const { data, state, today, undone, enter } = bench;
  const { size } = words;
  const masses = data.units === "us" ? ["lb", "oz"] : ["kg", "g"];
  const batch = valueAt(today.spec, ["batch"]);
  const written = valueAt(data.spec, ["batch"]);
  const stated =
    ways.find((way) => state.entries.some(({ path }) => path[0] === "batch" && path[1] === way)) ??
    ways.find((way) => isSection(written) && written[way] !== undefined) ??
    "bowls";
  const [chosen, choose] = useState<Way>(stated);
  useEffect(() => choose(stated), [undone]);
  const others = ways.filter((way) => way !== chosen).flatMap((way) => pathsOf[way]);
  const have = textAt(today.spec, ["batch", "have", "name"]);
  // What is chosen and no more in the dough stays to be seen, with what is wrong with it.
  const names = today.names.includes(have) ? today.names : [have, ...today.names];
  const portion = isSection(batch) && batch["cookedWeight"] !== undefined ? "cookedWeight" : "rawWeight";
  return (
    <>
      <Part heading={size.heading}>
        <fieldset class="choices">
          <legend>{size.way}</legend>
          {ways.map((way) => (
            <label key={way}>
              <input type="radio" name="way" checked={chosen === way} onChange={() => choose(way)} />
              {size.ways[way]}
            </label>
          ))}
        </fieldset>
        <div class="fields">
          {chosen === "bowls" && (
            <Field path={["batch", "bowls"]} label={size.bowls} units={["number"]} instead={others} whole={true} />
          )}
          {chosen === "dough" && <Field path={["batch", "dough"]} label={size.dough} units={masses} instead={others} />}
          {chosen === "flour" && <Field path={["batch", "flour"]} label={size.flour} units={masses} instead={others} />}
          {chosen === "have" && (
            <>
              <Labelled label={size.haveName} wrong={wrongAt(bench, ["batch", "have", "name"])}>
                {(tied) => (
                  <select
                    {...tied}
                    value={have}
                    onChange={({ currentTarget: { value } }) =>
                      enter({ path: ["batch", "have", "name"], text: value, unit: "" }, others)
                    }
                  >
                    {names.map((name) => (
                      <option key={name}>{name}</option>
                    ))}
                  </select>
                )}
              </Labelled>
              {have !== "" && (
                <Field path={["batch", "have", "amount"]} label={size.haveAmount} units={masses} instead={others} />
              )}
            </>
          )}
          <Field
            path={["batch", portion]}
            label={portion === "rawWeight" ? size.raw : size.cooked}
            units={data.units === "us" ? ["oz"] : ["g"]}
          />
        </div>
      </Part>
      <Part heading={size.losses}>
        <div class="fields">
          {(["mixing", "sheeting", "cutting"] as const).map((stage) => (
            <Field key={stage} path={["losses", stage]} label={size[stage]} units={["%"]} usual="0" />
          ))}
        </div>
      </Part>
      {today.size.length > 0 && (
        <Part heading={size.comesTo}>
          <Figures figures={today.size} />
        </Part>
      )}
    </>
  );
}
