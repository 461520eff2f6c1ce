/** Bodies elsewhere along their intakes, mouth, head and all lengths between them in place. */
import { lengthOf, profileOf } from '../../duct/profile.ts';
import { shortestLength } from '../../scenario/readValue.ts';
import type { EngineSpecification } from '../../specification.ts';

/** @param by towards the valve [m] */
export function movedBodies(engine: EngineSpecification, by: number): EngineSpecification {
  const { trumpet, runner, trumpetLengths, facingWall } = engine.intake;
  const intake = {
    ...engine.intake,
    trumpet: { ...trumpet, length: trumpet.length + by },
    runner: { ...runner, length: runner.length - by },
    ...(trumpetLengths && { trumpetLengths: trumpetLengths.map((length) => length + by) }),
    ...(facingWall !== undefined && { facingWall: facingWall + by }),
  };
  return { ...engine, intake };
}

/** What is left of a pipe that a body is moved over [m]. */
const LEFT = 0.001;

/** How far bodies can go, towards the valve and away from it [m]; 0 where there is no room. */
export function roomOf(engine: EngineSpecification): { near: number; far: number } {
  const { trumpet, runner, trumpetLengths = [trumpet.length] } = engine.intake;
  return {
    near: Math.max(runner.length - LEFT, 0),
    far: Math.max(Math.min(...trumpetLengths) - shortestLength(engine), 0),
  };
}

/** From the plate to the valve along the centre line [m]. */
export function plateToValve({ intake }: EngineSpecification): number {
  const { throttle, runner, port } = intake;
  const behind = throttle.length - throttle.shaftPosition;
  const body = { length: behind, outerDiameter: throttle.bore, innerDiameter: throttle.bore };
  return lengthOf(profileOf([body, runner, port].filter(({ length }) => length > 0)));
}
