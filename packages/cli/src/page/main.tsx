import { render } from "preact";
import type { First } from "./answers.ts";
import { askBeside } from "./ask.ts";
import { elements, type PageData } from "./page-data.ts";
import { App } from "./view/app.tsx";

const textOf = (id: string): string => document.getElementById(id)?.textContent ?? "{}";
const root = document.getElementById("bench");
const data: PageData = JSON.parse(textOf(elements.data));
const first: First = JSON.parse(textOf(elements.first));
if (root !== null) render(<App data={data} first={first} ask={askBeside(data)} />, root);
