/** The look of a page: a printed laboratory report, its section names in the margin. */
export const PAGE_STYLE = `
:root { --ink: #1d2326; --soft: #525b60; --line: #c9c6bd; --paper: #fdfcf9; --tint: #f3f1ea; --mark: #2c5684; }
* { box-sizing: border-box; }
html { background: var(--paper); color: var(--ink); -webkit-text-size-adjust: 100%; }
body { margin: 0 auto; max-width: 68rem; padding: 2.5rem 1.5rem 4rem; line-height: 1.55;
  font: 1.0625rem/1.55 Charter, 'Bitstream Charter', 'Iowan Old Style', Palatino, Georgia, serif; }
h1, h2, h3, p, ul, ol, dl { margin: 0; }
h1 { font-size: clamp(1.6rem, 4.5vw, 2.4rem); line-height: 1.15; font-weight: 600; overflow-wrap: anywhere; }
h2 { font-size: 1.0625rem; line-height: 1.4; font-weight: 600; color: var(--mark); }
h3 { font-size: 1.0625rem; line-height: 1.4; margin-bottom: 0.5rem; overflow-wrap: anywhere; }
a { color: var(--mark); }
:focus-visible { outline: 3px solid var(--mark); outline-offset: 2px; }
.skip { position: absolute; left: -100vw; background: var(--ink); color: var(--paper); padding: 0.5rem 1rem; }
.skip:focus { left: 1rem; top: 1rem; }
nav ul { display: flex; flex-wrap: wrap; gap: 0.25rem 1.1rem; list-style: none; padding: 0.9rem 0; font-size: 0.9375rem; }
nav a { display: inline-block; padding: 0.15rem 0; }
nav { border-bottom: 1px solid var(--line); }
.kind { color: var(--soft); margin-bottom: 0.4rem; }
header { border-bottom: 3px double var(--ink); padding-bottom: 1.25rem; }
section { display: grid; grid-template-columns: 10rem minmax(0, 1fr); column-gap: 2rem; padding: 1.75rem 0;
  border-bottom: 1px solid var(--line); }
section > div > * + * { margin-top: 1rem; }
.verdict { list-style: none; padding: 0; font-size: 1.1875rem; line-height: 1.5; }
.verdict li + li { margin-top: 0.7rem; }
.verdict li { overflow-wrap: anywhere; }
.note { color: var(--soft); font-size: 0.9375rem; }
.warning { border-left: 4px solid #9a4f0c; background: #fbf1e2; padding: 0.6rem 1rem; overflow-wrap: anywhere; }
.caution { border: 2px solid var(--ink); padding: 0.9rem 1.1rem; background: #fff; }
.prose > * + * { margin-top: 1rem; }
.prose > * + h3 { margin-top: 1.75rem; }
.prose > h3 + * { margin-top: 0; }
.prose { max-width: 44rem; overflow-wrap: anywhere; }
.scroll { overflow-x: auto; }
caption div { position: sticky; left: 0; max-width: min(100%, calc(100vw - 2rem)); }
.measure + .measure { margin-top: 2rem; }
table { border-collapse: collapse; width: 100%; font: 0.9375rem/1.4 system-ui, 'Segoe UI', Helvetica, Arial, sans-serif;
  font-variant-numeric: tabular-nums; border-top: 2px solid var(--ink); border-bottom: 2px solid var(--ink); }
caption { text-align: left; font-weight: 600; padding-bottom: 0.4rem; }
caption span { font-weight: 400; color: var(--soft); }
th, td { padding: 0.4rem 0.7rem; text-align: right; white-space: nowrap; vertical-align: top; }
th:first-child, td:first-child { text-align: left; padding-left: 0; }
td.word, th.word { text-align: left; padding-right: 0; }
#glance th, #glance td { padding-left: 0.3rem; padding-right: 0.3rem; }
#glance th:first-child { padding-left: 0; }
td.names { white-space: normal; min-width: 9rem; max-width: 24rem; overflow-wrap: anywhere; }
thead th { font-weight: 400; color: var(--soft); border-bottom: 1px solid var(--line); vertical-align: bottom;
  white-space: normal; max-width: 12rem; overflow-wrap: break-word; }
tbody th { font-weight: 600; white-space: normal; min-width: 8rem; max-width: 16rem; overflow-wrap: anywhere; }
tbody tr + tr > * { border-top: 1px solid var(--tint); }
.better, .worse { font-weight: 700; }
.better { color: #1b5e37; }
.worse { color: #8c1d2c; }
.panels { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 20rem), 1fr)); gap: 1.75rem 2rem; }
figure { margin: 0; break-inside: avoid; }
figcaption { font: 600 0.9375rem/1.4 system-ui, 'Segoe UI', Helvetica, Arial, sans-serif; overflow-wrap: anywhere; }
figcaption span { font-weight: 400; color: var(--soft); }
figure svg text { font-variant-numeric: tabular-nums; }
figure svg { font-family: system-ui, 'Segoe UI', Helvetica, Arial, sans-serif; display: block; margin-top: 0.4rem; }
.legend { display: flex; flex-wrap: wrap; gap: 0.4rem 1.25rem; list-style: none; padding: 0; font-size: 0.9375rem; }
.legend b { display: inline-block; width: 1.5rem; margin-right: 0.45rem; text-align: center; font-weight: 600;
  border: 1px solid var(--ink); print-color-adjust: exact; -webkit-print-color-adjust: exact; }
dl { display: grid; grid-template-columns: minmax(7rem, max-content) minmax(0, 1fr); gap: 0.35rem 1.25rem; }
dt { font-weight: 600; }
dd { margin: 0; overflow-wrap: anywhere; }
summary { cursor: pointer; color: var(--mark); padding: 0.3rem 0; }
details .scroll + .scroll { margin-top: 1.5rem; }
pre { background: var(--tint); padding: 1rem; overflow-x: auto; font-size: 0.8125rem; line-height: 1.45; tab-size: 2;
  margin: 0.5rem 0 0; }
code { font-size: 0.875em; overflow-wrap: anywhere; }
@media (max-width: 46rem) {
  body { padding: 1.25rem 1rem 3rem; }
  section { grid-template-columns: minmax(0, 1fr); row-gap: 0.6rem; padding: 1.4rem 0; }
  .verdict { font-size: 1.0625rem; }
  th, td { padding: 0.4rem 0.55rem; }
  tbody th, thead th:first-child { position: sticky; left: 0; background: var(--paper); box-shadow: 1px 0 0 var(--line); }
  tbody th { min-width: 6.5rem; max-width: 8rem; }
  thead th { max-width: 7rem; }
  dl { grid-template-columns: minmax(0, 1fr); gap: 0; }
  dd + dt { margin-top: 0.6rem; }
}
@media print {
  @page { size: A4; margin: 14mm 15mm; }
  html { background: #fff; }
  body { max-width: none; padding: 0; font-size: 9.5pt; line-height: 1.4; }
  header { padding-bottom: 2mm; }
  h1 { font-size: 18pt; }
  .skip, nav { display: none; }
  section { grid-template-columns: minmax(0, 1fr); row-gap: 1.5mm; padding: 3mm 0; }
  section > div > * + *, .prose > * + * { margin-top: 2mm; }
  .verdict { font-size: 9.5pt; line-height: 1.35; }
  .verdict li + li { margin-top: 1.2mm; }
  .note { font-size: 8pt; }
  .warning { font-size: 8.5pt; padding: 1.5mm 3mm; }
  .panels { grid-template-columns: repeat(2, minmax(0, 1fr)); }
  .scroll { overflow: visible; }
  caption div, tbody th, thead th:first-child { position: static; background: none; box-shadow: none; }
  table { font-size: 8.5pt; break-inside: avoid; }
  th, td { padding: 0.6mm 1.5mm; }
  td .note { font-size: 8pt; }
  h2, h3, caption, legend, summary, figcaption, p:has(+ .panels), p:has(+ figure), p:has(+ .scroll) { break-after: avoid; }
  tr, dl, .legend li { break-inside: avoid; }
  /* What is folded cannot be unfolded on paper. */
  details:not([open]), section:not(:has(> div > :not(details:not([open])))) { display: none; }
  summary { list-style: none; color: var(--ink); font-weight: 600; }
  summary::-webkit-details-marker { display: none; }
  figure svg * { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  pre { white-space: pre-wrap; overflow-wrap: anywhere; font-size: 7.5pt; }
}
`;
