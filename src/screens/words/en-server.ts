import type { ServerWords } from './server-words.ts';

const records = (n: number): string => (n === 1 ? 'one record' : `${n} records`);

/** The clinic's server, in English. */
export const enServer: ServerWords = {
  title: 'The clinic’s server',
  open: { name: 'The clinic’s server', about: 'Send records to it, and take in what is new there' },
  none: 'This page knows no server. Whoever serves the page can name one.',
  leaves: {
    title: 'What leaves this machine',
    self: 'Only when you press “Send now”, or by itself if you choose that here: your plan, your sets with their angles, changes by hand, and what you told about symptoms, with your notes. Whoever may read it on the server can see it.',
    person:
      'Only when you press “Send now”: this person’s plan, sets with their angles, changes by hand, and what was told about symptoms. Your own notes about the person stay here.',
    stays: 'Videos and pictures are never sent, and neither is what was invented to try the program.',
  },
  address: 'Server',
  openServer:
    'This is for an open server on which the program is tried: it asks for no sign-in, and anybody who can reach it can read what is sent. Use invented people there.',
  signIn: {
    about:
      'You sign in on the clinic’s own page and come back here. Evenside never sees your password; what it may do with the records is written on that page.',
    keep: 'Stay signed in on this machine',
    keepAbout:
      'Only on a machine of your own: whoever can use this browser can then reach your records at the clinic, unless the passphrase lock is on. Without it you sign in again each time this page is opened.',
    go: 'Sign in',
    state: 'Sign-in',
    in: 'Signed in',
    out: 'Not signed in',
    end: 'Sign out',
    ended: 'You are signed out, here and at the clinic.',
    endedHere: 'You are signed out here. The clinic could not be told; what it gave ends by itself.',
    faults: {
      unreachable: 'The sign-in can’t be reached: check the connection and try again.',
      'not-offered':
        'This server does not offer the sign-in that Evenside knows (SMART App Launch 2): tell whoever serves this page.',
      'other-origin': 'The clinic’s sign-in is at an address that this page may not ask: tell whoever serves this page.',
      denied: 'You were not let in, or you said no there: sign in again if you want to go on.',
      'not-asked': 'That sign-in did not begin here, or too long ago: sign in again.',
      'too-late': 'That sign-in is used up or too old: sign in again.',
      'no-patient': 'The clinic did not say whose records these are: sign in again, and choose a person there if you are asked.',
      'somebody-else':
        'You signed in as somebody else than these records are connected to, so you are signed out again: disconnect first if that is right.',
      refused: 'The clinic’s sign-in refuses this page: tell whoever serves it.',
    },
  },
  automatic: {
    send: 'Send by itself when there is something new and a network',
    sendAbout: 'After a set, after what you tell, and when this page is opened; never while a set runs.',
    takeIn: 'Take in by itself when the list of people opens',
    takeInAbout: 'Nothing is sent by that. What you write yourself goes only with “Send now”.',
    working: 'Sending by itself…',
    trouble: 'Sending by itself did not work',
    troubleForNow: 'Sending by itself did not work; it is tried again later',
    signedOut: (waiting) =>
      `${waiting === 1 ? 'One record waits' : `${waiting} records wait`} for the clinic: you are not signed in there.`,
    look: 'To the clinic’s server',
  },
  intake: {
    lead: 'Whoever needs you stands first. It is kept on this machine; who is connected with the clinic’s server has records there, too.',
    working: 'Asking the clinic’s server what is new…',
    new: (fresh, grown) => `From the clinic’s server: ${records(fresh)} new, ${grown} changed by hand.`,
    failed: 'Not everything could be taken in from the clinic’s server.',
    look: 'See why',
  },
  id: 'Patient id on the server',
  idHint: 'As the clinic gave it: letters, digits, hyphens and dots.',
  idWrong: 'An id has 1 to 64 letters, digits, hyphens or dots: copy it as the clinic gave it.',
  connect: 'Connect',
  working: 'One moment…',
  patient: 'Connected as',
  waiting: 'Waiting to be sent',
  records,
  lastSent: 'Last sent',
  lastTaken: 'Last taken in',
  never: 'Never',
  send: 'Send now',
  takeIn: 'Take in now',
  sent: (n) => (n === 0 ? 'Nothing was waiting: the server has everything.' : `Sent: ${records(n)}.`),
  unwanted: (n, detail) =>
    `The server does not accept ${records(n)}; they stay here and are tried again the next time.${detail ? ` It says: ${detail}` : ''}`,
  taken: (fresh, grown) =>
    fresh + grown === 0 ? 'There is nothing new on the server.' : `New here: ${records(fresh)}. Changed by hand: ${grown}.`,
  conflicts: (n) => `${n === 1 ? 'One record differs' : `${n} records differ`} from what is here; what is here was kept.`,
  unread: (n) => `${n === 1 ? 'One document' : `${n} documents`} on the server can’t be read and were left out.`,
  disconnect: 'Disconnect',
  disconnectAbout: 'No record is removed, here or there.',
  fault: 'It did not work',
  elsewhere: 'Some of these records are here already with somebody else, so nothing of them was taken in: check the patient id.',
  faults: {
    unreachable: 'The server can’t be reached: check the connection and try again; nothing is lost.',
    'not-allowed': 'The server does not let this page in: ask the clinic for access.',
    'signed-out': 'You are not signed in at the clinic, or no longer: sign in again; nothing is lost.',
    busy: 'The server has too much to do: try again in some minutes; nothing is lost.',
    'at-once': 'Somebody else was writing at the same moment: try again.',
    condition: 'The server refuses it because something is there twice: tell the clinic.',
    failed: 'The server has a fault of its own: try again later; nothing is lost.',
    'too-large': 'A record is larger than the server takes: tell the clinic.',
    'not-there': 'The server knows nobody with this id: check it with the clinic.',
    refused: 'The server refuses what it was asked: tell the clinic.',
    'not-fhir': 'What answers at this address does not speak FHIR R4: tell whoever serves this page.',
  },
};
