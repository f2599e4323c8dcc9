import type { Meta } from '@medplum/fhirtypes';
import type { Entry } from '../symptoms/entry.ts';
import { coding } from './concept.ts';
import type { Naming } from './naming.ts';

/** Says of what is invented that it is. */
export const originTag = (naming: Naming, origin: Entry['origin']): { meta?: Meta } =>
  origin === 'example' ? { meta: { tag: [coding(naming, 'origin', 'example')] } } : {};
