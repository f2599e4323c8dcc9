/** Says words aloud. What it says always stands on the screen as well. */
export interface Speaker {
  /** Drops what is still being said: an old count is worth nothing. */
  readonly say: (text: string) => void;
  readonly hush: () => void;
}

type Synthesis = Pick<SpeechSynthesis, 'getVoices' | 'speak' | 'cancel'>;

/** A voice of this machine for a language; voices that are not local would send the text away. */
export function localVoice(voices: readonly SpeechSynthesisVoice[], locale: string): SpeechSynthesisVoice | null {
  const language = locale.split('-')[0] ?? locale;
  const fitting = voices.filter((voice) => voice.localService === true && voice.lang.toLowerCase().startsWith(language));
  return fitting.find((voice) => voice.default) ?? fitting[0] ?? null;
}

/** Speaks with a local voice of the browser in the language of the moment; silent where there is none. */
export function webSpeaker(localeNow: () => string, synthesis: Synthesis | undefined = globalThis.speechSynthesis): Speaker {
  return {
    say(text) {
      // The list of voices fills some time after the page has loaded.
      const voice = synthesis ? localVoice(synthesis.getVoices(), localeNow()) : null;
      if (!synthesis || !voice) return;
      synthesis.cancel();
      const utterance = new SpeechSynthesisUtterance(text);
      utterance.voice = voice;
      utterance.lang = voice.lang;
      synthesis.speak(utterance);
    },
    hush: () => synthesis?.cancel(),
  };
}
