/** How a page looks that is not made for a terminal: for a telephone, a screen and paper. */
import { Html } from "./html.ts";

export const style = new Html(`
:root { color-scheme: light; }
* { box-sizing: border-box; }
body { font: 16px/1.5 Arial, "Liberation Sans", Helvetica, sans-serif; color: #1f2328; background: #fff; margin: 0; overflow-wrap: anywhere; }
header, main, footer, nav { max-width: 62rem; margin: 0 auto; padding: 0 1rem; }
header { padding-top: 1.5rem; border-bottom: 2px solid #1f5f78; }
h1 { font-size: 1.6rem; line-height: 1.25; margin: 0 0 .25rem; }
h2 { font-size: 1.25rem; margin: 2rem 0 .5rem; border-bottom: 1px solid #d0d4d8; }
h3 { font-size: 1rem; margin: 1.2rem 0 .3rem; }
p { margin: .4rem 0; } ul, ol { margin: .4rem 0; padding-left: 1.4rem; }
.by { color: #57606a; margin: 0 0 .8rem; }
.answer { background: #eef4f6; border-left: 4px solid #1f5f78; padding: .6rem 1rem; margin: 1rem 0; }
.answer p { margin: .35rem 0; } .answer h2 { border: 0; margin: 0 0 .3rem; }
.stop { border: 4px solid #1f2328; padding: .6rem 1rem; margin: 1rem 0; font-weight: bold; }
.stop p { font-weight: normal; } pre { white-space: pre-wrap; margin: .2rem 0; font: .85em ui-monospace, "Liberation Mono", monospace; color: #57606a; }
nav { padding-top: .6rem; } nav a { margin-right: 1rem; } a { color: #14506a; }
input[type=search] { font: inherit; width: 100%; padding: .4rem; border: 1px solid #57606a; }
figure { margin: 1rem 0; break-inside: avoid; } figcaption { font-weight: bold; margin-bottom: .3rem; }
figure svg { width: 100%; height: auto; max-width: 640px; display: block; }
#figure-lungs svg, #figure-snout svg { max-width: 360px; }
.photograph { max-width: 480px; } .photograph figcaption { font-weight: normal; } .photograph img { max-height: 28rem; width: auto; } img { max-width: 100%; height: auto; }
.letterhead { display: flex; gap: 1rem; align-items: start; margin-bottom: 1.2rem; } .letterhead p { margin: 0; font-size: .9rem; }
.letterhead img { max-width: 10rem; max-height: 5rem; flex: none; }
.wide { overflow-x: auto; } .wide:focus { outline: 2px solid #1f5f78; }
table { border-collapse: collapse; width: 100%; font-size: .9rem; margin: .6rem 0; overflow-wrap: normal; }
th, td { text-align: left; vertical-align: top; padding: .25rem .6rem .25rem 0; border-bottom: 1px solid #d0d4d8; min-width: 4rem; overflow-wrap: anywhere; }
.wide th, .wide td { overflow-wrap: break-word; }
thead th { color: #57606a; font-weight: normal; } tbody th { font-weight: normal; }
code { font: .85em ui-monospace, "Liberation Mono", monospace; }
footer { color: #57606a; font-size: .85rem; padding-top: 2rem; padding-bottom: 2rem; }
@page { margin: 16mm 15mm; }
@media print {
  body { font-size: 10.5pt; line-height: 1.35; } header, main, footer { max-width: none; padding: 0; }
  h2, h3, figcaption { break-after: avoid; } tr, li, .answer { break-inside: avoid; } .wide { overflow: visible; }
  figure svg { max-width: 132mm; } #figure-lungs svg, #figure-snout svg { max-width: 80mm; }
  .photograph { max-width: 120mm; } .photograph img { max-height: 110mm; width: auto; }
  #figure-snouts svg { max-width: 170mm; }
}
`);
