import { askCard } from "@noodlewright/core";
import { renderCard } from "@noodlewright/core/render";
import { useState } from "preact/hooks";
import { useBench } from "../bench.ts";
import { canShare, printPage, saveFile, shareFile } from "../files.ts";
import { freshState } from "../state.ts";
import { dayOf, openSaved, savedText, specYaml } from "../take-along.ts";
import { words } from "../words.ts";
import { Part } from "./parts.tsx";

/** Takes what was entered to another device, and the card to the wall. */
export function TakePart() {
  const { data, state, today, change } = useBench();
  const { take } = words;
  const [said, say] = useState("");
  const [sure, ask] = useState(false);
  const day = dayOf(new Date());
  const saved = () => savedText(data, state);
  const card = () => {
    const made =
      today.noodle &&
      askCard(today.noodle, {
        date: day,
        files: data.files,
        said: [data.said, saidToday()].filter(Boolean).join(", "),
      });
    return made?.ok ? renderCard(made.value.card, data.units === "us" ? "letter" : "a4") : undefined;
  };
  const saidToday = () =>
    state.entries
      .map(({ path, text, unit }) => `${path.join(" ")} ${text} ${unit === "number" ? "" : unit}`.trim())
      .join(", ");
  const withCard = (use: (html: string) => void) => {
    const html = card();
    if (html === undefined) say(take.noCard);
    else use(html);
  };
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
        <button type="button" onClick={() => saveFile("noodle-today.yaml", "application/yaml", specYaml(today))}>
          {take.yaml}
        </button>
        <button type="button" onClick={() => withCard(printPage)}>
          {take.print}
        </button>
        <button type="button" onClick={() => withCard((html) => saveFile("card.html", "text/html", html))}>
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
      <div class="buttons">
        {sure ? (
          <>
            <button
              type="button"
              onClick={() => {
                change(() => freshState);
                ask(false);
                say(take.anewDone);
              }}
            >
              {take.anewSure}
            </button>
            <button type="button" class="main" onClick={() => ask(false)}>
              {take.anewKeep}
            </button>
          </>
        ) : (
          <button type="button" onClick={() => ask(true)}>
            {take.anew}
          </button>
        )}
      </div>
      <p role="status">{said}</p>
    </Part>
  );
}
