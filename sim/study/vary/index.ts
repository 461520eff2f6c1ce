/** `sweep` over other keys than the length: every combination of their values at every speed. */

import { allSettled } from '../../report/audit.ts';
import { doubtSample } from '../../scenario/doubt.ts';
import type { Axis } from '../../scenario/range.ts';
import { variantsOf } from '../../scenario/variants.ts';
import type { EngineSpecification } from '../../specification.ts';
import { type SweepObserver, tablePoints } from '../../sweep/sweep.ts';
import type { Computer } from '../../sweep/tasks.ts';
import { askedUncertainty } from '../doubt/ask.ts';
import { type Doubt, variantDoubt } from '../doubt/compute.ts';
import { bandsTable } from '../doubt/tables.ts';
import type { Asked, Findings, Job } from '../study.ts';
import { valuesTable } from '../table/tables.ts';
import { refuseInert, withConditions } from './ask.ts';
import { type VariedStudy, variantStudy } from './compute.ts';
import { variantDocument } from './tables.ts';
import { variantReport } from './tell.ts';

export function variantJob(asked: Asked, axes: readonly Axis[]): Job {
  const { text, file, scenario } = asked;
  const keys = withConditions(axes);
  const { engine: baseline, speeds, target, refine } = scenario;
  const variants = variantsOf(text, file, keys);
  refuseInert(keys, variants);
  const { length } = variants;
  const at = (i: number) => (i < length ? variants.at(i) : baseline);
  const table = tablePoints({ length: length + 1, at }, speeds);
  return {
    width: table.length,
    table,
    async run(computer, observer) {
      const question = { baseline, keys, engines: variants.all(), speeds, target, refine };
      const study = await variantStudy(question, computer, observer);
      return variantFindings(
        study,
        question.engines,
        asked,
        await doubtOf(study, asked, computer, observer),
      );
    },
  };
}

/** How sure the recommended variant is, where that is asked and there is one. */
async function doubtOf(
  { keys, recommended, sampling }: VariedStudy,
  asked: Asked,
  computer: Computer,
  observer: SweepObserver,
): Promise<Doubt | undefined> {
  const uncertainty = askedUncertainty(asked);
  if (!uncertainty || !recommended) return undefined;
  const { text, file, scenario } = asked;
  const changes = keys.map(({ path }, k) => ({ path, text: recommended.texts[k]! }));
  const samples = [
    doubtSample(text, file, uncertainty, changes),
    doubtSample(text, file, uncertainty),
  ] as const;
  const names = [recommended.texts.join(', '), 'the engine as it is'] as const;
  return variantDoubt(
    names,
    samples,
    { ...scenario, ...(sampling && { sampling }) },
    computer,
    observer,
  );
}

function variantFindings(
  study: VariedStudy,
  engines: readonly EngineSpecification[],
  { scenario }: Asked,
  doubt?: Doubt,
): Findings {
  const report = variantReport(study, scenario, doubt);
  const { keys, weighed } = study;
  const outcomes = weighed.map((one) => one.outcomes);
  return {
    stem: 'variants',
    document: variantDocument(study, scenario, doubt),
    report,
    tables: {
      'variants.csv': valuesTable({ keys, outcomes, engines }, scenario),
      ...(doubt && { 'uncertainty.csv': bandsTable(doubt) }),
    },
    page: 'report.html',
    sound: allSettled(report.outcomes),
  };
}
