import { escapeMarkup, page, printableData } from "@noodlewright/core/render";

/** A card of a folder, as the page that lists them has it. */
export interface CardEntry {
  readonly file: string;
  readonly title: string;
  readonly checksum: string;
  readonly spec: string;
}

/** The page that lists the cards of a folder. */
export function cardIndex(entries: readonly CardEntry[], date: string): string {
  const rows = entries.map((entry) => {
    const { title, spec, checksum } = printableData(entry);
    const link = `<a href="${escapeMarkup(encodeURIComponent(entry.file))}">${escapeMarkup(title)}</a>`;
    return `<tr><th scope="row">${link}</th><td>${escapeMarkup(spec)}</td><td>${escapeMarkup(checksum)}</td></tr>`;
  });
  const body = `<main><h1>Noodle cards</h1><p>${escapeMarkup(date)}</p>
<table><thead><tr><th scope="col">noodle</th><th scope="col">spec</th><th scope="col">checksum</th></tr></thead>
<tbody>
${rows.join("\n")}
</tbody></table>
<p>A card and its spec belong together while what <code>sha256sum</code> prints for the spec begins with the checksum.</p></main>`;
  const style =
    "\na { color: inherit; }\nth, td { overflow-wrap: anywhere; padding-top: .4rem; padding-bottom: .4rem; }\n";
  return page({ title: "Noodle cards", style, body });
}
