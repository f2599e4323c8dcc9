import { ByteBuffer } from 'flatbuffers';

/** A table of a flatbuffer, read with the flatbuffers library: independent of the code under test, which reads by itself. */
export class TableView {
  readonly bb: ByteBuffer;
  readonly at: number;
  constructor(bb: ByteBuffer, at: number) {
    this.bb = bb;
    this.at = at;
  }
  private field(n: number): number {
    const distance = this.bb.__offset(this.at, 4 + 2 * n);
    return distance === 0 ? 0 : this.at + distance;
  }
  has(n: number): boolean {
    return this.field(n) !== 0;
  }
  u8(n: number): number {
    return this.has(n) ? this.bb.readUint8(this.field(n)) : 0;
  }
  u32(n: number): number {
    return this.has(n) ? this.bb.readUint32(this.field(n)) : 0;
  }
  string(n: number): string {
    return String(this.bb.__string(this.field(n)));
  }
  table(n: number): TableView {
    return new TableView(this.bb, this.bb.__indirect(this.field(n)));
  }
  tables(n: number): readonly TableView[] {
    if (!this.has(n)) return [];
    const start = this.bb.__vector(this.field(n));
    return Array.from({ length: this.bb.__vector_len(this.field(n)) }, (_, i) => {
      return new TableView(this.bb, this.bb.__indirect(start + 4 * i));
    });
  }
  floats(n: number): readonly number[] {
    const start = this.bb.__vector(this.field(n));
    return Array.from({ length: this.bb.__vector_len(this.field(n)) }, (_, i) => this.bb.readFloat32(start + 4 * i));
  }
  /** Position in the file and contents of a vector of bytes, nothing when the table lacks it. */
  bytes(n: number): { readonly at: number; readonly data: Uint8Array } | undefined {
    if (!this.has(n)) return undefined;
    const at = this.bb.__vector(this.field(n));
    return { at, data: this.bb.bytes().subarray(at, at + this.bb.__vector_len(this.field(n))) };
  }
}

export const rootOf = (bytes: Uint8Array): TableView => {
  const bb = new ByteBuffer(bytes);
  return new TableView(bb, bb.readUint32(0));
};

export const identifierOf = (bytes: Uint8Array): string => new TextDecoder().decode(bytes.subarray(4, 8));

/** Field numbers of TensorFlow Lite's schema.fbs. */
export const MODEL = { version: 0, operatorCodes: 1, subgraphs: 2, description: 3, buffers: 4, metadata: 6 } as const;
export const BUFFER = { data: 0 } as const;
export const ENTRY = { name: 0, buffer: 1 } as const;
/** Field numbers of metadata_schema.fbs. */
export const META = { subgraphs: 3 } as const;
export const SUBGRAPH = { inputs: 2 } as const;
export const TENSOR = { content: 3, processUnits: 4 } as const;
export const UNION = { type: 0, value: 1 } as const;

/** The bytes which a model's entry TFLITE_METADATA leads to; throws when there is not exactly one such entry. */
export const metadataIn = (model: Uint8Array): { readonly at: number; readonly data: Uint8Array } => {
  const root = rootOf(model);
  const entries = root.tables(MODEL.metadata).filter((entry) => entry.string(ENTRY.name) === 'TFLITE_METADATA');
  const [entry] = entries;
  if (entry === undefined || entries.length !== 1) throw new Error(`metadataIn needs one metadata entry, got ${entries.length}`);
  const found = root.tables(MODEL.buffers)[entry.u32(ENTRY.buffer)]?.bytes(BUFFER.data);
  if (found === undefined) throw new Error('metadataIn needs a metadata entry that leads to a filled buffer');
  return found;
};

/** How a metadata flatbuffer says the first input is to be normalised. */
export const normalisationIn = (metadata: Uint8Array): { readonly mean: readonly number[]; readonly std: readonly number[] } => {
  const input = rootOf(metadata).tables(META.subgraphs)[0]?.tables(SUBGRAPH.inputs)[0];
  const unit = input?.tables(TENSOR.processUnits)[0];
  if (unit === undefined || unit.u8(UNION.type) !== 1) throw new Error('normalisationIn needs a first process unit of type 1');
  const options = unit.table(UNION.value);
  return { mean: options.floats(0), std: options.floats(1) };
};
