/** What goes into the workshop: the length in large type, from where to where it counts, what to mind. */
import { bandWords, CAUTIONS, LENGTH_MEANING, lengthDrawing, PROGRAM } from '../../sim/index.ts';
import { typeset } from '../format.ts';
import { mayAsk } from '../state/asked.ts';
import type { Picture } from '../state/picture.ts';
import { addressOf } from '../state/place.ts';
import { lengthText } from '../state/unit.ts';

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
      <ul class="sheet-facts">
        <li>Trumpets: {scenario.engine.cylinder.count}, all alike</li>
        <li>Fitted now: {lengthText(own)}</li>
        <li>{typeset(`Band: ${bandWords(scenario.target)}`)}</li>
        <li>{words.gain}</li>
        {words.price && <li>{words.price}</li>}
        <li>{words.found}</li>
        {words.shelf && <li>{words.shelf}</li>}
      </ul>
      <h3>Before you cut and fit</h3>
      <ul class="cautions">
        {[...words.cautions, ...CAUTIONS].map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <p class="quiet">
        Computed, not measured. Trumpetry {PROGRAM.version}, question {study.hash.slice(0, 12)}.
      </p>
      <p class="take">
        <button type="button" onClick={() => print()}>
          Print this sheet
        </button>
      </p>
    </article>
  );
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
