/** Filling over plate angle and speed as tables and as a JSON document. */
import { pulseOf } from '../../decision/pulseWidth.ts';
import { cylindersDiffer } from '../../engine/manifolds.ts';
import { workingGas } from '../../engine/workingGas.ts';
import type { InjectorSpecification } from '../../injectors.ts';
import { auditOf } from '../../report/audit.ts';
import { documentHead } from '../../report/document.ts';
import * as q from '../../report/quantities.ts';
import { asColumns, asObjects, column, type Table, tableOf, words } from '../../report/table.ts';
import type { EngineSpecification } from '../../specification.ts';
import { isFailure, type PointOutcome } from '../../sweep/runner.ts';
import { pointColumns } from '../points.ts';
import { angleBySpeed } from './angleBySpeed.ts';
import { airMass, withAngle } from './cell.ts';
import type { LineCheck } from './checks.ts';
import type { LoadStudy } from './compute.ts';
import { correctionTables } from './correctionTables.ts';
import type { DensityCell } from './density.ts';
import { idleOf } from './idle.ts';
import { type Signal, signalAt } from './signals.ts';

interface Cell {
  angle: number;
  outcome: PointOutcome;
  engine: EngineSpecification;
  signal: Signal | undefined;
  density: DensityCell | undefined;
}

/** One row a cell. */
export function cellsTable(study: LoadStudy): Table {
  const { scenario } = study.question;
  const cells = study.angles.flatMap((angle, i) => {
    const engine = withAngle(scenario.engine, angle);
    return study.outcomes[i]!.map(
      (outcome, j): Cell => ({
        ...{ angle, outcome, engine },
        signal: signalAt(study, i, j),
        density: study.density.cells[i]?.[j],
      }),
    );
  });
  const [speed, ...figures] = pointColumns<Cell>({
    point: ({ outcome }) => outcome,
    engine: ({ engine }) => engine,
    unit: scenario.lengthUnit,
    unlike: cylindersDiffer(scenario.engine),
  });
  return tableOf(
    'Every cell',
    [
      column<Cell>(q.PLATE, ({ angle }) => angle),
      speed!,
      column<Cell>(q.AIR_MASS, ({ engine, outcome }) => airMass(engine, outcome)),
      column<Cell>(q.PORT_PRESSURE, ({ outcome }) =>
        isFailure(outcome) ? undefined : outcome.portPressure,
      ),
      ...figures,
      column<Cell>(q.PRESSURE_SIGNAL, ({ signal }) => signal?.pressure),
      column<Cell>(q.ANGLE_SIGNAL, ({ signal }) => signal?.angle),
      words<Cell>('load_told_by', 'told by', ({ signal }) => signal?.tells),
      column<Cell>(q.PRESSURE_EXPONENT, ({ density }) => density?.pressure),
      column<Cell>(q.TEMPERATURE_EXPONENT, ({ density }) => density?.temperature),
      words<Cell>(
        'exponents',
        'a, b',
        ({ density }) => density && (density.between ? 'between' : 'computed'),
      ),
    ],
    cells,
  );
}

export const fillingTable = (study: LoadStudy) =>
  angleBySpeed(study, 'Filling by plate angle and speed', { ...q.FILLING, times: 100 }, (i, j) => {
    const outcome = study.outcomes[i]![j]!;
    return isFailure(outcome) ? undefined : outcome.volumetricEfficiency;
  });

export const airTable = (study: LoadStudy) =>
  angleBySpeed(study, 'Air a cylinder and cycle', q.AIR_MASS, (i, j) =>
    airMass(study.question.scenario.engine, study.outcomes[i]![j]!),
  );

/** The injector that feeds a cylinder alone; undefined where the file names none, or several. */
export function soleInjector({ question }: LoadStudy): InjectorSpecification | undefined {
  const { injectors } = question.scenario;
  return injectors?.list.length === 1 ? injectors.list[0] : undefined;
}

/** How long the injector is open, for fuel and mixture of the file. */
export function pulseTable(study: LoadStudy): Table | undefined {
  const injector = soleInjector(study);
  if (!injector) return undefined;
  const { engine } = study.question.scenario;
  const { airFuelRatio } = workingGas(engine);
  return angleBySpeed(study, 'Injector open, dead time included', q.PULSE, (i, j) => {
    const air = airMass(engine, study.outcomes[i]![j]!);
    return air === undefined ? undefined : pulseOf(injector, air / airFuelRatio);
  });
}

export function checksTable({ checks }: LoadStudy): Table {
  return tableOf<LineCheck>(
    'Straight lines where they should be worst',
    [
      column(q.PLATE, ({ angle }) => angle),
      column(q.SPEED, ({ speed }) => speed),
      column({ ...q.LINE_ERROR, signed: true }, ({ error }) => error),
    ],
    checks,
  );
}

/** Tables written as CSV, by name of the file. */
export function loadTables(study: LoadStudy): Record<string, Table> {
  const pulses = pulseTable(study);
  const [correction] = correctionTables(study);
  return {
    'load.csv': cellsTable(study),
    'load-filling.csv': fillingTable(study),
    'load-air.csv': airTable(study),
    ...(pulses && { 'load-injector.csv': pulses }),
    ...(correction && { 'load-correction.csv': correction }),
  };
}

export function loadDocument(study: LoadStudy) {
  const { scenario } = study.question;
  const { angles, speeds, outcomes, angleSteps, speedSteps, density } = study;
  const idle = idleOf(study);
  return {
    ...documentHead('load', scenario),
    plate_deg: angles,
    speeds_rpm: speeds,
    estimated_line_error: {
      between_angles: angleSteps.map(({ error }) => error),
      between_speeds: speedSteps.map(({ error }) => error),
    },
    computed_line_errors: asObjects(checksTable(study)),
    cells: asColumns(cellsTable(study)),
    idle: idle ? { plate_deg: idle.angle, air_g_per_s_and_litre: idle.flow } : null,
    density_rules: density.rules.map(({ name, pressure, temperature, worst, at, day }) => ({
      name,
      pressure_exponent: pressure,
      temperature_exponent: temperature,
      greatest_error: worst,
      at: { plate_deg: at.angle, speed_rpm: at.speed, day: day.name },
    })),
    audit: auditOf(outcomes.flat()),
  };
}
