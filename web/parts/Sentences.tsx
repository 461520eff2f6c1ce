/** What a study says, the answer first. */
export function Sentences({ sentences }: { sentences: readonly string[] }) {
  const [answer, ...rest] = sentences.filter((sentence) => sentence !== '');
  return (
    <div class="says">
      <p class="finding">{answer}</p>
      {rest.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  );
}
