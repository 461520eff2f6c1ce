/** The pipes of an exhaust as ducts: port and primary as one; what is behind a joint each by itself. */
import { Duct } from '../duct/duct.ts';
import { profileOf } from '../duct/profile.ts';
import type { ExhaustSpecification, PipeSpecification } from '../specification.ts';
import { piecewise } from './intakeDucts.ts';

/** Valve (x = 0) to the primary's end. */
export function primaryDuct({ port, primary, step }: ExhaustSpecification, cell: number): Duct {
  return pipeDuct('primary', [port, primary, ...(step ? [step] : [])], cell);
}

/** Joint of primaries (x = 0) to that with the tail, where there is one. */
export function secondaryDuct({ secondary }: ExhaustSpecification, cell: number): Duct | undefined {
  return secondary && pipeDuct('secondary', [secondary], cell);
}

/** Last joint (x = 0) to the open air; none where primaries end there. */
export function tailDuct(
  { collector, tail }: ExhaustSpecification,
  cell: number,
): Duct | undefined {
  return tail && pipeDuct('tail', [...(collector ? [collector] : []), tail], cell);
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
