/** A sentence of a study in the page's type; where it ends in names of other studies, links to their places. */
import { Fragment } from 'preact';
import type { Scenario } from '../../sim/index.ts';
import { typeset } from '../format.ts';
import { picture } from '../state/picture.ts';
import { addressOf } from '../state/place.ts';
import { ofThrottle } from '../state/throttle.ts';

interface Answers {
  place: string;
  name: string;
  /** Whether the scenario poses its question; always where absent. */
  asked?(scenario: Scenario): boolean;
}

/** Where the page answers what the command line has a study for. */
export const PLACE_OF: Readonly<Record<string, Answers>> = {
  response: { place: 'plenum', name: 'Plenum' },
  signal: { place: 'sensor', name: 'Sensor' },
  load: { place: 'load', name: 'Part throttle' },
  balance: { place: 'balance', name: 'Balance', asked: ({ engine }) => engine.cylinder.count > 1 },
  idle: { place: 'idle', name: 'Idle', asked: ({ idle }) => idle !== undefined },
  pedal: { place: 'pedal', name: 'Pedal', asked: ({ pedal }) => pedal !== undefined },
};

const NAMES = Object.keys(PLACE_OF).join('|');
const ENDING = new RegExp(`^(.*) \\((?:see )?((?:${NAMES})(?:, (?:${NAMES}))*)\\)\\.$`);

export function Told({ text: told }: { text: string }) {
  const text = ofThrottle(told);
  const [, said, names] = ENDING.exec(text) ?? [];
  if (said === undefined || names === undefined) return <>{typeset(text)}</>;
  const scenario = picture.value?.scenario;
  const led = names
    .split(', ')
    .map((name) => PLACE_OF[name]!)
    .filter(({ asked }) => scenario && (asked?.(scenario) ?? true));
  if (led.length === 0) return <>{typeset(`${said}.`)}</>;
  return (
    <>
      {typeset(said)} (see{' '}
      {led.map(({ place, name }, i) => (
        <Fragment key={place}>
          {i > 0 && ', '}
          <a href={addressOf(place)}>{name}</a>
        </Fragment>
      ))}
      ).
    </>
  );
}
