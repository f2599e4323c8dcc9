// First, so that the screens' own rules come after them.
import './styles/tokens.css';
import './styles/base.css';
import './styles/button.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { ms } from '../units.ts';
import { appServices } from './adapter/app-services.ts';
import { App } from './app.tsx';
import { useChoices } from './choose/choices.ts';
import { ServicesContext } from './services-context.tsx';
import { createRun } from './set/run.ts';
import { RunContext } from './set/run-context.tsx';
import { createSounds } from './set/sounds.ts';
import { SoundsContext } from './set/sounds-context.tsx';
import { webSpeaker } from './set/speaker.ts';
import { webTones } from './set/tones.ts';
import { en } from './words/en.ts';
import { WordsContext } from './words/words-context.tsx';

const root = document.getElementById('root');
if (!root) throw new Error('main requires an element #root, got none');

const services = appServices();
const sounds = createSounds({
  speaker: webSpeaker(en.locale),
  tones: webTones(),
  soundOn: () => useChoices.getState().choices.sound,
});
const run = createRun({
  services,
  words: en,
  sounds,
  now: () => ms(performance.now()),
  onFault: reportError,
});

createRoot(root).render(
  <StrictMode>
    <WordsContext value={en}>
      <ServicesContext value={services}>
        <SoundsContext value={sounds}>
          <RunContext value={run}>
            <App />
          </RunContext>
        </SoundsContext>
      </ServicesContext>
    </WordsContext>
  </StrictMode>,
);
