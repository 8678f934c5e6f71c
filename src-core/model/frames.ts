/** A bit of a PS/2 frame, in the order on the wire. */
export interface FrameBit {
  readonly role: "start" | "data" | "parity" | "stop" | "acknowledge";
  /** Number of the data bit, 0 the lowest; undefined for the other roles. */
  readonly dataBit: number | undefined;
  readonly level: 0 | 1;
  /** Who drives it. */
  readonly driver: "device" | "host";
}

/** The bit that makes the ones of data and parity an odd number. The PS/2 Mouse/Keyboard Protocol, frame. */
export function oddParity(byte: number): 0 | 1 {
  let ones = 0;
  for (let bit = 0; bit < 8; bit++) ones += (byte >> bit) & 1;
  return ones % 2 === 0 ? 1 : 0;
}

/**
 * Eleven bits: start 0, eight data bits from the lowest, odd parity, stop 1. The device changes data while the
 * clock is high; the host reads while it is low. Auxiliary Device and System Timings, bit table.
 */
export function deviceToHostFrame(byte: number): readonly FrameBit[] {
  return elevenBits(byte, "device");
}

/**
 * The same eleven bits from the host, and a twelfth in which the device pulls data low to acknowledge. The host
 * changes data while the clock is low; the device reads while it is high.
 */
export function hostToDeviceFrame(byte: number): readonly FrameBit[] {
  return [
    ...elevenBits(byte, "host"),
    { role: "acknowledge", dataBit: undefined, level: 0, driver: "device" },
  ];
}

function elevenBits(byte: number, driver: "device" | "host"): readonly FrameBit[] {
  const data = Array.from({ length: 8 }, (_, dataBit): FrameBit => {
    return { role: "data", dataBit, level: ((byte >> dataBit) & 1) === 1 ? 1 : 0, driver };
  });
  return [
    { role: "start", dataBit: undefined, level: 0, driver },
    ...data,
    { role: "parity", dataBit: undefined, level: oddParity(byte), driver },
    { role: "stop", dataBit: undefined, level: 1, driver },
  ];
}

/** What is wrong with eleven received levels, or the byte. */
export type ReceivedFrame =
  | { readonly kind: "byte"; readonly value: number }
  | { readonly kind: "fault"; readonly fault: "length" | "start" | "parity" | "stop" };

/** Takes eleven levels, in the order on the wire, apart. */
export function readFrame(levels: readonly number[]): ReceivedFrame {
  if (levels.length !== 11) return { kind: "fault", fault: "length" };
  if (levels[0] !== 0) return { kind: "fault", fault: "start" };
  const value = levels.slice(1, 9).reduce((byte, level, bit) => byte | (level << bit), 0);
  if (levels[9] !== oddParity(value)) return { kind: "fault", fault: "parity" };
  if (levels[10] !== 1) return { kind: "fault", fault: "stop" };
  return { kind: "byte", value };
}
