/** What to mind, as a list. */
import { Told } from './Told.tsx';

export function Cautions({ items }: { items: readonly string[] }) {
  return (
    <ul class="cautions">
      {items.map((caution) => (
        <li key={caution}>
          <Told text={caution} />
        </li>
      ))}
    </ul>
  );
}
