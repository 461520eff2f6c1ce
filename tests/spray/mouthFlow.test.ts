/** Air in front of a mouth against a disc of sinks summed up element by element, and a jet's measured spread. */
import { describe, expect, test } from 'vitest';
import { FRONT, type MouthFlow, mouthFlow } from '../../sim/spray/mouthFlow.ts';

const RADIUS = 0.025;
const at = (z: number, r: number, speed: number, front = 0): MouthFlow => {
  const out = { u: 0, across: 0 };
  mouthFlow(out, z, r, { radius: RADIUS, speed, front });
  return out;
};

/**
 * Velocity towards the mouth and to its axis at z, r of a disc of sinks through which gas goes at 1 m/s: each
 * element draws U dA / 2 pi R^2 (half space), source: superposition of sinks, any text on potential flow.
 */
function summedDisc(z: number, r: number): { u: number; inwards: number } {
  const [rings, parts] = [240, 240];
  let u = 0;
  let inwards = 0;
  for (let i = 0; i < rings; i++)
    for (let j = 0; j < parts; j++) {
      const ring = ((i + 0.5) / rings) * RADIUS;
      const angle = ((j + 0.5) / parts) * 2 * Math.PI;
      const across = r - ring * Math.cos(angle);
      const distance = Math.hypot(z, across, ring * Math.sin(angle));
      const area = ring * (RADIUS / rings) * ((2 * Math.PI) / parts);
      u += (z * area) / (2 * Math.PI * distance ** 3);
      inwards += (across * area) / (2 * Math.PI * distance ** 3);
    }
  return { u, inwards };
}

describe('inflow', () => {
  test.each([0.2, 1, 3, 10])('on the axis, %d radii off, is U (1 - z / sqrt(z^2 + a^2))', (far) => {
    const z = far * RADIUS;
    expect(at(z, 0, 30).u).toBeCloseTo(30 * (1 - far / Math.sqrt(far ** 2 + 1)), 10);
    expect(Math.abs(at(z, 0, 30).across)).toBe(0);
  });

  const places = [0.3, 0.5, 1, 2, 4].flatMap((z) =>
    [0.5, 0.8, 1.2, 2, 4, 8].map((r): [number, number] => [z, r]),
  );
  test.each(places)(
    'at z = %d, r = %d radii: speed of a summed disc within 10 %, direction within 1.1 deg',
    (z, r) => {
      const { u, across } = at(z * RADIUS, r * RADIUS, 1);
      const disc = summedDisc(z * RADIUS, r * RADIUS);
      const speed = Math.hypot(u, across) / Math.hypot(disc.u, disc.inwards);
      expect(Math.abs(speed - 1)).toBeLessThan(0.1);
      const turned = Math.atan2(-across, u) - Math.atan2(disc.inwards, disc.u);
      expect((Math.abs(turned) * 180) / Math.PI).toBeLessThan(1.1);
    },
  );

  test('a half sphere ten radii out lets through what the mouth takes, within 1 %', () => {
    const far = 10 * RADIUS;
    const steps = 400;
    let flow = 0;
    for (let i = 0; i < steps; i++) {
      const angle = ((i + 0.5) / steps) * (Math.PI / 2);
      const { u, across } = at(far * Math.cos(angle), far * Math.sin(angle), 20);
      const through = u * Math.cos(angle) - across * Math.sin(angle);
      flow += through * 2 * Math.PI * far ** 2 * Math.sin(angle) * (Math.PI / 2 / steps);
    }
    expect(Math.abs(flow / (20 * Math.PI * RADIUS ** 2) - 1)).toBeLessThan(0.01);
  });
});

describe('outflow', () => {
  const front = 0.12;

  test('blows at full speed in the core, not beside it, and pushes at half the speed in front of its front', () => {
    expect(at(0.05, 0, -30, front).u).toBeCloseTo(-30, 3);
    expect(at(0.05, RADIUS, -30, front).u).toBeCloseTo(-15, 10);
    expect(Math.abs(at(0.05, 2 * RADIUS, -30, front).u)).toBeLessThan(0.01);
    expect(at(front + 1e-9, 0, -30, front).u).toBeCloseTo(-30 * FRONT, 4);
    expect(FRONT).toBe(0.5);
  });

  test('what it pushes passes the front as it left the mouth: twice the area at half the speed', () => {
    const wide = Math.SQRT2 * RADIUS;
    const { u } = at(front + 0.03, 0, -30, front);
    expect(u).toBeCloseTo(-15 * (1 - 0.03 / Math.hypot(0.03, wide)), 10);
    expect(at(front + 0.03, 0.02, -30, front).across).toBeGreaterThan(0);
  });

  test('its mixing layer is 0.18 z thick (Brown & Roshko 1974, from memory)', () => {
    const z = 0.1;
    const step = 1e-6;
    const slope =
      (at(z, RADIUS + step, -1, front).u - at(z, RADIUS - step, -1, front).u) / step / 2;
    expect(1 / Math.abs(slope)).toBeCloseTo(0.18 * z, 6);
  });
});
