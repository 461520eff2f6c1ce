/** Computes the points that the goldens are made of. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { answerOf, callsOf } from './calls.ts';
import { DEMOS, JOINED, UNEVEN } from './cheap.ts';
import { type KnownPoints, learningWorkers, pointsFile, pointsText, readPoints } from './points.ts';

const anew = process.argv.includes('--anew');

for (const demo of [...DEMOS, ...UNEVEN, ...JOINED]) {
  const points: KnownPoints = {};
  const earlier = anew ? {} : readPoints(demo);
  for (const call of callsOf(demo)) {
    const start = performance.now();
    const { code, stderr } = await answerOf(demo, call, (of) =>
      learningWorkers(of, points, earlier),
    );
    const seconds = ((performance.now() - start) / 1e3).toFixed(1);
    console.log(`${demo} ${call.name}: ${code} in ${seconds} s ${stderr}`);
  }
  mkdirSync(dirname(pointsFile(demo)), { recursive: true });
  writeFileSync(pointsFile(demo), pointsText(points));
}
