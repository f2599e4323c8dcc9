// @vitest-environment jsdom
import { afterEach, expect, test } from 'vitest';
import { noteReturn, QUESTION_KEY, takeReturn } from '../../src/screens/server/sign-in-return.ts';

afterEach(() => {
  sessionStorage.clear();
  takeReturn();
  history.replaceState(null, '', '/');
});
const at = (address: string) => history.replaceState(null, '', address);
const shown = () => `${location.pathname}${location.search}${location.hash}`;

test('an answer is taken out of the address at once, with its question, and the person is where they were', () => {
  sessionStorage.setItem(QUESTION_KEY, JSON.stringify({ back: '#/person/1/server', state: 'a' }));
  at('/evenside/?code=c&state=a');
  expect(noteReturn()).toBe(true);
  expect(shown()).toBe('/evenside/#/person/1/server');
  expect(sessionStorage.length).toBe(0);
  const found = takeReturn();
  expect(found?.answer.get('code')).toBe('c');
  expect(found?.question).toContain('"state":"a"');
  expect(takeReturn()).toBeNull();
});

test.each([
  ['?error=access_denied&state=a', null],
  ['?code=c&state=a', 'not JSON'],
  ['?code=c&state=a', JSON.stringify({ back: 'https://elsewhere.example/' })],
])('%s with the question %s leads to the server’s screen', (search, kept) => {
  if (kept !== null) sessionStorage.setItem(QUESTION_KEY, kept);
  at(`/${search}`);
  expect(noteReturn()).toBe(true);
  expect(shown()).toBe('/#/server');
  expect(takeReturn()?.question).toBe(kept);
});

test('any other address stays as it is', () => {
  at('/?utm=1#/today');
  expect(noteReturn()).toBe(false);
  expect(shown()).toBe('/?utm=1#/today');
  expect(takeReturn()).toBeNull();
});
