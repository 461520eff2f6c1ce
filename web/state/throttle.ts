/** What studies say of plates, said of what throttles on the engine that was asked about. */
import { throttleNamed } from '../../sim/index.ts';
import { study } from './study.ts';

/** Text or plain data with slide or barrel where the engine has one. */
export function ofThrottle<T>(told: T): T {
  const engine = study.peek()?.scenario.engine;
  return engine ? throttleNamed(told, engine.intake.throttle) : told;
}
