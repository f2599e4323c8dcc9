import { type PoseClients, poseClients } from './pose-clients.ts';

/** One pose model is kept for the page's life. */
export const clients: PoseClients = poseClients();
