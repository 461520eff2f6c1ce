/** The study of injector placement as a report to keep: one HTML file that reads offline. */
import type { PlacementStudy } from '../decision/placement.ts';
import { sprayOf } from '../decision/placement.ts';
import { efficiencies } from '../decision/tradeOff.ts';
import type { Scenario } from '../scenario/resolve.ts';
import { isFailure } from '../sweep/runner.ts';
import type { ScenarioStamp } from './document.ts';
import { lineChart, type Series } from './htmlChart.ts';
import { htmlPage } from './htmlPage.ts';
import { answerSection, auditSection, figureSection, scenarioSection } from './htmlSections.ts';
import { html } from './markup.ts';
import { cumulative } from './placementDocument.ts';
import { FUEL_CAUTIONS, placementSentences } from './placementWords.ts';

export function placementReport(
  study: PlacementStudy,
  scenario: Scenario,
  stamp: ScenarioStamp,
): string {
  const body = html`<h1>${scenario.title}</h1>
${answerSection(placementSentences(study), FUEL_CAUTIONS)}
${fillingFigure(study)}
${coolingFigure(study)}
${splitFigure(study)}
${alongFigure(study)}
${standOffFigure(study)}
${scenarioSection(scenario)}
${auditSection(Object.values(study.outcomes).map((outcomes) => ({ length: scenario.engine.intake.trumpet.length, outcomes })))}`;
  return htmlPage(`Injectors: ${scenario.title}`, body, stamp);
}

function overSpeed(
  study: PlacementStudy,
  caption: string,
  yLabel: string,
  lines: [name: string, ys: number[], look: Series['look']][],
) {
  const series = lines.map(([name, ys, look]) => ({ name, xs: study.speeds, ys, look }));
  const description = `${caption}, against engine speed, full load`;
  const chart = lineChart({ description, xLabel: 'engine speed [rpm]', yLabel, series });
  return figureSection(caption, chart);
}

function fillingFigure(study: PlacementStudy) {
  const { near, above, none } = study.outcomes;
  return overSpeed(study, 'Filling by placement', 'volumetric efficiency [-]', [
    ['near the valve', efficiencies(near), 'now'],
    ['above the trumpet', efficiencies(above), 'cut'],
    ['no spray', efficiencies(none), 'other'],
  ]);
}

function coolingFigure(study: PlacementStudy) {
  const { near, above, none } = study.outcomes;
  const T = (points: typeof near) =>
    points.map((point) => (isFailure(point) ? Number.NaN : point.chargeTemperature));
  return overSpeed(study, 'Charge temperature at valve closing', 'temperature [K]', [
    ['near the valve', T(near), 'now'],
    ['above the trumpet', T(above), 'cut'],
    ['no spray', T(none), 'other'],
  ]);
}

function splitFigure(study: PlacementStudy) {
  const percent = (values: (number | undefined)[]) =>
    values.map((value) => 100 * (value ?? Number.NaN));
  const { cooling, displacement, waveShift } = study.split;
  return overSpeed(
    study,
    'What the outer injector does to filling, against fuel that evaporates in the cylinder',
    'change [% of a full cylinder]',
    [
      ['cooling', percent(cooling), 'cut'],
      ['vapour takes room', percent(displacement), 'now'],
      ['wave shift', percent(waveShift), 'other'],
    ],
  );
}

function alongFigure({ outcomes, speeds }: PlacementStudy) {
  const line = (name: string, points: typeof outcomes.near, look: Series['look']): Series[] => {
    const along = sprayOf(points[points.length - 1]!)?.along;
    if (!along) return [];
    const xs = along.distance.map((x) => -1e3 * x);
    return [{ name, xs, ys: cumulative(along.share).map((share) => 100 * share), look }];
  };
  const caption = `Fuel evaporated on the way to the valve at ${speeds[speeds.length - 1]} rpm`;
  const chart = lineChart({
    description: `${caption}, of the fuel injected, against distance`,
    xLabel: 'distance to the valve [mm]',
    yLabel: 'evaporated so far [%]',
    series: [
      ...line('near the valve', outcomes.near, 'now'),
      ...line('above the trumpet', outcomes.above, 'cut'),
    ],
  });
  return figureSection(caption, chart);
}

function standOffFigure(study: PlacementStudy) {
  const { above, near } = study.outcomes;
  const share = (points: typeof near, figure: 'standOff' | 'lost') =>
    points.map((point) => 100 * (sprayOf(point)?.[figure] ?? Number.NaN));
  return overSpeed(study, 'Stand-off of the outer injector', 'of the fuel injected [%]', [
    ['drops blown out', share(above, 'standOff'), 'cut'],
    ['lost for good', share(above, 'lost'), 'now'],
  ]);
}
