/** Which exhaust pipes meet: so many of them, or the cylinders by number, as 1-4 and 2-3. */
import type { JointSpecification } from '../../specification.ts';
import { list, maybe, oneOf, optional, type Text, text } from '../key.ts';
import type { ScenarioView } from '../schema.ts';
import type { LeafPlace, ListPlace } from '../view.ts';
import { checkLists, listsIn } from './cylinderLists.ts';
import { upTo } from './firing.ts';

const MOST = 8;

/** Keys of what meets in a pipe, to spread into its section. */
export function jointKeys(
  what: { joined: string; groups: string; label: string },
  absent: { value: string; why: string },
) {
  return {
    joined: maybe('ratio', what.joined, {
      limits: ['1', `${MOST}`],
      whole: true,
      absent,
      form: { group: 'Exhaust', label: what.label },
    }),
    groups: optional(list(text(what.groups, 40, 1), what.groups, { most: 2 * MOST })),
  };
}

export const ONE_JOINT = oneOf(
  'which pipes meet',
  [['joined'], ['groups']],
  'give how many meet in joined, or which in groups',
  true,
);

/** What a section has of the keys above. */
interface Joint {
  joined: LeafPlace<'value'>;
  groups: ListPlace<Text>;
}

export function checkJoints({ engine, exhaust }: ScenarioView): void {
  const count = engine.cylinders.given;
  const { secondary, tail, collector } = exhaust;
  const meeting = exhaust.groups.present ? exhaust.groups : exhaust.joined;
  if ((exhaust.groups.present || exhaust.joined.assumed > 1) && !tail.here.present) {
    const remedy = 'add exhaust.tail, from the joint to the open air';
    meeting.problem('primaries meet, but no tail leads on', remedy);
  }
  for (const pipe of [secondary, collector]) {
    if (!pipe.here.present || tail.here.present) continue;
    pipe.here.problem('leads to no tail', 'add exhaust.tail, from there to the open air');
  }
  if (count === undefined) return;
  checkJoint(exhaust, upTo(count), 'cylinders');
  if (secondary.here.present) checkSecondary(exhaust, secondary, count);
}

function checkJoint(joint: Joint, all: readonly number[], what: string): void {
  const { joined, groups } = joint;
  if (groups.present) {
    checkGroups(joint, all);
  } else if (all.length % joined.assumed !== 0) {
    joined.problem(
      `${joined.assumed} primaries meet, but ${all.length} ${what} cannot be shared out so`,
      'give the number of primaries that meet in one joint, alike for all joints',
      `a divisor of ${all.length}`,
    );
  }
}

/** Cylinders named by the groups, each once. */
const checkGroups = ({ groups }: Joint, all: readonly number[]) =>
  checkLists(groups, 'list of groups', all, '[1-4, 2-3]');

const groupsOf = ({ groups }: Joint) => listsIn(groups);

function checkSecondary(tailward: Joint, secondary: Joint, count: number): void {
  const outer = groupsOf(tailward);
  const size = tailward.joined.assumed;
  if (!tailward.groups.present && size < 2) {
    const remedy = 'give joined or groups of exhaust: the cylinders that blow into one tail';
    tailward.joined.problem('secondaries are given, but nothing meets behind them', remedy);
    return;
  }
  if (secondary.groups.present) {
    checkGroups(secondary, upTo(count));
    checkWithin(secondary, outer);
    return;
  }
  const sizes = outer ? outer.map((group) => group.length) : [size];
  const odd = sizes.find((each) => each % secondary.joined.assumed !== 0);
  if (odd === undefined) return;
  secondary.joined.problem(
    `${secondary.joined.assumed} primaries meet in a secondary, but ${odd} cylinders of one tail cannot be shared out so`,
    'name the cylinders of each secondary in groups',
    `a divisor of ${odd}`,
  );
}

/** A secondary leads to one tail. */
function checkWithin(secondary: Joint, outer: number[][] | undefined): void {
  const split = groupsOf(secondary)?.find((inner) => {
    const home = outer?.find((group) => group.includes(inner[0]!));
    return home && inner.some((number) => !home.includes(number));
  });
  if (!split) return;
  secondary.groups.problem(
    `the secondary of cylinders ${split.join('-')} leads to two tails`,
    'cylinders that share a secondary share the tail behind it',
  );
}

/** As the file has it, `joined` listed where it is a default. */
export function resolveJoint(joint: Joint): JointSpecification {
  const groups = groupsOf(joint);
  if (!groups) return { joined: joint.joined.take() };
  return { joined: Math.max(...groups.map((group) => group.length)), groups };
}
