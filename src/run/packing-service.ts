import { type PackedPart, packedBy } from '../record/file/packed-part.ts';

/** Packs the parts of a record, in a worker where there is one. */
export class PackingService {
  here(): true {
    return true;
  }
  pack(json: string): Promise<PackedPart> {
    return packedBy(crypto)(json);
  }
}
