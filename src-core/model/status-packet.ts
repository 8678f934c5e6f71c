/** Reply to "status request". */
export interface MouseStatus {
  readonly remote: boolean;
  readonly reporting: boolean;
  readonly scaling: "1:1" | "2:1";
  readonly left: boolean;
  readonly middle: boolean;
  readonly right: boolean;
  /** Resolution code, 0 to 3. */
  readonly resolution: number;
  /** Reports per second. */
  readonly sampleRate: number;
}

/**
 * Bits of the first byte. Buttons stand in another order than in movement reports; bit 3 is not relied on.
 * HT82M35X PS/2 mouse controller data sheet rev 1.00, p. 3.
 */
const statusBits = { remote: 6, reporting: 5, scaling: 4, left: 2, middle: 1, right: 0 } as const;

export const statusPacketBytes = 3;

/** The three bytes of a status packet. */
export function encodeStatus(status: MouseStatus): readonly [number, number, number] {
  const set = (on: boolean, bit: number): number => (on ? 1 << bit : 0);
  const first =
    set(status.remote, statusBits.remote) |
    set(status.reporting, statusBits.reporting) |
    set(status.scaling === "2:1", statusBits.scaling) |
    set(status.left, statusBits.left) |
    set(status.middle, statusBits.middle) |
    set(status.right, statusBits.right);
  return [first, status.resolution & 0x03, status.sampleRate & 0xff];
}

/** Undefined for fewer than three bytes. */
export function decodeStatus(bytes: readonly number[]): MouseStatus | undefined {
  const [first, resolution, sampleRate] = bytes;
  if (first === undefined || resolution === undefined || sampleRate === undefined) return undefined;
  const has = (bit: number): boolean => ((first >> bit) & 1) === 1;
  return {
    remote: has(statusBits.remote),
    reporting: has(statusBits.reporting),
    scaling: has(statusBits.scaling) ? "2:1" : "1:1",
    left: has(statusBits.left),
    middle: has(statusBits.middle),
    right: has(statusBits.right),
    resolution: resolution & 0x03,
    sampleRate,
  };
}
