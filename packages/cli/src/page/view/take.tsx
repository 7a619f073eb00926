import { useState } from "preact/hooks";
import { changesOf, useBench } from "../bench.ts";
import { dayOf } from "../clock.ts";
import { canShare, printPage, saveFile, shareFile } from "../files.ts";
import { openSaved, savedText } from "../saved.ts";
import { words } from "../words.ts";
import { Anew } from "./anew.tsx";
import { Part } from "./parts.tsx";

/** Takes what was entered to another device, and the card to the wall. */
export function TakePart() {
  const { data, state, ask, change } = useBench();
  const { take } = words;
  const [said, say] = useState("");
  const day = dayOf(new Date());
  const saved = () => savedText(data, state);
  const withCard = (use: (html: string) => void) => () =>
    void ask("card", { state, now: Date.now() }).then((html) => (html === "" ? say(take.noCard) : use(html)));
  const saveYaml = () =>
    void ask("yaml", changesOf(state)).then((text) => saveFile("noodle-today.yaml", "application/yaml", text));
  return (
    <Part heading={take.heading}>
      <p>{take.device}</p>
      <div class="buttons">
        <button type="button" onClick={() => saveFile(`noodle-${day}.json`, "application/json", saved())}>
          {take.save}
        </button>
        {canShare() && (
          <button type="button" onClick={() => shareFile(`noodle-${day}.json`, saved())}>
            {take.share}
          </button>
        )}
        <button type="button" onClick={saveYaml}>
          {take.yaml}
        </button>
        <button type="button" onClick={withCard(printPage)}>
          {take.print}
        </button>
        <button type="button" onClick={withCard((html) => saveFile("card.html", "text/html", html))}>
          {take.card}
        </button>
      </div>
      <div class="field">
        <label for="open">{take.open}</label>
        <input
          id="open"
          type="file"
          accept=".json,application/json"
          onChange={({ currentTarget }) => {
            const file = currentTarget.files?.[0];
            currentTarget.value = "";
            if (file === undefined) return;
            void file.text().then((text) => {
              const opening = openSaved(data, text);
              if (opening.ok) change(() => opening.state);
              say(opening.ok ? take.opened : opening.why);
            });
          }}
        />
      </div>
      <Anew />
      <p role="status">{said}</p>
    </Part>
  );
}
