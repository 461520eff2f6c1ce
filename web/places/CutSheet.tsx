/** What goes into the workshop: the length in large type, from where to where it counts, what to mind. */
import { bandWords, CAUTIONS, LENGTH_MEANING, lengthDrawing, PROGRAM } from '../../sim/index.ts';
import { typeset } from '../format.ts';
import { Cautions } from '../parts/Cautions.tsx';
import { mayAsk } from '../state/asked.ts';
import type { Picture, Verdict } from '../state/picture.ts';
import { addressOf } from '../state/place.ts';
import { lengthText } from '../state/unit.ts';
import { SaveAll } from './SaveAll.tsx';

export function CutSheet({ picture }: { picture: Picture }) {
  const { verdict, scenario, study } = picture;
  const ready =
    verdict?.standing === 'full' && Number.isFinite(verdict.tradeOff.bandMean) && mayAsk();
  if (!ready) return <NotYet />;
  const { trumpet } = scenario.engine.intake;
  const own = trumpet.length;
  const { length, words } = verdict;
  const drawing = lengthDrawing(scenario.engine.intake, length, scenario.lengthUnit).text;
  return (
    <article class="sheet" aria-labelledby="sheet-title">
      <p class="engine">{scenario.title}</p>
      <h2 id="sheet-title" class="sheet-cut">
        {length === own ? 'Keep' : 'Cut to'} <strong>{lengthText(length)}</strong>
      </h2>
      <p class="sheet-meaning">{LENGTH_MEANING}</p>
      <div class="sheet-drawing" dangerouslySetInnerHTML={{ __html: drawing }} />
      <Facts picture={picture} verdict={verdict} />
      <h3>Before you cut and fit</h3>
      <Cautions items={[...words.cautions, ...CAUTIONS]} />
      <p class="quiet">
        Computed, not measured. Trumpetry {PROGRAM.version}, question {study.hash.slice(0, 12)}.
      </p>
      <p class="take">
        <button type="button" onClick={() => print()}>
          Print this sheet
        </button>
        <SaveAll picture={picture} />
      </p>
    </article>
  );
}

function Facts({ picture: { scenario }, verdict: { words } }: FactsProps) {
  const { cylinder, intake } = scenario.engine;
  return (
    <ul class="sheet-facts">
      <li>Trumpets: {cylinder.count}, all alike</li>
      <li>Fitted now: {lengthText(intake.trumpet.length)}</li>
      <li>{typeset(`Band: ${bandWords(scenario.target)}`)}</li>
      {scenario.spreads.length > 0 && (
        <li>
          Figures in doubt, given with ± or assumed: {scenario.spreads.length}.{' '}
          <a href={addressOf('doubt')}>How sure is the length?</a>
        </li>
      )}
      {[words.gain, words.price, words.found, words.shelf]
        .filter((sentence) => sentence !== '')
        .map((sentence) => (
          <li key={sentence}>{typeset(sentence)}</li>
        ))}
    </ul>
  );
}

interface FactsProps {
  picture: Picture;
  verdict: Verdict;
}

function NotYet() {
  return (
    <section class="sheet">
      <h2>No sheet yet</h2>
      <p>
        There is nothing to cut to before the answer is complete and belongs to the figures on the
        page. <a href={addressOf('length')}>Back to the answer</a>
      </p>
    </section>
  );
}
