/** The injectors of a cylinder and what the gas feels of their spray, as resolved data in SI units. */

/** One injector of a cylinder. */
export interface InjectorSpecification {
  /** What the builder calls it. */
  name: string;
  /** Distance of the nozzle behind the rim plane of the mouth [m]; negative in front of it. */
  position: number;
  /** Distance of the nozzle from the centre line [m]. */
  offset: number;
  /** Angle of the jet from the centre line towards the valve, leaning to the centre line [deg]. */
  tilt: number;
  /** Full angle of the cone [deg]. */
  cone: number;
  /** Mass flow held open [kg/s]. */
  flow: number;
  /** Pressure across the injector [Pa]. */
  pressure: number;
  /** Sauter mean diameter [m]. */
  sauterDiameter: number;
  /** Exponent of the Rosin-Rammler spread of sizes [-]; above 1, larger is narrower. */
  spread: number;
  /** Crank angle at which the pulse starts or ends [deg]. */
  timing: { edge: 'start' | 'end'; angle: number };
  /** Time before fuel flows [s]. */
  deadTime: number;
  /** Shortest pulse that repeats well, dead time included [s]. */
  smallestPulse: number;
}

/** Share of the outermost injector against speed and load. */
export interface StagingSpecification {
  /** Speeds [rpm], rising. */
  speed: number[];
  /** Share at each speed [0..1]; straight between them. */
  share: number[];
  /** Load [-] at which the outer injector comes in, and over how much more it reaches its share. */
  fromLoad: number;
  loadBlend: number;
}

/** Where the gas feels an effect of the spray. */
export type SprayEffect =
  /** On the spot. */
  | 'field'
  /** As the gas enters the cylinder: the charge feels it, the waves do not. */
  | 'valve'
  /** Nowhere. */
  | 'off';

/** What the gas feels of the spray; all of it, or one effect alone to tell effects apart. */
export interface SprayCouplingSpecification {
  /** Heat of evaporation. */
  heat: SprayEffect;
  /** Room that vapour takes. */
  vapour: SprayEffect;
}

/** The injectors of one cylinder; all cylinders have the same. */
export interface InjectorsSpecification {
  /** From the valve outwards. */
  list: InjectorSpecification[];
  staging: StagingSpecification;
  /** Temperature of the fuel at the nozzle [K]. */
  fuelTemperature: number;
  /** Temperature of the intake valve's head [K]. */
  valveTemperature: number;
  /** Lean of the trumpet's axis from upright [deg]; 0 is mouth up, 90 lies flat. */
  lean: number;
  /** Thickness below which a film breaks into patches [m]. */
  filmThickness: number;
  /** Idle speed [rpm]. */
  idleSpeed: number;
  /** Parcels a pulse [-]. */
  parcels: number;
  coupling: SprayCouplingSpecification;
}
