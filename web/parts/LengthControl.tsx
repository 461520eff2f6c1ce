/** The trumpet drawn to scale, and the length under the reader's hand. */
import { millimetres, percent, rpm, signedPercent } from '../format.ts';
import { hand, handRange, liftHand, moveHand } from '../state/hand.ts';
import { curveOf, isFull, type Picture } from '../state/picture.ts';
import { IntakeDrawing } from './IntakeDrawing.tsx';

export function LengthControl({ picture }: { picture: Picture }) {
  const { least, most } = handRange.value;
  const rest = picture.verdict?.length ?? picture.scenario.engine.intake.trumpet.length;
  const length = hand.value ?? rest;
  const take = (event: { currentTarget: HTMLInputElement }) => {
    const value = event.currentTarget.valueAsNumber;
    if (Number.isFinite(value)) moveHand(value / 1e3);
  };
  return (
    <section class="length" aria-labelledby="length-title">
      <h2 id="length-title">Try a length</h2>
      <IntakeDrawing picture={picture} length={length} />
      <div class="length-row">
        <input
          type="range"
          aria-label="Trumpet length in millimetres"
          aria-valuetext={millimetres(length)}
          min={least * 1e3}
          max={most * 1e3}
          step={1}
          value={length * 1e3}
          onInput={take}
        />
        <label class="length-box">
          <input
            type="number"
            aria-label="Trumpet length, exact"
            min={least * 1e3}
            max={most * 1e3}
            step={1}
            value={Math.round(length * 1e3)}
            onChange={take}
          />{' '}
          mm
        </label>
        <button type="button" disabled={hand.value === undefined} onClick={liftHand}>
          Let go
        </button>
      </div>
      <p class="hand-says" aria-live="polite">
        <HandSays picture={picture} />
      </p>
    </section>
  );
}

function HandSays({ picture }: { picture: Picture }) {
  const moved = curveOf(picture, 'hand');
  if (!moved) {
    return (
      <>
        Measured from the plane of the rim to the face of the throttle body, bellmouth included.
        Drag the mouth, or use the arrow keys.
      </>
    );
  }
  const { handTradeOff } = picture;
  if (!handTradeOff) return <>Not enough is known yet for {millimetres(moved.length)}.</>;
  const { gainPercent, worstLossPercent, worstLossSpeed } = handTradeOff;
  return (
    <>
      <strong class="hand">{millimetres(moved.length)}</strong> under your hand:{' '}
      {signedPercent(gainPercent)} in the band
      {worstLossSpeed === undefined
        ? ', no loss elsewhere'
        : `, ${percent(worstLossPercent)} less at ${rpm(worstLossSpeed)}`}
      .{' '}
      {isFull(moved) ? (
        <span class="standing">Full accuracy.</span>
      ) : (
        <span class="standing">
          Preview between lengths already computed; full accuracy follows.
        </span>
      )}
    </>
  );
}
