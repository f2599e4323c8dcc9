// Before anything is started or written to the page.
import '../run/own-scripts.ts';
// First of the styles, so that the screens' own rules come after them.
import './styles/tokens.css';
import './styles/base.css';
import './styles/button.css';
import { StrictMode, useEffect } from 'react';
import { createRoot } from 'react-dom/client';
import { ms } from '../units.ts';
import { appServices } from './adapter/app-services.ts';
import { App } from './app.tsx';
import { useChoices } from './choose/choices.ts';
import { knownServer } from './server/known-server.ts';
import { noteReturn } from './server/sign-in-return.ts';
import { ServicesContext } from './services-context.tsx';
import { createRun } from './set/run.ts';
import { RunContext } from './set/run-context.tsx';
import { createSounds } from './set/sounds.ts';
import { SoundsContext } from './set/sounds-context.tsx';
import { webSpeaker } from './set/speaker.ts';
import { webTones } from './set/tones.ts';
import { languageOf } from './words/languages.ts';
import { speak, useSpoken } from './words/spoken.ts';
import { WordsContext } from './words/words-context.tsx';

// Before anything else looks at the address.
const isBack = noteReturn();

const root = document.getElementById('root');
if (!root) throw new Error('main requires an element #root, got none');

const wordsNow = () => useSpoken.getState().words;
/** Speaks the chosen language, or the browser's. */
const speakChosen = () => speak(languageOf(useChoices.getState().choices.language, navigator.languages));

const services = appServices();
// What somebody brings back from signing in is good for a minute: it does not wait for a screen.
const server = knownServer();
if (isBack && server) void services.server(server).catch(reportError);
const sounds = createSounds({
  speaker: webSpeaker(() => wordsNow().locale),
  tones: webTones(),
  soundOn: () => useChoices.getState().choices.sound,
  now: () => performance.now(),
});
const run = createRun({
  services,
  words: wordsNow,
  sounds,
  now: () => ms(performance.now()),
  onFault: reportError,
});

function Root() {
  const words = useSpoken((s) => s.words);
  useEffect(() => {
    document.documentElement.lang = words.locale;
  }, [words.locale]);
  return (
    <WordsContext value={words}>
      <ServicesContext value={services}>
        <SoundsContext value={sounds}>
          <RunContext value={run}>
            <App />
          </RunContext>
        </SoundsContext>
      </ServicesContext>
    </WordsContext>
  );
}

useChoices.subscribe(({ choices }, before) => {
  if (choices.language !== before.choices.language) void speakChosen();
});
await speakChosen();
// A browser that lacks what everything needs has its page already (`src/plain`).
if (document.getElementById('too-old')?.hidden !== false) {
  createRoot(root).render(
    <StrictMode>
      <Root />
    </StrictMode>,
  );
}
