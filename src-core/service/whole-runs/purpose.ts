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
  const { clock, data } = wires.ps2;
  const { uart, tx, rts, dtr, report } = wires.serial;
  // Code that drives the mouse's lines in a way that is not read is known by what is said of it.
  const isSaid = [clock, data, report, rts ?? dtr].every((wire) => wire !== undefined);
  const speaksToMouse = ps2.holds.length > 0 || ps2.senders.length > 0 || isSaid;
  const speaksToPc =
    serial.setUps.length > 0 || serial.bitBanged.length > 0 || uart !== undefined || tx !== undefined;
  return starts && speaksToMouse && speaksToPc;
}
