/** Every question that the program answers: a line each. A new one is a folder beside this file. */
import { airboxStudy } from './airbox/index.ts';
import { balanceStudy } from './balance/index.ts';
import { checkStudy } from './check/index.ts';
import { compareStudy } from './compare/index.ts';
import { curveStudy } from './curve/index.ts';
import { idleStudy } from './idle/index.ts';
import { injectStudy } from './inject/index.ts';
import { sweepStudy } from './length/index.ts';
import { listenStudy } from './listen/index.ts';
import { loadStudy } from './load/index.ts';
import { meterStudy } from './meter/index.ts';
import { pedalStudy } from './pedal/index.ts';
import { plenumStudy } from './plenum/index.ts';
import { responseStudy } from './response/index.ts';
import { signalStudy } from './signal/index.ts';
import type { Study } from './study.ts';
import { tableStudy } from './table/index.ts';
import { traceStudy } from './trace/index.ts';
import { trimsStudy } from './trims/index.ts';
import { worthStudy } from './worth/index.ts';

export const STUDIES: readonly Study[] = [
  checkStudy,
  sweepStudy,
  tableStudy,
  curveStudy,
  traceStudy,
  injectStudy,
  signalStudy,
  idleStudy,
  compareStudy,
  pedalStudy,
  trimsStudy,
  balanceStudy,
  listenStudy,
  loadStudy,
  plenumStudy,
  airboxStudy,
  responseStudy,
  meterStudy,
  worthStudy,
];
