import { expose } from 'comlink';
import { StickerService } from './sticker-service.ts';

expose(new StickerService());
