/** A pipe of intake or exhaust: what stands at its ends, and whether it tapers. */
import type { Line, Sketch } from './sketch.ts';

export interface PipeOf {
  name: string;
  /** What stands at the left end. */
  left: 'valve' | 'flange' | 'joint';
  /** What stands at the right end. */
  right: 'mouth' | 'flange' | 'joint' | 'open';
}

const [FROM, TO, AXIS] = [40, 200, 40];
/** Half the bore at the left and at the right end. */
const [NARROW, WIDE] = [15, 19];

export function pipe({ name, left, right }: PipeOf): Sketch {
  const mouth = right === 'mouth';
  const end = mouth ? TO - 14 : TO;
  const wall = (s: 1 | -1) =>
    `M${FROM} ${AXIS + s * NARROW} L${end} ${AXIS + s * WIDE}` +
    (mouth ? ` Q${TO} ${AXIS + s * WIDE} ${TO} ${AXIS + s * (WIDE + 12)}` : '');
  return {
    name,
    walls: `${wall(1)} ${wall(-1)} ${leftEnd(left)} ${rightEnd(right)}`,
    faint: `M${FROM - 14} ${AXIS} H${TO + 14}`,
    measures: {
      length: [[FROM, 80, TO, 80]],
      diameter: [upright(118, 17)],
      diameterValveEnd: [upright(FROM + 8, NARROW)],
      diameterAirEnd: [upright(end - 8, WIDE)],
      ...(mouth && { radius: [[end, AXIS - WIDE - 12, TO, AXIS - WIDE - 12] as const] }),
      joined: [[TO + 6, 12, TO + 6, 68]],
    },
    words: [{ x: 120, y: 76, text: 'along the centre line' }],
  };
}

const upright = (x: number, half: number): Line => [x, AXIS - half, x, AXIS + half];

function leftEnd(kind: PipeOf['left']): string {
  if (kind === 'valve')
    return `M${FROM - 3} 22 Q${FROM + 4} ${AXIS} ${FROM - 3} 58 M${FROM} ${AXIS} H${FROM + 24}`;
  if (kind === 'joint') return `M${FROM - 22} 14 L${FROM} 25 M${FROM - 22} 66 L${FROM} 55`;
  return `M${FROM} 18 V25 M${FROM} 55 V62`;
}

function rightEnd(kind: PipeOf['right']): string {
  if (kind === 'flange') return `M${TO} 14 V21 M${TO} 59 V66`;
  if (kind === 'joint') return `M${TO} 21 L${TO + 24} 12 M${TO} 59 L${TO + 24} 68`;
  return '';
}
