/** A page of the reference, or a picture on one. */
export interface ReferenceFile {
  /** From `docs/reference/` on. */
  readonly name: string;
  readonly text: string;
}

/** A page with what the list of pages says of it, and its pictures. */
export interface ReferencePage extends ReferenceFile {
  readonly title: string;
  readonly about: string;
  readonly pictures: readonly ReferenceFile[];
}
