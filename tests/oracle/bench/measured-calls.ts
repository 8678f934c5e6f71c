import { CPU } from "avr8js";
import { step } from "../../../src-core/bench/engines/avr-step.ts";
import { compile } from "../interpreter/compile.ts";

/** One call of a function of the sketch core. */
export interface CoreCall {
  /** Run before, as the body of `setup` has it. */
  readonly before: string;
  readonly call: string;
  /** The vector's number where it is an interrupt's handler; `call` is then empty. */
  readonly vector?: number;
}

/** Registers of the ATmega328P (data sheet, register summary). */
const marker = 0x3e; // GPIOR0
const status = 0x4a; // GPIOR1: what the sketch wants UCSR0A to be
const usartStatus = 0xc0;
const converter = 0x7a; // ADCSRA
const converting = 0x40; // ADSC

/** CALL takes four cycles; the response to an interrupt four and the JMP in its vector three (data sheet). */
const callCycles = 4;
const responseCycles = 4 + 3;

/**
 * Cycles of each call, from CALL to RET, or from the response to an interrupt to RETI. Compiled with -Os, as sketches
 * are, but without link-time optimisation; conversions of the analogue converter take no time.
 */
export async function measureCoreCalls(calls: readonly CoreCall[]): Promise<readonly number[]> {
  const handlers = new Set(calls.flatMap(({ vector }) => (vector === undefined ? [] : [vector])));
  const declared = [...handlers].map((vector) => `extern "C" void __vector_${vector}();\n`);
  const lines = calls.map(({ before, call, vector }, index) => {
    const mark = `GPIOR0 = ${index + 1};`;
    if (vector === undefined) return `  { ${before} ${mark} ${call}; }`;
    return `  { ${before} void (*volatile called)() = __vector_${vector}; ${mark} called(); }`;
  });
  const text = `${declared.join("")}void onEdge() { }\nvoid setup()\n{\n${lines.join("\n")}\n}\nvoid loop() { }\n`;
  const image = await compile({ language: "sketch", text, headers: {} }, "-Os");
  if (image.kind === "not-compiled") throw new Error(image.message);
  const flash = new Uint8Array(32 * 1024);
  flash.set(image.flash);
  const cpu = new CPU(new Uint16Array(flash.buffer), 2 * 1024);
  cpu.readHooks[usartStatus] = () => cpu.data[status] ?? 0;
  cpu.readHooks[converter] = () => (cpu.data[converter] ?? 0) & ~converting;
  return calls.map(({ vector }, index) => {
    runUntil(cpu, () => cpu.data[marker] === index + 1 && isCall(cpu.progMem[cpu.pc] ?? 0));
    const { SP: stack } = cpu;
    step(cpu);
    const start = cpu.cycles;
    runUntil(cpu, () => cpu.SP >= stack);
    return cpu.cycles - start + (vector === undefined ? callCycles : responseCycles);
  });
}

/** CALL, RCALL or ICALL (AVR Instruction Set Manual). */
function isCall(opcode: number): boolean {
  return (opcode & 0xfe0e) === 0x940e || (opcode & 0xf000) === 0xd000 || opcode === 0x9509;
}

const mostInstructions = 2_000_000;

function runUntil(cpu: CPU, isThere: () => boolean): void {
  for (let count = 0; !isThere(); count += 1) {
    if (count > mostInstructions) throw new Error(`still running at ${cpu.pc * 2} of flash`);
    step(cpu);
  }
}
