/** Says words aloud. What it says always stands on the screen as well. */
export interface Speaker {
  /** Drops what is still being said. @param onDone once it was said, or could not be; not when something else was said over it */
  readonly say: (text: string, onDone: () => void) => void;
  readonly hush: () => void;
}

type Synthesis = Pick<SpeechSynthesis, 'getVoices' | 'speak' | 'cancel'>;

/** Some browsers forget to tell that a voice has ended: after this long it has. Chosen: no sentence of a set takes longer. */
const LONGEST_MS = 12_000;

/** A voice of this machine for a language; voices that are not local would send the text away. */
export function localVoice(voices: readonly SpeechSynthesisVoice[], locale: string): SpeechSynthesisVoice | null {
  const language = locale.split('-')[0] ?? locale;
  const fitting = voices.filter((voice) => voice.localService === true && voice.lang.toLowerCase().startsWith(language));
  return fitting.find((voice) => voice.default) ?? fitting[0] ?? null;
}

/** Speaks with a local voice of the browser in the language of the moment; silent where there is none. */
export function webSpeaker(localeNow: () => string, synthesis: Synthesis | undefined = globalThis.speechSynthesis): Speaker {
  // Kept: a browser may forget an utterance that nobody holds, and with it that it ended.
  let saying: { readonly utterance: SpeechSynthesisUtterance; readonly timer: ReturnType<typeof setTimeout> } | null = null;
  const letGo = () => {
    if (saying) clearTimeout(saying.timer);
    saying = null;
  };
  return {
    say(text, onDone) {
      // The list of voices fills some time after the page has loaded.
      const voice = synthesis ? localVoice(synthesis.getVoices(), localeNow()) : null;
      if (!synthesis || !voice) return onDone();
      letGo();
      synthesis.cancel();
      const utterance = new SpeechSynthesisUtterance(text);
      utterance.voice = voice;
      utterance.lang = voice.lang;
      const end = () => {
        if (saying?.utterance !== utterance) return;
        letGo();
        onDone();
      };
      utterance.onend = end;
      utterance.onerror = end;
      saying = { utterance, timer: setTimeout(end, LONGEST_MS) };
      synthesis.speak(utterance);
    },
    hush() {
      letGo();
      synthesis?.cancel();
    },
  };
}
