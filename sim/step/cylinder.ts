/**
 * A cylinder: a volume of uniform gas whose size the crank sets, with work, wall heat and burning.
 *
 *   d(m e)/dt = sum E_in - p dV/dt - h A (T - Tw) + q dm_burned/dt
 *   V = V_c + A (a (1 - cos th) + l - sqrt(l^2 - a^2 sin^2 th))       slider-crank
 *   x = (1 - exp(-5 y^3)) / (1 - exp(-5)),   y = (th - th_0) / D        Wiebe's burn
 *   h = 3.26 B^-0.2 p^0.8 T^-0.55 w^0.8   [W/m2 K], p [kPa]           Woschni
 *   w = 6.18 Sp gas exchange,  2.28 Sp + 3.24e-3 (Vd T1 / (p1 V1)) (p - p1 (V1/V)^1.35) valves shut
 *
 * State 1 is valve closing. Of what the cylinder holds unburned (air and fuel) the burn turns the share
 * dx / (1 - x) into products; fuel joins the charge at valve closing (engine/cycle.ts). What comes out of
 * crevices (crevice.ts) after the burn and before the exhaust opens turns into products at once, and two
 * thirds of its heat is released. What the ledger says is what the state got.
 * Sources: the first law for an open system; Heywood (1988), sec. 2.2 eqs. 2.4-2.6, sec. 9.2 eq. 9.30,
 * sec. 12.4.3 eqs. 12.17-12.19 after Woschni (1967), SAE 670931 (from memory); exponent 1.35 common
 * practice, no source. Measured engines scatter about Woschni by a factor of 1.5. Two thirds: Cheng et al.,
 * SAE 932708 (1993), of mixture that escapes the flame (from memory).
 */

import { breatheCrevice } from './crevice.ts';
import { any, type B, exp2, type I, K, log2, max, min, type R, sqrt, type V, X } from './lanes.ts';
import {
  C_AIR_SHARE,
  C_AREA,
  C_BURN,
  C_BURN_FROM,
  C_BURN_PER,
  C_CLEARANCE,
  C_CLOSE_P,
  C_CLOSE_T,
  C_CLOSE_V,
  C_CRANK,
  C_CREVICE,
  C_FUEL_HEAT,
  C_LEAK,
  C_LINER,
  C_PHASE,
  C_PISTON,
  C_ROD,
  C_SHUT_FROM,
  C_SHUT_SPAN,
  C_SWEPT,
  C_WALL,
  C_WALL_T,
  C_WORK,
  C_WOSCHNI,
  CRANK_MIDDLE,
  CRANK_STEP,
  DT,
  G_BURNED,
  G_ENERGY,
  G_FUEL,
  G_MASS,
  Q_P,
  V_BURNED,
  V_FUEL,
  V_MASS,
  V_SIZE,
  V_T,
} from './layout.ts';
import { showVolume } from './volume.ts';

const CYCLE: R = 720;
const RADIANS: R = 0.017453292519943295;
/** 5 / ln 2, and 1 - exp(-5). */
const WIEBE: R = 7.213475204444817;
const WIEBE_WHOLE: R = 0.9932620530009145;
const MOTORED_EXPONENT: R = 1.35;
/** What rounding leaves of the fuel burns as well: ducts without vapour compute none. */
const ROUND_OFF: R = 1e-6;
/** From this share on the burn is over. */
const BURNED_OUT: R = 0.999999;
/** Share of what comes unburned out of crevices after the burn that burns still. */
const LATE: R = 0.6666666666666666;

/** An angle [deg] from -720 to 1440 brought to 0 to 720. */
export function wrapped(angle: V): V {
  const turned: V = angle < 0 ? angle + CYCLE : angle;
  return turned >= CYCLE ? turned - CYCLE : turned;
}

/** Sine of an angle [deg], 0 to 720. */
export function sine(angle: V): V {
  const once: V = angle >= 360 ? angle - 360 : angle;
  const half: V = once >= 180 ? once - 180 : once;
  const x: V = RADIANS * (half > 90 ? 180 - half : half);
  const z: V = -x * x;
  const high: V = 1 / 110 + z * (1 / 17160 + z * (1 / 3603600 + z * (1 / 980179200)));
  const rise: V =
    x * (1 + z * (1 / 6 + z * (1 / 120 + z * (1 / 5040 + z * (1 / 362880) * (1 + z * high)))));
  return once >= 180 ? -rise : rise;
}

/** Size [m3] at its own crank angle [deg], 0 to 720; `k` its constants. */
function cylinderSize(k: I, angle: V): V {
  const a: R = K[k + C_CRANK];
  const l: R = K[k + C_ROD];
  const across: V = a * sine(angle);
  const down: V = a * (1 - sine(wrapped(angle + 90))) + l - sqrt(l * l - across * across);
  return K[k + C_CLEARANCE] + K[k + C_AREA] * down;
}

/** Share burned at its own crank angle [deg], 0 to 720; `x` its slots. */
function burnedShare(x: I, angle: V): V {
  // The burn straddles firing top dead centre.
  const centred: V = angle > 0.5 * CYCLE ? angle - CYCLE : angle;
  const y: V = min(max((centred - X[x + C_BURN_FROM]) * X[x + C_BURN_PER], 0), 1);
  return (1 - exp2(-WIEBE * y * y * y)) / WIEBE_WHOLE;
}

/** Sets size and visible state at half time. */
export function predictCylinder(x: I, k: I): void {
  const angle: V = wrapped(X[CRANK_MIDDLE] - K[k + C_PHASE]);
  X[x + V_SIZE] = cylinderSize(k, angle);
  showVolume(x, 0.5 * X[DT]);
}

/** Work, wall heat, crevices and burn of the step into what the cylinder gains. */
export function workCylinder(x: I, k: I): void {
  const angle: V = wrapped(X[CRANK_MIDDLE] - K[k + C_PHASE]);
  const from: V = wrapped(angle - 0.5 * X[CRANK_STEP]);
  const to: V = wrapped(angle + 0.5 * X[CRANK_STEP]);
  const shut: B = wrapped(angle - K[k + C_SHUT_FROM]) < K[k + C_SHUT_SPAN];
  const work: V = X[x + Q_P] * (cylinderSize(k, to) - cylinderSize(k, from));
  let wall: V = 0 * work;
  if (K[k + C_WALL_T] > 0) wall = wallFlow(x, k, shut) * X[DT];
  X[x + G_ENERGY] += -work - wall;
  X[x + C_WORK] += work;
  X[x + C_WALL] += wall;
  const burns: boolean = any(X[x + C_BURN_PER] > 0);
  if (K[k + C_CREVICE] + K[k + C_LEAK] > 0) {
    const until: R = burns ? 0.5 * CYCLE : 0;
    breatheCrevice(x, k, !shut && angle < until);
  }
  if (burns) burn(x, k, burnedShare(x, from), burnedShare(x, to), shut);
}

/** Burns what the cylinder holds unburned, from one share of Wiebe's to the next, and late what comes after. */
function burn(x: I, k: I, from: V, to: V, shut: B): void {
  // At the end of the cycle the share falls from 1 to 0; there nothing burns.
  const late: B = shut && from > BURNED_OUT;
  const share: V = late ? 1 : max(to - from, 0) / max(1 - from, 1 - BURNED_OUT);
  const now: B = share > 0;
  if (!any(now)) return;
  const fresh: V = X[x + V_MASS] + X[x + G_MASS] - X[x + V_BURNED] - X[x + G_BURNED];
  const burnt: V = share * (X[x + V_FUEL] + X[x + G_FUEL]);
  const left: V = 1 - share < ROUND_OFF ? -X[x + V_FUEL] : X[x + G_FUEL] - burnt;
  X[x + G_BURNED] = now ? X[x + G_BURNED] + share * fresh : X[x + G_BURNED];
  X[x + G_FUEL] = now ? left : X[x + G_FUEL];
  const heat: V = burnt * X[x + C_AIR_SHARE] * K[k + C_FUEL_HEAT] * (late ? LATE : 1);
  X[x + G_ENERGY] += heat;
  X[x + C_BURN] += heat;
}

/** Heat flow to the wall [W]. */
function wallFlow(x: I, k: I, shut: B): V {
  const sp: V = X[x + C_PISTON];
  const p: V = X[x + Q_P];
  const t: V = X[x + V_T];
  const size: V = X[x + V_SIZE];
  let speed: V = 6.18 * sp;
  if (any(shut)) {
    const p1: V = X[x + C_CLOSE_P];
    const v1: V = X[x + C_CLOSE_V];
    const motored: V = p1 * exp2(MOTORED_EXPONENT * log2(v1 / size));
    const scale: V = (K[k + C_SWEPT] * X[x + C_CLOSE_T]) / (p1 * v1);
    const closed: V = 2.28 * sp + 3.24e-3 * scale * max(p - motored, 0);
    speed = shut ? closed : speed;
  }
  const h: V = K[k + C_WOSCHNI] * exp2(0.8 * log2(p * speed) - 0.55 * log2(t));
  const surface: V = 2 * K[k + C_AREA] + K[k + C_LINER] * size;
  return h * surface * (t - K[k + C_WALL_T]);
}
