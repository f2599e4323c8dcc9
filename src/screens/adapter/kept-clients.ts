import { type StickerClient, startStickerClient } from '../../run/sticker-client.ts';
import { type PoseClients, poseClients } from './pose-clients.ts';

/** One pose model is kept for the page's life. */
export const clients: PoseClients = poseClients();

let kept: StickerClient | null = null;

/** One sticker worker is kept for the page's life, so that set-up and set look through the same one. */
export const stickerClient = {
  get(): StickerClient {
    kept ??= startStickerClient();
    return kept;
  },
  /** Lets it go, as after it failed. */
  drop(): void {
    kept?.close();
    kept = null;
  },
};
