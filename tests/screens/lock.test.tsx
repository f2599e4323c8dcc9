// @vitest-environment jsdom
import { cleanup, fireEvent, screen } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { fakeLock, fakeServices } from './fake-services.ts';
import { press, shownAt } from './shown.tsx';

beforeEach(() => {
  window.location.hash = '';
});
afterEach(cleanup);

const type = (label: string | RegExp, value: string) => fireEvent.change(screen.getByLabelText(label), { target: { value } });
const heading = (name: string | RegExp) => screen.findByRole('heading', { level: 1, name });
const at = (path: string, lock: ReturnType<typeof fakeLock>) => shownAt(path, fakeServices([], { lock }).services);

describe('while the records are locked', () => {
  test('no screen is there but the way in', async () => {
    const lock = fakeLock('locked');
    at('#/report', lock);
    await heading('Evenside is locked');
    expect(screen.queryByText(/report/i)).toBeNull();
    type('Passphrase', 'wrong');
    await press('Unlock');
    await screen.findByText('This is not the passphrase.');
    type('Passphrase', 'ten grey herons');
    await press('Unlock');
    await heading('Report for the therapist');
    expect(lock.asked).toEqual(['unlock wrong', 'unlock ten grey herons']);
  });

  test('nothing at all is there until it is known whether they are', async () => {
    const lock = fakeLock('opening');
    at('', lock);
    expect(screen.queryByRole('heading')).toBeNull();
    lock.state.setState('off', true);
    await heading(/^Your leg exercises/);
  });

  test('what is typed is hidden until its button is pressed', async () => {
    at('', fakeLock('locked'));
    await heading('Evenside is locked');
    const field = screen.getByLabelText<HTMLInputElement>('Passphrase');
    expect(field.type).toBe('password');
    await press('Show');
    expect(field.type).toBe('text');
    await press('Hide');
    expect(field.type).toBe('password');
  });

  test('everything is erased only after the word is typed', async () => {
    const lock = fakeLock('locked');
    at('', lock);
    await press('I forgot it');
    screen.getByText(/^Nobody can open these records without the passphrase, not even we/);
    const erase = screen.getByRole<HTMLButtonElement>('button', { name: 'Erase everything' });
    expect(erase.disabled).toBe(true);
    type(/type ERASE/, 'no');
    expect(erase.disabled).toBe(true);
    type(/type ERASE/, ' erase ');
    await press('Erase everything');
    await screen.findByRole('button', { name: 'Erase everything' });
    expect(lock.asked).toEqual(['erase']);
  });
});

describe('the settings', () => {
  test('turn it on with a passphrase that is typed twice, after saying what a forgotten one means', async () => {
    const lock = fakeLock('off');
    at('#/lock', lock);
    await heading('Passphrase lock');
    screen.getByText(/^Nobody can open these records/);
    type('Passphrase', 'ten grey herons');
    type('The same once more', 'ten gray herons');
    await press('Turn the lock on');
    await screen.findByText('The two are not the same. Type both again.');
    expect(lock.asked).toEqual([]);
    type('The same once more', 'ten grey herons');
    await press('Turn the lock on');
    await screen.findByText('The lock is on.');
    expect(lock.asked).toEqual(['turnOn ten grey herons']);
  });

  test('change it, turn it off and lock at once', async () => {
    const lock = fakeLock('open');
    at('#/lock', lock);
    await screen.findByText('The lock is on.');
    type('Passphrase until now', 'wrong');
    type('New passphrase', 'nine green frogs');
    type('The same once more', 'nine green frogs');
    await press('Change the passphrase');
    await screen.findByText('This is not the passphrase.');
    type('Passphrase until now', 'ten grey herons');
    await press('Change the passphrase');
    await screen.findByText('The new passphrase holds from now on.');
    type('Passphrase', 'nine green frogs');
    await press('Turn the lock off');
    await screen.findByRole('button', { name: 'Turn the lock on' });
    expect(lock.asked.slice(1)).toEqual(['change ten grey herons to nine green frogs', 'turnOff nine green frogs']);
  });

  test('lock at once, and offer to go on with what broke off', async () => {
    const lock = fakeLock('part');
    at('#/lock', lock);
    await screen.findByText('Not every record was done. Nothing is lost.');
    await press('Go on with it');
    await screen.findByText('The lock is on.');
    await press('Lock now');
    await heading('Evenside is locked');
  });

  test('are reached from the first screen', async () => {
    at('', fakeLock('off'));
    fireEvent.click(await screen.findByRole('link', { name: /^Passphrase lock/ }));
    await heading('Passphrase lock');
  });
});
