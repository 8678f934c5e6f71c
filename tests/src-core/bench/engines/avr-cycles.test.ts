import { CPU } from "avr8js";
import { expect, test } from "vitest";
import { step } from "../../../../src-core/bench/engines/avr-step.ts";

/**
 * Clock cycles of each kind of instruction, first for a program counter of 16 bits, then for one of 22 bits where that
 * differs: column AVRe of "Instruction Set Summary" in the AVR Instruction Set Manual DS40002198, from memory.
 */
const cycles: readonly [name: string, words: readonly number[], narrow: number, wide?: number][] = [
  ["ADD r0, r1", [0x0c01], 1],
  ["ADC r0, r1", [0x1c01], 1],
  ["ADIW r24, 1", [0x9601], 2],
  ["SUB r0, r1", [0x1801], 1],
  ["SUBI r16, 1", [0x5001], 1],
  ["SBC r0, r1", [0x0801], 1],
  ["SBCI r16, 1", [0x4001], 1],
  ["SBIW r24, 1", [0x9701], 2],
  ["AND r0, r1", [0x2001], 1],
  ["ANDI r16, 1", [0x7001], 1],
  ["OR r0, r1", [0x2801], 1],
  ["ORI r16, 1", [0x6001], 1],
  ["EOR r0, r1", [0x2401], 1],
  ["COM r0", [0x9400], 1],
  ["NEG r0", [0x9401], 1],
  ["INC r0", [0x9403], 1],
  ["DEC r0", [0x940a], 1],
  ["MUL r0, r1", [0x9c01], 2],
  ["MULS r16, r17", [0x0201], 2],
  ["MULSU r16, r17", [0x0301], 2],
  ["FMUL r16, r17", [0x0309], 2],
  ["RJMP .+2", [0xc001], 2],
  ["IJMP", [0x9409], 2],
  ["JMP 8", [0x940c, 8], 3],
  ["RCALL .+2", [0xd001], 3, 4],
  ["ICALL", [0x9509], 3, 4],
  ["CALL 8", [0x940e, 8], 4, 5],
  ["RET", [0x9508], 4, 5],
  ["RETI", [0x9518], 4, 5],
  ["CPSE r0, r1, skips one word", [0x1001, 0x0000], 2],
  ["CPSE r0, r1, skips two words", [0x1001, 0x940c, 0], 3],
  ["CP r0, r1", [0x1401], 1],
  ["CPC r0, r1", [0x0401], 1],
  ["CPI r16, 1", [0x3001], 1],
  ["SBRC r0, 0, skips one word", [0xfc00, 0x0000], 2],
  ["SBRC r0, 0, skips two words", [0xfc00, 0x9000, 0x100], 3],
  ["SBRS r0, 0, does not skip", [0xfe00, 0x0000], 1],
  ["SBIC 3, 0, skips one word", [0x9918, 0x0000], 2],
  ["SBIC 3, 0, skips two words", [0x9918, 0x9200, 0x100], 3],
  ["SBIS 3, 0, does not skip", [0x9b18, 0x0000], 1],
  ["BREQ, not taken", [0xf009], 1],
  ["BRNE, taken", [0xf409], 2],
  ["MOV r0, r1", [0x2c01], 1],
  ["MOVW r0, r2", [0x0101], 1],
  ["LDI r16, 1", [0xe001], 1],
  ["LDS r0, 0x100", [0x9000, 0x100], 2],
  ["LD r0, X", [0x900c], 2],
  ["LD r0, X+", [0x900d], 2],
  ["LD r0, -X", [0x900e], 2],
  ["LD r0, Y+", [0x9009], 2],
  ["LD r0, -Y", [0x900a], 2],
  ["LDD r0, Y+1", [0x8009], 2],
  ["LD r0, Z", [0x8000], 2],
  ["LD r0, Z+", [0x9001], 2],
  ["LD r0, -Z", [0x9002], 2],
  ["LDD r0, Z+1", [0x8001], 2],
  ["STS 0x100, r0", [0x9200, 0x100], 2],
  ["ST X, r0", [0x920c], 2],
  ["ST X+, r0", [0x920d], 2],
  ["ST -X, r0", [0x920e], 2],
  ["ST Y+, r0", [0x9209], 2],
  ["ST -Y, r0", [0x920a], 2],
  ["STD Y+1, r0", [0x8209], 2],
  ["ST Z, r0", [0x8200], 2],
  ["ST Z+, r0", [0x9201], 2],
  ["ST -Z, r0", [0x9202], 2],
  ["STD Z+1, r0", [0x8201], 2],
  ["LPM", [0x95c8], 3],
  ["LPM r0, Z", [0x9004], 3],
  ["LPM r0, Z+", [0x9005], 3],
  ["ELPM", [0x95d8], 3],
  ["ELPM r0, Z", [0x9006], 3],
  ["ELPM r0, Z+", [0x9007], 3],
  ["IN r0, 3", [0xb003], 1],
  ["OUT 3, r0", [0xb803], 1],
  ["PUSH r0", [0x920f], 2],
  ["POP r0", [0x900f], 2],
  ["LSR r0", [0x9406], 1],
  ["ROR r0", [0x9407], 1],
  ["ASR r0", [0x9405], 1],
  ["SWAP r0", [0x9402], 1],
  ["BSET 0", [0x9408], 1],
  ["BCLR 0", [0x9488], 1],
  ["SBI 3, 0", [0x9a18], 2],
  ["CBI 3, 0", [0x9818], 2],
  ["BST r0, 0", [0xfa00], 1],
  ["BLD r0, 0", [0xf800], 1],
  ["SEI", [0x9478], 1],
  ["CLI", [0x94f8], 1],
  ["NOP", [0x0000], 1],
  ["SLEEP", [0x9588], 1],
  ["WDR", [0x95a8], 1],
];

test.each(cycles.map(([name, words, narrow, wide = narrow]) => ({ name, words, narrow, wide })))(
  "$name",
  (each) => {
    const { words, narrow, wide } = each;
    for (const { flashWords, expected } of [
      { flashWords: 0x4000, expected: narrow },
      { flashWords: 0x20000, expected: wide },
    ]) {
      const flash = new Uint16Array(flashWords);
      flash.set(words);
      const cpu = new CPU(flash, 0x800);
      cpu.SP = 0x400;
      for (const pointer of [26, 28, 30]) cpu.dataView.setUint16(pointer, 0x200, true);
      step(cpu);
      expect(cpu.cycles).toBe(expected);
    }
  },
);
