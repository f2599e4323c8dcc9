import { useChoices } from '../choose/choices.ts';
import { Icon } from '../parts/icon.tsx';
import { useWords } from '../words/words-context.tsx';
import './sound-switch.css';

/** Switches voice and tones on and off. */
export function SoundSwitch() {
  const { set } = useWords();
  const sound = useChoices((s) => s.choices.sound);
  const choose = useChoices((s) => s.choose);
  return (
    <button type="button" className="button" data-look="quiet" aria-pressed={sound} onClick={() => choose({ sound: !sound })}>
      <Icon name={sound ? 'sound' : 'silent'} />
      <span className="sound-switch-word">{sound ? set.voiceOn : set.voiceOff}</span>
    </button>
  );
}
