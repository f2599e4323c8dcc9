/** Up to this much memory, GB as browsers tell it (never more than 8), machines are of an age at which the quick model serves better. Chosen. */
const LITTLE_GB = 4;

/** Whether this machine has little memory; false where the browser does not tell. */
export const littleMemory = (machine: object = globalThis.navigator ?? {}): boolean => {
  const deviceMemory = 'deviceMemory' in machine ? Number(machine.deviceMemory) : Number.POSITIVE_INFINITY;
  return deviceMemory <= LITTLE_GB;
};
