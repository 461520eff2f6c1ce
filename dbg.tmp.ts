import { readFileSync } from 'node:fs';
import { readScenario } from '/work/wt-step/sim/scenario/read.ts';
import { engineModel } from '/work/wt-step/sim/engine/plan.ts';
import { Run } from '/work/wt-step/sim/engine/cycle.ts';
const f='/work/wt-step/scenarios/hill-climb.yaml';
const { engine } = readScenario(readFileSync(f,'utf8'), f) as any;
const model = engineModel({...engine, numerics:{...engine.numerics,intakeCell:0.02,exhaustCell:0.05}}); const run = new Run(model, 6000);
const node:any = model.network.nodes.find(n=>n.kind==='mouth');
console.log(node.impedance, node.share);
run.start(false); run.stride=0.1;
let rows:string[]=[];
run.onStop=(a)=>{ const l=model.lines[0]!; rows.push(`${a.toFixed(0)} p ${node.state.slots[0].toFixed(0)} w ${node.state.slots[1].toFixed(2)} v ${(l.mouth.flow.mass/l.mouth.area/1.2).toFixed(2)} pcell ${l.trumpet.prim.p[0]!.toFixed(0)} u ${l.trumpet.prim.u[0]!.toFixed(2)}`); };
try { run.cycle(); run.cycle(); } catch (e) {console.log(String(e))}
console.log(rows.slice(0,20).join("\n")); console.log(rows.slice(-12).join("\n"));
