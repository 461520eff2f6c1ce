/**
 * One cycle of an engine whose runners a bar joins, all cylinders solved: pressures against the crank, the air
 * that each cylinder closes on, and what every hose takes and gives.
 */
import { byAngle } from '../crankAngle.ts';
import type { Duct } from '../duct/duct.ts';
import type { EngineSpecification } from '../specification.ts';
import type { Audit } from './audit.ts';
import { type Bar, heldBy } from './bars.ts';
import { Run } from './cycle.ts';
import { inLanes } from './lanes.ts';
import type { EngineModel } from './plan.ts';
import { type PointResult, settleSpeeds } from './point.ts';

/** A hose over the cycle. */
export interface HoseCycle {
  /** Gas out of the runner into it less what comes back, and what goes out alone [kg]. */
  net: number;
  out: number;
}

/** A cylinder over the cycle, by its place in the firing order. */
export interface JoinedCylinder {
  /** Air at its intake closing [kg]. */
  air: number;
  /** Mean pressure over time behind its plate [Pa], and at each angle of the cycle. */
  mean: number;
  pressure: number[];
  /** Temperature of what leaves by its exhaust valve, mean by mass [K]. */
  exhaust: number;
}

/** A bar over the cycle. */
export interface JoinedBar {
  hoses: HoseCycle[];
  /** In the bar, and at its sensor [Pa]. */
  inside: number[];
  sensor: number[];
  /** Air of the feed through its valve [kg]; 0 where it has none. */
  fed: number;
  /** Mass that the bar and its hoses hold more at the end than at the start [kg]. */
  gained: number;
}

export interface JoinedCycle {
  point: PointResult;
  /** Crank angle of each row [deg], rising. */
  crankAngle: number[];
  /** In firing order. */
  cylinders: JoinedCylinder[];
  bars: JoinedBar[];
  audit: Audit;
}

/** Rows lie at most so far apart [deg]. */
const SPACING = 1;

/** Throws NonPhysicalStateError where the computation fails. */
export function joinedCycle(engine: EngineSpecification, speed: number): JoinedCycle {
  const settled = settleSpeeds(engine, [speed], 'all', inLanes)[0]!;
  if (settled instanceof Error) throw settled;
  const { model, column, result: point } = settled;
  model.network.load(column);
  const run = new Run(model, speed);
  run.start(true);
  run.stride = SPACING;
  const cycle: JoinedCycle = {
    point,
    crankAngle: [],
    cylinders: model.lines.map(() => ({ air: 0, mean: 0, pressure: [], exhaust: 0 })),
    bars: model.bars.map(() => ({ hoses: [], inside: [], sensor: [], fed: 0, gained: 0 })),
    audit: point.audit,
  };
  const held = model.bars.map(heldBy);
  const hot = model.lines.map(() => new Exhaust());
  run.onStop = (crankAngle) => {
    note(cycle, model, crankAngle);
    model.lines.forEach(({ primary }, i) => {
      hot[i]!.add(primary);
    });
  };
  run.cycle().forEach(({ trapped, portPressure: mean }, i) => {
    Object.assign(cycle.cylinders[i]!, { air: trapped.air, mean, exhaust: hot[i]!.temperature });
  });
  model.bars.forEach((bar, i) => {
    Object.assign(cycle.bars[i]!, told(bar), { gained: heldBy(bar) - held[i]! });
  });
  return inOrder(cycle);
}

/** What flows off behind an exhaust valve, stop by stop; what flows back counts against it. */
class Exhaust {
  private flow = 0;
  private heat = 0;

  add({ cells, prim }: Duct): void {
    const flow = cells.momentum.at(0);
    this.flow += flow;
    this.heat += flow * prim.T.at(0);
  }

  get temperature(): number {
    return this.heat / this.flow;
  }
}

function inOrder({ crankAngle, cylinders, bars, ...rest }: JoinedCycle): JoinedCycle {
  const sorted = byAngle(crankAngle);
  return {
    ...rest,
    crankAngle: sorted(crankAngle),
    cylinders: cylinders.map((one) => ({ ...one, pressure: sorted(one.pressure) })),
    bars: bars.map((one) => ({ ...one, inside: sorted(one.inside), sensor: sorted(one.sensor) })),
  };
}

function note({ crankAngle, cylinders, bars }: JoinedCycle, model: EngineModel, at: number): void {
  crankAngle.push(at);
  model.lines.forEach(({ runner }, i) => {
    cylinders[i]!.pressure.push(runner.prim.p.at(0));
  });
  model.bars.forEach(({ inside, sensed }, i) => {
    bars[i]!.inside.push(inside());
    bars[i]!.sensor.push(sensed());
  });
}

function told({ hoses, passage }: Bar): Pick<JoinedBar, 'hoses' | 'fed'> {
  const cycles = hoses.map(({ sums }): HoseCycle => ({ net: sums.in - sums.out, out: sums.in }));
  const fed = passage ? passage.sums.in - passage.sums.out : 0;
  return { hoses: cycles, fed };
}
