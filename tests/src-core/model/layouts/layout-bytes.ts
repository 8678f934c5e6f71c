/** Reads "1100 0000 / 0000 0001" into bytes; spaces are free. */
export function bytes(bits: string): readonly number[] {
  return bits.split("/").map((byte) => Number.parseInt(byte.replaceAll(" ", ""), 2));
}
