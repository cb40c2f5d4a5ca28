// How a page looks: quiet, black on white, for paper first. One set of margins fits A4 and Letter; on a screen of any width
// the same with larger letters. Nothing is told by colour.

import { chartStyle } from "./chart-style.ts";
import { type Markup, sheet } from "./html.ts";

/** Sizes in points, so that paper decides. */
export const pageStyle: Markup = sheet`<style>
@page { margin: 10mm 13mm; }
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
body { font: 7.7pt/1.2 "Helvetica Neue", Helvetica, Arial, "Liberation Sans", "Noto Sans", "DejaVu Sans Condensed", "DejaVu Sans", sans-serif; }
body { margin: 0; color: #111; background: #fff; font-variant-numeric: tabular-nums; overflow-wrap: anywhere; }
main { max-width: 60rem; margin: 0 auto; padding: 1.2rem 1rem; }
header { border-bottom: 1.2pt solid #111; padding-bottom: 3pt; }
h1 { font-size: 14pt; line-height: 1.15; margin: 0 0 2pt; font-weight: 700; letter-spacing: -0.01em; }
h2 { font-size: 8.8pt; line-height: 1.2; margin: 5.5pt 0 1.5pt; font-weight: 700; break-after: avoid; }
p, ul, dl { margin: 0 0 2pt; orphans: 3; widows: 3; }
header p { color: #333; margin: 0; }
.lead { font-size: 9.8pt; font-weight: 600; }
.small, caption, figcaption, footer { font-size: 7.3pt; color: #333; }
footer { border-top: 0.4pt solid #999; margin-top: 6pt; padding-top: 2pt; }
footer p { margin: 0; }
ul { padding: 0; }
li { list-style: none; padding-left: 0.9em; position: relative; }
li::before { content: "\\2022"; position: absolute; left: 0; }
dl { display: grid; grid-template-columns: max-content 1fr; column-gap: 9pt; }
dt { color: #333; }
dd { margin: 0; }
.s-how-to-read ul { columns: 2; column-gap: 14pt; font-size: 7.1pt; }
.wide { overflow-x: auto; }
.whole { break-inside: avoid; }
table { border-collapse: collapse; width: 100%; margin: 0 0 3pt; }
caption { text-align: left; padding: 3pt 0 1pt; break-after: avoid; }
caption.q { position: absolute; width: 1px; height: 1px; padding: 0; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th, td { text-align: left; vertical-align: baseline; padding: 0.4pt 5pt 0.4pt 0; border-bottom: 0.3pt solid #ccc; overflow-wrap: normal; }
th:last-child, td:last-child { padding-right: 0; }
td:last-child { overflow-wrap: anywhere; }
.n th, .n td { text-align: right; white-space: nowrap; }
.n tbody th, .n tr:first-child > th:first-child, .n .l, .n .k, .n .w, .n .v { text-align: left; }
.n .w, .n .v, .n .l { white-space: normal; }
.n .l, .n .k { padding-left: 2pt; }
.n thead th { white-space: normal; }
.n th:first-child { padding-left: 0; }
.one { break-inside: avoid; }
thead + tbody tr:first-child > * { padding-top: 1.1pt; }
th { font-weight: 600; }
thead th { vertical-align: bottom; border-bottom: 0.7pt solid #111; font-size: 7.3pt; }
thead th[colspan], .n thead th[colspan] { border-bottom: 0.3pt solid #999; text-align: center; }
tbody th { white-space: nowrap; font-weight: 500; }
.one td { border-bottom-color: transparent; }
.one tr:last-child td, .one th, .one td[rowspan] { border-bottom-color: #ccc; }
.k { white-space: nowrap; }
td.w, tbody th.w { white-space: normal; overflow-wrap: anywhere; min-width: 6em; }
.r { text-align: right; }
td.r { white-space: nowrap; }
.sub { display: block; font-size: 6.8pt; color: #333; }
.box { display: inline-block; width: 7.5pt; height: 7.5pt; border: 0.7pt solid #111; vertical-align: -1pt; }
.line { display: inline-block; min-width: 3.2em; border-bottom: 0.7pt solid #111; height: 1em; vertical-align: -1pt; }
td.blank { border: 0.4pt solid #777; border-bottom: 0.7pt solid #111; min-width: 3.6em; height: 14pt; }
td.v { min-width: 7.5em; overflow-wrap: normal; padding-left: 2pt; }
.blanks { display: flex; flex-wrap: wrap; gap: 3pt 12pt; }
.blanks div { display: flex; gap: 4pt; align-items: flex-end; flex: 1 1 11em; }
.blanks div.full { flex-basis: 100%; }
.blanks dt { flex: none; }
.blanks dd { flex: 1; min-height: 13pt; border-bottom: 0.7pt solid #111; display: flex; align-items: flex-end; }
.ticks { list-style: none; padding: 0; columns: 2; column-gap: 14pt; }
.ticks li { break-inside: avoid; padding: 1pt 0 1pt 13pt; text-indent: -13pt; }
.ticks li::before { content: none; }
.ticks li * { text-indent: 0; }
.ticks .box { margin-right: 5.5pt; }
.s-asked, .s-agreed, .s-loose-parts { break-inside: avoid; }
.s-loose-parts td.blank { height: 10.5pt; }
.s-first { margin-top: 4pt; }
.sketch { border: 0.7pt solid #111; height: 70pt; padding: 2pt 4pt; margin: 4pt 0; display: flex; flex-direction: column; justify-content: space-between; break-inside: avoid; font-size: 7.3pt; color: #333; }
.sketch .front { align-self: flex-end; font-weight: 600; color: #111; }
.beside { display: flex; flex-wrap: wrap; gap: 0 18pt; }
.beside > * { flex: 1 1 18em; min-width: 0; }
@media print {
  main { max-width: none; padding: 0; }
  .wide { overflow: visible; }
}
@media screen {
  body { font-size: 10.5pt; }
  .small, caption, figcaption, footer, thead th, .s-how-to-read ul { font-size: 9.4pt; }
  h2 { font-size: 12pt; margin-top: 14pt; }
  h1 { font-size: 18pt; }
  .lead { font-size: 12.5pt; }
  .sub { font-size: 9pt; }
  th, td { padding: 2pt 6pt 2pt 0; }
}
@media screen and (max-width: 40rem) {
  .ticks, .s-how-to-read ul { columns: 1; }
  .wide svg { min-width: 34rem; }
  .beside .wide svg { min-width: 0; }
}
${chartStyle}
</style>`;
