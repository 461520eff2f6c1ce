/** What to mind, as a list. */
export function Cautions({ items }: { items: readonly string[] }) {
  return (
    <ul class="cautions">
      {items.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  );
}
