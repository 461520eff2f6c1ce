/** The spray of one cylinder's line, where the engine has injectors. */

import { wrapAngle } from '../crankAngle.ts';
import { sweptVolume } from '../cylinder/crank.ts';
import { circleArea } from '../duct/profile.ts';
import type { FuelName } from '../gas/fuel.ts';
import { throttleOf } from '../loss/throttles.ts';
import type { ThrottleSpecification } from '../specification.ts';
import { liquidFuel } from '../spray/liquidFuel.ts';
import { Spray } from '../spray/spray.ts';
import type { CylinderLine } from './cylinderLine.ts';
import type { EngineModel } from './plan.ts';

export function lineSpray(
  { spec, working }: EngineModel,
  speed: number,
  line: CylinderLine,
): Spray | undefined {
  const { injectors, intake, cylinder, combustion, ambient } = spec;
  if (!injectors) return undefined;
  const { gas, airFuelRatio } = working;
  const density = ambient.pressure / (gas.rAir * ambient.temperature);
  return new Spray({
    injectors,
    fuel: liquidFuel(combustion.fuel as FuelName),
    gas,
    mouth: line.mouth,
    intakeValve: line.intakeValve,
    cylinder: line.cylinder,
    rim: -line.flareDepth,
    plate: plateInTheWay(intake.throttle),
    valve: intake.valve,
    bore: cylinder.bore,
    sweptVolume: sweptVolume(cylinder),
    outside: intake.feed,
    speed,
    angles: {
      open: line.intakeLift.open,
      close: wrapAngle(line.intakeLift.close),
    },
    airFuelRatio,
    fullAir: density * sweptVolume(cylinder),
  });
}

/** Share of the bore that plate and shaft block, and the width of what is in the way [m]. */
function plateInTheWay(throttle: ThrottleSpecification): { blocked: number; width: number } {
  const blocked =
    1 - throttleOf(throttle).openArea(throttle, throttle.angle) / circleArea(throttle.bore);
  return { blocked, width: Math.max(throttle.shaftDiameter, blocked * throttle.bore) };
}
