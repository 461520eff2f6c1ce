/**
 * The engine as plain resolved data: what `scenario` makes and what `engine` runs. SI throughout,
 * crank angles in degrees.
 *
 * Crank convention: 0 deg is firing top dead centre of the cylinder, 180 deg bottom dead centre at
 * the end of expansion, 360 deg top dead centre between exhaust and intake, 540 deg bottom dead
 * centre after intake, 720 deg the next firing top dead centre.
 *
 * Every object here survives `structuredClone`, so a worker can be handed it whole.
 */

import type { BarSpecification } from './bars.ts';
import type { InjectorsSpecification } from './injectors.ts';

/** Still gas that ducts breathe from or into. */
export interface AmbientSpecification {
  /** Static pressure [Pa]. */
  pressure: number;
  /** Temperature [K]. */
  temperature: number;
  /** Relative humidity [0..1]. */
  relativeHumidity: number;
}

/** Slider-crank and combustion chamber. */
export interface CylinderSpecification {
  /** Number of cylinders of the engine [-]. */
  count: number;
  /** Bore and stroke [m]. */
  bore: number;
  stroke: number;
  /** Connecting rod length between centres [m]. */
  rodLength: number;
  /** Compression ratio [-]. */
  compressionRatio: number;
  /** Mean temperature of piston crown, head and liner [K]. */
  wallTemperature: number;
  /** Crevices at cylinder pressure over the clearance volume, within it [-]. */
  crevice: number;
  /** Charge lost past the rings at full load and a mean piston speed of 15 m/s [-]. */
  blowBy: number;
}

/** A round pipe whose diameter runs straight from one end to the other. */
export interface PipeSpecification {
  /** Length along the centre line [m]. */
  length: number;
  /** Diameter at the end nearer the open air [m]. */
  outerDiameter: number;
  /** Diameter at the end nearer the valve [m]. */
  innerDiameter: number;
  /** Wall temperature [K]. */
  wallTemperature: number;
  /** Equivalent sand roughness [m]. */
  roughness: number;
  /** Loss of bends, spread over the length, in dynamic heads [-]. */
  bendLoss: number;
}

/**
 * The trumpet. Its length runs from the plane of the mouth's rim to the face of the throttle body,
 * bellmouth included: what a rule laid along the centre line shows.
 */
export interface TrumpetSpecification extends PipeSpecification {
  bellmouth: BellmouthSpecification;
}

/** The flare at the mouth: a quarter ellipse that ends tangent to the trumpet. */
export interface BellmouthSpecification {
  /** Axial depth of the flare [m]; 0 for a plain cut end. */
  depth: number;
  /** Radial overhang of the rim beyond the trumpet's bore [m]; 0 for a plain cut end. */
  overhang: number;
  /** Entry loss in dynamic heads of the trumpet bore just below the flare [-]. */
  entryLoss: number;
  /** Acoustic end correction in mouth radii [-]. */
  endCorrection: number;
}

/** Throttle body with what throttles it: a butterfly plate, a slide or a barrel (loss/throttles.ts). */
export interface ThrottleSpecification {
  /** Absent: a butterfly. */
  kind?: 'slide' | 'barrel';
  /** Body length, face to face [m]. */
  length: number;
  /** Bore at the plate [m]. */
  bore: number;
  /** Distance of the plate's shaft from the body's outer face [m]. */
  shaftPosition: number;
  /** Shaft diameter across the bore [m]; a slide or a barrel has none there. */
  shaftDiameter: number;
  /** Diameter of a barrel [m]. */
  barrelDiameter?: number;
  /** Plate angle from the plane across the bore at which the plate seals [deg]. */
  closedAngle: number;
  /** Plate angle from the plane across the bore; 90 is wide open [deg]. */
  angle: number;
  /** Gap all round the rim of the shut plate [m]. */
  rimGap: number;
  /** Loss at full opening, in dynamic heads of the bore [-]. */
  openLoss: number;
  /** A drilling past the plate: its bore [m], and how far its screw leaves it open [0..1]. */
  bleed?: { bore: number; open: number };
}

/** How valve lift follows the crank. */
export type LiftSpecification =
  | {
      kind: 'timing';
      /** Crank angle at which lift reaches `checkLift` on opening [deg]. */
      open: number;
      /** Crank angle at which lift falls to `checkLift` on closing [deg]. */
      close: number;
      /** Lift at which the timing is stated [m]. */
      checkLift: number;
      /** Maximum lift [m]. */
      maximum: number;
      /** Mean lift from seat to seat over the maximum [-]; absent: the usual one. */
      fullness?: number;
    }
  | {
      kind: 'table';
      /** Crank angles [deg], rising. */
      angle: number[];
      /** Lift at each angle [m]; first and last are 0. */
      lift: number[];
    };

/** What the valve flows. */
export type ValveFlowSpecification =
  | {
      kind: 'coefficient';
      /** Lift over valve diameter [-], rising. */
      liftRatio: number[];
      /** Discharge coefficient, upstream total to downstream static pressure [-]. */
      coefficient: number[];
      /** Reference area: the curtain pi D L, or the inner seat area pi D^2/4. */
      reference: 'curtain' | 'seat';
    }
  | {
      kind: 'bench';
      /** Lift [m], rising. */
      lift: number[];
      /** Volume flow of all valves of one cylinder together, at bench air [m^3/s]. */
      flow: number[];
      /** Pressure drop of the bench [Pa]. */
      depression: number;
      /** Temperature of the bench air [K]. */
      temperature: number;
      /** Pressure of the bench air [Pa]. */
      pressure: number;
    };

/** The valves of one kind of one cylinder. */
export interface ValveSpecification {
  /** Valves of this kind per cylinder [-]. */
  count: number;
  /** Inner seat diameter [m]. */
  diameter: number;
  lift: LiftSpecification;
  flow: ValveFlowSpecification;
}

/** A volume that the intakes of all cylinders breathe from, fed through one pipe; or two alike, one a bank. */
export interface ChamberSpecification {
  /** Volume, of all together [m^3]. */
  volume: number;
  /** Which of the chambers each mouth stands in, from 0, in the order they fire; absent: there is one. */
  banks?: readonly number[];
  /** Pipe that joins the two where their inlets open [m]; absent: nothing does. */
  cross?: { length: number; diameter: number };
  /** How the mouths stand along it; absent: it is alike to all. */
  row?: {
    /** From one mouth to the next [m]. */
    pitch: number;
    /** Place of each mouth along its row, from 0, in the order they fire; of two banks in one chamber two may share one. */
    places: readonly number[];
    /** Place that the inlet opens at. */
    inlet: number;
  };
  /** From the air of the feed to each chamber, or to the throttle body before it. */
  inlet: PipeSpecification;
  /** Loss at the inlet's mouth, filter and all, dynamic heads of its bore, either way [-]. */
  inletLoss: number;
  /** One throttle body between each inlet and its chamber; absent: the inlet ends in the chamber. */
  throttle?: ThrottleSpecification;
}

/** Everything from the still air in front of the mouth to the intake valve. */
export interface IntakeSpecification {
  /** State of the air that the mouths, or the chamber's inlet, breathe: ambient, or a pressurised box. */
  feed: { pressure: number; temperature: number };
  /** What stands between that air and the mouths; absent where the mouths stand in it. */
  chamber?: ChamberSpecification;
  trumpet: TrumpetSpecification;
  /** Length of each cylinder's trumpet [m], in firing order; absent where all are alike. */
  trumpetLengths?: readonly number[];
  /** Distance of a wall in front of the mouths from the body face [m]; absent: nothing near. */
  facingWall?: number;
  throttle: ThrottleSpecification;
  /** Plate angle of each cylinder [deg], in firing order; absent where all are alike. */
  throttleAngles?: readonly number[];
  /** Bore of the drilling past the plate of each cylinder [m], in firing order; absent where all are the body's. */
  bleedBores?: readonly number[];
  /** What joins the runners behind the throttle bodies; absent where nothing does. */
  bars?: readonly BarSpecification[];
  /** Between throttle body and cylinder head; length 0 where the body bolts to the head. */
  runner: PipeSpecification;
  port: PipeSpecification;
  valve: ValveSpecification;
}

/** Which pipes meet. */
export interface JointSpecification {
  /** How many cylinders blow into one pipe; 1 means that each runs on alone. */
  joined: number;
  /**
   * Numbers of the cylinders that do, pipe by pipe, in place of `joined`; absent: those that fire every so
   * many of the firing order.
   */
  groups?: readonly (readonly number[])[];
}

/** Everything from the exhaust valve to the open air. */
export interface ExhaustSpecification extends JointSpecification {
  valve: ValveSpecification;
  port: PipeSpecification;
  primary: PipeSpecification;
  /** What the primary is from a step of its bore on. */
  step?: PipeSpecification;
  /** From the primaries' joint to the tail's; absent where primaries meet at the tail. */
  secondary?: PipeSpecification & JointSpecification;
  /** What leads on from the last joint to the tail: a collector's cone. */
  collector?: PipeSpecification;
  /** From there to the open air; absent where primaries end in the open. */
  tail?: PipeSpecification;
  /** Pressure drop across the silencer, dynamic heads of the last pipe [-]. */
  silencerLoss: number;
}

/** Fuel as burned, and how it burns. */
export interface CombustionSpecification {
  /** Fuel name, a key of the table of fuels. */
  fuel: string;
  /** Air over stoichiometric air [-]. */
  lambda: number;
  /** Crank angle of 50 % burned [deg]. */
  burn50: number;
  /** Crank angle from 10 % to 90 % burned [deg]. */
  burnDuration: number;
  /** How far burn durations follow residual gas, density and speed: 0 as stated, 1 by published laws. */
  burnResponse: number;
  /** Share of the fuel's heat that is released [-]. */
  efficiency: number;
}

/** How finely and how long to compute. */
export interface NumericsSpecification {
  /** Largest cells of intake and exhaust [m]. */
  intakeCell: number;
  exhaustCell: number;
  /** Courant number [-]. */
  courant: number;
  /** Slope limiter, a name of the registry. */
  limiter: string;
  /** Numerical flux, a name of the registry. */
  flux: string;
  /** Relative change from cycle to cycle at which a point has settled [-]. */
  settle: number;
  /** Cycles after which a point that has not settled is given up. */
  maximumCycles: number;
}

/** One turn of the firing order. */
export interface FiringSpecification {
  /** Number of the cylinder, from 1. */
  cylinder: number;
  /** Crank angle at which it fires behind the first of the order [deg]. */
  angle: number;
}

/** One engine at every speed; what a run needs besides the speed itself. */
export interface EngineSpecification {
  title: string;
  ambient: AmbientSpecification;
  cylinder: CylinderSpecification;
  /** Every cylinder in the order they fire, the first at 0; absent: numbered so, at even steps. */
  firing?: readonly FiringSpecification[];
  intake: IntakeSpecification;
  exhaust: ExhaustSpecification;
  combustion: CombustionSpecification;
  /** Heat between gas and the walls of pipes over the correlation's [-]. */
  pipeHeat: number;
  /** Absent: fuel joins the charge as vapour at valve closing. */
  injectors?: InjectorsSpecification;
  numerics: NumericsSpecification;
}
