import type { BrowserContext, Page } from 'playwright-core';

/** Run in each page before its own scripts, as text: a voice of this machine that writes down what it is told to say, and takes about as long as people do. */
const WRITES_DOWN = `
  window.saidAloud = [];
  Object.defineProperty(window, 'speechSynthesis', {
    value: {
      getVoices: () => [{ name: 'written', lang: 'en', localService: true, default: true, voiceURI: 'written' }],
      cancel() {},
      speak(utterance) {
        window.saidAloud.push(utterance.text);
        setTimeout(() => utterance.onend?.(), 200 + 55 * utterance.text.length);
      },
    },
  });
  window.SpeechSynthesisUtterance = class {
    constructor(text) {
      this.text = text;
    }
  };
`;

/** Gives the pages of a visit that are loaded from now on a voice that can be read. */
export const writeDownVoice = async (context: BrowserContext): Promise<void> => {
  await context.addInitScript({ content: WRITES_DOWN });
};

/** What the page has said since it was loaded, in order. */
export const saidAloud = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => (globalThis as unknown as { readonly saidAloud: readonly string[] }).saidAloud);
