import type { MessageServices } from '../message-services.ts';

/** Messages of the browser outside of the page, while it is open; the page asks for them first. */
export function browserMessages(): MessageServices {
  const api = typeof Notification === 'undefined' ? null : Notification;
  return {
    state: () => (api ? api.permission : 'unsupported'),
    ask: async () => (api ? api.requestPermission() : 'unsupported'),
    show(text) {
      if (api?.permission !== 'granted') return;
      try {
        // One name: a later message takes the place of an older one.
        const message = new api('Evenside', { body: text, tag: 'evenside-due' });
        message.onclick = () => {
          window.focus();
          message.close();
        };
      } catch {
        // Some phones allow messages from service workers only; the page itself shows the same.
      }
    },
  };
}
