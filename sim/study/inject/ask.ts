/** Which values of a key of the injectors are to be tried. */
import { InputError } from '../../errors.ts';
import type { InjectorsSpecification } from '../../injectors.ts';
import type { Axis } from '../../scenario/range.ts';
import { readScenario } from '../../scenario/read.ts';
import { readVariedKey } from '../../scenario/readValue.ts';
import { refused } from '../options.ts';
import type { Asked, StudyOption } from '../study.ts';

/** Where the fuel comes from; `none` is fuel as vapour at valve closing, to compare with. */
export type Placement = 'none' | 'near' | 'above' | 'both';

export const TRY_OPTION: StudyOption = {
  flags: '--vary <KEY=VALUES>',
  help: 'try values of a key of the injectors, for example injectors.each.1.fromMouth=-100mm..-20mm/20mm',
};

/** A key to try, and the injectors that each value gives. */
export interface Trial {
  axis: Axis;
  placement: Placement;
  injectors: readonly InjectorsSpecification[];
}

/**
 * What is to be tried; undefined where nothing is asked.
 *
 * @throws InputError where the key is none of the injectors
 * @throws ScenarioError where a value breaks a rule of the scenario
 */
export function askedTrial({ options, text, file, scenario }: Asked): Trial | undefined {
  const { vary } = options;
  if (typeof vary !== 'string') return undefined;
  const axis = readVariedKey(vary);
  if (!('values' in axis)) throw refused(`--vary ${vary}`, axis);
  const { path, texts } = axis;
  if (!path.startsWith('injectors.')) {
    throw new InputError(
      `--vary ${path}: inject tries keys of the injectors; others are for sweep`,
    );
  }
  const injectors = texts.map(
    (value) => readScenario(text, file, [{ path, text: value }]).injectors!,
  );
  return { axis, placement: placementOf(path, scenario.injectors!.list.length), injectors };
}

function placementOf(path: string, count: number): Placement {
  const [, row] = /^injectors\.each\.(\d+)\./.exec(path) ?? [];
  if (row === undefined) return 'both';
  return Number(row) === count - 1 ? 'above' : 'near';
}
