/** Lengths in the unit of the scenario: inches in, inches out. */
import { quantities as q } from '../../sim/index.ts';
import { lengthIn } from '../format.ts';
import { unit } from './scenario.ts';

/** A length [m] with its unit. */
export const lengthText = (length: number): string => lengthIn(length, unit.value);

/** Lengths as a quantity, for axes and columns. */
export const lengthFigure = (): q.Quantity => q.lengthQuantity(unit.value);
