/** The trumpet drawn to scale, and the length under the reader's hand. */
import { LENGTH_MEANING, quantities as q } from '../../sim/index.ts';
import { millimetres, rpm, told } from '../format.ts';
import { hand, handRange, liftHand, moveHand } from '../state/hand.ts';
import { curveOf, isFull, type Picture } from '../state/picture.ts';
import { useFollowing } from './following.ts';
import { drawingSpan, IntakeDrawing } from './IntakeDrawing.tsx';

export function LengthControl({ picture }: { picture: Picture }) {
  const length = shownLength(picture);
  return (
    <section class="length" aria-labelledby="length-title">
      <h2 id="length-title">What if you cut it otherwise?</h2>
      <p class="reading">
        {LENGTH_MEANING} Drawn to scale; move the mouth with the slider or the arrow keys.
      </p>
      <IntakeDrawing picture={picture} length={length} />
    </section>
  );
}

/** The control itself, which stays in sight while the reader goes through the plots. */
export function LengthBar({ picture }: { picture: Picture }) {
  const { least, most } = handRange.value;
  const length = shownLength(picture);
  const { face, width } = drawingSpan(picture);
  const box = useFollowing(String(Math.round(length * 1e3)));
  const take = ({ valueAsNumber }: HTMLInputElement) => {
    if (Number.isFinite(valueAsNumber)) moveHand(valueAsNumber / 1e3);
  };
  const share = (mm: number) => `${((face + mm) / width) * 100}%`;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be a sticky grid in all browsers
    <div
      class={hand.value === undefined ? 'length-bar resting' : 'length-bar'}
      role="group"
      aria-label="Length under your hand"
      style={{ '--from': share(least * 1e3), '--to': share(most * 1e3) }}
    >
      <p class="hand-says" aria-live="polite">
        <HandSays picture={picture} />
      </p>
      <div class="hand-row">
        <input
          type="range"
          class="hand-slider"
          aria-label="Trumpet length in millimetres"
          aria-valuetext={millimetres(length)}
          min={least * 1e3}
          max={most * 1e3}
          step={1}
          value={length * 1e3}
          onInput={(event) => take(event.currentTarget)}
        />
        <span class="hand-box">
          <input
            type="number"
            aria-label="Trumpet length in millimetres, exact"
            min={least * 1e3}
            max={most * 1e3}
            step={1}
            ref={box}
            onChange={(event) => take(event.currentTarget)}
          />{' '}
          mm
          <button type="button" disabled={hand.value === undefined} onClick={liftHand}>
            Let go
          </button>
        </span>
      </div>
    </div>
  );
}

/** At rest the hand lies on the recommended length. */
function shownLength({ verdict, scenario }: Picture): number {
  return hand.value ?? verdict?.length ?? scenario.engine.intake.trumpet.length;
}

function HandSays({ picture }: { picture: Picture }) {
  const moved = curveOf(picture, 'hand');
  if (!moved) return <span class="quiet">Take a length in your hand.</span>;
  const { handTradeOff } = picture;
  if (!handTradeOff) return <>Not enough is known yet for {millimetres(moved.length)}.</>;
  const { gainPercent, worstLossPercent, worstLossSpeed } = handTradeOff;
  return (
    <>
      <strong class="hand">{millimetres(moved.length)}</strong> {told(q.GAIN, gainPercent)} in the
      band,{' '}
      {worstLossSpeed === undefined
        ? 'no loss elsewhere'
        : `${told(q.WORST_LOSS, worstLossPercent)} less at ${rpm(worstLossSpeed)}`}{' '}
      <span class={`standing ${isFull(moved) ? 'full' : 'preview'}`}>
        {isFull(moved) ? 'full accuracy' : 'preview'}
      </span>
    </>
  );
}
