/** Pipes and a resonator struck and left to ring, with sound so weak that it is linear to 1e-4. */
import { DuctEnd } from '../../../sim/boundary/ductEnd.ts';
import { mouth, openEnd, valve } from '../../../sim/boundary/node.ts';
import { OpenAir, Volume } from '../../../sim/boundary/reservoir.ts';
import { Duct } from '../../../sim/duct/duct.ts';
import { circleArea, type Profile, profileOf } from '../../../sim/duct/profile.ts';
import { perfectGas } from '../../../sim/gas/gas.ts';
import { mouthImpedance } from '../../../sim/loss/mouthRadiation.ts';
import { network, oneDuct, runFor } from '../../network.ts';

export const SOUND = 343.2;
const PRESSURE = 101325;
const TEMPERATURE = 293.15;
const gas = perfectGas(1.4, SOUND ** 2 / (1.4 * TEMPERATURE));
const air = () => new OpenAir(gas, { pressure: PRESSURE, temperature: TEMPERATURE });
const AMPLITUDE = 1e-4;

/** Frequency [Hz] from the rising zero crossings of a signal of time [s]; the first are left out. */
function frequencyOf(times: number[], values: number[]): number {
  const crossings: number[] = [];
  for (let i = 1; i < values.length; i++) {
    const [a, b] = [values[i - 1]!, values[i]!];
    if (a < 0 && b >= 0)
      crossings.push(times[i - 1]! + ((times[i]! - times[i - 1]!) * -a) / (b - a));
  }
  const used = crossings.slice(1);
  return (used.length - 1) / (used[used.length - 1]! - used[0]!);
}

/** Frequency [Hz] of a duct closed at its high end and open at its low end, about 9 periods. */
export function ring(profile: Profile, about: number): number {
  const cells = 60;
  const duct = new Duct(profile, {
    name: 'pipe',
    largestCell: profile[profile.length - 1]!.x / cells,
  });
  return ringDuct(duct, about);
}

/** The same of a duct that is already made; `inertia` of a mouth of its bore [m], none at constant pressure. */
export function ringDuct(duct: Duct, about: number, inertia = 0): number {
  const { length, cells } = duct.mesh;
  duct.fillEach(gas, (x) => {
    const p = 1 + AMPLITUDE * Math.sin((Math.PI * x) / (2 * length));
    return { pressure: PRESSURE * p, temperature: TEMPERATURE * p ** (0.4 / 1.4) };
  });
  const net = oneDuct(
    duct,
    { gas },
    {
      low: (end) =>
        inertia > 0 ? mouth(end, air(), impedance(duct, inertia)) : openEnd(end, air()),
    },
  );
  const times: number[] = [];
  const values: number[] = [];
  runFor(net, 9 / about, (time) => {
    times.push(time);
    values.push(duct.prim.p.at(cells - 1) - PRESSURE);
  });
  return frequencyOf(times, values);
}

const impedance = (duct: Duct, inertia: number) =>
  mouthImpedance(duct.mesh.diameter[0]!, inertia, {
    density: (1.4 * PRESSURE) / SOUND ** 2,
    soundSpeed: SOUND,
  });

/** A pipe longer by its end correction, in radii: a constant-pressure end has none of its own. */
export function withCorrection(length: number, radius: number, correction: number): Profile {
  const d = 2 * radius;
  return profileOf([{ length: length + correction * radius, outerDiameter: d, innerDiameter: d }]);
}

/** A cone closed at its narrow end, radii and length [m]. */
export function cone(length: number, narrow: number, wide: number): Profile {
  return profileOf([{ length, outerDiameter: 2 * wide, innerDiameter: 2 * narrow }]);
}

/** Frequency [Hz] of a volume [m^3] behind a neck of this radius and corrected length [m]. */
export function ringVolume(volume: number, radius: number, length: number, about: number): number {
  const neck = new Duct(withCorrection(length, radius, 0), {
    name: 'neck',
    largestCell: length / 10,
  });
  neck.fill(gas, { pressure: PRESSURE, temperature: TEMPERATURE });
  const box = new Volume('box', volume);
  const start = 1 + AMPLITUDE;
  box.fill(gas, { pressure: PRESSURE * start, temperature: TEMPERATURE * start ** (0.4 / 1.4) });
  const net = network(
    [neck],
    [
      openEnd(new DuctEnd(neck, 'low'), air()),
      valve(new DuctEnd(neck, 'high'), box, () => circleArea(2 * radius)),
    ],
    { gas, volumes: [box] },
  );
  const times: number[] = [];
  const values: number[] = [];
  runFor(net, 9 / about, (time) => {
    times.push(time);
    values.push(box.pressure - PRESSURE);
  });
  return frequencyOf(times, values);
}

/** Share of a weak sine pulse of this frequency [Hz] that an open end throws back [-]. */
export function openEndReflection(frequency: number): number {
  const wave = SOUND / frequency;
  const duct = new Duct(
    profileOf([{ length: 3 * wave, outerDiameter: 0.045, innerDiameter: 0.045 }]),
    {
      name: 'pipe',
      largestCell: wave / 100,
    },
  );
  const shape = (x: number) => {
    const y = (x - 1.25 * wave) / wave;
    return Math.abs(y) < 0.75 ? Math.cos((Math.PI * y) / 1.5) ** 2 * Math.cos(2 * Math.PI * y) : 0;
  };
  duct.fillEach(gas, (x) => {
    const p = 1 + AMPLITUDE * shape(x);
    const sound = SOUND * p ** (0.2 / 1.4);
    return {
      pressure: PRESSURE * p,
      temperature: TEMPERATURE * p ** (0.4 / 1.4),
      velocity: -5 * (sound - SOUND),
    };
  });
  const before = Math.hypot(...duct.prim.p.map((p) => p - PRESSURE));
  const net = oneDuct(duct, { gas }, { low: (end) => openEnd(end, air()) });
  runFor(net, (2.75 * wave) / SOUND);
  return Math.hypot(...duct.prim.p.map((p) => p - PRESSURE)) / before;
}
