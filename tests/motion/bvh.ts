import type { Vector } from './vector.ts';

type Axis = 0 | 1 | 2;
/** A channel moves along or turns about an axis. */
interface Channel {
  readonly kind: 'position' | 'rotation';
  readonly axis: Axis;
}

interface Joint {
  readonly name: string;
  readonly parent: number | null;
  readonly offset: Vector;
  readonly channels: readonly Channel[];
}

/** A recording: places of all joints in each frame. */
export interface Motion {
  readonly frames: readonly ReadonlyMap<string, Vector>[];
  readonly frameMs: number;
}

type Matrix = readonly [Vector, Vector, Vector];
const IDENTITY: Matrix = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/**
 * Reads a BVH file (Biovision hierarchy) and works out where its joints are: place = parent's place + parent's rotation x offset.
 * @param every takes one frame of this many; the first of all is left out, since it holds a made-up resting pose
 */
export function readBvh(text: string, every: number): Motion {
  const [hierarchy = '', motion = ''] = text.split('MOTION');
  const joints = jointsOf(hierarchy.split(/\s+/));
  const values = /Frames:\s*(\d+)\s+Frame Time:\s*([\d.]+)([\s\S]*)/.exec(motion);
  if (!values) throw new Error('readBvh requires a MOTION part with Frames and Frame Time');
  const rows = (values[3] ?? '').trim().split('\n');
  if (rows.length !== Number(values[1])) throw new Error(`readBvh requires ${values[1]} frames, got ${rows.length}`);
  const taken = rows.filter((_, i) => i % every === 1 % every && i > 0);
  return {
    frames: taken.map((row) => placesIn(joints, row.trim().split(/\s+/).map(Number))),
    frameMs: Number(values[2]) * 1000 * every,
  };
}

function jointsOf(words: readonly string[]): readonly Joint[] {
  const joints: { name: string; parent: number | null; offset: Vector; channels: Channel[] }[] = [];
  const open: number[] = [];
  words.forEach((word, i) => {
    if (word === 'ROOT' || word === 'JOINT' || word === 'End') {
      const name = word === 'End' ? `${joints[open.at(-1) ?? 0]?.name}-end` : (words[i + 1] as string);
      joints.push({ name, parent: open.at(-1) ?? null, offset: [0, 0, 0], channels: [] });
    }
    if (word === '{') open.push(joints.length - 1);
    if (word === '}') open.pop();
    const joint = joints.at(-1);
    if (word === 'OFFSET' && joint) joint.offset = [Number(words[i + 1]), Number(words[i + 2]), Number(words[i + 3])];
    if (word === 'CHANNELS' && joint) joint.channels = words.slice(i + 2, i + 2 + Number(words[i + 1])).map(channelOf);
  });
  return joints;
}

function channelOf(name: string): Channel {
  const axis = ['X', 'Y', 'Z'].indexOf(name[0] ?? '');
  if (axis < 0) throw new Error(`channelOf requires a channel along X, Y or Z, got ${name}`);
  return { kind: name.endsWith('position') ? 'position' : 'rotation', axis: axis as Axis };
}

function placesIn(joints: readonly Joint[], values: readonly number[]): ReadonlyMap<string, Vector> {
  const rotations: Matrix[] = [];
  const places: Vector[] = [];
  let next = 0;
  joints.forEach(({ parent, offset, channels }, i) => {
    const moved: [number, number, number] = [...offset];
    let own = IDENTITY;
    for (const { kind, axis } of channels) {
      const value = values[next++];
      if (value === undefined || !Number.isFinite(value))
        throw new Error('readBvh requires a number for each channel of each frame');
      if (kind === 'position') moved[axis] += value;
      else own = product(own, turnAbout(axis, value));
    }
    const above = (parent === null ? undefined : rotations[parent]) ?? IDENTITY;
    const from = (parent === null ? undefined : places[parent]) ?? [0, 0, 0];
    const [x, y, z] = above.map((row) => row[0] * moved[0] + row[1] * moved[1] + row[2] * moved[2]) as [number, number, number];
    places[i] = [from[0] + x, from[1] + y, from[2] + z];
    rotations[i] = product(above, own);
  });
  return new Map(joints.map(({ name }, i) => [name, places[i] as Vector]));
}

function turnAbout(axis: Axis, degrees: number): Matrix {
  const c = Math.cos((degrees * Math.PI) / 180);
  const s = Math.sin((degrees * Math.PI) / 180);
  if (axis === 0)
    return [
      [1, 0, 0],
      [0, c, -s],
      [0, s, c],
    ];
  if (axis === 1)
    return [
      [c, 0, s],
      [0, 1, 0],
      [-s, 0, c],
    ];
  return [
    [c, -s, 0],
    [s, c, 0],
    [0, 0, 1],
  ];
}

function product(a: Matrix, b: Matrix): Matrix {
  const column = (j: Axis): Vector => [b[0][j], b[1][j], b[2][j]];
  const row = (r: Vector): Vector =>
    [0, 1, 2].map((j) => r.reduce((sum, v, k) => sum + v * (column(j as Axis)[k] as number), 0)) as unknown as Vector;
  return [row(a[0]), row(a[1]), row(a[2])];
}
