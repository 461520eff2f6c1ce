/**
 * A thin line as a duct that has its inertia, its room, its friction and its warming at one frequency:
 *
 *   l = chi / S, c = kappa S / c0^2   inertance and room of a metre by the exact theory (acoustics/line.ts)
 *   L' = L sqrt(chi kappa'),  S' = S sqrt(kappa' / chi),  drag = r S / chi
 *   -Im Ft = (gamma - 1) y / (1 + y^2),  warming = gamma y omega,  kappa' = kappa / (1 + (gamma - 1) y^2 / (1 + y^2))
 *
 *   r  pressure lost to friction per mass flow [1/(m^2 s)]   S, L  bore's area and length   Ft  of line.ts
 *
 * so that a plane wave in the duct meets the line's impedance there: in a duct of length L' and area S' that is
 * L'/S' and L' S'/c0^2. What the walls warm in step with the pressure the duct's own heat does, so kappa' holds
 * the rest. At other frequencies drag and inertia are those of this one; steady drag is more than laminar by
 * chi and what the frequency adds. Drag in fast flow is that of pipes (step/wall.ts), which counts from where it
 * is more. No constant is fitted. Source: two lines of equal inertance and capacity ring alike.
 */
import { lineConstants } from '../acoustics/line.ts';
import { airInHoses } from '../acoustics/restingAir.ts';
import { Duct } from '../duct/duct.ts';
import { circleArea, profileOf } from '../duct/profile.ts';
import { square } from '../elementary/powers.ts';
import type { AmbientSpecification } from '../specification.ts';

export interface ThinLine {
  name: string;
  length: number;
  bore: number;
  /** Room that hangs on its far end and is counted as more of the line [m^3]. */
  spare: number;
  largestCell: number;
}

/** Frequency [Hz] and mean pressure [Pa] at which lines are taken. */
export interface TakenAt {
  frequency: number;
  pressure: number;
}

/** Drawn tube: roughness [m]; Moody (1944) (from memory). */
const SMOOTH = 1.5e-6;

export function thinLine(line: ThinLine, at: TakenAt, ambient: AmbientSpecification): Duct {
  const gas = airInHoses(ambient, at.pressure);
  const constants = lineConstants(line.bore, at.frequency, gas);
  const plain = circleArea(line.bore);
  const warmed = warmingOf(constants.lagging, gas.gamma);
  const chi = constants.inertance * plain;
  const kappa = (constants.capacity * square(gas.soundSpeed)) / plain / warmed.room;
  const bore = line.bore * Math.sqrt(Math.sqrt(kappa / chi));
  const length = line.length * Math.sqrt(chi * kappa) + line.spare / circleArea(bore);
  return new Duct(profileOf([{ length, outerDiameter: bore, innerDiameter: bore }]), {
    name: line.name,
    largestCell: line.largestCell,
    roughness: SMOOTH,
    wallTemperature: () => ambient.temperature,
    thin: {
      drag: (constants.resistance * plain) / chi,
      warming: gas.gamma * 2 * Math.PI * at.frequency * warmed.share,
      turbulent: Math.sqrt(kappa / chi) / chi,
    },
  });
}

/** y, and the room that warming adds to the plane one [-]; where most of the heat goes, the quicker of the two. */
function warmingOf(lagging: number, gamma: number): { share: number; room: number } {
  const q = Math.min(lagging / (gamma - 1), 0.5);
  const share = (2 * q) / (1 + Math.sqrt(1 - 4 * q * q));
  return { share, room: 1 + ((gamma - 1) * share * share) / (1 + share * share) };
}
