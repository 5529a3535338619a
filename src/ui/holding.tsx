import { holdingWords as words } from './words.js';

/** How the card is held, with the cautions that belong to this step. */
export function Holding() {
  return (
    <section className="holding" aria-label={words.heading}>
      <h3>{words.heading}</h3>
      <ol>
        {words.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <ul className="cautions">
        {words.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </section>
  );
}
