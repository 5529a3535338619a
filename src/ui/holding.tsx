import { words } from './language.js';

/** How the card is held, with the cautions that belong to this step. */
export function Holding() {
  return (
    <section className="holding" aria-label={words.holding.heading}>
      <h3>{words.holding.heading}</h3>
      <ol>
        {words.holding.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <ul className="cautions">
        {words.holding.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </section>
  );
}
