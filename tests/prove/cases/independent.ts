/**
 * The solver on the two cases that a general-purpose tool solved outside this program: discontinuous
 * Galerkin in space and a library integrator in time, written from the equations in Python
 * (tests/independent/scipy, where the solutions lie). Cells are of the size engines are run with.
 */

import { readFileSync } from 'node:fs';
import { DuctEnd } from '../../../sim/boundary/ductEnd.ts';
import { openEnd, valve } from '../../../sim/boundary/node.ts';
import { OpenAir, type RestState } from '../../../sim/boundary/reservoir.ts';
import { Cylinder } from '../../../sim/cylinder/cylinder.ts';
import { Duct } from '../../../sim/duct/duct.ts';
import type { Field } from '../../../sim/duct/field.ts';
import { circleArea, diameterAt, profileOf } from '../../../sim/duct/profile.ts';
import { type Gas, perfectGas } from '../../../sim/gas/gas.ts';
import { interpolateLinear } from '../../../sim/interpolation.ts';
import { network, oneDuct } from '../../network.ts';

/** Cell size of the demo scenarios' intakes, about [m]. */
const CELL = 0.006;
interface Solution<Case> {
  gamma: number;
  gasConstant: number;
  case: Case;
  changeOnDoubling: Record<string, number>;
}

const read = <T>(name: string): T =>
  JSON.parse(
    readFileSync(new URL(`../../independent/scipy/${name}.json`, import.meta.url), 'utf8'),
  );

/** Largest difference of ours from theirs over the range of theirs. */
export function difference(ours: number[], theirs: number[]): number {
  const range = Math.max(...theirs) - Math.min(...theirs);
  return Math.max(...ours.map((value, i) => Math.abs(value - theirs[i]!))) / range;
}

/** Times or angles and what was seen there. */
class Signal {
  private readonly at: number[] = [];
  private readonly values: number[] = [];

  see(at: number, value: number): void {
    this.at.push(at);
    this.values.push(value);
  }

  sampled(at: readonly number[]): number[] {
    return at.map((x) => interpolateLinear(this.at, this.values, x));
  }
}

class SwingingAir extends OpenAir {
  become(gas: Gas, state: RestState): void {
    this.showState(gas, state);
  }
}

interface Runner
  extends Solution<{
    length: number;
    diameterOpen: number;
    diameterSwinging: number;
    fanning: number;
    pressure: number;
    temperature: number;
    swing: number;
    frequency: number;
    periods: number;
  }> {
  time: number[];
  pressure: number[];
  velocity: number[];
}

export function solveRunner({ case: c, gamma, gasConstant }: Runner) {
  const gas = perfectGas(gamma, gasConstant);
  const still = { pressure: c.pressure, temperature: c.temperature };
  const profile = profileOf([
    { length: c.length, outerDiameter: c.diameterOpen, innerDiameter: c.diameterSwinging },
  ]);
  const duct = new Duct(profile, {
    name: 'runner',
    largestCell: CELL,
    // A friction factor that is the same everywhere, as heads per length.
    lossPerLength: (x) => (4 * c.fanning) / diameterAt(profile, x),
  });
  duct.fill(gas, still);
  // Still gas whose pressure swings without change of entropy.
  const swinging = new SwingingAir(gas, still);
  const swing = (time: number) => {
    const p = 1 - c.swing * (1 - Math.cos(2 * Math.PI * c.frequency * time));
    const temperature = c.temperature * p ** ((gamma - 1) / gamma);
    swinging.become(gas, { pressure: c.pressure * p, temperature });
  };
  const net = oneDuct(
    duct,
    { gas },
    { low: (end) => openEnd(end, new OpenAir(gas, still)), high: (end) => openEnd(end, swinging) },
  );
  const [pressure, velocity] = [new Signal(), new Signal()];
  const middle = duct.mesh.cells / 2;
  const look = (time: number) => {
    const mean = (x: Field) =>
      Number.isInteger(middle) ? 0.5 * (x.at(middle - 1) + x.at(middle)) : x.at(Math.floor(middle));
    pressure.see(time, mean(duct.prim.p));
    velocity.see(time, mean(duct.prim.u));
  };
  look(0);
  const end = c.periods / c.frequency;
  for (let time = 0; time < end * (1 - 1e-12); ) {
    const dt = Math.min(0.9 * net.longestStep(), end - time);
    swing(time + dt / 2);
    net.step({ crankAngle: 0, crankStep: 0, dt });
    time += dt;
    look(time);
  }
  return { pressure, velocity };
}

interface Intake
  extends Solution<{
    length: number;
    diameter: number;
    pressure: number;
    temperature: number;
    speed: number;
    bore: number;
    stroke: number;
    rodLength: number;
    compressionRatio: number;
    opens: number;
    closes: number;
    largestArea: number;
  }> {
  angle: number[];
  cylinderMass: number[];
  cylinderPressure: number[];
  portPressure: number[];
}

export function solveIntake({ case: c, gamma, gasConstant }: Intake) {
  const gas = perfectGas(gamma, gasConstant);
  const still = { pressure: c.pressure, temperature: c.temperature };
  const duct = new Duct(
    profileOf([{ length: c.length, outerDiameter: c.diameter, innerDiameter: c.diameter }]),
    { name: 'runner', largestCell: CELL },
  );
  duct.fill(gas, still);
  const cylinder = new Cylinder(
    { name: 'cylinder', crank: c, shut: { from: c.closes, to: c.opens } },
    c.opens,
  );
  cylinder.setSpeed(c.speed);
  cylinder.fill(gas, still);
  const area = (angle: number) => {
    const y = (angle - c.opens) / (c.closes - c.opens);
    return y > 0 && y < 1 ? c.largestArea * Math.sin(Math.PI * y) ** 2 : 0;
  };
  const port = new DuctEnd(duct, 'high');
  const net = network(
    [duct],
    [openEnd(new DuctEnd(duct, 'low'), new OpenAir(gas, still)), valve(port, cylinder, area)],
    { gas, volumes: [cylinder] },
  );
  const [mass, pressure, portPressure] = [new Signal(), new Signal(), new Signal()];
  mass.see(c.opens, cylinder.contents.mass);
  pressure.see(c.opens, c.pressure);
  portPressure.see(c.opens, c.pressure);
  const perSecond = 6 * c.speed;
  for (let angle = c.opens; angle < c.closes * (1 - 1e-12); ) {
    const dt = Math.min(0.9 * net.longestStep(), (c.closes - angle) / perSecond);
    const crankStep = dt * perSecond;
    net.step({ crankAngle: angle + crankStep / 2, crankStep, dt });
    // What valve and port see is the state at the middle of the step.
    portPressure.see(angle + crankStep / 2, duct.endState('high')[2]!);
    pressure.see(angle + crankStep / 2, cylinder.pressure);
    angle += crankStep;
    mass.see(angle, cylinder.contents.mass);
  }
  return { mass, pressure, portPressure };
}

export const runnerByOthers = (): Runner => read('runner');
export const intakeByOthers = (): Intake => read('intake');

/** Mass [kg] in volumes swept of the still air. */
export function sweptVolumes({ case: c, gasConstant }: Intake, mass: number): number {
  const density = c.pressure / (gasConstant * c.temperature);
  return mass / (density * circleArea(c.bore) * c.stroke);
}
