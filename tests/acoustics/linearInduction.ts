/**
 * Linear acoustics of one cylinder breathing through its own intake pipe, in periodic state.
 *
 *   pipe      p(t) = Z h(t) + (r * q)(t),  q = p + Z h,  h = -U      at the valve end
 *   valve     p - pc = rho U |U| / (2 A(theta)^2)
 *   cylinder  dpc/dt = gamma (p0 U - pc dV/dt) / V(theta)
 *
 *   p   acoustic pressure at the valve end of the pipe [Pa]; taken as total pressure, so that the
 *       dynamic head at mouth and valve drops out and only losses remain
 *   U   volume flow into the cylinder [m^3/s]       Z  plane impedance rho c / S there [Pa s/m^3]
 *   r   reflection function [-]: inverse Fourier transform, over one engine cycle, of the pipe's
 *       reflection coefficient by transfer matrices, radiation and end correction at the mouth
 *   A   effective area of the valves [m^2]          V  cylinder volume [m^3]
 *
 * Until the exhaust valve closes the cylinder is held at the feed pressure, so exhaust waves and
 * residual heat are left out; so are steepening and the carrying of waves by the flow, each a few
 * per cent of wave speed at induction Mach numbers of 0.1 to 0.2. Losses K rho u|u|/2 of mouth,
 * plate, bends and friction act at the mouth, made linear about the root mean square flow there,
 *
 *   R = K (rho/2) 8 sqrt(2)/(3 pi) Urms / S^2,   Urms^2 = <U^2> + <p^2>/Z^2
 *
 * (harmonic balance; the flow at the mouth of a quarter-wave pipe), until R and Urms agree. Good for
 * tuned speeds, coarse for volumetric efficiency.
 *
 * Sources of the idea, intake waves linear though strong: Harrison & Stanev, J. Sound Vib. 269
 * (2004) 361; Ohata & Ishida, SAE 820407. Reflection function: Schumacher, Acustica 48 (1981) 71
 * (from memory). Shares no code with the flow solver.
 */
import Complex from 'complex.js';
import FFT from 'fft.js';
import { reflectionUnflanged } from './endReflection.ts';
import {
  areaOf,
  type DuctSection,
  fourPoleDucts,
  fourPoleImpedance,
  type Medium,
  planeImpedance,
  reversedDucts,
  waveNumberWithLoss,
} from './transferMatrix.ts';

/** Most corrections of the losses to the flow found. */
const LOSS_ROUNDS = 6;
/** Cycles after which the march stops if it has not become periodic. */
const MAXIMUM_CYCLES = 50;

/** The pipe from the mouth (side 1 of the first section) to the valve (side 2 of the last). */
export interface IntakePipe {
  sections: readonly DuctSection[];
  /** End correction in mouth radii [-]. */
  endCorrection: number;
  /**
   * Sum of all losses of the pipe, dynamic heads at `lossDiameter` [-]; the mean of the way in and
   * the way out, where the jet at the mouth loses its own head.
   */
  loss: number;
  /** Diameter that the loss refers to [m]. */
  lossDiameter: number;
}

/** The gas that fills pipe and cylinder. */
export interface InductionGas extends Medium {
  /** Pressure of the feed [Pa]. */
  pressure: number;
}

/** The cylinder against crank angle [deg]: 0 firing top dead centre, 360 gas-exchange dead centre. */
export interface BreathingCylinder {
  /** Volume [m^3]. */
  volume(angle: number): number;
  /** Effective area of all intake valves [m^2]; 0 while shut. */
  effectiveArea(angle: number): number;
  /** Displaced volume [m^3]. */
  displacement: number;
  /** Crank angle at which the exhaust valves shut [deg]. */
  exhaustClosing: number;
  /** Crank angle at which the intake valves shut [deg]. */
  intakeClosing: number;
}

/** One settled cycle at one speed. */
export interface InductionCycle {
  /** Volume drawn at feed density over displaced volume [-]. */
  volumetricEfficiency: number;
  /** Cylinder pressure above feed pressure at intake closing [Pa]. */
  pressureAtClosing: number;
  /** Pressure at the valve end of the pipe above feed pressure [Pa], evenly over 720 deg. */
  pipePressure: Float64Array;
  /** Volume flow from pipe to cylinder [m^3/s], at the same angles. */
  flow: Float64Array;
  /** Root mean square flow that the losses were made linear about [m^3/s]. */
  lossFlow: number;
  /** Cycles computed. */
  cycles: number;
}

/**
 * Pressure reflection coefficient of the pipe seen from the valve [-].
 *
 * @param frequency [Hz], above 0
 * @param flow root mean square volume flow that the losses are made linear about [m^3/s]
 */
export function pipeReflection(
  pipe: IntakePipe,
  frequency: number,
  flow: number,
  gas: Medium,
): Complex {
  const mouth = pipe.sections[0]!.diameter1;
  const ka = (Math.PI * frequency * mouth) / gas.soundSpeed;
  const magnitude = reflectionUnflanged(Math.min(ka, 1.5)).magnitude;
  const reflected = new Complex({ abs: magnitude, arg: Math.PI - 2 * ka * pipe.endCorrection });
  const radiation = reflectedToImpedance(reflected, planeImpedance(mouth, gas));
  const end = radiation.add(lossResistance(pipe, flow, gas));
  const matrix = fourPoleDucts(
    reversedDucts(pipe.sections),
    ({ diameter1, diameter2 }) => waveNumberWithLoss(frequency, (diameter1 + diameter2) / 2, gas),
    gas,
  );
  const Z = valveImpedance(pipe, gas);
  const seen = fourPoleImpedance(matrix, end);
  return seen.sub(Z).div(seen.add(Z));
}

/** Reflection at frequency 0: a steady flow meets the losses alone; -1 without them. */
function steadyReflection(pipe: IntakePipe, flow: number, gas: Medium): number {
  const ratio = lossResistance(pipe, flow, gas) / valveImpedance(pipe, gas);
  return (ratio - 1) / (ratio + 1);
}

/** Resistance R [Pa s/m^3] of the losses about a root mean square flow. */
function lossResistance(pipe: IntakePipe, flow: number, gas: Medium): number {
  const heads = (pipe.loss * gas.density) / 2 / areaOf(pipe.lossDiameter) ** 2;
  return heads * ((8 * Math.SQRT2) / (3 * Math.PI)) * flow;
}

function valveImpedance(pipe: IntakePipe, gas: Medium): number {
  return planeImpedance(pipe.sections.at(-1)!.diameter2, gas);
}

function reflectedToImpedance(reflection: Complex, Z: number): Complex {
  return reflection.add(1).div(reflection.neg().add(1)).mul(Z);
}

/** Reflection function [-] of the pipe, sampled over one cycle of this period [s]. */
function reflectionFunction(
  pipe: IntakePipe,
  period: number,
  flow: number,
  gas: Medium,
): Float64Array {
  // Plane waves end where the first cross mode is cut on, ka = 1.84: fade out there.
  const cutOn = (1.84 * gas.soundSpeed) / (Math.PI * pipe.sections.at(-1)!.diameter2);
  // The highest frequency kept is at least twice that; fewer steps make the march unstable.
  const steps = 2 ** Math.ceil(Math.log2(4 * cutOn * period));
  const fft = new FFT(steps);
  const spectrum = fft.createComplexArray().fill(0);
  spectrum[0] = steadyReflection(pipe, flow, gas);
  for (let n = 1; n < steps / 2; n++) {
    const fade = Math.exp(-((n / period / cutOn) ** 2));
    if (fade < 1e-6) break;
    const R = pipeReflection(pipe, n / period, flow, gas).mul(fade);
    spectrum[2 * n] = spectrum[2 * (steps - n)] = R.re;
    spectrum[2 * n + 1] = R.im;
    spectrum[2 * (steps - n) + 1] = -R.im;
  }
  const out = fft.createComplexArray();
  fft.inverseTransform(out, spectrum);
  return Float64Array.from({ length: steps }, (_, i) => out[2 * i]);
}

/**
 * Settled linear induction cycle at a crank speed [rev/s]. Work grows with the square of the
 * period: a few milliseconds at 6000 rpm, a tenth of a second at 1000 rpm.
 */
export function inductionCycle(
  pipe: IntakePipe,
  cylinder: BreathingCylinder,
  gas: InductionGas,
  speed: number,
): InductionCycle {
  const period = 2 / speed;
  let flow = cylinder.displacement / period;
  const march = new Marching(
    pipe,
    cylinder,
    gas,
    period,
    reflectionFunction(pipe, period, flow, gas),
  );
  let cycles = march.settle();
  for (let round = 0; round < LOSS_ROUNDS; round++) {
    const found = march.rootMeanSquareFlow();
    if (Math.abs(found - flow) < 0.01 * found) break;
    flow = found;
    march.reflect(reflectionFunction(pipe, period, flow, gas));
    cycles += march.settle();
  }
  return {
    volumetricEfficiency: march.drawn / cylinder.displacement,
    pressureAtClosing: march.pressureAtClosing - gas.pressure,
    pipePressure: march.pressure,
    flow: march.flow,
    lossFlow: flow,
    cycles,
  };
}

/** Steps pipe, valve and cylinder through cycle after cycle. */
class Marching {
  /** Volume drawn over the last cycle, at feed density [m^3]. */
  drawn = 0;
  /** Cylinder pressure at intake closing [Pa]. */
  pressureAtClosing: number;
  readonly pressure: Float64Array;
  readonly flow: Float64Array;
  /** Outgoing wave p + Z h, the last cycle's where this one has not come yet. */
  private readonly outgoing: Float64Array;
  private readonly cylinder: BreathingCylinder;
  private readonly gas: InductionGas;
  private readonly Z: number;
  private readonly dt: number;
  private r: Float64Array;
  /** Pressure drop per flow within the step: q_i holds p_i, so p_i (1 - r_0) = ... - Z U (1 + r_0). */
  private impedance = 0;

  constructor(
    pipe: IntakePipe,
    cylinder: BreathingCylinder,
    gas: InductionGas,
    period: number,
    r: Float64Array,
  ) {
    this.cylinder = cylinder;
    this.gas = gas;
    this.Z = valveImpedance(pipe, gas);
    this.dt = period / r.length;
    this.pressureAtClosing = gas.pressure;
    this.pressure = new Float64Array(r.length);
    this.flow = new Float64Array(r.length);
    this.outgoing = new Float64Array(r.length);
    this.r = r;
    this.reflect(r);
  }

  /** Takes another reflection function and goes on from the waves there are. */
  reflect(r: Float64Array): void {
    this.r = r;
    this.impedance = (this.Z * (1 + r[0]!)) / (1 - r[0]!);
  }

  /** Marches until cycles repeat; returns their number. */
  settle(): number {
    for (let cycles = 1; ; cycles++) {
      const before = this.drawn;
      this.cycle();
      const change = Math.abs(this.drawn - before) / this.cylinder.displacement;
      if (change < 1e-6 || cycles >= MAXIMUM_CYCLES) return cycles;
    }
  }

  /** Root mean square flow at the mouth [m^3/s] over the last cycle. */
  rootMeanSquareFlow(): number {
    const sum = this.flow.reduce(
      (total, U, i) => total + U ** 2 + (this.pressure[i]! / this.Z) ** 2,
      0,
    );
    return Math.sqrt(sum / this.flow.length);
  }

  cycle(): void {
    const { cylinder, gas, dt } = this;
    const gamma = (gas.density * gas.soundSpeed ** 2) / gas.pressure;
    const degrees = 720 / this.r.length;
    let inside = gas.pressure;
    this.drawn = 0;
    for (let i = 0; i < this.r.length; i++) {
      const angle = i * degrees;
      const held = angle < cylinder.exhaustClosing;
      const V = cylinder.volume(angle);
      const dV = V - cylinder.volume(angle - degrees);
      // Cylinder pressure after this step is free + stiffness U.
      const stiffness = held ? 0 : (gamma * gas.pressure * dt) / V;
      const free = held ? gas.pressure : inside - (gamma * inside * dV) / V;
      const arriving = this.arriving(i);
      const U = valveFlow(
        arriving + gas.pressure - free,
        this.impedance + stiffness,
        cylinder.effectiveArea(angle),
        gas.density,
      );
      inside = free + stiffness * U;
      this.pressure[i] = arriving - this.impedance * U;
      this.outgoing[i] = this.pressure[i]! - this.Z * U;
      this.flow[i] = U;
      this.drawn += U * dt;
      if (angle <= cylinder.intakeClosing) this.pressureAtClosing = inside;
    }
  }

  /** Pressure [Pa] at the valve in step i if no flow passed in that step. */
  private arriving(i: number): number {
    const { outgoing, r } = this;
    const steps = r.length;
    let sum = 0;
    // The number of steps is a power of two: the mask wraps the index round the cycle.
    for (let j = 1; j < steps; j++) sum += r[j]! * outgoing[(i - j) & (steps - 1)]!;
    return sum / (1 - r[0]!);
  }
}

/** U of  a - b U = rho U |U| / (2 A^2). */
function valveFlow(a: number, b: number, area: number, density: number): number {
  if (area <= 0) return 0;
  const q = density / (2 * area * area);
  return (2 * a) / (b + Math.sqrt(b * b + 4 * q * Math.abs(a)));
}
