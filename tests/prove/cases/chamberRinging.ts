/**
 * A chamber with its inlet, and one runner from it to a shut cylinder's volume, struck and left to ring,
 * with sound so weak that it is linear. Built as the engine builds them.
 */
import { DuctEnd } from '../../../sim/boundary/ductEnd.ts';
import { openEnd } from '../../../sim/boundary/node.ts';
import { OpenAir, Volume } from '../../../sim/boundary/reservoir.ts';
import { Duct } from '../../../sim/duct/duct.ts';
import { profileOf } from '../../../sim/duct/profile.ts';
import { chamberParts } from '../../../sim/engine/chamber.ts';
import { perfectGas } from '../../../sim/gas/gas.ts';
import { network, runFor } from '../../network.ts';
import { SOUND } from './ringing.ts';

export interface Sizes {
  /** Chamber and cylinder [m^3]. */
  chamber: number;
  cylinder: number;
  /** Length and bore [m]; that of the inlet without its end correction. */
  inlet: { length: number; bore: number };
  runner: { length: number; bore: number };
}

/** [m]. */
const CELL = 0.02;
const REST = { pressure: 101325, temperature: 293.15 };
const gas = perfectGas(1.4, SOUND ** 2 / (1.4 * REST.temperature));
const AIR = { density: (1.4 * REST.pressure) / SOUND ** 2, soundSpeed: SOUND };

/** Pressure in the cylinder above rest [Pa] after both volumes are struck by these shares of it. */
function ringing(sizes: Sizes, struck: { chamber: number; cylinder: number }, seconds: number) {
  const { inlet, runner } = sizes;
  const pipe = {
    length: inlet.length,
    outerDiameter: inlet.bore,
    innerDiameter: inlet.bore,
    wallTemperature: REST.temperature,
    roughness: Number.NaN,
    bendLoss: 0,
  };
  const asked = { volume: sizes.chamber, inlet: pipe, inletLoss: 0 };
  const { atInlet: volume, ducts, nodes } = chamberParts(asked, new OpenAir(gas, REST), AIR, CELL);
  const pieces = [
    { length: runner.length, outerDiameter: runner.bore, innerDiameter: runner.bore },
  ];
  const neck = new Duct(profileOf(pieces), { name: 'runner', largestCell: CELL });
  const cylinder = new Volume('cylinder', sizes.cylinder);
  for (const duct of [...ducts, neck]) duct.fill(gas, REST);
  const strike = (share: number) => ({
    pressure: REST.pressure * (1 + share),
    temperature: REST.temperature * (1 + share) ** (0.4 / 1.4),
  });
  volume.fill(gas, strike(struck.chamber));
  cylinder.fill(gas, strike(struck.cylinder));
  const net = network(
    [...ducts, neck],
    [
      ...nodes,
      openEnd(new DuctEnd(neck, 'low'), volume),
      openEnd(new DuctEnd(neck, 'high'), cylinder),
    ],
    { gas, volumes: [volume, cylinder] },
  );
  const heard: { time: number; pressure: number }[] = [];
  runFor(net, seconds, (time) => heard.push({ time, pressure: cylinder.pressure - REST.pressure }));
  return heard;
}

/** Frequency near `about` that the cylinder rings at most [Hz]: the peak of its windowed transform. */
export function ringChamber(sizes: Sizes, about: number, ratio: number): number {
  const seconds = 20 / about;
  const heard = ringing(sizes, { chamber: 1e-4, cylinder: ratio * 1e-4 }, seconds);
  const strength = (frequency: number) => {
    let [re, im] = [0, 0];
    for (let i = 1; i < heard.length; i++) {
      const { time, pressure } = heard[i]!;
      const window = Math.sin((Math.PI * time) / seconds) ** 2;
      const weight = window * pressure * (time - heard[i - 1]!.time);
      re += weight * Math.cos(2 * Math.PI * frequency * time);
      im += weight * Math.sin(2 * Math.PI * frequency * time);
    }
    return Math.hypot(re, im);
  };
  const tried = Array.from({ length: 401 }, (_, i) => about * (0.8 + i * 0.001));
  const strengths = tried.map(strength);
  return tried[strengths.indexOf(Math.max(...strengths))]!;
}

/**
 * Both natural frequencies of two resonators in a row [Hz], lower first, and pressure in the cylinder
 * over the chamber's in each: air plugs of inertance rho L/A between volumes of stiffness rho c^2/V.
 *
 *   w^4 - w^2 (a + b + d) + a d = 0,   a = c^2 A1/(L1 V),  b = c^2 A2/(L2 V),  d = c^2 A2/(L2 Vc)
 *
 * Source: Rayleigh, The Theory of Sound, secs. 303-308; for plugs short against the wave.
 */
export function resonatorPair(
  { chamber, cylinder, inlet, runner }: Sizes,
  endCorrection: number,
): { frequency: number; ratio: number }[] {
  const slender = ({ length, bore }: { length: number; bore: number }) =>
    ((Math.PI / 4) * bore * bore) / length;
  const corrected = { ...inlet, length: inlet.length + (endCorrection * inlet.bore) / 2 };
  const a = (SOUND ** 2 * slender(corrected)) / chamber;
  const b = (SOUND ** 2 * slender(runner)) / chamber;
  const d = (SOUND ** 2 * slender(runner)) / cylinder;
  const half = (a + b + d) / 2;
  const root = Math.sqrt(half * half - a * d);
  return [half - root, half + root].map((square) => ({
    frequency: Math.sqrt(square) / (2 * Math.PI),
    ratio: d / (d - square),
  }));
}
