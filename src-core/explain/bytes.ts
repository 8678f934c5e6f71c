/** `0xF4`, `0x0C`. */
export function hexByte(byte: number): string {
  return `0x${byte.toString(16).toUpperCase().padStart(2, "0")}`;
}
