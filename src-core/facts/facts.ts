import type { NoteFacts } from "../notes/note-facts.ts";
import type { Wires } from "../notes/wires.ts";
import type { Program } from "../reader/program/program.ts";
import type { BoardFacts } from "./board/board-facts.ts";
import type { Ps2Facts } from "./ps2/ps2-facts.ts";
import type { SerialFacts } from "./serial/serial-facts.ts";

/**
 * What the firmware does, as far as it can be seen without running it: said in notes and edgewise.json, or
 * inferred from the code. Rules, hovers and note suggestions read facts and never walk the code themselves.
 */
export interface Facts {
  readonly program: Program;
  readonly notes: NoteFacts;
  readonly wires: Wires;
  readonly board: BoardFacts;
  readonly serial: SerialFacts;
  readonly ps2: Ps2Facts;
}
