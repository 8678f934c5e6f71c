import { library } from "./library/library.ts";
import type { Machine, MachineRequest } from "./machine.ts";
import { Runtime } from "./run/runtime.ts";

/** A program ready to run: `reset` it first. Nothing is lowered before it is called for the first time. */
export function createMachine(request: MachineRequest): Machine {
  const runtime = new Runtime(request, [request.outside, library]);
  return {
    memory: runtime.targetMemory,
    missteps: runtime.missteps.found,
    prepare: () => runtime.prepare(),
    reset: () => runtime.reset(),
    call: (symbol, parameters) => runtime.call(symbol, parameters),
    pointerTo: (symbol) => runtime.pointerTo(symbol),
    callPointer: (pointer, parameters) => runtime.callPointer(pointer, parameters),
    wait: (cycles) => runtime.wait(cycles),
    turns: () => runtime.turns(),
    settle: () => runtime.pace.settle(0),
    place: (type, at) => runtime.place(type, at),
    keep: () => runtime.keep(),
    watch: (address, bytes) => runtime.watch(address, bytes),
    takeWritten: () => runtime.takeWritten(),
    addressOf: (variable) => runtime.linker.placedAt(variable),
    writerOf: (address) => runtime.writerOf(address),
  };
}
