import { render } from "preact";
import { dataElement, type PageData } from "./page-data.ts";
import { App } from "./view/app.tsx";

const root = document.getElementById("bench");
const data: PageData = JSON.parse(document.getElementById(dataElement)?.textContent ?? "{}");
if (root !== null) render(<App data={data} />, root);
