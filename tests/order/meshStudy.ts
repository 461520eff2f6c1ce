/**
 * Change of volumetric efficiency when every cell is halved and halved again, over the whole speed
 * range of a scenario, and the observed order. Takes minutes:
 *
 *   node --import tsx tests/order/meshStudy.ts hill-climb
 */
import { runPoint } from '../../sim/engine/point.ts';
import { type Demo, demo, meshed } from '../scenario.ts';

const name = (process.argv[2] ?? 'hill-climb') as Demo;
const { engine, speeds } = demo(name);
const percent = (a: number, b: number) => `${(100 * (b / a - 1)).toFixed(3)} %`;

console.info(`${name}: rpm, volumetric efficiency at cell, cell/2, cell/4, changes, order`);
for (const speed of speeds) {
  const [a, b, c] = [1, 0.5, 0.25].map(
    (factor) => runPoint(meshed(engine, factor, 5e-5), speed).volumetricEfficiency,
  ) as [number, number, number];
  const order = Math.log2(Math.abs((a - b) / (b - c))).toFixed(2);
  const values = [a, b, c].map((x) => x.toFixed(5)).join('  ');
  console.info(`${speed}  ${values}  ${percent(a, b)}  ${percent(b, c)}  ${order}`);
}
