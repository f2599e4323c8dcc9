// @ts-nocheck -- the package it runs is not installed with the project
// Writes opencv-corners.csv and opencv-lucas-kanade.csv beside this file, from the pictures in tests/flow/pictures.
// OpenCV is not a dependency of the project (13 MB); to run again:
//   npm install --no-save @techstark/opencv-js@4.12.0-release.1 && node tests/vectors/opencv-flow.mjs
import { readFileSync, writeFileSync } from 'node:fs';

const TOOL = '@techstark/opencv-js 4.12.0-release.1 (OpenCV 4.12.0)';
const COMMAND = 'node tests/vectors/opencv-flow.mjs';
const CORNERS = { maxCount: 60, quality: 0.01, minDistancePx: 5, blockPx: 3 };
const FLOW = { windowPx: 15, levels: 3, iterations: 20, epsilonPx: 0.01, minEigenvalue: 1e-4 };
const PICTURES = ['seated-foot-rest', 'lying-leg-first'];
const PAIRS = [
  ['seated-foot-rest', 'seated-foot-up'],
  ['lying-leg-first', 'lying-leg-later'],
  ['lying-leg-later', 'lying-leg-first'],
];

// The module is a thenable that resolves to itself: awaiting it would never end.
const { default: cv } = await import('@techstark/opencv-js');
if (!cv.Mat) {
  await new Promise((resolve) => {
    cv.onRuntimeInitialized = () => resolve(undefined);
  });
}

function matOf(name) {
  const bytes = readFileSync(new URL(`../flow/pictures/${name}.pgm`, import.meta.url));
  const [head, width, height] = /^P5\s(\d+)\s(\d+)\s255\s/.exec(bytes.toString('latin1', 0, 40));
  const mat = new cv.Mat(Number(height), Number(width), cv.CV_8UC1);
  mat.data.set(bytes.subarray(head.length));
  return mat;
}

function cornersOf(name) {
  const corners = new cv.Mat();
  const { maxCount, quality, minDistancePx, blockPx } = CORNERS;
  cv.goodFeaturesToTrack(matOf(name), corners, maxCount, quality, minDistancePx, new cv.Mat(), blockPx, false, 0.04);
  return corners;
}

const rowsOfCorners = PICTURES.flatMap((name) => {
  const { data32F } = cornersOf(name);
  return Array.from({ length: data32F.length / 2 }, (_, i) => `${name},${i + 1},${data32F[2 * i]},${data32F[2 * i + 1]}`);
});
writeFileSync(
  new URL('opencv-corners.csv', import.meta.url),
  [
    `# goodFeaturesToTrack ${JSON.stringify(CORNERS)}, no Harris`,
    `# tool: ${TOOL}; command: ${COMMAND}`,
    '# tolerance: the same corners in the same order, 0 px',
    'picture,rank,x,y',
    ...rowsOfCorners,
    '',
  ].join('\n'),
);

const rowsOfFlow = PAIRS.flatMap(([from, to]) => {
  const points = cornersOf(from);
  const next = new cv.Mat();
  const status = new cv.Mat();
  const error = new cv.Mat();
  const { windowPx, levels, iterations, epsilonPx, minEigenvalue } = FLOW;
  const criteria = new cv.TermCriteria(cv.TermCriteria_COUNT + cv.TermCriteria_EPS, iterations, epsilonPx);
  const window = new cv.Size(windowPx, windowPx);
  cv.calcOpticalFlowPyrLK(matOf(from), matOf(to), points, next, status, error, window, levels - 1, criteria, 0, minEigenvalue);
  return Array.from({ length: status.data.length }, (_, i) =>
    [
      from,
      to,
      points.data32F[2 * i],
      points.data32F[2 * i + 1],
      next.data32F[2 * i].toFixed(4),
      next.data32F[2 * i + 1].toFixed(4),
      status.data[i],
      error.data32F[i].toFixed(3),
    ].join(','),
  );
});
writeFileSync(
  new URL('opencv-lucas-kanade.csv', import.meta.url),
  [
    `# calcOpticalFlowPyrLK ${JSON.stringify(FLOW)} from the corners of the first picture; error is the mean absolute grey difference`,
    `# tool: ${TOOL}; command: ${COMMAND}`,
    '# tolerance: median distance 0.05 px',
    'from,to,x,y,toX,toY,status,error',
    ...rowsOfFlow,
    '',
  ].join('\n'),
);
