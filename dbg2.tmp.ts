import { readFileSync } from 'node:fs';
import { readScenario } from '/work/wt-step/sim/scenario/read.ts';
import { engineModel } from '/work/wt-step/sim/engine/plan.ts';
import { Run } from '/work/wt-step/sim/engine/cycle.ts';
const f='/work/wt-step/scenarios/hill-climb.yaml';
const { engine } = readScenario(readFileSync(f,'utf8'), f) as any;
for (const it of [1,2,3,8]) { const model = engineModel({...engine, numerics:{...engine.numerics,intakeCell:0.02,exhaustCell:0.05}}); model.network.layout.N[6]=it; const run = new Run(model, 6000);
run.start(false); const out=[]; try { for (let c=0;c<9;c++) { const r=run.cycle()[0]!; out.push((r.trapped.air*1e6).toFixed(2)); } } catch(e) { out.push(String(e).slice(0,60)); } console.log(it, out.join(' ')); }
