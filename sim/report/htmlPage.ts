/** The frame of every report: one file that needs no other, for screen, phone, dark and paper. */

import { scenarioHash } from '../scenario/hash.ts';
import type { Scenario } from '../scenario/resolve.ts';
import { PROGRAM } from '../version.ts';
import { html, Markup } from './markup.ts';

const STYLE = `
:root { color-scheme: light dark;
  --paper: #fbfaf7; --ink: #1d2126; --faint: #5a6169; --rule: #d5d2c8; --wash: #eef0e6;
  --cut: #00558c; --now: #a84300; --third: #5b3a8c; --other: #8a8f94; --flag: #7a4b00; --flagWash: #fbf0d8; }
@media (prefers-color-scheme: dark) { :root {
  --paper: #16191d; --ink: #e6e4dd; --faint: #a6abb1; --rule: #3b4148; --wash: #22282b;
  --cut: #6cb9ee; --now: #f0985a; --third: #c3a5f2; --other: #7d848b; --flag: #f1cf8a; --flagWash: #332a17; } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1.5rem 1rem 4rem; max-width: 60rem; background: var(--paper);
  color: var(--ink); font: 1rem/1.5 system-ui, sans-serif; }
h1 { font-size: 1.15rem; font-weight: 600; margin: 0 0 1.2rem; color: var(--faint); }
h2 { font-size: 1.2rem; margin: 2.6rem 0 .6rem; }
h3 { font-size: 1rem; margin: 1.4rem 0 .3rem; }
p, li { max-width: 44rem; overflow-wrap: break-word; }
.answer { border-left: .4rem solid var(--cut); padding: .2rem 0 .2rem 1rem; margin: 0 0 1.5rem; }
.answer p { margin: .35rem 0; }
.answer p:first-child { font-size: 1.6rem; line-height: 1.25; font-weight: 650; }
.flag { background: var(--flagWash); color: var(--flag); padding: .6rem .9rem; border-radius: .3rem; }
.note { color: var(--faint); font-size: .9rem; }
figure { margin: 1rem 0; }
figcaption { font-weight: 600; margin-bottom: .3rem; }
svg { display: block; width: 100%; min-width: 36rem; height: auto; font: 13px system-ui, sans-serif; }
svg text { fill: var(--ink); }
.grid { stroke: var(--rule); } .tick, .limit, .leader { stroke: var(--faint); }
.limit { stroke-dasharray: 3 3; } .leader { stroke-width: .7; }
.band { fill: var(--wash); } svg .bandName { fill: var(--faint); }
.line { fill: none; stroke-width: 2; stroke-linejoin: round; }
.line.cut { stroke: var(--cut); stroke-width: 3; }
.line.now { stroke: var(--now); stroke-dasharray: 8 5; }
.line.third { stroke: var(--third); stroke-dasharray: 10 3 2 3; }
.strip { stroke: none; opacity: .18; } .strip.cut { fill: var(--cut); } .strip.now { fill: var(--now); }
.strip.third, .strip.other { fill: var(--third); }
.line.other { stroke: var(--other); stroke-dasharray: 2 4; stroke-width: 1.6; }
svg .name.cut { fill: var(--cut); font-weight: 650; } svg .name.now { fill: var(--now); }
svg .name.third { fill: var(--third); } svg .name.other { fill: var(--faint); }
.dot { stroke: none; } .dot.cut { fill: var(--cut); } .dot.now { fill: var(--now); } .dot.third { fill: var(--third); } .dot.other { fill: none; }
.wall, .measure, .plate { stroke: var(--ink); stroke-width: 2; fill: none; }
.centre { stroke: var(--faint); stroke-dasharray: 12 4 2 4; } .arrow { fill: var(--ink); }
svg .strong { font-weight: 650; }
svg .name { paint-order: stroke; stroke: var(--paper); stroke-width: 4px; stroke-linejoin: round; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; font-variant-numeric: tabular-nums; font-size: .92rem; }
th, td { padding: .22rem .6rem; text-align: right; border-bottom: 1px solid var(--rule); vertical-align: top; }
th { font-weight: 600; } .words th, .words td, .word { text-align: left; }
tr.cut td, tr.cut th { color: var(--cut); font-weight: 650; }
tr.now td, tr.now th { color: var(--now); }
.map td { padding: .22rem .4rem; border: 0; print-color-adjust: exact; -webkit-print-color-adjust: exact; }
.map th { white-space: nowrap; } .failed { color: var(--flag); }
footer code { overflow-wrap: anywhere; }
.wide td, .wide th { white-space: nowrap; }
.sheet .word { white-space: normal; }
@media (max-width: 40rem) { .sheet .word { font-size: .85rem; padding: .22rem .35rem; hyphens: auto; } }
:focus-visible { outline: 3px solid var(--cut); outline-offset: 2px; }
footer { margin-top: 3rem; border-top: 1px solid var(--rule); padding-top: .6rem; }
@media print { :root { --paper: #fff; --ink: #000; --faint: #333; --rule: #bbb; --wash: #eee;
  --cut: #00558c; --now: #a84300; --third: #5b3a8c; --other: #777; --flag: #000; --flagWash: #fff; }
  body { max-width: none; padding: 0; font-size: 10pt; } .wide { overflow: visible; }
  svg { min-width: 0; } .wide td, .wide th { white-space: normal; }
  .map { font-size: 6.5pt; } .map td, .map th { padding: .1rem .15rem; }
  figure, table, .answer { break-inside: avoid; } h2 { break-after: avoid; }
  .sheet { font-size: 7.5pt; line-height: 1.15; } .sheet .screen { display: none; }
  .sheet h1 { margin: 0 0 .4rem; } .sheet h2 { font-size: 9.5pt; margin: .6rem 0 .2rem; }
  .sheet p, .sheet li { max-width: none; } .sheet ul { margin: .2rem 0; padding-left: 1.2rem; }
  .sheet .answer { margin: 0 0 .4rem; } .sheet .answer p { margin: .15rem 0; }
  .sheet .answer p:first-child { font-size: 12pt; } .sheet .flag { margin: .1rem 0; padding: .05rem .5rem; }
  .sheet table { font-size: 7.5pt; } .sheet th, .sheet td { padding: .05rem .4rem; } .sheet tbody th { white-space: nowrap; } .sheet + footer { margin-top: .4rem; font-size: 7pt; line-height: 1.2; } .sheet + footer p { max-width: none; margin: .2rem 0; } }
@page { margin: 8mm; }
`;

/** Nothing may be loaded, from anywhere. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'";

/** @param sheet whether paper has one page of it alone; what is of class `screen` stays off it */
export function htmlPage(title: string, body: Markup, scenario: Scenario, sheet = false): string {
  return html`${new Markup('<!doctype html>')}
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<title>${title}</title>
<style>${new Markup(STYLE)}</style>
</head>
<body>
<main${sheet ? new Markup(' class="sheet"') : ''}>
${body}
</main>
<footer class="note">
<p>${PROGRAM.name} ${PROGRAM.version}. Resolved scenario: <code>${scenarioHash(scenario)}</code>. The same scenario and version give the same figures, digit for digit.</p>
</footer>
</body>
</html>
`.text;
}
