/** The mouth without one of its effects: what stands in the solver's source in its place, or in an engine. */
import { mouthDiameter } from '../../sim/engine/intakeDucts.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import type { Edit } from './patchedSolver.ts';

/** End correction of a plain end [radii]: Levine & Schwinger 1948. */
export const PLAIN = 0.6127;

export const NO_RADIATION: Edit[] = [
  {
    file: 'sim/loss/mouthRadiation.ts',
    from: 'resistance: 4 * ratio * ratio * density * soundSpeed',
    to: 'resistance: Number.POSITIVE_INFINITY',
  },
  {
    file: 'sim/loss/mouthRadiation.ts',
    from: '(MOUTH_COMPLIANCE * square(PLAIN / ratio) * a) / (density * square(soundSpeed))',
    to: '0',
  },
];

/** Of the head of the jet so many are lost, the rest is won back on the way to the rim. */
export function noJet(engine: EngineSpecification): Edit[] {
  const lost = (engine.intake.trumpet.outerDiameter / mouthDiameter(engine.intake)) ** 4;
  const wonBack = `(${1 - lost} * X[a + A_RHO] * v)`;
  return [
    {
      file: 'sim/step/mouth.ts',
      from: 'v = min(max(v + (p - still - slope * v) / (slope + (gamma * p) / ce), 0), top);',
      to:
        `v = min(max(v + (p - still - slope * v + 0.5 * ${wonBack} * v) / ` +
        `(slope + (gamma * p) / ce - ${wonBack}), 0), top);`,
    },
  ];
}

/** Plane waves in the flare, a plain end at its rim. */
export function withPlainRim(engine: EngineSpecification): EngineSpecification {
  const { trumpet } = engine.intake;
  const bellmouth = { ...trumpet.bellmouth, endCorrection: PLAIN };
  return { ...engine, intake: { ...engine.intake, trumpet: { ...trumpet, bellmouth } } };
}
