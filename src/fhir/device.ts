import type { Device, Reference } from '@medplum/fhirtypes';
import { identifier } from './naming.ts';
import { type Context, type Prepared, refTo } from './prepared.ts';

const deviceId = ({ naming, version }: Context) => identifier(naming, 'device', `evenside-${version}`);

export const deviceRef = (context: Context): Reference<Device> => refTo<Device>('Device', deviceId(context));

/** The program, in the version that wrote the resources: with which one a set was measured is not stored. */
export function deviceOf(context: Context): Prepared {
  const resource: Device = {
    resourceType: 'Device',
    identifier: [deviceId(context)],
    status: 'active',
    deviceName: [{ name: 'Evenside', type: 'user-friendly-name' }],
    type: { text: 'Program that counts and measures leg movements with a camera' },
    version: [{ value: context.version }],
  };
  return { resource, identifier: deviceId(context), changed: false };
}
