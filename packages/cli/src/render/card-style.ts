/** Paper that a card is printed on. */
export type Paper = "a4" | "letter";

const sizes: Readonly<Record<Paper, string>> = { a4: "A4", letter: "letter" };

/**
 * The look of a card: black on white, large weights, thin rules.
 *
 * @param mark - stands at the foot of every sheet of paper, so that sheets that part find each other
 */
export function cardStyle(paper: Paper, mark: string): string {
  return `
@page { size: ${sizes[paper]}; margin: 11mm 12mm 15mm;
  @bottom-left { content: ${cssText(mark)}; font: 9pt Arial, sans-serif; }
  @bottom-right { content: counter(page) " of " counter(pages); font: 9pt Arial, sans-serif; }
}
:root { font-family: Arial, "Helvetica Neue", system-ui, sans-serif; line-height: 1.3; }
svg { font-family: inherit; }
body { max-width: 186mm; }
h2 { border-bottom-width: 1px; margin: .9rem 0 .2rem; }
header { border-bottom: 4px solid #111; padding-bottom: .35rem; }
header h1 { font-size: 2.4rem; margin-bottom: .1rem; }
.mark, .about { margin: 0; overflow-wrap: anywhere; }
.about { font-style: italic; }
table { margin: .1rem 0 .3rem; }
td, th { padding-top: .14rem; padding-bottom: .14rem; }
.weights table { table-layout: fixed; }
.weights th[scope="row"] { font-size: 1.2rem; font-weight: 500; line-height: 1.1; overflow-wrap: anywhere; }
.weights small { display: block; font-size: .8rem; font-weight: 400; font-style: normal; }
.weights td.weight { font-size: 1.8rem; font-weight: 700; line-height: 1.1; }
.weights .weight { padding-right: 1.2rem; }
.weights tbody tr > * { border-bottom: 1px solid #777; vertical-align: middle; }
.weights tr.total > * { border-top: 2px solid #111; }
.beside-1 .weight { width: 19%; } .beside-1 .tick { width: 22%; } .beside-1 .lot { width: 20%; }
.beside-2 .weight { width: 19%; } .beside-2 .tick { width: 17%; } .beside-2 .lot { width: 15%; }
.beside-3 .weight { width: 17%; } .beside-3 .tick { width: 13%; } .beside-3 .lot { width: 11%; }
.beside-4 .weight { width: 18%; } .beside-4 .tick { width: 11.5%; } .beside-4 .lot { width: 9.5%; }
.check { display: flex; align-items: flex-end; gap: .3rem; }
.box { flex: none; width: 1.15rem; height: 1.15rem; border: 2px solid #111; }
.line { flex: 1; border-bottom: 1px solid #111; height: 1.4rem; }
td.lot, th.lot { padding-right: 0; }
.hint { font-size: .85rem; margin: 0; }
.figures { margin: .3rem 0; gap: .2rem 1.6rem; }
#water .figures div { display: flex; align-items: baseline; gap: .5rem; }
#water dt { font-size: 1rem; }
#water dd { font-size: 1.3rem; }
section p { margin: .2rem 0; }
#allergens p { font-size: 1.1rem; }
#allergens p:first-of-type { font-weight: 700; }
#loads td, #loads th { padding-right: .35rem; }
#loads tbody td, #loads tbody th { white-space: nowrap; }
#loads table { font-size: .95rem; }
#loads thead th { vertical-align: bottom; white-space: normal; }
#passes figure { margin: .4rem 0 .2rem; }
#cautions ul { columns: 2; column-gap: 1.6rem; font-size: .85rem; line-height: 1.25; margin: .3rem 0 0; }
#cautions li + li { margin-top: .15rem; }
footer { font-size: .85rem; margin-top: .6rem; border-top: 1px solid #111; overflow-wrap: anywhere; }
footer p { margin: .3rem 0 0; }
tr, li, figure, footer, .weights, #allergens, #water, #sheets, #loads, #passes, #make-up { break-inside: avoid; }
h2 { break-after: avoid; }
@media print {
  html { font-size: 14.8px; }
  body { padding: 0; max-width: none; }
}
`;
}

/** A text for a style sheet: all but letters and digits is written by its number, so that nothing can end it. */
function cssText(text: string): string {
  const written = text.replace(/[^a-z0-9 ]/giu, (mark) => `\\${mark.codePointAt(0)?.toString(16) ?? ""} `);
  return `"${written}"`;
}
