import { useId } from 'react';
import { AVAILABLE_LANGUAGES } from './available-languages.js';
import { words } from './language.js';
import { useLanguage } from './speaking.js';

/** Chooses the language of the screen; each is called as its own speakers call it. */
export function LanguageChooser() {
  const { tag, choose, failed } = useLanguage();
  const id = useId();
  const name = AVAILABLE_LANGUAGES.find((language) => language.tag === failed)?.name;
  return (
    <div className="labelled language-choice">
      <label htmlFor={id}>{words.language.choose}</label>
      <select
        id={id}
        value={tag}
        onChange={(event) => {
          choose(event.currentTarget.value);
        }}
      >
        {AVAILABLE_LANGUAGES.map((language) => (
          <option key={language.tag} value={language.tag} lang={language.tag}>
            {language.name}
          </option>
        ))}
      </select>
      {name !== undefined && (
        <p className="note" role="status">
          {words.language.failed(name)}
        </p>
      )}
    </div>
  );
}
