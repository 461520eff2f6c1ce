/** The answer in one strip: what to cut, how exact, what it gives and costs, how sure. */
import {
  bandWords,
  goodEnough,
  inTarget,
  issueText,
  type LengthStudy,
  quantities as q,
} from '../../sim/index.ts';
import { rpm, told, typeset } from '../format.ts';
import { resultOf } from '../state/asked.ts';
import { doubt } from '../state/doubt.ts';
import { type Picture, still, type Verdict } from '../state/picture.ts';
import { addressOf } from '../state/place.ts';
import { isDemo, reading, source } from '../state/scenario.ts';
import { type Study, study } from '../state/study.ts';
import { lengthFigure, lengthText } from '../state/unit.ts';
import { AllWords } from './AllWords.tsx';
import { Progress } from './Progress.tsx';
import { Spoken } from './Spoken.tsx';

export function Answer() {
  const now = still.value;
  const current = reading.value;
  const stale = now !== undefined && (!current.ok || current.hash !== study.value?.hash);
  return (
    <section class="answer" id="answer" tabIndex={-1} aria-labelledby="answer-title">
      <h1 id="answer-title" class="sr">
        Which length
      </h1>
      <div class={stale ? 'strip stale' : 'strip'}>
        {now ? <Strip picture={now} /> : <Waiting />}
      </div>
      {stale && <Stale />}
      <Progress />
      <Spoken text={now ? spokenWords(now) : ''} />
    </section>
  );
}

function Waiting() {
  const now = reading.value;
  if (now.ok) return <p class="sentence long">Working out a first look…</p>;
  return (
    <div>
      <p class="sentence long">The scenario cannot be read yet.</p>
      <p class="supporting">{issueText(now.issues[0]!)}</p>
      <p>
        <a href={addressOf('length', 'file')}>Mend it</a>, or choose another engine above.
      </p>
    </div>
  );
}

/** The text has moved on, or cannot be read; said here, where the answer stands. */
function Stale() {
  const now = reading.value;
  return (
    <p class="notice" role="status">
      This answer is for the figures before your last change.
      {!now.ok && (
        <>
          {' '}
          The text cannot be read: {issueText(now.issues[0]!)}{' '}
          <a href={addressOf('length', 'file')}>Mend it</a>
        </>
      )}
    </p>
  );
}

function Strip({ picture: now }: { picture: Picture }) {
  const { verdict, study: of } = now;
  return (
    <>
      <div class="headline">
        <p class="engine">{now.scenario.title}</p>
        {isDemo(source.value.text) && (
          <a class="begin" href={addressOf('length', 'begin')}>
            An invented demo: begin your own
          </a>
        )}
        <Headline picture={now} />
      </div>
      {verdict?.standing === 'full' && of.full ? (
        <>
          <AllWords picture={now} verdict={verdict} />
          <Facts verdict={verdict} study={of} />
        </>
      ) : (
        <p class="supporting quiet">{meanwhile(now)}</p>
      )}
    </>
  );
}

/** A first look is no answer: it has another type, no colour, and never says what to cut. */
function Headline({ picture: { verdict, scenario } }: { picture: Picture }) {
  if (!verdict) return <p class="sentence long">No answer yet</p>;
  if (!Number.isFinite(verdict.tradeOff.bandMean)) {
    return <p class="sentence long">{verdict.words.answer}</p>;
  }
  if (verdict.standing === 'preview') {
    return <p class="sentence long first-look">First look: near {lengthText(verdict.length)}</p>;
  }
  const own = scenario.engine.intake.trumpet.length;
  return (
    <p class="sentence">
      {verdict.length === own ? 'Keep your' : 'Cut to'}{' '}
      <strong class="best">{lengthText(verdict.length)}</strong>
      {verdict.length !== own && (
        <span class="than">
          {' '}
          {verdict.length > own ? 'longer' : 'shorter'} than the {lengthText(own)} fitted
        </span>
      )}
    </p>
  );
}

/** What is being done, or what was left undone, while there is no answer. */
function meanwhile({ study: { stage }, verdict }: Picture): string {
  const basis = 'from a few lengths and speeds; not to be cut to';
  if (stage === 'cancelled') {
    const left = 'Stopped before the answer was complete.';
    return verdict ? `${left} The first look is ${basis}.` : left;
  }
  if (stage === 'failed') return 'The answer could not be completed.';
  return verdict ? `A first look ${basis}. The answer follows.` : 'Working out a first look…';
}

function spokenWords(now: Picture): string {
  const { verdict } = now;
  if (!verdict) return meanwhile(now);
  return verdict.standing === 'full'
    ? `${verdict.words.answer} ${verdict.words.gain}`
    : `First look: near ${lengthText(verdict.length)}. ${meanwhile(now)}`;
}

function Facts({ verdict, study: of }: { verdict: Verdict; study: Study }) {
  const { tradeOff } = verdict;
  const { speeds, target } = of.scenario;
  const outside = speeds.some((speed) => !inTarget(target, speed));
  return (
    <dl class="facts">
      <GoodEnough full={of.full!} />
      <Fact
        name="In the band"
        more={typeset(`, ${bandWords(of.scenario.target)}`)}
        value={finite(tradeOff.gainPercent, q.GAIN)}
        note={of.scenario.target.score === 'indicated-torque' ? 'torque' : 'filling'}
      />
      <Loss name="Worst inside" percent={tradeOff.bandLossPercent} speed={tradeOff.bandLossSpeed} />
      {outside ? (
        <Loss
          name="Worst outside"
          percent={tradeOff.worstLossPercent}
          speed={tradeOff.worstLossSpeed}
        />
      ) : (
        <Fact name="Worst outside" value="not known" note="no speed computed there" />
      )}
      <HowSure />
    </dl>
  );
}

const finite = (value: number, quantity: q.Quantity) =>
  Number.isFinite(value) ? told(quantity, value) : 'not known';

/** How exact the length need be, or why that is not known. */
function GoodEnough({ full }: { full: LengthStudy }) {
  const name = 'Good enough';
  const range = goodEnough(full);
  if (range) {
    const value = `${q.shown(lengthFigure(), range.from)} to ${lengthText(range.to)}`;
    const near = told(q.DIFFERENCE, range.share).replace('+', '');
    return <Fact name={name} value={value} note={`within ${near} of it`} />;
  }
  const { reason, length } = full.recommended;
  const end = length === full.tried[0]?.length ? 'shortest' : 'longest';
  if (reason === 'at-the-end')
    return <Fact name={name} value="not known" note={`at the ${end} tried`} />;
  const floors = (full.target.floors ?? []).length > 0;
  return <Fact name={name} value="not known" note={floors ? 'a floor decides' : 'a narrow best'} />;
}

interface FactProps {
  name: string;
  /** The rest of the name, where there is room. */
  more?: string;
  value: string;
  note: string;
}

function Fact({ name, more, value, note }: FactProps) {
  return (
    <div>
      <dt>
        {name}
        {more && <span class="roomy">{more}</span>}
      </dt>
      <dd>
        <strong>{value}</strong> <span>{note}</span>
      </dd>
    </div>
  );
}

interface LossProps {
  name: string;
  percent: number;
  speed: number | undefined;
}

function Loss({ name, percent, speed }: LossProps) {
  if (!Number.isFinite(percent)) return <Fact name={name} value="not known" note="points failed" />;
  if (speed === undefined) return <Fact name={name} value="no loss" note="" />;
  return (
    <Fact
      name={name}
      value={typeset(`-${q.told(q.WORST_LOSS, percent)}`)}
      note={`at ${rpm(speed)}`}
    />
  );
}

/** Of how many engines alike the length gains in. */
const ODDS: q.Quantity = { key: 'odds', head: 'odds', unit: '%', shown: 100, decimals: 0 };

function HowSure() {
  const found = resultOf(doubt);
  const state = doubt.state.value.stage;
  return (
    <div>
      <dt>How sure</dt>
      <dd>
        {found ? (
          <>
            <strong>{told(ODDS, found.study.better.low)}</strong>{' '}
            <a href={addressOf('doubt')}>at least, that it gains</a>
          </>
        ) : (
          <a href={addressOf('doubt')}>
            {state === 'running' ? 'being worked out' : 'not asked yet'}
          </a>
        )}
      </dd>
    </div>
  );
}
