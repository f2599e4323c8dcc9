/** Whether a stored value has fields to ask for. An array has, too. */
export const isObject = (value: unknown): value is object => typeof value === 'object' && value !== null;
