/** The answer as a sentence, and what is being done about it. */
import { issueText, quantities as q, type Scenario } from '../../sim/index.ts';
import { lengthIn, told } from '../format.ts';
import { type Picture, picture, type Verdict } from '../state/picture.ts';
import { reading } from '../state/scenario.ts';
import { study } from '../state/study.ts';
import { Progress } from './Progress.tsx';

export function Answer() {
  const now = picture.value;
  return (
    <section class="answer" id="answer" aria-labelledby="answer-title">
      <h1 id="answer-title">Which length</h1>
      <div aria-live="polite">{now ? <Sentence picture={now} /> : <FirstLook />}</div>
      <Progress />
    </section>
  );
}

function FirstLook() {
  const now = reading.value;
  if (now.ok) return <p class="sentence">{WORKING}</p>;
  return (
    <>
      <p class="sentence long">The scenario cannot be read yet.</p>
      <p class="supporting">{issueText(now.issues[0]!)}</p>
    </>
  );
}

function Sentence({ picture: now }: { picture: Picture }) {
  const { verdict, scenario } = now;
  const current = reading.value;
  const stale = !current.ok || current.hash !== study.value?.hash;
  return (
    <div class={stale ? 'stale' : ''}>
      <p class="engine">{scenario.title}</p>
      {verdict ? (
        <Words verdict={verdict} picture={now} />
      ) : (
        <p class="sentence">{now.study.stage === 'preview' ? WORKING : 'No answer yet.'}</p>
      )}
      {stale && <p class="notice">This answer is for the figures before your last change.</p>}
    </div>
  );
}

function Words({ verdict, picture: now }: { verdict: Verdict; picture: Picture }) {
  const { words } = verdict;
  const full = verdict.standing === 'full';
  return (
    <>
      <Headline verdict={verdict} scenario={now.scenario} />
      <p class="supporting">
        {words.gain} {words.price}
      </p>
      <p class="supporting quiet">{full ? words.found : FIRST_LOOK}</p>
      {full &&
        [
          words.flywheel,
          words.inside,
          words.edge,
          words.resolution,
          words.mixed,
          words.feed,
          words.fuel,
        ].map((sentence) => sentence !== '' && <p class="supporting quiet">{sentence}</p>)}
      {full && words.cautions.map((caution) => <p class="notice">{caution}</p>)}
      {full && <PreviewWas picture={now} />}
      <p>
        <a href="#trust">How far to trust it, and what to mind before you fit them</a>
      </p>
    </>
  );
}

const WORKING = 'Working out a first answer…';
const FIRST_LOOK = 'A preview from a few lengths and speeds; the full answer follows.';

function Headline({ verdict, scenario }: { verdict: Verdict; scenario: Scenario }) {
  const own = scenario.engine.intake.trumpet.length;
  const turn = verdict.length > own ? 'Longer:' : 'Shorter:';
  if (!Number.isFinite(verdict.tradeOff.bandMean)) {
    return <p class="sentence long">{verdict.words.answer}</p>;
  }
  return (
    <p class="sentence">
      {verdict.length === own ? 'Keep your' : turn}{' '}
      <strong class="best">{lengthIn(verdict.length, scenario.lengthUnit)}</strong>.
    </p>
  );
}

/** How good the preview was, once the full answer is there. */
function PreviewWas({ picture: { study: now } }: { picture: Picture }) {
  if (!now.preview || !Number.isFinite(now.preview.decision.gainPercent)) return null;
  const { recommended, decision } = now.preview;
  return (
    <p class="quiet">
      The preview had said {lengthIn(recommended.length, now.scenario.lengthUnit)},{' '}
      {told(q.GAIN, decision.gainPercent)}.
    </p>
  );
}
