import { SEGMENTS } from '../flow/leg-motion.ts';
import type { Observation } from '../measure/observation.ts';
import { LANDMARK_COUNT } from '../pose/landmarks.ts';
import { type Column, csvOf, roundedTo } from './csv.ts';

/** Decimal places: as many as a recording keeps. */
const PLACES = { px: 1, visibility: 2, deg: 2, ms: 3, level: 1 } as const;

/** The 33 points by the model's own index, then how the leg's parts have turned. */
const COLUMNS: readonly Column<Observation>[] = [
  { name: 't_ms', cell: ({ tMs }) => roundedTo(tMs, PLACES.ms) },
  ...Array.from({ length: LANDMARK_COUNT }, (_, i) => i).flatMap((i): readonly Column<Observation>[] => [
    ...(['x', 'y', 'z'] as const).map((axis) => ({
      name: `p${i}_${axis}_px`,
      cell: ({ landmarks }: Observation) => roundedTo(landmarks?.[i]?.[axis], PLACES.px),
    })),
    { name: `p${i}_visibility`, cell: ({ landmarks }) => roundedTo(landmarks?.[i]?.visibility, PLACES.visibility) },
  ]),
  ...SEGMENTS.flatMap((segment): readonly Column<Observation>[] => [
    { name: `${segment}_turn_deg`, cell: ({ motion }) => roundedTo(motion?.[segment]?.turnDeg, PLACES.deg) },
    { name: `${segment}_turn_se_deg`, cell: ({ motion }) => roundedTo(motion?.[segment]?.seDeg, PLACES.deg) },
    { name: `${segment}_anchor`, cell: ({ motion }) => motion?.[segment]?.anchor ?? null },
  ]),
  { name: 'camera_turn_deg', cell: ({ camera }) => roundedTo(camera?.rotationDeg, PLACES.deg) },
  { name: 'brightness', cell: ({ brightness }) => roundedTo(brightness, PLACES.level) },
];

/**
 * What the measurement heard of a set as CSV, one row a frame: for other programs to read. The whole of it, to be measured again, is the landmark
 * recording (docs/recording-format.md).
 */
export const landmarkTable = (observations: readonly Observation[]): string => csvOf(COLUMNS, observations);
