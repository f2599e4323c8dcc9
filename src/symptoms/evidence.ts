/** How a source was read. `second-hand`: in a text that attributes it; `from-memory`: not seen; `advice`: no published figure. */
export type ReadAs = 'read' | 'abstract' | 'second-hand' | 'from-memory' | 'advice';

export interface Source {
  readonly cite: string;
  readonly readAs: ReadAs;
}
