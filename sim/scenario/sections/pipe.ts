/** What every pipe of the scenario has in common: length, diameters, wall. */
import type { PipeSpecification } from '../../specification.ts';
import { type Absent, type Doubt, type FormField, maybe, oneOf, quantity } from '../key.ts';
import type { LeafPlace, SectionView } from '../view.ts';

/** What differs from pipe to pipe. */
interface PipeOptions<W extends Absent> {
  /** Whether the form shows its length, by this label, and its bore or bores, by that. */
  form?: { group: FormField['group']; length: string; bore: string };
  longest: string;
  usual: Record<'length' | 'wall', readonly [string, string]>;
  wallTemperature: W;
  roughness: Absent & { value: string };
  /** How far each is likely to be off; one that is left out is taken as known. */
  doubt: Partial<Record<'length' | 'diameter' | 'wallTemperature' | 'bendLoss', Doubt>>;
}

/** Keys of a pipe, to spread into a section. */
export function pipeKeys<const W extends Absent>(length: string, options: PipeOptions<W>) {
  const { longest, usual, form, doubt } = options;
  return {
    length: quantity('length', length, {
      limits: ['1 mm', longest],
      usual: usual.length,
      ...doubted(doubt.length),
      ...labelled(form, form?.length),
    }),
    ...bores(options),
    ...walls(options),
  };
}

const doubted = (doubt: Doubt | undefined) => (doubt ? { doubt } : {});

const labelled = (form: PipeOptions<Absent>['form'], label: string | undefined) =>
  form && label ? { form: { group: form.group, label } } : {};

function bores<W extends Absent>({ form, doubt }: PipeOptions<W>) {
  const bore = (what: string, end = '') =>
    maybe('length', what, {
      limits: ['5 mm', '300 mm'],
      ...doubted(doubt.diameter),
      ...labelled(form, form && `${form.bore}${end}`),
    });
  return {
    diameter: bore('Inside diameter of a straight pipe; instead of the two ends.'),
    diameterAirEnd: bore(
      'Inside diameter at the end nearer the open air; with diameterValveEnd, for a taper.',
      ', air end',
    ),
    diameterValveEnd: bore(
      'Inside diameter at the end nearer the valve; with diameterAirEnd, for a taper.',
      ', valve end',
    ),
  };
}

function walls<const W extends Absent>({
  usual,
  wallTemperature,
  roughness,
  doubt,
}: PipeOptions<W>) {
  return {
    wallTemperature: maybe('temperature', 'Temperature of the wall.', {
      limits: ['220 K', '1300 K'],
      usual: usual.wall,
      absent: wallTemperature,
      ...doubted(doubt.wallTemperature),
    }),
    roughness: maybe('length', 'Equivalent sand roughness of the wall.', {
      limits: ['0 mm', '2 mm'],
      absent: roughness,
    }),
    bendLoss: maybe('ratio', 'Loss of all bends together, in dynamic heads.', {
      limits: ['0', '5'],
      usual: ['0', '1.5'],
      absent: { value: '0', why: 'no bend given' },
      ...doubted(doubt.bendLoss),
    }),
  };
}

/** A pipe is straight or tapered. */
export const PIPE_DIAMETER = oneOf(
  'the diameter',
  [['diameterAirEnd', 'diameterValveEnd'], ['diameter']],
  'give diameter for a straight pipe, or diameterAirEnd and diameterValveEnd for a taper',
);

type Keys<W extends Absent> = ReturnType<typeof pipeKeys<W>>;

/** Any pipe; how its wall's default comes about does not matter. */
export type PipeView = Omit<SectionView<Keys<Absent & { value: string }>>, 'wallTemperature'> & {
  readonly wallTemperature: LeafPlace;
};

/** Diameter of a pipe at one end [m], or undefined where it is not given. */
export function diameterAt(pipe: PipeView, end: 'AirEnd' | 'ValveEnd'): number | undefined {
  return pipe.diameter.given ?? pipe[`diameter${end}`].given;
}

/** @param wallTemperature taken by the caller [K] */
export function resolvePipe(pipe: PipeView, wallTemperature: number): PipeSpecification {
  return {
    length: pipe.length.take(),
    outerDiameter: diameterAt(pipe, 'AirEnd')!,
    innerDiameter: diameterAt(pipe, 'ValveEnd')!,
    wallTemperature,
    roughness: pipe.roughness.take(),
    bendLoss: pipe.bendLoss.take(),
  };
}

/** A pipe whose wall has a default of its own. */
export function resolveWalledPipe(
  pipe: PipeView & { wallTemperature: LeafPlace<'value'> },
): PipeSpecification {
  return resolvePipe(pipe, pipe.wallTemperature.take());
}
