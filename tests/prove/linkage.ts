/** Springs and cable between the foot and the plates. */
import { type Coil, forceRate, momentRate, WIRES, type WireName } from '../../sim/linkage/coil.ts';
import { sheathFactor } from '../../sim/linkage/effort.ts';
import { absolute, type Check, type Group, relative } from './check.ts';

const MM = 1e-3;
const INCH = 0.0254;
const NEWTON_MILLIMETRES = 1e3;

const coil = (material: WireName, wire: number, diameter: number, coils: number): Coil => ({
  material,
  wire: wire * MM,
  diameter: diameter * MM,
  coils,
  legs: 0,
});

const LARGE = coil('drawn', 5, 34.6, 9.5);
const SMALL = coil('stainless', 1.6, 11.1, 21);
const WOUND = coil('drawn', 7, 53, 168);
const IMPERIAL: Coil = {
  material: 'drawn',
  wire: 0.035 * INCH,
  diameter: 0.465 * INCH,
  coils: 3,
  legs: 0,
};
const perTurn = (spring: Coil) => 2 * Math.PI * momentRate(spring);

const POUND_FORCE = 4.4482216152605;
/** Moment of the workshop's spring over one turn [in lbf], for its modulus of 30e6 psi. */
const workshop = () => {
  const modulus = (30e6 * POUND_FORCE) / INCH ** 2;
  return (perTurn(IMPERIAL) * (modulus / WIRES.drawn.tension)) / (INCH * POUND_FORCE);
};

const rate = (what: string, spring: Coil, published: number): Check => ({
  what: `compression spring, ${what}: rate [N/mm]`,
  source: 'springWorksheet',
  published,
  tolerance: absolute(1e-3),
  run: () => forceRate(spring) * MM,
});

const deflection = (force: number, published: number): Check => ({
  what: `compression spring, d 5, D 34.6, n 9.5, at ${force} N: deflection [mm]`,
  source: 'springWorksheet',
  published,
  tolerance: absolute(0.05),
  run: () => force / forceRate(LARGE) / MM,
});

const springs: Check[] = [
  rate('d 5, D 34.6, n 9.5, G 81500 N/mm2', LARGE, 16.181),
  deflection(280, 17.3),
  deflection(620, 38.3),
  rate('d 1.6, D 11.1, n 21, G 70000 N/mm2', SMALL, 1.997),
  {
    what: 'torsion spring, d 7, D 53, n 168, E 206000 N/mm2: moment a turn [N m]',
    source: 'springWorksheet',
    published: 5.449,
    tolerance: relative(1e-3),
    run: () => perTurn(WOUND),
  },
  {
    what: 'torsion spring, d 0.035 in, D 0.465 in, n 3, 30e6 psi, no friction: moment a turn [in lbf]',
    source: 'springFormula',
    published: 3.168,
    tolerance: absolute(1e-3),
    run: workshop,
  },
  {
    what: 'torsion spring, d 0.035 in, coils that rub: ours times 10.186/10.8, moment a turn [in lbf]',
    source: 'springWorkshop',
    published: 2.988,
    tolerance: absolute(1e-3),
    run: () => (workshop() * 64) / (2 * Math.PI) / 10.8,
  },
  {
    what: 'torsion spring, d 7, D 53, n 168, E 206000 N/mm2: moment a degree [N mm]',
    source: 'springDegrees',
    published: (206000 * 7 ** 4) / (3667 * 53 * 168),
    tolerance: relative(1e-4),
    run: () => (momentRate(WOUND) * Math.PI * NEWTON_MILLIMETRES) / 180,
  },
];

/** Pull over load through the bends [deg] for friction 0.10, 0.15, 0.20. */
const ROPE = [
  [90, 1.17, 1.266, 1.369],
  [180, 1.369, 1.602, 1.874],
  [270, 1.602, 2.028, 2.566],
] as const;

const rope: Check[] = ROPE.flatMap(([bends, ...row]) =>
  ([0.1, 0.15, 0.2] as const).map(
    (friction, i): Check => ({
      what: `cable through bends of ${bends} deg, friction ${friction}: pull over load [-]`,
      source: 'euler',
      published: row[i]!,
      tolerance: absolute(5e-4),
      run: () =>
        sheathFactor({ bends: (bends * Math.PI) / 180, friction, lever: { radius: 0.03 } }),
    }),
  ),
);

export const linkage: Group = { name: 'Throttle linkage', checks: [...springs, ...rope] };
