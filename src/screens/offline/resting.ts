/** Screens between two things, where nothing is under way and nothing waits to be kept. Of one person in a list: the part after their id. */
const RESTING = ['/', '/today', '/stored', '/people', '/urgent', '/progress', '/review'];
const OF_PERSON = /^\/person\/[^/]+/;

/** Whether a new version may be offered at an address: the part of the page's after the `#`. */
export const isResting = (address: string): boolean => RESTING.includes(address.replace(OF_PERSON, '') || '/');
