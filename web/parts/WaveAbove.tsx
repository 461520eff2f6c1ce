/**
 * Distance and crank angle above the drawing of the intake, on its axis: valve left, mouth right, the cycle
 * upwards. Colour is pressure; the moment on show is taken with the pointer.
 */
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { type Front, LENGTH_MEANING, type Trace } from '../../sim/index.ts';
import { arrivalWords, frontWords, suctionFront } from '../drawing/arrival.ts';
import { pipeSpan } from '../drawing/pipeSpan.ts';
import { valveLines } from '../drawing/valveLines.ts';
import { shownWindow, type Window, wavePixels } from '../drawing/wavePixels.ts';
import { rpm } from '../format.ts';
import { ROLE_NAME } from '../look.ts';
import type { Picture } from '../state/picture.ts';
import { look } from '../state/theme.ts';
import { lengthText } from '../state/unit.ts';
import { moment, play, playing } from '../state/wave.ts';
import { whySpeed } from '../state/why.ts';
import type { ShownTrace } from './benchTrace.ts';
import { SpeedChoice } from './SpeedChoice.tsx';

export function WaveAbove({ picture, shown }: { picture: Picture; shown: ShownTrace | undefined }) {
  return (
    <section class="panel wave-above" aria-labelledby="wave-above-title">
      <div class="panel-head">
        <h2 id="wave-above-title">Where the wave is</h2>
        <SpeedChoice />
        <button type="button" disabled={!shown} onClick={() => play(!playing.value)}>
          {playing.value ? 'Pause' : 'Play'}
        </button>
      </div>
      {shown ? (
        <WavePicture picture={picture} shown={shown} />
      ) : (
        <div class="wave-frame plot waiting">
          <p>{reasonOf(picture)}</p>
        </div>
      )}
      <p class="panel-says" title={LENGTH_MEANING}>
        {shown && (
          <>
            <strong class={shown.role}>
              {ROLE_NAME[shown.role]}, {lengthText(shown.length)}
            </strong>{' '}
            at {rpm(whySpeed.value ?? 0)}.{' '}
            {frontWords(shown.trace, suctionFront(shown.trace, picture))}{' '}
            {arrivalWords(shown.trace)}
          </>
        )}
      </p>
    </section>
  );
}

function reasonOf({ study: { stage } }: Picture): string {
  if (stage === 'cancelled') return 'No cycle is traced: computing was stopped.';
  if (stage === 'failed') return 'No cycle is traced: the computation failed.';
  return stage === 'done' ? 'Tracing a cycle…' : 'A cycle is traced once the answer is complete.';
}

/** Columns that the picture is drawn with; the browser smooths between them. */
const COLUMNS = 220;

function WavePicture({ picture, shown }: { picture: Picture; shown: ShownTrace }) {
  const { trace, length } = shown;
  const { seat, face, width } = pipeSpan(picture);
  const rim = face + length * 1e3;
  const window = shownWindow(trace);
  const share = (mm: number) => `${(100 * mm) / width}%`;
  const place = { left: share(seat), width: share(rim - seat) };
  return (
    <div class="wave-frame" {...takingMoment(window)}>
      <Tiles picture={picture} shown={shown} window={window} place={place} />
      <div class="wave-over" style={place}>
        <FrontLine front={suctionFront(trace, picture)} window={window} />
        <ValveSide picture={picture} trace={trace} window={window} />
        <Event window={window} angle={trace.intakeEvents.open} text="intake opens" />
        <Event window={window} angle={trace.intakeEvents.close} text="intake closes" />
        {DEAD_CENTRES.map(({ angle, text }) => (
          <DeadCentre key={angle} window={window} angle={angle} text={text} />
        ))}
        <div class="moment" style={{ bottom: up(window, moment.value) }} />
      </div>
    </div>
  );
}

interface ValveSideProps {
  picture: Picture;
  trace: Trace;
  window: Window;
}

/** What the valves do and what stands in the cylinder, at the valve's side. */
function ValveSide({ picture, trace, window }: ValveSideProps) {
  const still = picture.scenario.engine.intake.feed.pressure;
  const lines = useMemo(() => valveLines(trace, window, still), [trace, still]);
  return (
    <>
      <svg class="valve-side" viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
        <path class="halo" d={`${lines.intake} ${lines.exhaust} ${lines.cylinder}`} />
        <path d={lines.intake} />
        <path class="exhaust" d={lines.exhaust} />
        <path class="cylinder" d={lines.cylinder} />
      </svg>
      <div class="named" style={{ bottom: `${lines.lifted}%` }}>
        <span>lift</span>
      </div>
      <div class="named below" style={{ bottom: `${clear(window, lines.closed)}%` }}>
        <span>cylinder pressure</span>
      </div>
    </>
  );
}

/** Height of a name [%] that lies over no dead centre's line: below one that it would touch. */
function clear(window: Window, height: number): number {
  const lines = DEAD_CENTRES.map(({ angle }) => share(window, angle));
  const met = lines.find((line) => line > height - NAME_HEIGHT && line < height + 1);
  return Math.min(met === undefined ? height : met - 1, 93);
}

/** What a name takes [%] of the picture, at its least height. */
const NAME_HEIGHT = 9;

/** The way of the front, from the valve to the mouth and back. */
function FrontLine({ front, window }: { front: Front; window: Window }) {
  const whole = front.distance[0]!;
  const path = front.crankAngle.map((angle, i) => {
    const x = 100 * (1 - front.distance[i]! / whole);
    return `${x} ${(100 * (window.to - angle)) / (window.to - window.from)}`;
  });
  return (
    <svg class="front" viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
      <path class="halo" d={`M${path.join(' L')}`} />
      <path d={`M${path.join(' L')}`} />
    </svg>
  );
}

interface TilesProps {
  picture: Picture;
  shown: ShownTrace;
  window: Window;
  place: { left: string; width: string };
}

function Tiles({ picture, shown: { trace, length }, window, place }: TilesProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const colours = look.value.wave;
  const still = picture.scenario.engine.intake.feed.pressure;
  useEffect(() => {
    const pixels = wavePixels(trace, window, { still, colours, columns: COLUMNS });
    const target = canvas.current!;
    target.width = pixels.width;
    target.height = pixels.height;
    target.getContext('2d')!.putImageData(pixels, 0, 0);
  }, [trace, colours, still]);
  return (
    <canvas
      ref={canvas}
      class="tiles"
      style={place}
      role="img"
      aria-label={`Pressure along the intake of ${lengthText(length)} over the crank angle. ${arrivalWords(trace)}`}
    />
  );
}

const DEAD_CENTRES = [
  { angle: 360, text: 'TDC' },
  { angle: 540, text: 'BDC' },
];

/** Height of a crank angle in the picture [%]. */
const share = ({ from, to }: Window, angle: number) =>
  Math.min(100, Math.max(0, (100 * (angle - from)) / (to - from)));

const up = (window: Window, angle: number) => `${share(window, angle)}%`;

interface LineProps {
  window: Window;
  angle: number;
  text: string;
}

function Event({ window, angle, text }: LineProps) {
  return (
    <div class="event" style={{ bottom: up(window, angle) }}>
      <span>
        {text} {Math.round(angle)}°
      </span>
    </div>
  );
}

function DeadCentre({ window, angle, text }: LineProps) {
  if (angle < window.from || angle > window.to) return null;
  return (
    <div class="dead-centre" style={{ bottom: up(window, angle) }}>
      <span>
        {text} <i class="roomy">{angle}°</i>
      </span>
    </div>
  );
}

/** Pointer events that choose the moment. */
function takingMoment({ from, to }: Window) {
  const take = ({ clientY, currentTarget }: PointerEvent) => {
    const box = (currentTarget as Element).getBoundingClientRect();
    const share = Math.min(Math.max((box.bottom - clientY) / box.height, 0), 1);
    play(false);
    moment.value = Math.round(from + share * (to - from));
  };
  return {
    onPointerDown: take,
    onPointerMove: (event: PointerEvent) => {
      if (event.buttons === 1) take(event);
    },
  };
}
