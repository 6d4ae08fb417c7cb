/** What the playback needs besides the look of all pages. */
export const WATCH_STYLE = `
[hidden] { display: none !important; }
button, select, input { font: inherit; color: inherit; border: 1px solid #6f777b; background: #fff; padding: 0.4rem 0.7rem;
  max-width: 100%; border-radius: 0; }
button { border-color: var(--mark); color: var(--mark); cursor: pointer; }
button.main { background: var(--mark); color: #fff; min-width: 6rem; }
button:disabled { background: #ecebe6; border-color: #b9b7ae; color: #5f676b; cursor: default; }
button.plain { border: 0; background: none; padding: 0.15rem 0.2rem; text-decoration: underline; font-variant-numeric: tabular-nums;
  min-height: 1.5rem; }
input[type=number] { width: 9rem; font-variant-numeric: tabular-nums; }
input[type=checkbox] { width: 1.1rem; height: 1.1rem; vertical-align: -0.15rem; accent-color: var(--mark); }
.buttons { display: flex; flex-wrap: wrap; gap: 0.6rem 0.75rem; align-items: center; }
fieldset { border: 0; padding: 0; margin: 0; min-width: 0; }
fieldset legend { padding: 0; font-size: 0.9375rem; color: var(--soft); }
fieldset label { margin-right: 1.1rem; display: inline-block; padding: 0.2rem 0; }
.clock { font-size: 1.6rem; line-height: 1.2; font-weight: 600; font-variant-numeric: tabular-nums; }
.counts { font-variant-numeric: tabular-nums; }
.course label { position: relative; z-index: 1; background: var(--paper); }
.status { min-height: 1.6em; overflow-wrap: anywhere; font-weight: 600; }
.lane { padding: 0 8px; font: 0.875rem/1.35 system-ui, 'Segoe UI', Helvetica, Arial, sans-serif; }
.lane svg { display: block; width: 100%; height: 14px; background: var(--tint); overflow: visible; }
.lane p { overflow-wrap: anywhere; position: relative; z-index: 1; width: fit-content; background: var(--paper); }
.course { position: relative; }
.course .hand { position: absolute; top: 0; bottom: 0; width: 2px; margin-left: -1px; background: var(--ink); left: 8px;
  pointer-events: none; }
.course > * + * { margin-top: 0.35rem; }
#time { -webkit-appearance: none; appearance: none; width: 100%; margin: 0.5rem 0 0; padding: 0; border: 0; background: none;
  height: 1.75rem; display: block; }
#time::-webkit-slider-runnable-track { height: 6px; background: #6f777b; }
#time::-moz-range-track { height: 6px; background: #6f777b; }
#time::-webkit-slider-thumb { -webkit-appearance: none; width: 16px; height: 26px; margin-top: -10px; background: var(--mark);
  border: 2px solid #fff; outline: 1px solid var(--ink); }
#time::-moz-range-thumb { width: 12px; height: 22px; background: var(--mark); border: 2px solid #fff; outline: 1px solid var(--ink);
  border-radius: 0; }
.ends { display: flex; justify-content: space-between; font-size: 0.875rem; color: var(--soft);
  font-variant-numeric: tabular-nums; padding: 0 8px; }
.flow { list-style: none; padding: 0; border-top: 2px solid var(--ink); }
.flow li { border-bottom: 1px solid var(--line); padding: 0.5rem 0 0.4rem; }
.flow p { display: grid; grid-template-columns: minmax(0, 1.1fr) minmax(0, 1fr) minmax(0, 1fr) minmax(0, 1.1fr) minmax(0, 1.1fr);
  gap: 0 1rem; align-items: baseline; overflow-wrap: anywhere; font-variant-numeric: tabular-nums; }
.flow .on { color: var(--soft); font-size: 0.9375rem; }
.flow canvas { display: block; width: 100%; margin-top: 0.2rem; cursor: pointer; touch-action: manipulation; }
.doing b, .state b { display: inline-block; width: 1.5rem; margin-right: 0.4rem; text-align: center; font-weight: 600;
  border: 1px solid var(--ink); }
.sides { display: flex; justify-content: space-between; font-size: 0.875rem; color: var(--soft); }
.store { display: flex; flex-wrap: wrap; gap: 0.3rem 1.75rem; list-style: none; padding: 0; font-variant-numeric: tabular-nums; }
.store meter { width: 8rem; vertical-align: -0.1rem; }
tr[aria-current] > * { background: #e6edf5; }
td.word.told { white-space: normal; overflow-wrap: anywhere; min-width: 10rem; }
#where { overflow-wrap: anywhere; font-weight: 600; min-height: 1.6em; }
@media (max-width: 46rem) {
  .flow p { grid-template-columns: minmax(0, 1fr) minmax(0, 1fr); }
}
@media print {
  .buttons, fieldset, #time, #still, caption span.how, #one-part .note, #now .note, #one-part:has(#history:empty) { display: none !important; }
  .lane p, .course label, .lane svg { background: #fff; print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  .course label, .ends, .sides, .legend, .store { font-size: 9pt; }
  .course .hand { background: none; border-left: 2px solid var(--ink); }
  .flow li { break-inside: avoid; padding: 1mm 0; }
  .flow canvas { height: auto !important; }
  .flow .on { font-size: 9pt; }
  .legend { break-inside: avoid; }
  p:has(+ .store) { break-after: avoid; }
  #status:empty { display: none; }
  .doing b, .state b { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  button.plain { display: inline; color: var(--ink); font-weight: inherit; text-decoration: none; padding: 0; min-height: 0; }
  tr[aria-current] > * { background: none; }
}
`;
