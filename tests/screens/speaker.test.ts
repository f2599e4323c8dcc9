import { describe, expect, test } from 'vitest';
import { localVoice } from '../../src/screens/set/speaker.ts';

const voice = (name: string, lang: string, localService: boolean, standard = false): SpeechSynthesisVoice => ({
  name,
  lang,
  localService,
  default: standard,
  voiceURI: name,
});

describe('the voice that counts', () => {
  test('a voice that sends the text away is never taken', () => {
    expect(localVoice([voice('cloud', 'en-US', false, true)], 'en')).toBeNull();
  });

  test('the standard local voice of the language is preferred', () => {
    const voices = [
      voice('a', 'en-GB', true),
      voice('cloud', 'en-US', false),
      voice('b', 'en-US', true, true),
      voice('c', 'de-DE', true),
    ];
    expect(localVoice(voices, 'en')?.name).toBe('b');
    expect(localVoice(voices, 'de')?.name).toBe('c');
  });

  test('without a voice of the language there is none', () => {
    expect(localVoice([voice('c', 'de-DE', true)], 'en')).toBeNull();
  });
});
