import { readFileSync } from 'node:fs';
import { readScenario } from '/work/wt-step/sim/scenario/read.ts';
import { engineModel } from '/work/wt-step/sim/engine/plan.ts';
import { Run } from '/work/wt-step/sim/engine/cycle.ts';
import { mouth } from '/work/wt-step/sim/step/mouth.ts';
import { use } from '/work/wt-step/sim/step/lanes.ts';
const f='/work/wt-step/scenarios/hill-climb.yaml';
const { engine } = readScenario(readFileSync(f,'utf8'), f) as any;
const model = engineModel({...engine, numerics:{...engine.numerics,intakeCell:0.02,exhaustCell:0.05}}); const {N,K,column,place}=model.network.layout; N[6]=8; const run = new Run(model, 6000);
run.start(false); const node:any = model.network.nodes.find(n=>n.kind==='mouth'); run.beginCycle();
const at = N[N[3]! + model.network.nodes.indexOf(node)]!; const end=N[at+2]!, q=N[at+3]!, sl=N[at+4]!, k=N[at+5]!;
let shown=0; const worst:any[]=[];
for (let s=0;s<470;s++) { model.network.run(1); if(!(column[4]!>0)) break;
  { const save=column.slice(); const v=[]; for (const it of [1,8]) { column.set(save); N[6]=it; use({N,K,X:column}); mouth(end,q,sl,k); v.push((node.ends[0].flow.mass/node.ends[0].area).toFixed(4)); } column.set(save); N[6]=8; worst.push([Math.abs(+v[0]!-+v[1]!), s, ...v, save[sl], save[sl+1],save[sl+2],save[sl+3]]); } }
worst.sort((a,b)=>b[0]-a[0]); console.log(worst.slice(0,12).map(r=>r.join(' ')).join('\n'));
