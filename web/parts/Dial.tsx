/** The length to try, by slider, steps and figure, and what it gives. */
import { METRES, quantities as q } from '../../sim/index.ts';
import { pipeSpan } from '../drawing/pipeSpan.ts';
import { rpm, told } from '../format.ts';
import { hand, handRange, handRun, letGo, liftHand, moveHand, STEP } from '../state/hand.ts';
import { keep } from '../state/kept.ts';
import { type Curve, curveOf, isFull, picture as now, type Picture } from '../state/picture.ts';
import { source, unit } from '../state/scenario.ts';
import { lengthText } from '../state/unit.ts';
import { shownLength } from './benchTrace.ts';
import { useFollowing } from './following.ts';
import { Spoken } from './Spoken.tsx';

const UNIT_NAME = { mm: 'millimetres', in: 'inches' } as const;

export function Dial({ picture }: { picture: Picture }) {
  const { least, most } = handRange.value;
  const length = shownLength(picture);
  const { face, width } = pipeSpan(picture);
  const share = (metres: number) => `${((face + metres * 1e3) / width) * 100}%`;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out alike in all browsers
    <div
      class={hand.value === undefined ? 'dial resting' : 'dial'}
      role="group"
      aria-label="Length to try"
      style={{ '--from': share(least), '--to': share(most) }}
    >
      <Track length={length} />
      <div class="dial-row">
        <Step by={-1} />
        <Exact length={length} />
        <Step by={1} />
        <p class="hand-says">
          <HandSays picture={picture} />
        </p>
        <button type="button" disabled={hand.value === undefined} onClick={liftHand}>
          Back<span class="roomy"> to the answer</span>
        </button>
        <button
          type="button"
          disabled={!picture.study.full && hand.value === undefined}
          onClick={() => keepShown(picture, length)}
        >
          Keep
        </button>
      </div>
      <Spoken text={handWords(picture)} />
    </div>
  );
}

/** Takes what a field says, in the unit of the file. */
function take({ valueAsNumber }: HTMLInputElement, held = false): void {
  if (Number.isFinite(valueAsNumber)) moveHand(valueAsNumber * METRES[unit.value], held);
}

function Track({ length }: { length: number }) {
  const { least, most } = handRange.value;
  const step = STEP[unit.value];
  return (
    <div class="dial-track">
      <input
        type="range"
        class="dial-slider"
        aria-label={`Trumpet length in ${UNIT_NAME[unit.value]}`}
        aria-valuetext={lengthText(length)}
        min={figure(Math.floor(least / step + EVEN) * step)}
        max={figure(Math.ceil(most / step - EVEN) * step)}
        step={figure(step)}
        value={figure(length)}
        onInput={(event) => take(event.currentTarget, true)}
        onChange={letGo}
      />
    </div>
  );
}

function Step({ by }: { by: 1 | -1 }) {
  const step = STEP[unit.value];
  const take = () => moveHand(shownLength(now.peek()!) + by * step);
  return (
    <button type="button" class="step" onClick={take}>
      <span aria-hidden="true">{by < 0 ? '−' : '+'}</span>
      <span class="sr">
        {lengthText(step)} {by < 0 ? 'shorter' : 'longer'}
      </span>
    </button>
  );
}

/** What a whole number of steps may miss by round-off. */
const EVEN = 1e-6;

/** A length [m] as a figure in the unit of the file. */
const figure = (metres: number) => Math.round((metres / METRES[unit.value]) * 1e3) / 1e3;

function Exact({ length }: { length: number }) {
  const { least, most } = handRange.value;
  const box = useFollowing(String(figure(length)));
  return (
    <span class="dial-box">
      <input
        type="number"
        aria-label={`Trumpet length in ${UNIT_NAME[unit.value]}, exact`}
        min={figure(least)}
        max={figure(most)}
        step={figure(STEP[unit.value])}
        ref={box}
        onChange={(event) => take(event.currentTarget)}
      />{' '}
      {unit.value}
    </span>
  );
}

/** Keeps the length on show with its curve, drawn beside the others from now on. */
function keepShown(picture: Picture, length: number): void {
  const curve = curveOf(picture, 'hand') ?? curveOf(picture, 'best') ?? picture.curves[0]!;
  const { file, text } = source.peek();
  keep({
    name: `${lengthText(length)} ${file.replace(/\.ya?ml$/i, '')}`,
    file,
    text,
    length,
    pinned: true,
    points: curve.points.map(({ speed, efficiency, brakeTorque, brakePower }) => ({
      speed,
      ...(efficiency !== undefined && { efficiency }),
      ...(brakeTorque !== undefined && { torque: brakeTorque }),
      ...(brakePower !== undefined && { power: brakePower }),
    })),
  });
}

function HandSays({ picture }: { picture: Picture }) {
  const moved = curveOf(picture, 'hand');
  if (!moved) return <span class="quiet">Drag the mouth to try another length.</span>;
  const full = isFull(moved) && failures(moved) === 0;
  return (
    <>
      <strong class="hand">{lengthText(moved.length)}</strong> {changeWords(picture)}{' '}
      <span class={`standing ${full ? 'full' : 'preview'}`}>{standingWords(moved)}</span>
    </>
  );
}

const failures = ({ points }: Curve) =>
  points.filter(({ standing }) => standing === 'failed').length;

function standingWords(curve: Curve): string {
  if (!isFull(curve)) return estimateWords(curve);
  const failed = failures(curve);
  return failed === 0 ? 'exact' : `${failed} of ${curve.points.length} speeds failed`;
}

function estimateWords({ points }: Curve): string {
  const { busy, done, total } = handRun.value;
  const near = points.every(({ standing, near: quick }) => standing !== 'preview' || quick);
  if (near) return 'to 0.01 %, exact to come';
  return busy ? `estimate, ${done} of ${total} exact` : 'estimate';
}

function changeWords(picture: Picture): string {
  const { handTradeOff } = picture;
  if (!handTradeOff) {
    return isFull(curveOf(picture, 'hand')!) ? 'cannot be told:' : 'is not known yet.';
  }
  const { gainPercent, worstLossPercent, worstLossSpeed } = handTradeOff;
  const elsewhere =
    worstLossSpeed === undefined
      ? 'no loss elsewhere'
      : `${told(q.WORST_LOSS, worstLossPercent)} less at ${rpm(worstLossSpeed)}`;
  return `${told(q.GAIN, gainPercent)} in the band, ${elsewhere}`;
}

/** The same for those who hear the page. */
function handWords(picture: Picture): string {
  const moved = curveOf(picture, 'hand');
  if (!moved) return '';
  const standing = isFull(moved) ? standingWords(moved) : 'estimate';
  return `${lengthText(moved.length)} ${changeWords(picture)}, ${standing}`;
}
