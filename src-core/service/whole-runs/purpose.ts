import type { Facts } from "../../facts/facts.ts";

/**
 * Whether the code means to be a whole adapter: it starts, speaks to a mouse and speaks to a PC. Parts of one, and trials of one
 * side alone, would fail on the bench for what they are not.
 */
export function isWholeFirmware({ program, ps2, serial, wires }: Facts): boolean {
  const starts = program.functions.some(
    ({ name, memberOf, definition }) =>
      (name === "main" || name === "setup") && memberOf === undefined && definition !== undefined,
  );
  const speaksToMouse = ps2.holds.length > 0 || ps2.senders.length > 0;
  const { uart, tx } = wires.serial;
  const speaksToPc =
    serial.setUps.length > 0 || serial.bitBanged.length > 0 || uart !== undefined || tx !== undefined;
  return starts && speaksToMouse && speaksToPc;
}
