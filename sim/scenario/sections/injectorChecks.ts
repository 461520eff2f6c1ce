/** What one value of the injectors says of another: nozzles within the pipes, pulses within the cycle. */
import { fuelNamed } from '../../gas/fuel.ts';
import { liquidFuel } from '../../spray/liquidFuel.ts';
import { quantityToText } from '../quantity.ts';
import type { ScenarioView } from '../schema.ts';
import { gridValues } from './grid.ts';
import type { InjectorView } from './injectors.ts';
import { diameterAt, type PipeView } from './pipe.ts';

export function checkInjectors(view: ScenarioView): void {
  const { each, staging } = view.injectors;
  for (const row of each.rows) checkPlace(view, row);
  checkPulses(view);
  if (staging.present && each.rows.length === 1) {
    staging.problem('one injector has nothing to share', 'leave staging away');
  }
}

function checkPlace(view: ScenarioView, { fromMouth, fromValve, offset }: InjectorView): void {
  const length = lineLength(view);
  const place = fromMouth.given ?? length - fromValve.given!;
  if (place >= length) {
    (fromValve.present ? fromValve : fromMouth).problem(
      'the nozzle lies past the valve',
      'measure along the centre line from the rim of the mouth to the valve seat',
      `less than ${quantityToText(length, 'length')} behind the rim`,
    );
    return;
  }
  const wall = wallAt(view, place);
  if (!wall || offset.assumed <= wall.diameter / 2) return;
  offset.problem(
    `the nozzle lies inside the wall of the ${wall.name}`,
    'offset counts from the centre line to the tip; a tip flush with the wall has half the diameter',
    `at most ${quantityToText(wall.diameter / 2, 'length')}`,
  );
}

/** The pulses that a full cylinder at the highest speed asks for must fit into the cycle. */
function checkPulses(view: ScenarioView): void {
  const { each } = view.injectors;
  const top = Math.max(...gridValues(view.speeds).filter(Number.isFinite));
  const cycle = 120 / top;
  const need = fullFuel(view);
  const flows = each.rows.map((row) => massFlow(view, row));
  const [only] = each.rows;
  if (!(top > 0) || !only) return;
  if (each.rows.length === 1) {
    const pulse = need / flows[0]! + only.deadTime.assumed;
    if (!(pulse > cycle)) return;
    (only.flow.present ? only.flow : only.massFlow).problem(
      `a full cylinder at ${top} rpm asks for ${(pulse * 1e3).toFixed(1)} ms, longer than the cycle`,
      'take a larger injector, or add one',
      `at most ${(cycle * 1e3).toFixed(1)} ms`,
    );
    return;
  }
  const most = flows.reduce((sum, flow) => sum + flow, 0) * cycle;
  if (!(most < need)) return;
  each.problem(
    `all injectors held open give ${(most * 1e6).toFixed(1)} mg a cycle at ${top} rpm; a full cylinder asks for ${(need * 1e6).toFixed(1)} mg: the injection is longer than the cycle`,
    'take larger injectors',
  );
}

/** Pipes from the rim plane to the valve seat; NaN where a figure is not known. */
function pipes({ intake: { trumpet, throttle, runner, port } }: ScenarioView) {
  const ends = (pipe: PipeView) => ({
    length: pipe.length.given ?? Number.NaN,
    outer: diameterAt(pipe, 'AirEnd') ?? Number.NaN,
    inner: diameterAt(pipe, 'ValveEnd') ?? Number.NaN,
  });
  const bore = throttle.bore.given ?? Number.NaN;
  return [
    { name: 'trumpet', ...ends(trumpet) },
    {
      name: 'throttle body',
      length: throttle.length.given ?? Number.NaN,
      outer: bore,
      inner: bore,
    },
    ...(runner.here.present ? [{ name: 'runner', ...ends(runner) }] : []),
    { name: 'port', ...ends(port) },
  ];
}

/** Rim plane to valve seat [m]; NaN where it is not known. */
function lineLength(view: ScenarioView): number {
  return pipes(view).reduce((sum, { length }) => sum + length, 0);
}

/** The pipe around a place behind the rim, and its diameter there [m]; the flare is left out. */
function wallAt(view: ScenarioView, place: number): { name: string; diameter: number } | undefined {
  let from = 0;
  for (const { name, length, outer, inner } of pipes(view)) {
    if (place >= 0 && place < from + length) {
      return { name, diameter: outer + ((place - from) / length) * (inner - outer) };
    }
    from += length;
  }
  return undefined;
}

/** A name that was refused is told there; what stands on it is checked as for petrol. */
const fuelName = ({ fuel }: ScenarioView) => fuel.name.given ?? 'petrol';

/** Flow held open [kg/s]; NaN where it is not known. */
function massFlow(view: ScenarioView, { massFlow, flow }: InjectorView): number {
  return massFlow.given ?? flow.given! * liquidFuel(fuelName(view)).density;
}

/** Fuel of a cylinder full of air of 1.2 kg/m^3 [kg]; NaN where it is not known. */
function fullFuel(view: ScenarioView): number {
  const { bore, stroke } = view.engine;
  const air = 1.2 * (Math.PI / 4) * bore.given! * bore.given! * stroke.given!;
  const { stoichiometricAirFuelRatio } = fuelNamed(fuelName(view));
  return air / (view.fuel.lambda.assumed * stoichiometricAirFuelRatio);
}
