/** Whether a value read from outside has the form of a point's outcome. */
import type { PointResult } from '../engine/point.ts';
import type { PointOutcome } from './runner.ts';

const FIGURES = [
  'volumetricEfficiency',
  'pressureAtClosing',
  'chargeTemperature',
  'residualFraction',
  'backflow',
  'mouthOutflow',
  'indicatedTorque',
  'cycles',
  'meshError',
] as const satisfies readonly (keyof PointResult)[];

export function isOutcome(value: unknown): value is PointOutcome {
  if (!isTree(value) || typeof value.speed !== 'number') return false;
  if ('failure' in value) return typeof value.failure === 'string';
  const { settled, careful, audit, spray, cylinders } = value;
  return (
    FIGURES.every((key) => typeof value[key] === 'number') &&
    typeof settled === 'boolean' &&
    (careful === undefined || careful === true) &&
    isTree(audit) &&
    isNumeric(audit) &&
    (cylinders === undefined || (Array.isArray(cylinders) && isNumeric(cylinders))) &&
    (spray === undefined || (isTree(spray) && isNumeric(spray)))
  );
}

const isTree = (value: unknown): value is Record<string, unknown> => value instanceof Object;

/** Numbers all the way down. */
function isNumeric(value: unknown): boolean {
  return isTree(value) ? Object.values(value).every(isNumeric) : typeof value === 'number';
}
