import type { LockScreenWords } from './lock-words.ts';

/** The screens of the passphrase lock, in English. */
export const enLock: LockScreenWords = {
  title: 'Passphrase lock',
  lead: 'With the lock on, what is stored on this machine is sealed. Only your passphrase opens it.',
  passphrase: 'Passphrase',
  again: 'The same once more',
  old: 'Passphrase until now',
  next: 'New passphrase',
  show: 'Show',
  hide: 'Hide',
  hint: (least) =>
    `At least ${least} characters. Longer is better: four or five words that nobody would guess are easy to remember and hard to find out.`,
  differs: 'The two are not the same. Type both again.',
  working: (percent) => `Working: ${percent}%. Leave this page open.`,
  lost: 'Nobody can open these records without the passphrase, not even we. You can erase all that Evenside keeps here and start again.',
  off: {
    title: 'If you forget it',
    readableTitle: 'What the lock does not hide',
    readable:
      'When sets and entries were made, for how many people, how many there are and how large. It does not help against harmful programs on this machine, or somebody at the page while it is unlocked. Files that you saved stay readable.',
    turnOn: 'Turn the lock on',
  },
  on: {
    title: 'The lock is on.',
    about: 'It locks by itself after 15 minutes without a touch or a key, but not while a set runs.',
    part: 'Not every record was done. Nothing is lost.',
    finish: 'Go on with it',
    now: 'Lock now',
    change: 'Change the passphrase',
    changed: 'The new passphrase holds from now on.',
    turnOff: 'Turn the lock off',
    turnOffAbout: 'All that is stored will be readable again for whoever can use this machine.',
  },
  unlock: {
    title: 'Evenside is locked',
    lead: 'Type your passphrase to open your records.',
    do: 'Unlock',
    forgot: 'I forgot it',
    erase: 'Erase everything',
    confirm: (word) => `To erase everything, type ${word}`,
    word: 'ERASE',
    erased: 'This can’t be undone.',
  },
};
