/**
 * The scenario schema: the one definition of what a scenario file may say. Each section lives in
 * its own file under sections/ with its keys, its checks and its way into the engine's data; to add
 * a section, write that file and add its lines here and in resolve.ts.
 */
import { z } from 'zod';
import { custom, section } from './leaf.ts';
import { Reading } from './reading.ts';
import { ambientSection, checkAmbient } from './sections/ambient.ts';
import { checkChamber } from './sections/chamber.ts';
import { checkEngine, engineSection } from './sections/engine.ts';
import { checkExhaust, exhaustSection } from './sections/exhaust.ts';
import { checkFit, fitSection } from './sections/fit.ts';
import { fuelSection } from './sections/fuel.ts';
import { checkAllPulses, checkInjectors } from './sections/injectorChecks.ts';
import { injectorsSection } from './sections/injectors.ts';
import { checkIntake, intakeSection } from './sections/intake.ts';
import { numericsSection } from './sections/numerics.ts';
import { checkStudy, speedsSection, sweepSection } from './sections/study.ts';
import { checkTarget, targetSection } from './sections/target.ts';
import { uncertaintySection } from './sections/uncertainty.ts';

const sections = section('One engine and the question asked about its trumpets.', {
  $schema: z.string().optional().meta({ description: 'Path of the schema, for editors.' }),
  title: z.string().min(1).max(200).meta({ description: 'What the engine is, in one line.' }),
  notes: z.string().max(5000).optional().meta({ description: 'Anything worth remembering.' }),
  ambient: ambientSection,
  engine: engineSection,
  intake: intakeSection,
  exhaust: exhaustSection,
  fuel: fuelSection,
  injectors: injectorsSection,
  speeds: speedsSection,
  sweep: sweepSection,
  target: targetSection,
  fit: fitSection,
  uncertainty: uncertaintySection,
  numerics: numericsSection,
});

/** Checks between values, in the order of the sections. */
const CHECKS = [
  checkAmbient,
  checkEngine,
  checkIntake,
  checkExhaust,
  checkChamber,
  checkInjectors,
  checkAllPulses,
  checkStudy,
  checkTarget,
  checkFit,
];

/** Sections with the checks between them; these run even where single values are wrong. */
export const scenarioSchema = sections.superRefine(
  (tree, context) => {
    const reading = new Reading(tree, sections);
    for (const check of CHECKS) check(reading);
    for (const { path, message, remedy, limit } of reading.problems) {
      context.addIssue({ ...custom(message, remedy, limit), path: path.split('.') });
    }
  },
  { when: () => true },
);

/** Warnings of the checks over a tree that the schema has passed. */
export function checked(tree: unknown): Reading {
  const reading = new Reading(tree, sections);
  for (const check of CHECKS) check(reading);
  reading.warnUnusual();
  return reading;
}

/** The schema as JSON Schema, for editors. */
export function scenarioJsonSchema(): object {
  return z.toJSONSchema(sections, { io: 'input' });
}

/** The sections alone, for the reference. */
export const scenarioSections = sections;
