/** What the answer rests on, and what it cannot say. */
import {
  CAUTIONS,
  defaultsTable,
  KNOWN,
  NOT_KNOWN,
  PROGRAM,
  quantities as q,
  type Scenario,
} from '../../sim/index.ts';
import { told, typeset } from '../format.ts';
import type { Picture } from '../state/picture.ts';
import { lengthFigure } from '../state/unit.ts';
import { DataTable } from './DataTable.tsx';
import { Told } from './Told.tsx';

export function Trust({ picture }: { picture: Picture }) {
  const { scenario, study } = picture;
  return (
    <section class="trust" id="trust" aria-labelledby="trust-title">
      <h2 id="trust-title">How far to trust it</h2>
      <p class="reading">
        Computed, not measured.{' '}
        {scenario.refine
          ? 'The answer, its gain and its price rest on curves that are computed between the speeds of the scenario too, until they are resolved. The lines of the length fitted now and of the one recommended go through those points; all others run straight from one speed to the next.'
          : 'The speeds of the scenario are a list, so nothing is computed between them: lines run straight from one to the next, and a ripple can hide there.'}{' '}
        A mark stands where a point was computed, and a cross where it did not settle: do not lean
        on that one.
      </p>
      <div class="columns">
        <Words title="What it knows" words={KNOWN} />
        <Words title="What it does not know" words={NOT_KNOWN} />
      </div>
      <Words title="Before you fit the trumpets" words={CAUTIONS} />
      <Warnings scenario={scenario} />
      <Defaults scenario={scenario} />
      <Audit picture={picture} />
      <p class="quiet">
        Trumpetry {PROGRAM.version}, question {study.hash.slice(0, 12)}
        {study.origin === 'shipped' && ', answered when this page was built by the same program'}.
      </p>
    </section>
  );
}

function Words({ title, words }: { title: string; words: readonly string[] }) {
  return (
    <div>
      <h3>{title}</h3>
      <ul>
        {words.map((sentence) => (
          <li key={sentence}>
            <Told text={sentence} />
          </li>
        ))}
      </ul>
    </div>
  );
}

function Warnings({ scenario }: { scenario: Scenario }) {
  if (scenario.warnings.length === 0) return null;
  return (
    <>
      <h3>Unusual in this scenario</h3>
      <ul>
        {scenario.warnings.map(({ path, message }) => (
          <li key={`${path} ${message}`}>
            <code>{path}</code> {typeset(message)}
          </li>
        ))}
      </ul>
    </>
  );
}

function Defaults({ scenario }: { scenario: Scenario }) {
  const { defaultsUsed } = scenario;
  if (defaultsUsed.length === 0) return null;
  return (
    <details>
      <summary>{defaultsUsed.length} figures were not given and taken by default</summary>
      <DataTable table={defaultsTable(scenario)} caption="Figures taken by default" />
    </details>
  );
}

/** Points that did not settle or failed, by name. */
function Audit({ picture }: { picture: Picture }) {
  const doubtful = picture.curves.flatMap((curve) =>
    curve.points
      .filter(({ standing }) => standing === 'unsettled' || standing === 'failed')
      .map((point) => ({ ...point, length: curve.length })),
  );
  if (doubtful.length === 0) return null;
  return (
    <>
      <h3>Points to distrust</h3>
      <ul>
        {doubtful.map(({ speed, length, standing, failure }) => (
          <li key={`${length} ${speed}`}>
            {told(lengthFigure(), length)} at {told(q.SPEED, speed)}:{' '}
            {standing === 'failed'
              ? `failed: ${failure}`
              : 'did not settle within the cycles allowed'}
          </li>
        ))}
      </ul>
    </>
  );
}
