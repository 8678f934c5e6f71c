/** Texts of a project's files, settings and unsaved buffers included, by path. */
export type Texts = ReadonlyMap<string, string>;

export function sameTexts(one: Texts, other: Texts): boolean {
  if (one.size !== other.size) return false;
  for (const [file, text] of one) if (other.get(file) !== text) return false;
  return true;
}
