/** What a study says, the answer first. */
import { Told } from './Told.tsx';

export function Sentences({ sentences }: { sentences: readonly string[] }) {
  const [answer, ...rest] = sentences.filter((sentence) => sentence !== '');
  return (
    <div class="says">
      <p class="finding">
        <Told text={answer ?? ''} />
      </p>
      {rest.map((sentence) => (
        <p key={sentence}>
          <Told text={sentence} />
        </p>
      ))}
    </div>
  );
}
