/** How the sheet looks: black and grey on white, measures of paper. */
import { Html } from "../page/html.ts";

export const style = (wide: number, high: number, margin: number): Html =>
  new Html(`
@page { size: ${wide}mm ${high}mm; margin: 0; }
* { box-sizing: border-box; margin: 0; padding: 0; }
body { font: 8pt/1.2 Arial, "Liberation Sans", Helvetica, sans-serif; color: #000; background: #fff; }
.page { width: ${wide}mm; height: ${high - 0.2}mm; padding: ${margin}mm; display: flex; flex-direction: column; gap: 1.6mm;
  break-after: page; break-inside: avoid; overflow-wrap: anywhere; }
.page:last-child { break-after: auto; }
@media screen { body { background: #ddd; } .page { background: #fff; margin: 4mm auto; } }
header { display: flex; justify-content: space-between; align-items: baseline; gap: 6mm; border-bottom: .5mm solid #000; font-size: 12pt; }
header strong { font-size: 13pt; text-align: right; }
footer { display: flex; justify-content: space-between; gap: 6mm; margin-top: auto; font-size: 6.5pt; color: #444; }
h2 { font-size: 8.5pt; }
small { font-size: 6.5pt; color: #444; font-weight: normal; }
.box { display: inline-block; width: 3.8mm; height: 3.8mm; border: .3mm solid #000; vertical-align: middle; }
.notice { border: .9mm solid #000; padding: 2mm; font-size: 10pt; }
.notice h2 { font-size: 13pt; }
.notice p { margin-top: 1mm; font-weight: bold; }
.notice li { margin-left: 4mm; }
.cautions { border: .5mm solid #000; padding: 1mm 1.6mm; font-size: 7pt; }
.cautions ul { columns: 2; column-gap: 5mm; list-style: none; }
.cautions li { break-inside: avoid; padding-left: 2.4mm; text-indent: -2.4mm; }
.cautions li::before { content: "! "; font-weight: bold; }
.looks { display: grid; grid-template-columns: 1fr 1fr; column-gap: 5mm; border: .3mm solid #000; padding: 1mm 1.6mm; }
.look { display: grid; grid-template-columns: 1fr 11mm 11mm 13mm; align-items: center; min-height: 5mm; padding: .3mm 0; font-size: 7.5pt; border-top: .15mm solid #999; }
.look span:not(:first-child) { text-align: center; }
.look.head { border: 0; min-height: 0; }
.facts { display: flex; flex-wrap: wrap; border-left: .2mm solid #777; border-top: .2mm solid #777; }
.facts div { border-right: .2mm solid #777; border-bottom: .2mm solid #777; padding: .2mm 1mm; min-height: 7.3mm; min-width: 0; }
.facts small { display: block; }
.facts small { line-height: 1.1; }
.facts span { font-size: 8.5pt; font-weight: bold; line-height: 1.1; }
.organs { display: flex; flex-direction: column; flex: 1 1 auto; }
.step { display: grid; grid-template-columns: 35mm 1fr; border-top: .3mm solid #000; flex: 1 1 auto; }
.organs > .step:last-of-type { border-bottom: .3mm solid #000; }
.step > b { font-size: 6.5pt; padding: .8mm 1mm 0 0; }
.rows { display: flex; flex-direction: column; }
.row { display: grid; grid-template-columns: 43mm 12mm 14mm 1fr; align-items: center; min-height: 5mm; max-height: 12mm; flex: 1 1 auto; border-top: .15mm solid #999; }
.rows > .row:first-child { border-top: 0; }
.row > span:nth-child(2), .row > span:nth-child(3) { text-align: center; }
.row > span:nth-child(4) { padding-left: 2mm; }
.step.head { flex: 0 0 auto; border: 0; font-size: 6.5pt; color: #444; }
.step.head > b { font-size: 6.5pt; font-weight: normal; padding-top: 0; }
.step.head .row { min-height: 0; max-height: none; align-items: end; border: 0; }
.row.half { grid-template-columns: 1fr 1fr; color: #666; }
.half > div { display: grid; grid-template-columns: 38mm 6mm 6mm 1fr; align-items: center; align-self: stretch; min-height: 4.6mm; font-size: 7.5pt; }
.half > div + div { border-left: .15mm solid #999; padding-left: 1mm; }
.half .box { border-color: #666; }
.drawings { display: flex; gap: 4mm; border: .3mm solid #000; padding: 1mm 1.6mm; }
.drawings > div { display: grid; grid-template-columns: auto 1fr; grid-template-rows: auto auto 1fr; column-gap: 3mm; flex: 1 1 0; align-content: start; }
.drawings h2, .drawings p { grid-column: 1 / -1; }
.drawings p { font-size: 7pt; }
.drawings svg { height: 41mm; width: auto; }
.blanks { display: grid; gap: 1.2mm; align-content: center; font-size: 7pt; }
.blank { display: inline-block; border-bottom: .2mm solid #000; min-width: 9mm; height: 4mm; vertical-align: bottom; }
.samples { border: .3mm solid #000; padding: 1mm 1.6mm; }
.samples ol { list-style: none; columns: 3; column-gap: 5mm; }
.samples li { display: grid; grid-template-columns: 5.5mm 1fr; align-items: center; min-height: 5.2mm; border-bottom: .15mm solid #999; break-inside: avoid; font-size: 7.5pt; }
.notes { flex: 1 1 auto; border: .3mm solid #000; padding: 1mm 1.6mm; }
table { border-collapse: collapse; width: 100%; table-layout: fixed; flex: 1 1 auto; }
th, td { border: .2mm solid #555; text-align: center; font-size: 7pt; }
th { font-weight: normal; padding: .4mm 0; }
thead tr:first-child th { font-weight: bold; }
td { font-size: 8.5pt; height: 5.8mm; }
.thick { border-left: .6mm solid #000; }
tbody tr:nth-child(5n) td { border-bottom: .5mm solid #000; }
.legend { display: flex; gap: 4mm; align-items: center; }
.legend svg { height: 30mm; width: auto; flex: 0 0 auto; }
.legend p { font-size: 7.5pt; margin-top: .6mm; }
svg text { fill: #444; font: 16px Arial, "Liberation Sans", Helvetica, sans-serif; }
svg.lungs text { font-size: 22px; }
svg .line { stroke: #777; stroke-width: 1.4; fill: none; }
svg .body, svg .bone, svg .rest { fill: #f2f2f2; stroke: #777; stroke-width: 1.4; }
svg .air { fill: #fff; stroke: #555; stroke-width: 1.4; }
svg .lobe { fill: #fff; stroke: #444; stroke-width: 2; }
svg .dashed { stroke-dasharray: 5 4; }
svg .edge, svg .tissue, svg .seen { fill: none; stroke-linecap: round; stroke-linejoin: round; }
svg .edge { stroke: #444; } svg .tissue, svg .seen { stroke: #fff; }
`);
