/**
 * A chamber with nothing to it is the open air: endless, the mouths in it breathe as in the open. It loses
 * nothing, in TypeScript and in lanes, and rings along its row as a shut pipe does. No source: identities.
 */
import { describe, expect, it } from 'vitest';
import { OpenAir } from '../../sim/boundary/reservoir.ts';
import { chamberParts } from '../../sim/engine/chamber.ts';
import { solo } from '../../sim/engine/driver.ts';
import { runPoint, runSpeeds } from '../../sim/engine/point.ts';
import { perfectGas } from '../../sim/gas/gas.ts';
import type { ChamberSpecification, EngineSpecification } from '../../sim/specification.ts';
import { network, runFor } from '../network.ts';
import { demo, meshed } from '../scenario.ts';
import { evenEight } from '../unevenEngines.ts';

const engine = meshed(demo('hill-climb').engine, 2.5, 2e-4);
/** Density [kg/m^3] and speed of sound [m/s]. */
const AIR = { density: 1.18, soundSpeed: 345 };

function inChamber(volume: number, row?: ChamberSpecification['row']): EngineSpecification {
  const inlet = {
    length: 0.4,
    outerDiameter: 0.08,
    innerDiameter: 0.08,
    wallTemperature: engine.ambient.temperature,
    roughness: 1.5e-6,
    bendLoss: 0,
  };
  const chamber = { volume, inlet, inletLoss: 1, ...(row && { row }) };
  return { ...engine, intake: { ...engine.intake, chamber } };
}

describe('trumpets in a chamber', () => {
  it('breathe as in the open where it is endless, and otherwise where it is not', () => {
    const speed = 6600;
    const open = runPoint(engine, speed, { solved: 'all' });
    const endless = runPoint(inChamber(1e4), speed);
    const small = runPoint(inChamber(8e-3), speed);
    expect(open.settled && endless.settled).toBe(true);
    for (const key of ['volumetricEfficiency', 'pressureAtClosing', 'indicatedTorque'] as const) {
      expect(Math.abs(endless[key] / open[key] - 1)).toBeLessThan(5e-4);
      expect(Math.abs(small[key] / open[key] - 1)).toBeGreaterThan(5e-3);
    }
  });

  it('lose no mass and no energy, and come to the same in lanes', () => {
    const speeds = [5000, 7000];
    const points = runSpeeds(inChamber(8e-3), speeds);
    expect(points).toEqual(runSpeeds(inChamber(8e-3), speeds, solo));
    for (const point of points) {
      if (point instanceof Error) throw point;
      expect(point.settled).toBe(true);
      expect(point.audit.massError).toBeLessThan(1e-10);
      expect(point.audit.energyError).toBeLessThan(1e-6);
    }
  });

  it('fill unlike along a row, and the mirrored row mirrors them', () => {
    const speed = 8400;
    const fillings = (row: ChamberSpecification['row']) => {
      const { cylinders } = runPoint(inChamber(8e-3, row), speed);
      return cylinders!.map(({ volumetricEfficiency }) => volumetricEfficiency);
    };
    const spread = (values: readonly number[]) => Math.max(...values) / Math.min(...values) - 1;
    // Firing order 1-3-4-2 along the row, fed at the end of cylinder 1.
    const row = { pitch: 0.1, places: [0, 2, 3, 1], inlet: 0 };
    const along = fillings(row);
    expect(spread(along)).toBeGreaterThan(5e-3);
    const mirrored = fillings({ ...row, places: [3, 1, 0, 2], inlet: 3 });
    mirrored.forEach((filling, i) => {
      // Each settled to 2e-4 and no more.
      expect(Math.abs(filling / along[i]! - 1)).toBeLessThan(2e-4);
    });
  });
});

describe('a chamber for each bank', () => {
  const eight = evenEight();
  const banks = [0, 1, 0, 1, 0, 1, 0, 1];
  const { inlet } = inChamber(1).intake.chamber!;
  const bore = inlet.outerDiameter;
  const fed = (of: EngineSpecification, chamber: Partial<ChamberSpecification>) => ({
    ...of,
    intake: { ...of.intake, chamber: { volume: 8e-3, inlet, inletLoss: 1, ...chamber } },
  });
  const speed = 7000;
  const filling = (chamber: Partial<ChamberSpecification>) => {
    const point = runPoint(fed(eight, chamber), speed);
    expect(point.settled).toBe(true);
    expect(point.audit.massError).toBeLessThan(1e-10);
    expect(point.audit.energyError).toBeLessThan(1e-6);
    return point.volumetricEfficiency;
  };

  it('of an eight whose banks fire evenly breathes as one of a four of half the volume', () => {
    const four = { ...engine, numerics: eight.numerics };
    const half = runPoint(fed(four, { volume: 4e-3 }), speed).volumetricEfficiency;
    // Each settled to 2e-4.
    expect(Math.abs(filling({ banks }) / half - 1)).toBeLessThan(4e-4);
  });

  it('is one chamber where the pipe between them is as wide as can be, and is not without it', () => {
    const wide = { ...inlet, outerDiameter: Math.SQRT2 * bore, innerDiameter: Math.SQRT2 * bore };
    const one = filling({ inlet: wide });
    const off = (chamber: Partial<ChamberSpecification>) =>
      Math.abs(filling({ banks, ...chamber }) / one - 1);
    // Two inlets are not quite one of their area: rims and walls differ.
    expect(off({ cross: { length: 0.05, diameter: 0.3 } })).toBeLessThan(2e-3);
    expect(off({})).toBeGreaterThan(1e-2);
  });

  it('has compartments of its own along its row; two rows in one chamber share theirs', () => {
    const gas = perfectGas(1.4, 287);
    const open = new OpenAir(gas, { pressure: 1e5, temperature: 300 });
    const places = [0, 0, 1, 1, 2, 2, 3, 3];
    const row = { pitch: 0.1, places, inlet: 2 };
    const parts = (own: Partial<ChamberSpecification>) =>
      chamberParts({ volume: 8e-3, inlet, inletLoss: 1, row, ...own }, open, AIR, 0.02);
    const [shared, own] = [parts({}), parts({ banks, cross: { length: 0.1, diameter: 0.05 } })];
    const volumes = [shared, own].map(({ volumes }) => volumes.length);
    expect(volumes).toEqual([4, 8]);
    expect(shared.around(4)).toBe(shared.around(5));
    expect(own.around(4)).not.toBe(own.around(5));
    expect(own.atInlet).toBe(own.around(4));
    const all = ({ volumes, ducts }: typeof own) =>
      volumes.reduce((sum, { size }) => sum + size, 0) +
      ducts
        .filter(({ name }) => name === 'along the chamber')
        .reduce((sum, { mesh }) => sum + mesh.volume.reduce((a, b) => a + b, 0), 0);
    expect(all(shared)).toBeCloseTo(8e-3, 9);
    expect(all(own)).toBeCloseTo(8e-3, 9);
  });
});

describe('a chamber along a row', () => {
  it('rings along itself at c / (2 N l) with its inlet all but shut', () => {
    const gas = perfectGas(1.4, 287);
    const rest = { pressure: 1e5, temperature: 300 };
    const inlet = { length: 0.1, outerDiameter: 1e-3, innerDiameter: 1e-3 };
    const walls = { wallTemperature: 300, roughness: Number.NaN, bendLoss: 0 };
    const row = { pitch: 0.1, places: [0, 1, 2, 3], inlet: 0 };
    const asked = { volume: 8e-3, row, inlet: { ...inlet, ...walls }, inletLoss: 0 };
    const soundSpeed = Math.sqrt(1.4 * 287 * 300);
    const air = { density: 1e5 / (287 * 300), soundSpeed };
    const { volumes, ducts, nodes } = chamberParts(asked, new OpenAir(gas, rest), air, 0.01);
    // The lowest wave along it: half a wave from end to end.
    const at = (x: number) => {
      const p = 1 + 1e-4 * Math.cos((Math.PI * x) / 0.4);
      return { pressure: 1e5 * p, temperature: 300 * p ** (0.4 / 1.4) };
    };
    volumes.forEach((volume, i) => {
      volume.fill(gas, at(0.05 + 0.1 * i));
    });
    for (const duct of ducts) duct.fill(gas, rest);
    ducts.slice(0, -1).forEach((duct, i) => {
      duct.fillEach(gas, (x) => at(0.05 + 0.1 * i + x));
    });
    const [first, , , last] = volumes;
    const net = network(ducts, nodes, { gas, volumes });
    const crossings: number[] = [];
    let before = 0;
    runFor(net, 0.03, (time) => {
      const now = first!.pressure - last!.pressure;
      if (before < 0 && now >= 0) crossings.push(time);
      before = now;
    });
    const frequency = (crossings.length - 1) / (crossings.at(-1)! - crossings[0]!);
    // Four compartments are a coarse box.
    expect(Math.abs(frequency / (soundSpeed / 0.8) - 1)).toBeLessThan(0.01);
  });
});
