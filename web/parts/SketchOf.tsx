/** A sketch above its figures; the line of the figure that has the focus is lit. */
import { type Line, SIZE, type Sketch } from '../sketches/sketch.ts';

interface SketchOfProps {
  sketch: Sketch;
  /** Lines of the figures that are asked for; others are left out. */
  lines: readonly string[];
  lit: string | undefined;
}

export function SketchOf({ sketch, lines, lit }: SketchOfProps) {
  const asked = Object.entries(sketch.measures).filter(([name]) => lines.includes(name));
  return (
    <svg
      class="sketch"
      viewBox={`0 0 ${SIZE.width} ${SIZE.height}`}
      role="img"
      aria-label={`Sketch: ${sketch.name}`}
    >
      {sketch.faint && <path class="faint" d={sketch.faint} />}
      <path class="walls" d={sketch.walls} />
      {asked.map(([name, measured]) => (
        <path
          key={name}
          data-line={name}
          class={name === lit ? 'line lit' : 'line'}
          d={measured.map(dimension).join(' ')}
        />
      ))}
      {sketch.words?.map(({ x, y, text }) => (
        <text key={text} x={x} y={y} text-anchor="middle">
          {text}
        </text>
      ))}
    </svg>
  );
}

/** Half the length of the strokes that end a dimension line. */
const END = 2.6;

/** A line with a stroke across each end. */
function dimension([x1, y1, x2, y2]: Line): string {
  const length = Math.hypot(x2 - x1, y2 - y1);
  const [dx, dy] = [(-END * (y2 - y1)) / length, (END * (x2 - x1)) / length];
  const stroke = (x: number, y: number) => `M${x - dx} ${y - dy} L${x + dx} ${y + dy}`;
  return `M${x1} ${y1} L${x2} ${y2} ${stroke(x1, y1)} ${stroke(x2, y2)}`;
}
