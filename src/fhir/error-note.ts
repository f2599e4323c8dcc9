import type { Annotation } from '@medplum/fhirtypes';
import { quantity } from './quantity.ts';

/** Of an angle that is there and whose error nobody knows. */
export const UNKNOWN_ERROR: Annotation = {
  text: 'Error of the angle: not known. It is the angle when the person said that symptoms began, some time after they were felt.',
};

/**
 * The error in a sentence, for who reads no components.
 * @param of whose error it is
 * @param errorDeg half the width of the 95 % interval, degrees
 */
export const errorNote = (of: string, errorDeg: number): Annotation => ({
  text: `Error of ${of}: ± ${quantity(errorDeg, 'deg').value} degrees (95 % interval). One camera, angle in the plane of the picture.`,
});
