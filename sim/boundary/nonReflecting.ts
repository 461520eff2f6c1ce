/**
 * An end that lets outgoing waves pass: the arriving gas meets still gas of the state outside, with
 * nothing coming back,
 *
 *   p = (p_a + p_o + Z (v_a)) / 2,   Z = rho_a c_a   (linear characteristics)
 *
 * Source: Toro (2009), sec. 9.3, eq. 9.20 (from memory): the linearised Riemann solution. A wave of
 * relative amplitude d reflects about d^2.
 */
import type { Gas } from '../gas/gas.ts';
import type { End } from './ductEnd.ts';
import { writeOut } from './exchange.ts';
import type { Node } from './node.ts';
import { velocityBehind } from './outgoingWave.ts';
import type { Reservoir } from './reservoir.ts';

export function nonReflecting(end: End, outside: Reservoir): Node {
  return {
    ends: [end],
    exchange: (gas, { dt }) => {
      solve(end, outside, gas);
      outside.receive(end.flow, dt, end.area);
    },
  };
}

function solve(end: End, outside: Reservoir, gas: Gas): void {
  const a = end.arriving;
  const p = 0.5 * (a.p + outside.pressure + a.rho * a.c * a.v);
  const v = velocityBehind(a, p);
  if (v >= 0) {
    writeOut(end, p, gas);
    return;
  }
  const { burned, fuel, gamma, R } = outside;
  const T = outside.temperature * (p / outside.pressure) ** ((gamma - 1) / gamma);
  const rho = p / (R * T);
  const h = gas.enthalpy(T, burned, fuel);
  end.write(rho, v, p, burned, fuel, rho * v * end.area * (h + 0.5 * v * v));
}
