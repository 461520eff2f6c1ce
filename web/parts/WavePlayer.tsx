/** The intake at one moment of the cycle, coloured by pressure, with play and step. */
import type { Trace } from '../../sim/index.ts';
import { quantities as q } from '../../sim/index.ts';
import { mixed, rowAt, stillAir } from '../drawing/pressure.ts';
import { told } from '../format.ts';
import { ROLE_NAME } from '../look.ts';
import { curveOf, type Picture, picture } from '../state/picture.ts';
import { look } from '../state/theme.ts';
import { CYCLE, moment, play, playing, step, waveRole } from '../state/wave.ts';
import { isTrace, traceOf } from '../state/why.ts';

/** Degrees of one step. */
const STEP = 5;

export function WavePlayer() {
  const now = picture.value;
  if (!now) return null;
  const trace = traceOf(waveRole.value);
  const angle = moment.value;
  return (
    <div class="player">
      {isTrace(trace) && <PipeNow picture={now} trace={trace} angle={angle} />}
      <div class="player-row">
        <button type="button" onClick={() => play(!playing.value)}>
          {playing.value ? 'Pause' : 'Play'}
        </button>
        <button type="button" onClick={() => step(-STEP)}>
          <span aria-hidden="true">−{STEP}°</span>
          <span class="sr">Step back {STEP} degrees</span>
        </button>
        <input
          type="range"
          aria-label="Crank angle"
          aria-valuetext={`${Math.round(angle)} degrees`}
          min={0}
          max={CYCLE - 1}
          step={1}
          value={angle}
          onInput={(event) => {
            moment.value = event.currentTarget.valueAsNumber;
          }}
        />
        <button type="button" onClick={() => step(STEP)}>
          <span aria-hidden="true">+{STEP}°</span>
          <span class="sr">Step on {STEP} degrees</span>
        </button>
      </div>
      <fieldset class="choice">
        <legend>Pipe shown</legend>
        {now.curves.map(({ role }) => (
          <label key={role}>
            <input
              type="radio"
              name="wave-role"
              checked={waveRole.value === role}
              onChange={() => {
                waveRole.value = role;
              }}
            />{' '}
            {ROLE_NAME[role]}
          </label>
        ))}
      </fieldset>
    </div>
  );
}

interface PipeProps {
  picture: Picture;
  trace: Trace;
  angle: number;
}

const HEIGHT = 36;

function PipeNow({ picture: now, trace, angle }: PipeProps) {
  const row = rowAt(trace, angle);
  const pressures = trace.wave.pressure[row]!;
  const { still, reach } = stillAir(now, trace);
  const edges = cellEdges(trace.wave.distance);
  const [start, end] = [edges[0]!, edges[edges.length - 1]!];
  /** Across the strip, valve left and mouth right as in the drawing of the intake [mm]. */
  const across = (at: number) => (end - at) * 1e3;
  const length = curveOf(now, waveRole.value)?.length ?? 0;
  const open = trace.intakeLift[row]! > 1e-5;
  const colours = look.value.wave;
  return (
    <figure class="pipe-now">
      <svg viewBox={`0 0 ${across(start)} ${HEIGHT}`} preserveAspectRatio="none" aria-hidden="true">
        {pressures.map((p, i) => (
          <rect
            key={trace.wave.distance[i]}
            x={across(edges[i + 1]!)}
            width={across(edges[i]!) - across(edges[i + 1]!) + 0.3}
            height={HEIGHT}
            fill={mixed(colours, (p - still) / reach)}
          />
        ))}
        <line class="face" x1={across(length)} x2={across(length)} y2={HEIGHT} />
      </svg>
      <figcaption>
        <span>
          valve {open ? 'open' : 'shut'}, {told(q.PRESSURE, pressures.at(-1)!)}
        </span>
        <span>{Math.round(angle)}°</span>
        <span>mouth {told(q.PRESSURE, pressures[0]!)}</span>
      </figcaption>
    </figure>
  );
}

/** Edges of cells from their centres, one more than there are cells. */
function cellEdges(centres: readonly number[]): number[] {
  const inner = centres.slice(1).map((at, i) => (at + centres[i]!) / 2);
  const last = centres.length - 1;
  return [2 * centres[0]! - inner[0]!, ...inner, 2 * centres[last]! - inner[inner.length - 1]!];
}
