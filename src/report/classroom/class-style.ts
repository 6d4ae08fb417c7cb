/** What a page that is worked on needs besides the look of all pages. */
export const CLASS_STYLE = `
[hidden] { display: none !important; }
fieldset { border: 1px solid var(--line); margin: 0; padding: 0.9rem 1.1rem; min-width: 0; }
fieldset > * + * { margin-top: 0.9rem; }
legend { padding: 0 0.4rem; }
.bare { border: 0; padding: 0; }
.choices legend { padding: 0; margin-bottom: 0.3rem; }
.choices { border: 0; padding: 0; }
.choice { display: block; padding: 0.3rem 0; margin: 0; }
.control label { display: block; }
label, legend { max-width: 44rem; }
input, select, textarea, button { font: inherit; color: inherit; border: 1px solid #6f777b; background: #fff;
  padding: 0.4rem 0.6rem; max-width: 100%; border-radius: 0; }
input[type=number] { width: 8rem; font-variant-numeric: tabular-nums; }
input[type=radio] { width: 1.1rem; height: 1.1rem; vertical-align: -0.15rem; accent-color: var(--mark); }
textarea { display: block; width: 100%; min-height: 7rem; }
button { border: 1px solid var(--mark); color: var(--mark); padding: 0.5rem 1.1rem; cursor: pointer; }
button.main { background: var(--mark); color: #fff; }
:disabled, :disabled label { color: #5f676b; }
button:disabled, button.main:disabled { background: #ecebe6; border-color: #b9b7ae; color: #5f676b; cursor: default; }
[aria-invalid=true] { border: 2px solid #8c1d2c; }
.buttons { display: flex; flex-wrap: wrap; gap: 0.75rem; align-items: center; }
.status { min-height: 1.6em; font-weight: 600; overflow-wrap: anywhere; }
progress { width: 100%; max-width: 24rem; accent-color: var(--mark); }
dialog { border: 2px solid var(--ink); background: var(--paper); color: var(--ink); max-width: 28rem; padding: 1.25rem; }
dialog > * + *, form > * + * { margin-top: 1rem; }
#tried-table th, #tried-table td { padding-left: 0.3rem; padding-right: 0.3rem; }
#tried-table th:first-child { padding-left: 0; }
#tried-table tbody th { min-width: 2rem; }
#tried-table td.chosen { white-space: normal; }
#result > * + *, #revealed > * + *, #pair > * + * { margin-top: 1rem; }
.on-paper { display: none; }
.on-paper:first-child + * { margin-top: 0; }
td span { color: var(--soft); }
@media print {
  .buttons, dialog, textarea, .status, #running, #locked, #written, #tried-none, #unrevealed, #kept, #difference-said,
    .control:has(#student), #answer:has(#revealed[hidden]) { display: none !important; }
  .on-paper { display: block; }
  .control, .choices, .choice { break-inside: avoid; }
  .control { margin-top: 3mm; }
  input, select { border-width: 0 0 1px; border-color: var(--ink); padding: 0.5mm 1mm; background: none; }
  input[type=number], select { -webkit-appearance: none; -moz-appearance: textfield; appearance: none; }
  :disabled, :disabled label { color: var(--ink); opacity: 1; }
  .choice { padding: 0.5mm 0; }
  .choice:has(:checked) { font-weight: 600; }
  .name-line { position: absolute; top: 0; right: 0; }
  .name-line span { display: inline-block; min-width: 7cm; border-bottom: 1px solid var(--ink); text-align: left; padding: 0 1mm; }
  .lines span { display: block; height: 8mm; border-bottom: 1px solid var(--line); }
  .words { white-space: pre-wrap; overflow-wrap: anywhere; }
  .by-hand tbody th { height: 10mm; }
  .by-hand td + td { border-left: 1px solid var(--line); }
}
`;
