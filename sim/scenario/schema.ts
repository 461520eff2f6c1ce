/**
 * The scenario schema: the one definition of what a scenario file may say. Each section lives in
 * its own file under sections/ with its keys, its checks and its way into the engine's data; to add
 * a section, write that file and add its lines here and in resolve.ts.
 */
import { z } from 'zod';
import { FORM_GROUPS, optional, section, text } from './key.ts';
import { keyAt, leavesBelow } from './keyPath.ts';
import { checkRules } from './rules.ts';
import { airboxSection } from './sections/airbox.ts';
import { ambientSection } from './sections/ambient.ts';
import { checkBanks } from './sections/banks.ts';
import { checkChamber } from './sections/chamber.ts';
import { checkEngine, engineSection } from './sections/engine.ts';
import { checkExhaust, exhaustSection, namesCylinders } from './sections/exhaust.ts';
import { checkFiring } from './sections/firing.ts';
import { checkFit, fitSection } from './sections/fit.ts';
import { checkFlowPath } from './sections/flowPath.ts';
import { fuelSection } from './sections/fuel.ts';
import { checkIdle, idleSection } from './sections/idle.ts';
import { checkInjectors } from './sections/injectorChecks.ts';
import { injectorsSection } from './sections/injectors.ts';
import { checkIntake, intakeSection } from './sections/intake.ts';
import { checkMeter, meterSection } from './sections/meter.ts';
import { numericsSection } from './sections/numerics.ts';
import { checkPedal, pedalSection } from './sections/pedal.ts';
import { checkPlenum, plenumSection } from './sections/plenum.ts';
import { checkPressureBar, pressureBarSection } from './sections/pressureBar.ts';
import { soundSection } from './sections/sound.ts';
import { checkStudy, speedsSection, sweepSection } from './sections/study.ts';
import { checkTarget, targetSection } from './sections/target.ts';
import { uncertaintySection } from './sections/uncertainty.ts';
import type { Told, ViewOf } from './view.ts';
import { zodOf } from './zodSchema.ts';

export const scenarioKeys = section('One engine and the question asked about its trumpets.', {
  $schema: optional(text('Path of the schema, for editors.', undefined, 0)),
  title: text('What the engine is, in one line.', 200),
  notes: optional(text('Anything worth remembering.', 5000, 0)),
  ambient: ambientSection,
  engine: engineSection,
  intake: intakeSection,
  exhaust: exhaustSection,
  fuel: fuelSection,
  injectors: injectorsSection,
  pedal: pedalSection,
  sound: soundSection,
  pressureBar: pressureBarSection,
  idle: idleSection,
  plenum: plenumSection,
  airbox: airboxSection,
  meter: meterSection,
  speeds: speedsSection,
  sweep: sweepSection,
  target: targetSection,
  fit: fitSection,
  uncertainty: uncertaintySection,
  numerics: numericsSection,
});

/** A field of a form: the key it writes, and its label. */
export interface FigureField {
  path: string;
  label: string;
}

/** The fields of a form over the figures a reader changes most, in the order of the tree. */
export const FIGURE_GROUPS: readonly { title: string; fields: readonly FigureField[] }[] =
  FORM_GROUPS.map((title) => {
    const fields = leavesBelow(scenarioKeys).flatMap(([path, { form }]) => {
      return form?.group === title ? [{ path, label: form.label }] : [];
    });
    return { title, fields };
  });

/** Whether a key is a condition of the day or of the driver, which no sweep recommends. */
export function isCondition(path: string): boolean {
  const key = keyAt(scenarioKeys, path);
  return key?.kind === 'leaf' && key.condition === true;
}

/** Whether a key may be left out of a file; of rows of a list none may go alone. */
export function mayGo(path: string): boolean {
  return !/\.\d+/.test(path) && keyAt(scenarioKeys, path)?.optional === true;
}

/** What the sections see of a file. */
export type ScenarioView = ViewOf<typeof scenarioKeys>;

/** Every check between values; what they find is told at its place. */
export function checkScenario(view: ScenarioView, { places }: Told): void {
  checkRules(places);
  checkEngine(view.engine);
  checkFiring(view, namesCylinders(view));
  checkBanks(view);
  checkIntake(view);
  checkExhaust(view);
  checkFlowPath(view);
  checkChamber(view);
  checkInjectors(view);
  checkPedal(view);
  checkPressureBar(view);
  checkIdle(view);
  checkPlenum(view);
  checkMeter(view);
  checkStudy(view);
  checkTarget(view);
  checkFit(view);
}

const scenarioSchema = zodOf(scenarioKeys);

/** Reads a plain tree; what could be read comes back beside what could not. */
export function parseScenario(raw: unknown): { tree: unknown; issues: z.core.$ZodIssue[] } {
  let tree: unknown;
  const keep = (partial: unknown) => {
    tree = partial;
  };
  const { error } = scenarioSchema.superRefine(keep, { when: () => true }).safeParse(raw);
  return { tree, issues: error?.issues ?? [] };
}

/** The scenario schema as JSON Schema, for editors. */
export function scenarioJsonSchema(): object {
  return z.toJSONSchema(scenarioSchema, { io: 'input' });
}
