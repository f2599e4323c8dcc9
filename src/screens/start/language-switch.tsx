import { useChoices } from '../choose/choices.ts';
import { LANGUAGES, OWN_NAMES } from '../words/languages.ts';
import { useWords } from '../words/words-context.tsx';

/** The languages, each by its own name. */
export function LanguageSwitch() {
  const { app, locale } = useWords();
  const choose = useChoices((s) => s.choose);
  return (
    <nav className="languages" aria-label={app.language}>
      {LANGUAGES.map((language) => (
        <button
          key={language}
          type="button"
          className="button"
          data-look="quiet"
          lang={language}
          aria-pressed={language === locale}
          onClick={() => choose({ language })}
        >
          {OWN_NAMES[language]}
        </button>
      ))}
    </nav>
  );
}
