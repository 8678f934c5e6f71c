/** That sources are not any more what was run; nothing where they are. */
export function editedInWords(files: readonly string[]): string {
  const [first, second] = files;
  if (first === undefined) return "";
  if (second === undefined) return `${first} was edited since.`;
  const others = files.length === 2 ? second : `${files.length - 1} other files`;
  return `${first} and ${others} were edited since.`;
}
