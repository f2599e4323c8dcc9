/** Bounds that keep a wrong or hostile file from filling the memory. Chosen: ten years of ten sets a day fit into a third of each. */
export const RECORD_LIMITS = {
  /** Of the file as it is. */
  fileBytes: 200_000_000,
  /** Of one part, unpacked: no more than one is in the memory at a time. */
  partBytes: 48_000_000,
  /** Of all parts, unpacked. */
  unpackedBytes: 1_500_000_000,
  parts: 2000,
  sets: 120_000,
  entries: 250_000,
  /** How deep brackets may go; a record's own go 8 deep. */
  levels: 16,
} as const;

export type RecordLimit = keyof typeof RECORD_LIMITS;
