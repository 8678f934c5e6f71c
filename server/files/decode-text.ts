/**
 * Text of a source file: UTF-8, or UTF-16 where a byte order mark says so. Bytes that are no UTF-8, as older
 * sources have in their comments, become U+FFFD. A byte order mark is not part of the text, as in editors.
 */
export function decodeText(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  return new TextDecoder("utf-8").decode(bytes);
}
