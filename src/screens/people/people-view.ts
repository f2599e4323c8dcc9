import { create } from 'zustand';

export type PeopleOrder = 'attention' | 'name' | 'heard';
export const PEOPLE_ORDERS: readonly PeopleOrder[] = ['attention', 'name', 'heard'];

/** How the list was last looked at, so that it looks the same to whoever comes back from a person. */
export const usePeopleView = create<{ readonly search: string; readonly order: PeopleOrder }>(() => ({
  search: '',
  order: 'attention',
}));
