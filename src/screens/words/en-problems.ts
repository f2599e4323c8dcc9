import type { Words } from './words.ts';

/** What went wrong and what to do, in English. */
export const enProblems = {
  'camera-denied': (by) => ({
    title: by === 'system' ? 'This machine keeps the camera from the browser.' : 'The browser may not use the camera.',
    todo:
      by === 'system'
        ? 'Allow the browser to use the camera in the machine’s privacy settings, then try again.'
        : 'Allow it: press the camera or lock sign beside the address at the top, choose “allow”, then try again.',
  }),
  'camera-none': () => ({
    title: 'No camera was found.',
    todo: 'Plug one in, or switch it on, then try again. A video file works too.',
  }),
  'camera-in-use': () => ({
    title: 'The camera is used by another program.',
    todo: 'Close video calls and other camera programs, then try again.',
  }),
  'camera-other-tab': () => ({
    title: 'A set runs in another tab, in front of this camera.',
    todo: 'End it there or close that tab, then try again.',
  }),
  'camera-gone': () => ({ title: 'This camera is no longer there.', todo: 'Plug it in, or choose another one.' }),
  'camera-unreadable': () => ({
    title: 'The camera gives no picture.',
    todo: 'Unplug it and plug it in again, or restart the machine, then try again.',
  }),
  'camera-constraints': () => ({ title: 'This camera can’t give the picture that is needed.', todo: 'Choose another camera.' }),
  'camera-silent': () => ({
    title: 'The camera is on, but no picture comes.',
    todo: 'Open its cover, check its switch, then try again.',
  }),
  'camera-lost': () => ({
    title: 'The camera’s picture stopped or changed its shape.',
    todo: 'Check its cable and leave the phone as it lies, then try again.',
  }),
  'camera-insecure': () => ({
    title: 'The browser gives no camera to this address.',
    todo: 'Open Evenside at its address on this machine (127.0.0.1), or over https.',
  }),
  'camera-unsupported': () => ({
    title: 'This browser can’t use a camera.',
    todo: 'Open Evenside in a current Chrome, Edge or Chromium.',
  }),
  'file-empty': () => ({ title: 'This file is empty.', todo: 'Choose another, or copy it again from where it came.' }),
  'file-not-video': () => ({ title: 'This file is not a video.', todo: 'Choose an MP4, MOV, WebM or MKV file.' }),
  'file-no-picture': () => ({ title: 'This file has no picture, only sound.', todo: 'Choose a film of the set.' }),
  'file-codec': (codec) => ({
    title: codec ? `This browser can’t show videos of this kind (${codec}).` : 'This browser can’t show videos of this kind.',
    todo: 'Save it as MP4 (H.264), or film again with the phone set to “most compatible”.',
  }),
  'file-damaged': () => ({ title: 'This video is damaged.', todo: 'Copy it again from where it came, or choose another.' }),
  'file-broken': () => ({ title: 'This video breaks off in the middle.', todo: 'Copy it again from where it came.' }),
  'photo-unreadable': () => ({
    title: 'This file is not a photo that the browser can show.',
    todo: 'Choose a JPEG, PNG or WebP file.',
  }),
  'bundle-missing': () => ({
    title: 'The model that sees the leg is not here.',
    todo: 'Start Evenside again on this machine, then load this page again.',
  }),
  'bundle-broken-off': () => ({
    title: 'The model that sees the leg could not be loaded.',
    todo: 'Check that Evenside is still running, then try again.',
  }),
  'bundle-wrong': () => ({
    title: 'The model that sees the leg is not the right one, so it is not used.',
    todo: 'Load this page again. If it stays so, the copy of Evenside on the server is damaged: tell whoever runs it.',
  }),
  'pose-wasm': () => ({
    title: 'The part that sees the leg could not be started.',
    todo: 'Load this page again, or use a current Chrome, Edge or Chromium.',
  }),
  'pose-model': () => ({
    title: 'The model that sees the leg can’t run here.',
    todo: 'Choose “Quick” under “More choices”, or use a current Chrome, Edge or Chromium.',
  }),
  'pose-failed': () => ({
    title: 'The part that sees the leg stopped.',
    todo: 'Try again. If it stops again, choose “Quick” under “More choices”.',
  }),
  'nothing-measured': () => ({
    title: 'No movement was counted.',
    todo: 'Sit or lie so that the camera sees your whole leg from the side, then try again.',
  }),
  'example-missing': () => ({ title: 'The example film is not here.', todo: 'Use the camera or a video file instead.' }),
  'not-stored': () => ({
    title: 'The set was measured, but could not be stored: only this page has it.',
    todo: 'Free some room on this machine, then store it, or save it as a file.',
  }),
  'store-full': () => ({
    title: 'There is no room left to store anything.',
    todo: 'Free some room on this machine, then try again. Until then leave this page open.',
  }),
  'store-blocked': () => ({
    title: 'Another tab keeps the stored sets busy.',
    todo: 'Close Evenside’s other tabs, then try again.',
  }),
  'store-unavailable': () => ({
    title: 'This browser window does not let Evenside store sets.',
    todo: 'Leave private browsing, or allow this page to store data.',
  }),
  'store-newer': () => ({ title: 'A newer Evenside wrote the stored sets.', todo: 'Load this page again.' }),
  'store-locked': () => ({
    title: 'The stored sets are locked.',
    todo: 'Load this page again and unlock them with your passphrase.',
  }),
  'lock-wrong': () => ({ title: 'This is not the passphrase.', todo: 'Type it again; capitals and spaces count.' }),
  'lock-short': () => ({ title: 'This passphrase is too short.', todo: 'Take at least 8 characters, better several words.' }),
  'lock-other-tabs': () => ({
    title: 'Evenside is open in other tabs.',
    todo: 'Close the other Evenside tabs first, then try again.',
  }),
  'lock-set-running': () => ({
    title: 'A set is still running, or one is not stored yet.',
    todo: 'End it first, then try again.',
  }),
  'lock-changed': () => ({ title: 'The lock was changed in another tab.', todo: 'Load this page again.' }),
  'lock-damaged': () => ({
    title: 'What the passphrase opens is damaged, so the records can’t be unlocked.',
    todo: 'Load this page again; if that does not help, all that is left is to erase everything and start again.',
  }),
  'store-stalled': () => ({ title: 'The store does not answer.', todo: 'Load this page again.' }),
  'store-failed': () => ({ title: 'The stored sets could not be reached.', todo: 'Load this page again.' }),
  'store-refused': () => ({ title: 'This could not be stored.', todo: 'Load this page again, then try once more.' }),
  'set-missing': () => ({ title: 'This set is not stored here.', todo: 'Go back and choose one from the list.' }),
  'set-damaged': () => ({
    title: 'This set is stored, but can’t be read.',
    todo: 'The others are not affected. Go back and choose another.',
  }),
  'set-running': () => ({ title: 'This set is still running in another tab.', todo: 'End it there first.' }),
  'rep-missing': () => ({ title: 'This repetition is not in the set.', todo: 'Load this page again.' }),
  'window-unsupported': () => ({
    title: 'This browser can’t share a window with this page.',
    todo: 'Open Evenside in a current Chrome, Edge or Chromium on a computer.',
  }),
  'window-denied': () => ({ title: 'No window was chosen.', todo: 'Press the button again and choose the window of the call.' }),
  'window-unreadable': () => ({ title: 'This window can’t be shared.', todo: 'Choose another window, or the whole screen.' }),
  'changed-elsewhere': () => ({
    title: 'This was changed in another tab meanwhile, so it was not stored.',
    todo: 'Note what you changed, load this page again, and change it there.',
  }),
  'person-missing': () => ({
    title: 'This person is not on this machine.',
    todo: 'Look in the list of people; they may have been removed here or in another tab.',
  }),
  'window-lost': () => ({
    title: 'The window is no longer shared, or it changed its size.',
    todo: 'Choose it again. What was marked until then is kept.',
  }),
  'window-silent': () => ({ title: 'No picture comes from this window.', todo: 'Bring it to the front, then try again.' }),
  unexpected: (detail) => ({
    title: detail ? `Something went wrong: ${detail}` : 'Something went wrong.',
    todo: 'Try again. What was counted is kept.',
  }),
} as const satisfies Words['problems'];
