import type { ServerWords } from './server-words.ts';

const records = (n: number): string => (n === 1 ? 'one record' : `${n} records`);

/** The clinic's server, in English. */
export const enServer: ServerWords = {
  title: 'The clinic’s server',
  open: { name: 'The clinic’s server', about: 'Send records to it, and take in what is new there' },
  none: 'This page knows no server. Whoever serves the page can name one.',
  leaves: {
    title: 'What leaves this machine',
    self: 'Only when you press “Send now”: your plan, your sets with their angles, changes by hand, and what you told about symptoms, with your notes. Whoever may read it on the server can see it.',
    person:
      'Only when you press “Send now”: this person’s plan, sets with their angles, changes by hand, and what was told about symptoms. Your own notes about the person stay here.',
    stays: 'Videos and pictures are never sent, and neither is what was invented to try the program.',
  },
  address: 'Server',
  openServer:
    'This is for an open server on which the program is tried: it asks for no sign-in, and anybody who can reach it can read what is sent. Use invented people there.',
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
