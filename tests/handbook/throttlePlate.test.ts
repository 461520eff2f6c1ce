/**
 * What a plate lets through, in the law and in the step. Losses against angle and the growth of the jet
 * stand in tests/prove/throttle.ts.
 */
import { describe, expect, it } from 'vitest';
import { DuctEnd } from '../../sim/boundary/ductEnd.ts';
import { constriction, nonReflecting } from '../../sim/boundary/node.ts';
import { OpenAir } from '../../sim/boundary/reservoir.ts';
import type { Duct } from '../../sim/duct/duct.ts';
import { butterflyOpenArea } from '../../sim/loss/butterfly.ts';
import { jetContraction, slowContraction } from '../../sim/loss/contraction.ts';
import { flowFunction } from '../../sim/loss/nozzle.ts';
import { growthAt, plateGrowth, plateLoss, throttleArea } from '../../sim/loss/throttlePlate.ts';
import { perfectAir } from '../gases.ts';
import { massFluxes, network, pipe, runFor } from '../network.ts';

const plate = { bore: 0.045, shaftDiameter: 0.008, closedAngle: 5, rimGap: 0, openLoss: 0.3 };
/** Effective area [m^2] at a pressure ratio, from the table that the step reads. */
function fastArea(of: typeof plate, angle: number, ratio: number): number {
  return throttleArea(of, angle) * growthAt(plateGrowth(of, angle), ratio);
}

const bore = (Math.PI / 4) * plate.bore ** 2;

it.each([0.042, 0.044, 0.045, 0.048])(
  'shut in a bore of %f m passes nothing at any pressure',
  (bore) => {
    const shut = { ...plate, bore, closedAngle: 8 };
    for (const ratio of [1, 0.99, 0.6, 0.2]) expect(fastArea(shut, 8, ratio)).toBeLessThan(1e-15);
  },
);

describe('slow flow', () => {
  it('wide open loses the stated dynamic heads', () => {
    expect(plateLoss(plate, 90)).toBeCloseTo(0.3, 7);
    expect(throttleArea(plate, 90)).toBeCloseTo(bore / Math.sqrt(1.3), 11);
  });

  it('opens all the way and is shut at its stop', () => {
    expect(throttleArea(plate, 5)).toBeLessThan(1e-15 * bore);
    const areas = Array.from({ length: 86 }, (_, i) => throttleArea(plate, 5 + i));
    // Also where the shaft hides the plate: its edges still contract the jet.
    for (let i = 1; i < areas.length; i++) expect(areas[i]!).toBeGreaterThan(areas[i - 1]!);
  });

  it('a bleed adds a drilled hole of coefficient 0.82', () => {
    // Weisbach, as in Unwin, Encyclopaedia Britannica 1911, Hydraulics, sec. 63: 0.81 to 0.84.
    const more = { ...plate, bleed: { bore: 0.002, open: 0.5 } };
    const hole = throttleArea(more, 20) - throttleArea(plate, 20);
    expect(hole * 1e6).toBeCloseTo(0.5 * 0.82 * Math.PI, 6);
  });
});

describe('fast flow', () => {
  it('begins as slow flow', () => {
    for (const angle of [8, 30, 60, 90])
      expect(fastArea(plate, angle, 0.9999) / throttleArea(plate, angle)).toBeCloseTo(1, 3);
  });

  it('chokes in the jet that a small opening throws: momentum, no pressure won back', () => {
    const angle = 9;
    const ratio = 0.3;
    const alone = 1 - Math.cos(angle * (Math.PI / 180)) / Math.cos(5 * (Math.PI / 180));
    const jet =
      jetContraction(slowContraction(alone), ratio, 1.4) * butterflyOpenArea(plate, angle);
    expect(fastArea(plate, angle, ratio) / jet).toBeCloseTo(1, 2);
  });

  it('never lets more than the bore through', () => {
    const clean = { ...plate, shaftDiameter: 0.001, openLoss: 0 };
    for (const ratio of [0, 0.2, 0.5, 0.8, 0.99])
      expect(fastArea(clean, 90, ratio)).toBeLessThanOrEqual(bore);
  });

  it('one square millimetre of jet passes 0.23917 g/s of air, choked at 101.325 kPa and 20 C', () => {
    // Closed form, gamma 1.4, R 287.05 (computed).
    expect((101325 / Math.sqrt(287.05 * 293.15)) * flowFunction(0.3, 1.4) * 1e-3).toBeCloseTo(
      0.23917,
      5,
    );
  });
});

describe('in the step', () => {
  const gas = perfectAir();
  const air = { pressure: 1e5, temperature: 300 };

  type Middle = { p: number; rho: number; u: number };

  function middleOf({ mesh, cells, prim }: Duct): Middle {
    const i = mesh.cells >> 1;
    return { p: prim.p.at(i), rho: cells.rho.at(i), u: prim.u.at(i) };
  }

  /** Steady flow [kg/s] past the plate to about `behind` [Pa], and what the law says of it. */
  function flowPast(angle: number, behind: number): { flow: number; law: number } {
    const ducts = [pipe(0.2, plate.bore, 10), pipe(0.2, plate.bore, 10)] as const;
    for (const duct of ducts) duct.fill(gas, air);
    const area = throttleArea(plate, angle);
    const ends = [new OpenAir(gas, air), new OpenAir(gas, { ...air, pressure: behind })] as const;
    const net = network(
      [...ducts],
      [
        nonReflecting(new DuctEnd(ducts[0], 'low'), ends[0]),
        constriction(
          new DuctEnd(ducts[0], 'high'),
          new DuctEnd(ducts[1], 'low'),
          { forward: area, backward: area },
          plateGrowth(plate, angle),
        ),
        nonReflecting(new DuctEnd(ducts[1], 'high'), ends[1]),
      ],
      { gas },
    );
    runFor(net, 0.05);
    const [before, after] = ducts.map((duct) => middleOf(duct)) as [Middle, Middle];
    const heat = 1 + (0.2 * before.u ** 2) / (1.4 * (before.p / before.rho));
    const stagnation = before.p * heat ** 3.5;
    const ratio = after.p / stagnation;
    const law =
      (fastArea(plate, angle, ratio) * flowFunction(ratio, 1.4) * stagnation) /
      Math.sqrt((before.p / before.rho) * heat);
    // Before the plate: behind it slow gas of another temperature is on its way for long.
    return { flow: massFluxes(ducts[0])[ducts[0].mesh.cells >> 1]! * bore, law };
  }

  it.each([
    [10, 0.95],
    [10, 0.75],
    [10, 0.3],
    [25, 0.9],
    [25, 0.6],
    [90, 0.99],
  ])('at %s deg and %s behind passes what the law says, within 0.3 %%', (angle, ratio) => {
    const { flow, law } = flowPast(angle, ratio * air.pressure);
    expect(Math.abs(flow / law - 1)).toBeLessThan(0.003);
  });
});
