import { type CameraError, openCamera } from '../../capture/camera.ts';
import type { Crop } from '../../capture/crop.ts';
import type { SharedWindow } from '../../capture/shared-window.ts';
import { openVideoFile } from '../../capture/video-file.ts';
import { fail, ok, type Result } from '../../result.ts';
import { cameraSource, type FrameSource, sharedWindowSource, videoFileSource } from '../../run/frame-source.ts';
import type { Ms } from '../../units.ts';
import type { OpenedPictures, Pictures, Problem } from '../services.ts';
import { problemOf } from './problem-of.ts';

/** The film of the first screen's example, an address of our own site. */
const EXAMPLE = 'recordings/example-foot-taps.mp4';

export interface Opened {
  readonly source: FrameSource;
  readonly opened: OpenedPictures;
  /** Opens the very same camera again; null: it is none. */
  readonly reopen: (() => Promise<Result<FrameSource, CameraError>>) | null;
}

async function fromFile(file: Blob, fromMs?: Ms): Promise<Result<Opened, Problem>> {
  const video = await openVideoFile(file);
  if (!video.ok) return fail(problemOf(video.error));
  const { size, durationMs } = video.value;
  return ok({ source: videoFileSource(video.value, fromMs), opened: { size, durationMs, preview: null }, reopen: null });
}

async function fromExample(): Promise<Result<Opened, Problem>> {
  const answer = await fetch(new URL(EXAMPLE, document.baseURI)).catch(() => null);
  return answer?.ok ? fromFile(await answer.blob()) : fail({ kind: 'example-missing' });
}

async function fromCamera(deviceId: string | null): Promise<Result<Opened, Problem>> {
  const camera = await (deviceId === null ? openCamera() : openCamera(deviceId));
  if (!camera.ok) return fail(problemOf(camera.error));
  const { size, stream, device } = camera.value;
  const sameId = device.id || deviceId;
  const reopen = async () => {
    const again = await (sameId ? openCamera(sameId) : openCamera());
    return again.ok ? ok(cameraSource(again.value)) : again;
  };
  return ok({ source: cameraSource(camera.value), opened: { size, durationMs: null, preview: stream }, reopen });
}

function fromWindow({ stream, size }: SharedWindow, crop: Crop | null): Opened {
  const source = sharedWindowSource(stream, size, crop);
  return { source, opened: { size: source.size, durationMs: null, preview: null }, reopen: null };
}

/** Opens a set's pictures. The receiver stops the source. */
export function openPictures(pictures: Pictures): Promise<Result<Opened, Problem>> {
  switch (pictures.kind) {
    case 'camera':
      return fromCamera(pictures.deviceId);
    case 'file':
      return fromFile(pictures.file, pictures.fromMs);
    case 'example':
      return fromExample();
    case 'window':
      return Promise.resolve(ok(fromWindow(pictures.shared, pictures.crop)));
    default:
      return pictures satisfies never;
  }
}
