import { useState } from "preact/hooks";
import { changesOf, useBench } from "../bench.ts";
import { dayOf } from "../clock.ts";
import { canShare, printPage, saveFile, shareFile } from "../files.ts";
import { openSaved, savedText } from "../saved.ts";
import { words } from "../words.ts";
import { Anew } from "./anew.tsx";
import { Button, Labelled, Part } from "./parts.tsx";

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
        <Button on={() => saveFile(`noodle-${day}.json`, "application/json", saved())}>{take.save}</Button>
        {canShare() && <Button on={() => shareFile(`noodle-${day}.json`, saved())}>{take.share}</Button>}
        <Button on={saveYaml}>{take.yaml}</Button>
        <Button on={withCard(printPage)}>{take.print}</Button>
        <Button on={withCard((html) => saveFile("card.html", "text/html", html))}>{take.card}</Button>
      </div>
      <Labelled label={take.open}>
        {({ id }) => (
          <input
            id={id}
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
        )}
      </Labelled>
      <Anew />
      <p role="status">{said}</p>
    </Part>
  );
}
