/** What is said of where sets are: in this page alone, or on the disk. */
export interface KeptWords {
  /** On every screen while the browser keeps nothing. */
  readonly visitOnly: string;
  readonly visitSave: string;
  /** A set that the page alone holds. */
  readonly storeNow: string;
  readonly saveFile: string;
  /** The name of that file, without its ending. */
  readonly fileName: string;
}
