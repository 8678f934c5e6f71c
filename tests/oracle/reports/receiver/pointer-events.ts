/*
 * What gpm tells its clients, as gpm.h of libgpm 1.20.7 declares it: `struct Gpm_Connect` is sent to the socket, and
 * a `struct Gpm_Event` comes back for each change.
 */

/** The socket of a running gpm (gpm(8), "FILES"). */
export const gpmSocket = "/dev/gpmctl";

/** One event: movement in the screen's sense, x to the right and y downwards. */
export interface PointerEvent {
  /** Sum of `gpmButtons`. A press or a release of buttons tells those that changed. */
  readonly buttons: number;
  readonly dx: number;
  readonly dy: number;
  /** The vertical wheel, away from the user. */
  readonly wheel: number;
}

/** GPM_B_LEFT and its kin. */
export const gpmButtons = { left: 4, middle: 2, right: 1, button4: 8, button5: 16 } as const;

/** What a serial wheel is told as: GPM_B_UP, away from the user, and GPM_B_DOWN. */
export const gpmWheelButtons = { away: 16, towards: 32 } as const;

const eventBytes = 28;
const everything = 0xffff;

/** `struct Gpm_Connect`: all events of a virtual console. */
export function connectionTo(console: number): Buffer {
  const request = Buffer.alloc(16);
  request.writeUInt16LE(everything, 0);
  request.writeUInt16LE(everything, 6);
  request.writeInt32LE(process.pid, 8);
  request.writeInt32LE(console, 12);
  return request;
}

/** The events that have come wholly, and what is left of the bytes. */
export function takeEvents(bytes: Buffer): {
  readonly events: readonly PointerEvent[];
  readonly rest: Buffer;
} {
  const events: PointerEvent[] = [];
  let at = 0;
  for (; at + eventBytes <= bytes.length; at += eventBytes) {
    events.push({
      buttons: bytes.readUInt8(at),
      dx: bytes.readInt16LE(at + 4),
      dy: bytes.readInt16LE(at + 6),
      wheel: bytes.readInt16LE(at + 26),
    });
  }
  return { events, rest: bytes.subarray(at) };
}
