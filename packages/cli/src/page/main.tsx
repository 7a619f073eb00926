import { render } from "preact";
import type { First } from "./answers.ts";
import { askBeside } from "./ask.ts";
import { elements, type PageData } from "./page-data.ts";
import { App } from "./view/app.tsx";

const textOf = (id: string): string => document.getElementById(id)?.textContent ?? "{}";
const root = document.getElementById(elements.bench);
const data: PageData = JSON.parse(textOf(elements.data));
const first: First = JSON.parse(textOf(elements.first));
const draw = (begun: boolean): void => {
  if (root !== null) render(<App data={data} first={first} ask={askBeside(data)} begun={begun} />, root);
};
// The command draws into an empty page. A browser shows that before the script takes it over.
if (root?.firstChild === null) draw(false);
else requestAnimationFrame(() => setTimeout(draw, 0, true));
