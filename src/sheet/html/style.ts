/** The faces of a typeface as base64 of their TrueType files. */
export interface EmbeddedTypeface {
  readonly regular: string;
  readonly bold: string;
}

/** How the sheet looks: black on white, large, nothing told by colour; nothing that belongs together is split. */
export const styleRules = (typeface: EmbeddedTypeface | undefined): string =>
  [...(typeface ? [face(typeface.regular, "normal"), face(typeface.bold, "bold")] : []), rules].join("\n");

const face = (base64: string, weight: string): string =>
  `@font-face { font-family: Sheet; font-weight: ${weight}; src: url(data:font/ttf;base64,${base64}) format("truetype"); }`;

const rules = `
:root { color-scheme: light; }
* { box-sizing: border-box; }
body { margin: 0; background: #fff; color: #000; font: 1.125rem/1.35 Sheet, Verdana, "DejaVu Sans", sans-serif; overflow-wrap: break-word; }
main { max-width: 46rem; margin: 0 auto; padding: 1rem; }
h1 { font-size: 1.9em; line-height: 1.15; margin: 0 0 .6em; }
h2 { font-size: 1.4em; line-height: 1.2; margin: 1.2em 0 .4em; border-bottom: 2px solid #000; }
h3 { font-size: 1.15em; margin: 1em 0 .3em; }
h1, h2, h3, .shaping-head { break-after: avoid; }
p { margin: 0 0 .45em; }
ul { margin: .1em 0 .6em; padding-left: 1.2em; }
dl { margin: 0 0 .5em; }
dl div { break-inside: avoid; margin-bottom: .15em; }
dt { font-weight: bold; display: inline; }
dt::after { content: ": "; }
dd { display: inline; margin: 0; }
p, li, dl div { orphans: 3; widows: 3; }
table { border-collapse: collapse; }
.figures { width: 100%; margin: .3em 0 .8em; font-size: .95em; break-inside: avoid; }
.figures caption { text-align: left; font-weight: bold; padding-bottom: .2em; }
.figures th, .figures td { text-align: left; vertical-align: top; padding: .2em .8em .2em 0; border-bottom: 1px solid #000; }
.work { width: 100%; }
.work thead { display: table-header-group; }
.work thead th { text-align: left; font-size: .8em; border-bottom: 2px solid #000; padding: .1em .5em .1em 0; }
.work tbody, .work tr { break-inside: avoid; }
.work td, .work tbody th { vertical-align: top; text-align: left; padding: .3em .5em .3em 0; }
.work .do td, .work .do th { border-bottom: 1px solid #000; }
.work p { margin: 0 0 .15em; }
.tick { width: 2.6em; }
.do th { width: 5.2em; font-weight: normal; }
.do th b { display: block; font-size: 1.5em; line-height: 1; }
.do th small { font-size: .72em; white-space: nowrap; }
.running { font-size: .8em; }
.knit p, .ticks { display: inline; }
.ticks { margin-left: .6em; }
.ticks span { display: inline-block; white-space: nowrap; margin: 0 .7em .1em 0; }
.ticks small { font-size: .72em; vertical-align: super; }
input { appearance: none; -webkit-appearance: none; display: inline-block; width: 1em; height: 1em; margin: 0 .16em 0 0; border: 1.5px solid #000; border-radius: 2px; background: #fff; vertical-align: -.12em; text-align: center; line-height: .9; font: inherit; }
.tick input { width: 1.5em; height: 1.5em; margin: 0; border-width: 2px; }
input:checked::after { content: "\\2713"; display: block; font-weight: bold; line-height: .85; }
input:focus-visible { outline: 3px solid #000; outline-offset: 2px; }
svg { display: block; max-width: 100%; height: auto; font-family: Sheet, sans-serif; }
@media screen and (pointer: coarse) { .ticks input { width: 1.5em; height: 1.5em; margin: .1em .25em .1em 0; } }
@media screen { .piece, .after { margin-top: 2.5rem; } }
@media screen and (max-width: 34rem) {
  .figures thead { position: absolute; left: -999rem; }
  .figures tr, .figures tbody th, .figures td { display: block; border: 0; padding: 0; }
  .figures tr { border-bottom: 1px solid #000; padding: .2em 0; }
  .figures td::before { content: attr(data-column) ": "; }
  .tick { width: 2.1em; }
  .do th { width: 4.6em; }
}
@media print {
  body { font-size: 13.5pt; line-height: 1.25; }
  .work td, .work tbody th { padding-top: .15em; padding-bottom: .2em; }
  main { max-width: none; padding: 0; }
  h1:first-child, h2:first-child { margin-top: 0; }
  .chart-page { break-before: page; break-inside: avoid; }
  .chart-page h3 { position: absolute; left: -999rem; }
}`;
