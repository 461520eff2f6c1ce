/** The answer as a sentence, and what is being done about it. */
import { issueText } from '../../sim/index.ts';
import { millimetres, percent, rpm, signedPercent } from '../format.ts';
import { type Picture, picture, type Verdict } from '../state/picture.ts';
import { reading } from '../state/scenario.ts';
import { study } from '../state/study.ts';
import { Progress } from './Progress.tsx';

export function Answer() {
  const now = picture.value;
  return (
    <section class="answer" id="answer" aria-labelledby="answer-title">
      <h1 id="answer-title">Which length to cut</h1>
      <div aria-live="polite">{now ? <Sentence picture={now} /> : <FirstLook />}</div>
      <Progress />
    </section>
  );
}

function FirstLook() {
  const now = reading.value;
  if (now.ok) return <p class="sentence">Working out a first answer…</p>;
  const first = now.issues[0]!;
  return (
    <>
      <p class="sentence">The scenario cannot be read yet.</p>
      <p class="supporting">{issueText(first)}</p>
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
        <p class="sentence">Working out a first answer…</p>
      )}
      {stale && <p class="notice">This answer is for the figures before your last change.</p>}
    </div>
  );
}

function Words({ verdict, picture: now }: { verdict: Verdict; picture: Picture }) {
  const { from, to } = now.scenario.target;
  const own = now.scenario.engine.intake.trumpet.length;
  const { gainPercent } = verdict.tradeOff;
  const band = `${Math.round(from)} to ${rpm(to)}`;
  if (verdict.reason === 'keep-baseline') {
    return (
      <>
        <p class="sentence">
          Keep your <strong class="best">{millimetres(own)}</strong>.
        </p>
        <p class="supporting">
          No length tried fills the engine better between {band}.
          <Standing verdict={verdict} picture={now} />
        </p>
      </>
    );
  }
  return (
    <>
      <p class="sentence">
        {verdict.length > own ? 'Fit' : 'Cut to'}{' '}
        <strong class="best">{millimetres(verdict.length)}</strong>
        {verdict.length > own ? ' trumpets' : ''}.
      </p>
      <p class="supporting">
        Between {band} the engine traps <strong>{signedPercent(gainPercent)}</strong> air against
        the <span class="now">{millimetres(own)}</span> fitted now. <Price verdict={verdict} />
        <Standing verdict={verdict} picture={now} />
      </p>
      {verdict.reason === 'at-the-end' && (
        <p class="notice">
          The best lies at the end of the lengths tried;{' '}
          {verdict.length > own ? 'a longer' : 'a shorter'} one may be better still. Widen the sweep
          under “Your engine” to see.
        </p>
      )}
    </>
  );
}

function Price({ verdict }: { verdict: Verdict }) {
  const { worstLossPercent, worstLossSpeed } = verdict.tradeOff;
  if (worstLossSpeed === undefined) return <>It costs nothing at any other speed computed.</>;
  return (
    <>
      The price: at worst <strong class="price">{percent(worstLossPercent)}</strong> less at{' '}
      {rpm(worstLossSpeed)}.
    </>
  );
}

/** How sure this is: a preview says so; a full answer says by how much its preview was out. */
function Standing({ verdict, picture: { study: now } }: { verdict: Verdict; picture: Picture }) {
  if (verdict.standing === 'preview') {
    return (
      <span class="standing"> Preview from a few lengths and speeds; the full answer follows.</span>
    );
  }
  if (!now.preview) return null;
  const { length } = now.preview.recommended;
  return (
    <span class="standing">
      {' '}
      The preview had said {millimetres(length)}, {signedPercent(now.preview.decision.gainPercent)}.
    </span>
  );
}
