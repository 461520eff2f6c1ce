/**
 * What a spray is put together of, from the cylinder that it belongs to, and what crosses an end between its
 * steps. Sources: in the file of each part.
 */
import type { DuctEnd } from '../boundary/ductEnd.ts';
import { circleArea } from '../duct/profile.ts';
import type { ChargeGas } from './chargeGas.ts';
import type { IntakeLine } from './intakeLine.ts';
import type { MouthCloud } from './mouthCloud.ts';
import { gravityOf, Parcels } from './parcels.ts';
import { Pulse } from './pulse.ts';
import type { SprayLedger } from './sprayLedger.ts';
import type { SprayOptions } from './sprayOptions.ts';
import { jetSpeed } from './spraySource.ts';
import { WallFilm } from './wallFilm.ts';

/** The film on the walls of the intake and on the backs of its valves. */
export function filmOf({ fuel, gas, injectors, valve }: SprayOptions, line: IntakeLine): WallFilm {
  return new WallFilm({
    fuel,
    line,
    gas,
    thickness: injectors.filmThickness,
    valve: {
      area: valve.count * circleArea(valve.diameter),
      temperature: injectors.valveTemperature,
    },
  });
}

/** What drops meet and give to. */
interface Around {
  line: IntakeLine;
  film: WallFilm;
  cloud: MouthCloud;
  charge: ChargeGas;
  ledger: SprayLedger;
}

/** The drops, none of them yet. */
export function parcelsOf(options: SprayOptions, around: Around): Parcels {
  const { fuel, gas, injectors, mouth, rim, plate, valve, bore, outside } = options;
  const { line, film, cloud, charge, ledger } = around;
  return new Parcels({
    ...{ fuel, gas, line, film, cloud, charge, ledger, rim, plate, bore, outside },
    coupling: injectors.coupling,
    mouthRadius: Math.sqrt(mouth.area / Math.PI),
    valveDiameter: valve.diameter,
    gravity: gravityOf(injectors.lean),
  });
}

/** What each injector sprays in a cycle. */
export function pulsesOf({ fuel, injectors, rim, speed }: SprayOptions): Pulse[] {
  return injectors.list.map(
    (injector) =>
      new Pulse(injector, {
        fuel,
        speed: jetSpeed(injector.pressure, fuel.density),
        temperature: injectors.fuelTemperature,
        parcels: injectors.parcels,
        s: rim + injector.position,
        rpm: speed,
      }),
  );
}

/** Sums of an end (boundary/ductEnd.ts). */
export type Sums = DuctEnd['sums'];
export const NO_SUMS: Sums = { out: 0, in: 0, fuel: 0, pressure: 0 };

/** What has crossed since an earlier look. */
export function since(now: Sums, before: Sums): Sums {
  return {
    out: now.out - before.out,
    in: now.in - before.in,
    fuel: now.fuel - before.fuel,
    pressure: now.pressure - before.pressure,
  };
}
