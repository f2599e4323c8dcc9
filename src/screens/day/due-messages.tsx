import { useState } from 'react';
import { useChoices } from '../choose/choices.ts';
import { useServices } from '../services-context.tsx';
import { useWords } from '../words/words-context.tsx';

/** Switches messages about due sets on and off; says so where the browser refuses them, and is not there where it has none. */
export function DueMessages() {
  const { day } = useWords();
  const { messages } = useServices();
  const on = useChoices((s) => s.choices.messages);
  const choose = useChoices((s) => s.choose);
  const [state, setState] = useState(messages.state);
  if (state === 'unsupported') return null;
  const toggle = async () => {
    if (on) return choose({ messages: false });
    const answer = await messages.ask();
    setState(answer);
    choose({ messages: answer === 'granted' });
  };
  return (
    <>
      <button type="button" className="button" aria-pressed={on && state === 'granted'} onClick={() => void toggle()}>
        {day.notify}
      </button>
      <span className="day-messages soft" role="status">
        {state === 'denied' ? day.notifyRefused : on ? day.notifying : ''}
      </span>
    </>
  );
}
