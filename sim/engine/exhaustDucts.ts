/** The exhaust of one cylinder as ducts: port and primary as one, and the tail behind a joint. */
import { Duct } from '../duct/duct.ts';
import { profileOf } from '../duct/profile.ts';
import type { ExhaustSpecification, PipeSpecification } from '../specification.ts';
import { piecewise } from './intakeDucts.ts';

export interface ExhaustDucts {
  /** Valve (x = 0) to the primary's end. */
  primary: Duct;
  /** Joint (x = 0) to the open air. */
  tail?: Duct;
}

/**
 * Cell of the tail over the primary's [-]: what comes back from there has passed the joint twice. What
 * it costs: npm run bench -- errors.
 */
const TAIL_CELL = 1.5;

export function exhaustDucts(exhaust: ExhaustSpecification, largestCell: number): ExhaustDucts {
  const primary = pipeDuct('primary', [exhaust.port, exhaust.primary], largestCell);
  if (!exhaust.tail) return { primary };
  return { primary, tail: pipeDuct('tail', [exhaust.tail], TAIL_CELL * largestCell) };
}

/** Pipes end to end; exhaust pipes are given from the open air inwards, ducts run with the flow. */
function pipeDuct(name: string, pipes: readonly PipeSpecification[], largestCell: number): Duct {
  const pieces = pipes
    .filter((pipe) => pipe.length > 0)
    .map((pipe) => ({
      ...pipe,
      outerDiameter: pipe.innerDiameter,
      innerDiameter: pipe.outerDiameter,
    }));
  return new Duct(profileOf(pieces), {
    name,
    largestCell,
    roughness: pieces[0]!.roughness,
    wallTemperature: piecewise(pieces, (piece) => piece.wallTemperature),
    lossPerLength: piecewise(pieces, (piece) => piece.bendLoss / piece.length),
  });
}
