import { readFileSync } from 'node:fs';
import { readScenario } from '/work/wt-step/sim/scenario/read.ts';
import { engineModel } from '/work/wt-step/sim/engine/plan.ts';
import { Run } from '/work/wt-step/sim/engine/cycle.ts';
const f='/work/wt-step/scenarios/hill-climb.yaml';
const { engine } = readScenario(readFileSync(f,'utf8'), f) as any;
for (const it of [1,3,8]) { const model = engineModel({...engine, numerics:{...engine.numerics,intakeCell:0.02,exhaustCell:0.05}}); model.network.layout.N[6]=it; const run = new Run(model, 6000);
run.start(false); const node:any = model.network.nodes.find(n=>n.kind==='mouth'); run.beginCycle(); const col=model.network.layout.column; let n=0;
for (let s=0;s<470;s++) { try { model.network.run(1);} catch(e) { console.log('boom'); break; } const l=model.lines[0]!; const [rho,u,p]=l.trumpet.endState('low'); const pm=98500+node.state.slots[0]; if (u! < -0.5 && Math.abs(p!-pm)>30 && n++<8 || u!>0.5 && n++<3) console.log(it, s, col[1]!.toFixed(1), 'dt us', (col[0]!*1e6).toFixed(1), 'u', u!.toFixed(3), 'p end', p!.toFixed(1), 'p mouth', pm.toFixed(1), 'w', node.state.slots[1].toFixed(2)); if(!(col[4]!>0)) break; } }
