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
@page { size: ${sizes[paper]}; margin: 7mm 12mm 11mm;
  @bottom-left { content: ${cssText(mark)}; font: 8pt Arial, sans-serif; width: 80%; }
  @bottom-right { content: counter(page) " of " counter(pages); font: 8pt Arial, sans-serif; }
}
:root { font-family: Arial, "Helvetica Neue", system-ui, sans-serif; line-height: 1.3; }
svg { font-family: inherit; }
body { max-width: 186mm; }
h2 { border-bottom-width: 1px; margin: .3rem 0 .1rem; padding-bottom: 0; }
header { border-bottom: 3px solid var(--ink); padding-bottom: .25rem; }
.head { display: flex; flex-wrap: wrap; justify-content: space-between; align-items: end; gap: 0 1.6rem; }
header h1 { font-size: 2rem; margin-bottom: 0; }
header .figures { margin: 0; gap: .2rem 1.1rem; }
.mark, .about { margin: 0; overflow-wrap: anywhere; }
.about { font-style: italic; }
table { margin: .1rem 0 .3rem; }
td, th { padding-top: .1rem; padding-bottom: .1rem; }
.weights th[scope="row"] { font-size: 1.2rem; font-weight: 500; line-height: 1.1; overflow-wrap: anywhere; }
.weights small { display: block; font-size: .8rem; font-weight: 400; font-style: normal; }
.weights td.weight { font-size: 1.75rem; font-weight: 700; line-height: 1.1; }
.weights .weight { padding-right: 1.2rem; }
.weights tbody tr > * { border-bottom: 1px solid #777; vertical-align: middle; }
.weights tr.total > * { border-top: 2px solid var(--ink); }
@media print, (min-width: 40.01rem) {
  .weights table { table-layout: fixed; }
  .beside-1 .weight { width: 22%; } .beside-1 .tick { width: 42%; }
  .beside-2 .weight { width: 20%; } .beside-2 .tick { width: 22%; }
  .beside-3 .weight { width: 20%; } .beside-3 .tick { width: 16%; }
  .beside-4 .weight { width: 20%; } .beside-4 .tick { width: 13%; }
}
.unit { font-size: 1rem; font-weight: 500; }
.sign th[scope="row"] { font-size: 1rem; }
.weights .sign > * { border-bottom: 0; }
.tick small { font-size: .75rem; line-height: 1; }
.weights .beside-1 small { display: inline; margin-left: .5rem; }
.beside-1 .check { display: inline-flex; width: 47%; margin-right: 2%; }
.check { display: flex; align-items: flex-end; gap: .3rem; }
.box { flex: none; width: 1.05rem; height: 1.05rem; border: 2px solid var(--ink); }
.line { flex: 1; min-width: 3rem; border-bottom: 1px solid var(--ink); height: 1.15rem; }
.hint { font-size: .85rem; margin: 0; }
.figures { margin: .3rem 0; gap: .2rem 1.6rem; }
#water { display: flex; flex-wrap: wrap; align-items: baseline; gap: 0 1.2rem; border-top: 1px solid var(--ink); margin-top: .4rem; }
#water h2 { border: 0; }
#water .figures { margin: 0; }
#water .figures div { display: flex; align-items: baseline; gap: .5rem; }
#water dt { font-size: 1rem; }
#water dd { font-size: 1.5rem; line-height: 1.1; }
section p { margin: .2rem 0; }
#allergens { display: flex; flex-wrap: wrap; align-items: baseline; gap: 0 .4rem; margin-top: .25rem; }
#allergens h2 { border: 0; margin: 0; font-size: 1rem; }
#allergens p { margin: 0; font-size: .95rem; }
#allergens p:first-of-type { font-weight: 700; }
#water .measured { display: flex; flex: 1 1 100%; flex-wrap: wrap; gap: .2rem 1rem; margin-top: 0; }
.measured .line { flex: none; width: 2.9rem; min-width: 0; }
.besides { display: flex; flex-wrap: wrap; column-gap: 2rem; align-items: flex-start; }
.besides > #loads { flex: 1 1 min-content; }
.besides > #passes { flex: 4 1 27rem; }
#loads table { width: auto; min-width: 50%; }
#loads tbody tr > * { white-space: nowrap; padding-top: 0; padding-bottom: 0; line-height: 1.15; vertical-align: middle; }
#loads tbody td { font-size: 1.4rem; font-weight: 600; }
#loads tbody td { padding-left: .9rem; }
#loads p { break-after: avoid; }
#passes tbody > tr > * { white-space: nowrap; padding-top: 0; padding-bottom: 0; line-height: 1.15; vertical-align: middle; }
#passes td.setting, #passes td.gap { font-size: 1.5rem; font-weight: 700; }
#loads thead th { vertical-align: bottom; white-space: normal; }
#cautions ul { columns: 3; column-gap: 1.2rem; font-size: .78rem; line-height: 1.2; margin: .2rem 0 0; padding-left: 1rem; }
#cautions li + li { margin-top: .15rem; }
footer { font-size: .8rem; margin-top: .3rem; border-top: 1px solid var(--ink); overflow-wrap: anywhere; }
footer p { margin: .15rem 0 0; }
tr, li, figure, footer, #allergens, #water, #sheets { break-inside: avoid; }
.weights .total, .weights .aside, .weights .sign { break-before: avoid; }
h2 { break-after: avoid; }
@media screen and (max-width: 40rem) {
  #cautions ul { columns: 1; }
  .weights td.weight { display: block; text-align: left; }
  #loads tbody td, #passes td { align-items: baseline; padding-left: 0; }
  #loads td::before, #passes td::before { font-size: 1rem; }
  #passes tbody th::before { content: "pass "; }
  .besides > #loads, .besides > #passes { flex-basis: 100%; }
  .tick .check { flex: 1; }
}
@media print {
  html { font-size: 12.5px; }
  body { padding: 0; max-width: none; }
}
`;
}

/** A text for a style sheet: all but letters and digits is written by its number, so that nothing can end it. */
function cssText(text: string): string {
  const written = text.replace(/[^a-z0-9 ]/giu, (mark) => `\\${mark.codePointAt(0)?.toString(16) ?? ""} `);
  return `"${written}"`;
}
