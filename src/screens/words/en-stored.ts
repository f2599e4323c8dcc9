import type { StoredWords } from './stored-words.ts';

/** What is stored here, without a network, new versions, in English. */
export const enStored: StoredWords = {
  open: 'What is stored here',
  openAbout: 'See how much it is, save all of it, or delete all of it.',
  title: 'What is stored here',
  lead: 'All of it is on this machine, in this browser, and nowhere else.',
  amounts: {
    title: 'How much there is',
    kind: 'What',
    count: 'How many',
    size: 'Size',
    sets: 'Measured sets',
    diary: 'Diary entries: plans, symptoms, answers',
    people: 'People',
    model: (name) => `Model that sees the leg: ${name}`,
    program: 'The program itself',
    about: 'No video and no pictures.',
    room: (used, given) => `The browser counts ${used} for this address, and has room for ${given}.`,
    looking: 'Looking …',
  },
  keep: {
    title: 'If the disk runs short',
    states: {
      kept: 'The browser has promised to keep all of it.',
      'not-kept': 'The browser may delete all of it when the disk runs short.',
      unknown: 'This browser does not say what it does when the disk runs short.',
    },
    ask: 'Ask the browser to keep it',
    refused: 'The browser did not promise it. Many do once the app is installed or used often.',
  },
  offline: {
    title: 'Without a network',
    states: {
      starting: 'Looking whether all is here.',
      without: 'This browser needs the network each time.',
      waits: 'Your browser is set to save data, so the model is not fetched by itself.',
      failed: 'Not all came. It is tried again at the next visit.',
      'no-room':
        'There is no room to keep Evenside for the time without a network: free some on this machine, then load this page again.',
      ready: 'Ready to work without a network',
    },
    fetching: (percent) => `Getting ready to work without a network: ${percent}%`,
    fetch: 'Fetch it now',
    again: 'Try again',
    install: 'Your browser’s menu can install Evenside as an app.',
  },
  files: {
    title: 'Save all of it',
    about: 'Your sets and your whole diary as one file. It can be taken in again, here or on another machine.',
    save: 'Save everything as a file',
    people: 'The records of other people here are saved on the page of each person.',
    openPeople: 'Open the list of people',
  },
  erase: {
    title: 'Delete all of it',
    about: 'This deletes from this machine, for good:',
    what: [
      'all measured sets and the whole diary: plans, symptoms, answers',
      'all people in the list, with all that is stored of them',
      'what you chose: exercise, language, passphrase lock',
      'the program that is kept here for the time without a network',
    ],
    begin: 'Delete everything …',
    cancel: 'Do not delete anything',
    done: 'Everything is deleted',
    doneAbout:
      'Nothing of Evenside is left in this browser. You can close this page. Files that you saved are still where you put them.',
    anew: 'Start again',
  },
  update: {
    ready: 'A new version is ready.',
    take: 'Use it now',
    otherTab: 'Another tab of Evenside is in the middle of something. Finish there or close it, then try again.',
  },
};
