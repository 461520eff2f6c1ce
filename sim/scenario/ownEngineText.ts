/**
 * A scenario's text round a few figures. All others are taken by rule from those few, each with a remark that
 * says so and with how far it may be off, which the study of doubt carries on. The rules are common practice,
 * no source.
 */
import { type LengthUnit, METRES } from '../decision/lengthUnit.ts';
import { SEAT_SHARE } from './sections/valveHead.ts';

type Texts = Readonly<Record<string, string>>;
type Values = Readonly<Record<string, number>>;

/**
 * @param written the builder's figures by their paths, with units
 * @param values the same [m, deg, rpm, 1]
 * @param unit of the lengths that are assumed
 */
export function ownEngineText(
  title: string,
  written: Texts,
  values: Values,
  unit: LengthUnit,
): string {
  const given = (path: string) => `${written[path]} # yours`;
  const guess = (metres: number, half: number, rule: string) =>
    `${inUnit(metres, unit)} +- ${inUnit(half, unit)} # assumed: ${rule}; measure it`;
  const parts = { given, guess, values, unit };
  return [
    `title: ${JSON.stringify(title)}`,
    'notes: Begun from a few figures. What is not yours is assumed by common practice, and says so.',
    engineText(parts),
    intakeText(parts),
    exhaustText(parts),
    questionText(parts),
  ].join('\n\n');
}

interface Parts {
  given(path: string): string;
  guess(metres: number, half: number, rule: string): string;
  values: Values;
  unit: LengthUnit;
}

/** A length rounded to half a millimetre, or to a fiftieth of an inch. */
function inUnit(metres: number, unit: LengthUnit): string {
  const steps = unit === 'mm' ? 2 : 50;
  return `${Math.max(Math.round((metres / METRES[unit]) * steps), 1) / steps} ${unit}`;
}

function engineText({ given, guess, values }: Parts): string {
  const stroke = values['engine.stroke']!;
  return `engine:
  cylinders: ${given('engine.cylinders')}
  bore: ${given('engine.bore')}
  stroke: ${given('engine.stroke')}
  rod: ${guess(1.7 * stroke, 0.15 * stroke, '1.7 of the stroke')}
  compressionRatio: ${given('engine.compressionRatio')}`;
}

/** Bore of one pipe with the area of so many seats [m]. */
const oneOf = (count: number, seat: number) => Math.sqrt(count) * seat;

function intakeText({ given, guess, values }: Parts): string {
  const bore = values['intake.throttle.bore']!;
  const seats = oneOf(
    values['intake.valves.count']!,
    SEAT_SHARE * values['intake.valves.headDiameter']!,
  );
  const narrow = Math.min(0.9 * seats, bore);
  return `intake:
  trumpet:
    length: ${given('intake.trumpet.length')}, rim plane to body face
    diameter: ${guess(bore, 0.02 * bore, 'as the throttle')}
    bellmouth:
      radius: ${guess(0.25 * bore, 0.1 * bore, 'a quarter of the bore')}
  throttle:
    bore: ${given('intake.throttle.bore')}
    length: ${guess(1.2 * bore, 0.2 * bore, '1.2 of the bore')}
  port: # with any manifold before it
    length: ${given('intake.port.length')}, body face to seat
    diameterAirEnd: ${guess(bore, 0.03 * bore, 'as the throttle')}
    diameterValveEnd: ${guess(narrow, 0.06 * narrow, 'nine tenths of the seats together')}
  valves:
    count: ${given('intake.valves.count')}
    headDiameter: ${given('intake.valves.headDiameter')}
    lift:
      centre: 108 deg ATDC +- 4 deg # assumed: middle of most cams; measure it
      duration: ${given('intake.valves.lift.duration')}
      checkLift: 1 mm
      maximum: ${given('intake.valves.lift.maximum')}`;
}

/** Primaries that meet in one joint: the most, up to four, that the cylinders can be dealt into. */
function joinedOf(cylinders: number): number {
  return [4, 3, 2, 5, 7].find((joined) => cylinders % joined === 0) ?? 1;
}

function exhaustText({ given, guess, values }: Parts): string {
  const count = Math.min(values['intake.valves.count']!, 2);
  const head = 0.85 * values['intake.valves.headDiameter']!;
  const port = oneOf(count, SEAT_SHARE * head);
  const lift = 0.95 * values['intake.valves.lift.maximum']!;
  const joined = joinedOf(values['engine.cylinders']!);
  const tail = `
  joined: ${joined} # assumed: as the cylinders can be dealt into
  tail:
    length: ${guess(1.2, 0.6, 'a car')}
    diameter: ${guess(1.6 * port, 0.2 * port, '1.6 of the port')}`;
  return `exhaust:
  valves:
    count: ${count} # assumed from the intake
    headDiameter: ${guess(head, 0.05 * head, '0.85 of the intake')}
    lift:
      centre: 110 deg BTDC +- 4 deg # assumed: middle of most cams; measure it
      duration: ${given('intake.valves.lift.duration').replace('# yours', '+- 8 deg # assumed: as the intake')}
      checkLift: 1 mm
      maximum: ${guess(lift, 0.05 * lift, '0.95 of the intake')}
  port:
    length: ${guess(0.06, 0.015, 'most heads')}
    diameter: ${guess(port, 0.06 * port, 'the seats together')}
  primary:
    length: ${given('exhaust.primary.length')}
    diameter: ${guess(1.1 * port, 0.08 * port, '1.1 of the port')}${joined > 1 ? tail : ''}`;
}

/** Lengths are tried from the shortest with room for the flare to well beyond the usual and the fitted one. */
const TRIED = {
  mm: { from: 40, to: 300, step: 20 },
  in: { from: 1.5, to: 12, step: 0.75 },
} as const;

function questionText({ given, values, unit }: Parts): string {
  const [from, to] = [values['target.from']!, values['target.to']!];
  const hundreds = (speed: number) => Math.round(speed / 100) * 100;
  const { step, ...tried } = TRIED[unit];
  const flare = 0.25 * values['intake.throttle.bore']! + 0.01;
  const fitted = values['intake.trumpet.length']! / METRES[unit];
  const first =
    tried.from + step * Math.max(0, Math.ceil((flare / METRES[unit] - tried.from) / step));
  const steps = Math.ceil((Math.max(tried.to, fitted + 2 * step) - first) / step);
  return `speeds: # a range round the band; between is computed where it matters
  from: ${hundreds(0.6 * from)} rpm
  to: ${hundreds(1.12 * to)} rpm

sweep:
  lengths: # narrow this to what fits
    from: ${first} ${unit}
    to: ${first + steps * step} ${unit}
    step: ${step} ${unit}

target:
  from: ${given('target.from')}
  to: ${given('target.to')}
`;
}
