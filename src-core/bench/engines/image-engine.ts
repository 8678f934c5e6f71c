import type { Chip } from "../chip/chip.ts";
import { sleepOf } from "../chip/sleep.ts";
import { globalFlag, statusRegister } from "../chip/status-register.ts";
import { Timeline } from "../chip/timeline.ts";
import { connect, type Wiring } from "../chip/wiring.ts";
import type { BenchSide, Engine, EngineEnd } from "../engine.ts";
import { step } from "./avr-step.ts";

/** Words of instructions that mean more than what they do to registers; all ones, erased flash, are none. AVR Instruction Set Manual. */
const instructions = {
  sei: 0x9478,
  reti: 0x9518,
  sleep: 0x9588,
  jumpToItself: 0xcfff,
  empty: 0xffff,
} as const;

/** Cycles of entering a handler, and those more of waking; "Interrupt Response Time" of the datasheets, from memory. */
const responseCycles = { pc16: 4, pc22: 5 } as const;

/** Runs a compiled image on a chip that was made with it. */
export class ImageEngine implements Engine {
  readonly #chip: Chip;
  readonly #wiring: Wiring;
  /** Resets that the watchdog made. */
  #resets = 0;

  constructor(chip: Chip, wiring: Wiring) {
    this.#chip = chip;
    this.#wiring = wiring;
  }

  run(bench: BenchSide): EngineEnd {
    const chip = this.#chip;
    const { cpu, core } = chip;
    const { interrupts } = core;
    connect(chip, this.#wiring, bench.wires);
    const timeline = new Timeline(chip, bench);
    chip.onWatchdogReset = () => {
      this.#resets += 1;
    };
    const { events } = core;
    let opcode = 0;
    for (;;) {
      if (cpu.cycles >= events.next || cpu.cycles >= timeline.benchDue) {
        timeline.catchUp();
        if (bench.ended) return { kind: "ended" };
      }
      // After SEI and RETI one more instruction runs first.
      if (interrupts.isPending && opcode !== instructions.sei && opcode !== instructions.reti) {
        if (((cpu.data[statusRegister] ?? 0) & globalFlag) !== 0) this.#enterHandler();
      }
      opcode = step(cpu);
      if (opcode < instructions.sleep) continue;
      const end = this.#special(opcode, timeline, bench);
      if (end !== undefined) return end;
    }
  }

  /** What an instruction does besides what it does to registers. */
  #special(opcode: number, timeline: Timeline, bench: BenchSide): EngineEnd | undefined {
    switch (opcode) {
      case instructions.sleep:
        return this.#sleep(timeline, bench);
      case instructions.jumpToItself:
        return this.#waitForever(timeline, bench);
      case instructions.empty:
        return this.#stopped("the code ran into flash that holds no program");
      default:
        return undefined;
    }
  }

  #stopped(message: string): EngineEnd {
    return { kind: "stopped", message, at: this.#chip.core.place };
  }

  #enterHandler(): void {
    const { cpu, pendingVector, model } = this.#chip;
    if (pendingVector === undefined) return;
    const { pc, pc22Bits } = cpu;
    this.#push(pc & 0xff);
    this.#push((pc >> 8) & 0xff);
    if (pc22Bits) this.#push(pc >> 16);
    this.#chip.takeInterrupt();
    cpu.pc = (pendingVector.number * model.vectorEntryBytes) / 2;
    cpu.cycles += pc22Bits ? responseCycles.pc22 : responseCycles.pc16;
  }

  #push(byte: number): void {
    const { cpu } = this.#chip;
    cpu.data[cpu.SP] = byte;
    cpu.SP -= 1;
  }

  /** Idle until an interrupt that may be entered, a reset, or the end of the run. */
  #sleep(timeline: Timeline, bench: BenchSide): EngineEnd | undefined {
    const { core, cpu, interruptsEnabled } = this.#chip;
    const sleep = sleepOf(this.#chip);
    if (sleep.kind === "awake") return undefined;
    if (sleep.kind === "never") return this.#stopped(sleep.message);
    const resets = this.#resets;
    while (!(interruptsEnabled && core.interrupts.isPending) && this.#resets === resets) {
      if (!timeline.skipToNext()) return this.#stopped("the code sleeps, and nothing will ever wake it");
      if (bench.ended) return { kind: "ended" };
    }
    if (this.#resets === resets) cpu.cycles += cpu.pc22Bits ? responseCycles.pc22 : responseCycles.pc16;
    return undefined;
  }

  /** An empty endless loop: goes on to what happens next, at a whole turn of the loop. */
  #waitForever(timeline: Timeline, bench: BenchSide): EngineEnd | undefined {
    const { core, cpu, interruptsEnabled } = this.#chip;
    const isIdle = core.events.next === Number.POSITIVE_INFINITY;
    if (!interruptsEnabled && isIdle) {
      return this.#stopped("main returned, or the code waits in an empty loop with interrupts off");
    }
    if (interruptsEnabled && core.interrupts.isPending) return undefined;
    const turnCycles = 2;
    const before = cpu.cycles;
    const resets = this.#resets;
    timeline.skipToNext();
    if (bench.ended) return { kind: "ended" };
    if (this.#resets === resets) cpu.cycles += (cpu.cycles - before) % turnCycles;
    return undefined;
  }
}
