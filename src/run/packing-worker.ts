import { expose, transfer } from 'comlink';
import { PackingService } from './packing-service.ts';

const service = new PackingService();
expose({
  here: () => service.here(),
  async pack(json: string) {
    const part = await service.pack(json);
    return transfer(part, [part.packed.buffer]);
  },
});
