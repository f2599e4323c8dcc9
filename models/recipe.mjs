/**
 * What a pose bundle is made of: one detector, which finds the person, and one landmark model, which finds the 33 points.
 *
 * @typedef {'lite' | 'full' | 'heavy'} BundleName
 * @typedef {{ readonly mean: number, readonly std: number }} Normalisation input = (pixel - mean) / std, pixel in 0..255
 * @typedef {{ readonly file: string, readonly entry: string, readonly normalisation: Normalisation }} Part
 *   `file` is the name inside the source package, `entry` the name PoseLandmarker looks up in the bundle.
 * @typedef {{ readonly name: BundleName, readonly file: string, readonly parts: readonly Part[] }} Recipe
 */

/** The npm package that ships the parts. */
export const SOURCE_PACKAGE = '@mediapipe/pose';

/** @type {readonly BundleName[]} */
export const BUNDLE_NAMES = ['lite', 'full', 'heavy'];

/**
 * The detector's input runs from -1 to 1. Despite its name the packed assets file is the detector's .tflite, nothing else.
 * @type {Part}
 */
const DETECTOR = {
  file: 'pose_solution_packed_assets.data',
  entry: 'pose_detector.tflite',
  normalisation: { mean: 127.5, std: 127.5 },
};

/** The input of the landmark models runs from 0 to 1. */
const LANDMARK_NORMALISATION = { mean: 0, std: 255 };

/**
 * @param {BundleName} name
 * @returns {Recipe} parts in the order in which the bundle holds them
 */
export const recipeOf = (name) => ({
  name,
  file: `pose_${name}.task`,
  parts: [
    DETECTOR,
    {
      file: `pose_landmark_${name}.tflite`,
      entry: 'pose_landmarks_detector.tflite',
      normalisation: LANDMARK_NORMALISATION,
    },
  ],
});
