import type { NoteFacts } from "../notes/note-facts.ts";
import type { Program } from "../reader/program/program.ts";
import { clockOf } from "./board/clock.ts";
import { gatherBoard } from "./board/gather-board.ts";
import type { Facts } from "./facts.ts";
import { hardwareOf } from "./pins/hardware.ts";
import { gatherPs2 } from "./ps2/gather-ps2.ts";
import { gatherSerial } from "./serial/gather-serial.ts";
import { walkFirmware } from "./walk/walk.ts";

/** Walks the firmware once and gathers what rules, hovers and note suggestions read. Never throws. */
export function gatherFacts(program: Program, notes: NoteFacts): Facts {
  const { wires } = notes;
  const clock = clockOf(program, wires);
  const walk = walkFirmware(program, hardwareOf(program.chip));
  const ps2 = gatherPs2(program, notes, walk, clock?.hz);
  const senders = new Set(ps2.senders.flatMap((sender) => sender.function ?? []));
  const host = { clock: ps2.clock?.pin, senders };
  const serial = gatherSerial(program, notes, walk, clock?.hz, host);
  return {
    program,
    notes,
    wires,
    board: gatherBoard(program, wires, walk, clock, serial.setUps),
    serial,
    ps2,
  };
}
