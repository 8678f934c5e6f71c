import { avrInstruction, type CPU } from "avr8js";

const statusRegister = 95;
const overflowFlag = 1 << 3;
const signFlag = 1 << 4;

/** What a bundler makes of an import may be a call for each use. */
const execute = avrInstruction;

/** The instructions that avr8js 0.21.1 gets wrong are between these words. */
const firstWrong = 0x9401;
const lastWrong = 0x98ff;

/**
 * Runs one instruction on a simulated chip and returns its first word. avr8js 0.21.1 never sets V after NEG; the AVR
 * Instruction Set Manual sets it where the result is $80, and S (N exclusive or V) is then 0. Compilers use it to widen
 * `-x` from eight bits. It also counts one cycle for CBI, which takes two in the cores of these chips.
 */
export function step(cpu: CPU): number {
  const opcode = cpu.progMem[cpu.pc] ?? 0;
  execute(cpu);
  if (opcode >= firstWrong && opcode <= lastWrong) correct(cpu, opcode);
  return opcode;
}

function correct(cpu: CPU, opcode: number): void {
  // CBI A, b: 1001 1000 AAAA Abbb.
  if ((opcode & 0xff00) === 0x9800) cpu.cycles += 1;
  // NEG Rd: 1001 010d dddd 0001.
  if ((opcode & 0xfe0f) !== 0x9401 || cpu.data[(opcode >> 4) & 0x1f] !== 0x80) return;
  cpu.data[statusRegister] = ((cpu.data[statusRegister] ?? 0) | overflowFlag) & ~signFlag;
}
