import { readFileSync } from 'node:fs';
import { readScenario } from '/work/wt-step/sim/scenario/read.ts';
import { engineModel } from '/work/wt-step/sim/engine/plan.ts';
import { Run } from '/work/wt-step/sim/engine/cycle.ts';
const f='/work/wt-step/scenarios/hill-climb.yaml';
const { engine } = readScenario(readFileSync(f,'utf8'), f) as any;
const model = engineModel({...engine, numerics:{...engine.numerics,intakeCell:0.02,exhaustCell:0.05}}); const {N,K,column,place}=model.network.layout; N[6]=1; const run = new Run(model, 6000);
run.start(false); const node:any = model.network.nodes.find(n=>n.kind==='mouth'); 
const l=model.lines[0]!; const rows:string[]=[]; let s=0;
try { for (let c=0;c<3;c++) { run.beginCycle(); for(;;) { model.network.run(1); s++; rows.push(`${s} ${column[1]!.toFixed(1)} dt ${(column[0]!*1e6).toFixed(1)} pm ${node.state.slots[0].toFixed(0)} w ${node.state.slots[1].toFixed(1)} | u ${[...l.trumpet.prim.u].map(x=>x.toFixed(0)).join(' ')} | p ${[...l.trumpet.prim.p].map(x=>(x/100).toFixed(0)).join(' ')} T ${[...l.trumpet.prim.T].map(x=>x.toFixed(0)).join(' ')}  ghost ${l.trumpet.endState('low').map(x=>x.toPrecision(4)).join(' ')} plate ${l.trumpet.endState('high').slice(0,3).map(x=>x.toPrecision(4)).join(' ')}`); if(!(column[4]!>0)) { run.arrive(); break; } } } } catch(e) {console.log(String(e).slice(0,90))}
console.log(rows.slice(-14).join('\n'));
