import { counted } from './en-plural.ts';
import type { RecordWords } from './record-words.ts';

/** Sending a record and taking one in, in English. */
export const enRecord: RecordWords = {
  send: {
    open: { self: 'Send my record', person: 'Give out this record' },
    title: { self: 'Send my record', person: 'Give out this record' },
    lead: {
      self: 'All your sets and answers in one file. It is for your therapist, or to move to a new machine.',
      person: 'All sets and all that is recorded of this person, as one file. Your notes on them are not in it.',
    },
    name: 'Name or code in the file (may stay empty)',
    nameHint: 'Without it, only a random number in the file says whose it is.',
    seal: 'Who can open the file',
    sealed: {
      name: 'Only somebody with the passphrase',
      about: 'The file is sealed. Tell them the passphrase in another way than you send the file.',
    },
    plain: { name: 'Whoever has the file', about: 'Nothing is sealed.' },
    forgotten: 'Nobody can open the file without its passphrase, not even we. If it is forgotten, save and send a new file.',
    short: (least) => `The passphrase needs at least ${least} characters.`,
    health: {
      title: 'This file is health data.',
      todo: 'Evenside only saves it. How you send it, and to whom, is for you to choose.',
    },
    save: 'Save the file',
    working: 'Working …',
    saved: (file) => `Saved as ${file}, where your browser keeps downloads.`,
    inIt: (sets, entries) => `In it: ${counted(sets, 'measured set', 'measured sets')}, ${counted(entries, 'entry', 'entries')}.`,
    damaged: (n) => `${counted(n, 'stored entry', 'stored entries')} can’t be read, and so are not in the file.`,
  },
  bring: {
    open: {
      anybody: { name: 'Take in a record', about: 'A file that somebody sent you.' },
      person: { name: 'Take in a record', about: 'A file that this person sent you.' },
      self: {
        name: 'Move to another machine',
        about: 'Take your own record in from the file that you saved on the other machine.',
      },
    },
    title: { anybody: 'Take in a record', person: 'Take in a record', self: 'Move to another machine' },
    lead: {
      anybody: 'Open the file that somebody sent you. You see what is in it before anything is kept.',
      person: 'Open the file that this person sent you. You see what is in it before anything is kept.',
      self: 'Save your record on the other machine, then open its file here. You see what is in it before anything is kept.',
    },
    pick: 'Choose the file',
    pickHint: 'or drop it here',
    checking: 'Checking the file …',
    sealedTitle: 'This record is sealed.',
    sealedHint: 'Type the passphrase that was chosen when it was saved.',
    unseal: 'Open it',
    found: 'What is in it',
    whose: 'Whose',
    unnamed: 'No name in the file',
    period: 'From, to',
    fromTo: (from, to) => `${from} to ${to}`,
    nothing: 'No set and no entry',
    holds: 'Holds',
    counts: (sets, checkIns, entries) =>
      `${counted(sets, 'set', 'sets')}, ${counted(checkIns, 'check-in', 'check-ins')}, ${counted(entries, 'other entry', 'other entries')}`,
    news: 'New here',
    fresh: (sets, entries) => `${counted(sets, 'set', 'sets')}, ${counted(entries, 'entry', 'entries')}`,
    grown: (n) => `${counted(n, 'set', 'sets')} of which more is known now`,
    staysRemoved: (n) =>
      `${counted(n, 'set', 'sets')} in the file ${n === 1 ? 'was' : 'were'} removed before and ${n === 1 ? 'stays' : 'stay'} removed.`,
    removedThere: (n) =>
      `${counted(n, 'set', 'sets')} that ${n === 1 ? 'was' : 'were'} here before ${n === 1 ? 'was' : 'were'} removed by whoever sent the file, and so here, too.`,
    noNews: 'Nothing: all of it is here already',
    conflicts: (n) => `${counted(n, 'part says', 'parts say')} something else here. What is here stays.`,
    forWhom: 'For whom',
    somebodyNew: { name: 'A new person', about: 'They are added to your list.' },
    somebodyHere: { name: 'Somebody in my list', about: 'It is joined with what is here.' },
    person: 'Person',
    known: (name) => `A record of this person was taken in before, for ${name}.`,
    take: 'Take it in',
    notNow: 'Not now',
    taking: 'Taking it in …',
    done: 'It is taken in.',
    toPerson: 'Go to this person',
    toReview: 'Go to the review',
    toToday: 'Go to today',
    another: 'Take in another file',
    plan: { title: 'This file is a plan, not a record.', todo: 'You can look at it, and take it on if it is for you.' },
    openPlan: 'Open the plan',
    faults: {
      'not-a-record': {
        title: 'This is not a record from Evenside.',
        todo: 'Choose the file that was saved under “Send my record”; its name begins with evenside-record.',
      },
      'record-damaged': {
        title: 'This record was damaged on its way: a part is missing or was changed.',
        todo: 'Copy the file once more from where it came, or have it sent again.',
      },
      'record-newer': {
        title: 'This record was made with a newer Evenside.',
        todo: 'Load this page again; if it stays so, update the Evenside that you use.',
      },
      'record-wrong': {
        title: 'Something in this record is not as a record has it.',
        todo: 'Nothing of it was kept. Have it saved and sent again.',
      },
      'record-too-large': {
        title: 'This is far too large for a record.',
        todo: 'Choose the file that was saved under “Send my record”.',
      },
      'record-passphrase': {
        title: 'This passphrase does not open the record.',
        todo: 'Type it again. If it stays so, ask for it once more, or have a new file sent.',
      },
      'file-unreadable': { title: 'The file could not be read.', todo: 'Copy it to this machine, then choose it again.' },
    },
    elsewhere: (name, n) => ({
      title: `${counted(n, 'part', 'parts')} of this record ${n === 1 ? 'stands' : 'stand'} here already with somebody else: ${name}.`,
      todo: 'Nothing was kept. Choose that person, or remove them first if they were a mistake.',
    }),
    elsewhereOwn: 'your own record on this machine',
    where: (place) => `For whoever looks into it: ${place}`,
  },
};
