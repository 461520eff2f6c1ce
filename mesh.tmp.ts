import { readFileSync, writeFileSync, existsSync } from 'node:fs';
import { readScenario } from '/work/wt-step/sim/scenario/read.ts';
import { runSpeeds } from '/work/wt-step/sim/engine/point.ts';
import { withLength } from '/work/wt-step/sim/sweep/sweep.ts';
const tag = process.argv[2]!; const meshes = process.argv[3]!.split(',').map(m=>m.split('/').map(Number)); const change = process.argv[4];
const f='/work/wt-step/scenarios/hill-climb.yaml';
let { engine } = readScenario(readFileSync(f,'utf8'), f) as any;
const lengths=[60,90,150,210,300], speeds=[3000,4200,5000,5800,6600,7400,8600];
const out: any = existsSync(`/tmp/mesh-${tag}.json`) ? JSON.parse(readFileSync(`/tmp/mesh-${tag}.json`,'utf8')) : {};
for (const [a,b] of meshes) {
  const c0=process.cpuUsage(); const rows:number[]=[]; let cyc=0, uns=0;
  for (const L of lengths) { const e={...withLength(engine, L/1e3), numerics:{...engine.numerics, intakeCell:a!/1e3, exhaustCell:b!/1e3, settle: a!<4?3e-4:1e-3}};
    for (const r of runSpeeds(e, speeds) as any[]) { rows.push(r.volumetricEfficiency ?? NaN); cyc+=r.cycles; if(!r.settled) uns++; } }
  out[`${a}/${b}`]=rows; const c=process.cpuUsage(c0); console.log(tag, a, b, 'ms/point', (c.user/1e3/35).toFixed(1), 'cycles', cyc/35, 'unsettled', uns);
}
writeFileSync(`/tmp/mesh-${tag}.json`, JSON.stringify(out));
const ref=out['2.5/6.25'] ; if (ref) { const stat=(v:number[])=>{const d=v.map((x,i)=>100*(x/ref[i]-1)); return `max ${Math.max(...d.map(Math.abs)).toFixed(3)} rms ${Math.sqrt(d.reduce((s,x)=>s+x*x,0)/d.length).toFixed(3)} mean ${(d.reduce((s,x)=>s+x,0)/d.length).toFixed(3)}`;};
 for (const m of Object.keys(out)) { console.log(m, stat(out[m])); const [a,b]=m.split('/').map(Number); const c=out[`${2*a!}/${2*b!}`]; if (c) for (const w of [1/3,0.5,0.7,1]) console.log('   +', w.toFixed(2), stat(out[m].map((x:number,i:number)=>x+w*(x-c[i])))); } }
