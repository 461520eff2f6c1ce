import { readFileSync, writeFileSync } from 'node:fs';
import { readScenario } from '/work/wt-step/sim/scenario/read.ts';
import { engineModel } from '/work/wt-step/sim/engine/plan.ts';
import { Run } from '/work/wt-step/sim/engine/cycle.ts';
import { load } from '/work/wt-step/sim/kernel/load.ts';
import { BYTES } from '/work/wt-step/sim/kernel/f64x2.ts';
const f='/work/wt-step/scenarios/hill-climb.yaml';
const { engine } = readScenario(readFileSync(f,'utf8'), f) as any;
const bytes = process.argv[2] ? readFileSync(process.argv[2]) : Buffer.from(BYTES,'base64');
const model = engineModel(engine); const run = new Run(model, 6000); run.start(false); run.beginCycle();
const { N, K, column } = model.network.layout;
const k = load(new WebAssembly.Module(bytes), 'f64x2', 1<<17); k.N.set(N); k.K.set(K as any);
for (let i=0;i<column.length;i++) { k.X[2*i]=column[i]!; k.X[2*i+1]=column[i]!; }
k.X[2*5+1]=6*5000;
let best=1e9; const cells = model.network.ducts.reduce((s,d)=>s+d.mesh.cells,0);
for (let r=0;r<25;r++) { k.X[2*4]=1e6; k.X[2*4+1]=1e6; const t=process.cpuUsage(); k.call.run!(600); const u=process.cpuUsage(t).user/600; best=Math.min(best,u); }
console.log('us a step (2 lanes)', best.toFixed(2), 'cells', cells, 'ns a cell-lane all', (best*1000/cells/2).toFixed(1), column[0]);
