import type { Chip } from "../../model/chips/chip.ts";
import type { Access } from "./access.ts";

/** Instructions for which C has no words. `place` is the number of the place in the source. */
export type Instructions = (word: string, place: number) => void;

/** The interrupt flag of the status register ("AVR Instruction Set Manual", SEI and CLI). */
const interruptFlag = 0x80;

/**
 * What `sei`, `cli`, `nop`, `wdr` and `sleep` do to what a program can see: the flag in the status register. Time is not
 * counted, and nothing here interrupts.
 */
export function instructionsOf(chip: Chip | undefined, { l1, s1 }: Access): Instructions {
  const status =
    chip?.kind === "avr" ? chip.registers.find(({ name }) => name === "SREG")?.address : undefined;
  return (word, place) => {
    if (status === undefined || (word !== "sei" && word !== "cli")) return;
    const others = l1(status, place) & ~interruptFlag;
    s1(status, word === "sei" ? others | interruptFlag : others, place);
  };
}
