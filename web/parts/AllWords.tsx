/** Every sentence of the answer, its cautions, and how good the first look was. */
import { quantities as q } from '../../sim/index.ts';
import { told, typeset } from '../format.ts';
import type { Picture, Verdict } from '../state/picture.ts';
import { addressOf } from '../state/place.ts';
import type { Study } from '../state/study.ts';
import { lengthText } from '../state/unit.ts';

const TOLD = [
  'gain',
  'price',
  'found',
  'flywheel',
  'inside',
  'edge',
  'resolution',
  'shelf',
  'mixed',
  'feed',
  'fuel',
] as const;

/** All that the answer says, a click away. */
export function AllWords({ picture: now, verdict }: { picture: Picture; verdict: Verdict }) {
  const { words } = verdict;
  const rest = TOLD.map((name) => words[name]).filter((sentence) => sentence !== '');
  const count = words.cautions.length;
  return (
    <details class="all-words">
      <summary>
        All it says
        {count > 0 && (
          <span class="price">
            {' '}
            and {count} {count === 1 ? 'caution' : 'cautions'}
          </span>
        )}
      </summary>
      <div class="all-words-box">
        {rest.map((sentence) => (
          <p key={sentence}>{typeset(sentence)}</p>
        ))}
        {words.cautions.map((caution) => (
          <p key={caution} class="notice">
            {typeset(caution)}
          </p>
        ))}
        <FirstLookWas study={now.study} />
        <p>
          <a href={addressOf('trust')}>
            How far to trust it, and what to mind before you fit the trumpets
          </a>
        </p>
      </div>
    </details>
  );
}

/** How good the first look was, once the answer is there. */
function FirstLookWas({ study: { preview } }: { study: Study }) {
  if (!preview || !Number.isFinite(preview.decision.gainPercent)) return null;
  return (
    <p class="quiet">
      The first look had said {lengthText(preview.recommended.length)},{' '}
      {told(q.GAIN, preview.decision.gainPercent)}.
    </p>
  );
}
