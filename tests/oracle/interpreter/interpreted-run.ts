import { createMachine } from "../../../src-core/interpreter/create-machine.ts";
import type {
  Misstep,
  Outcome,
  OutsideFunction,
  Registers,
  Stop,
} from "../../../src-core/interpreter/outcome.ts";
import type { Program } from "../../../src-core/reader/program/program.ts";
import { endOfTransmission, serialPort } from "./source-program.ts";

/** How a run of the program as read went; `text` is what it sent until then. */
export type InterpretedRun =
  | { readonly kind: "sent"; readonly text: string; readonly missteps: readonly Misstep[] }
  | {
      readonly kind: "stopped";
      readonly text: string;
      readonly stop: Stop;
      /** What the reader did not understand of the program; without any, the interpreter alone refused. */
      readonly notUnderstood: readonly string[];
    };

const limits = { steps: 200_000_000, depth: 400 };

/** Calls of `loop`, at most. */
const loopCalls = 1000;

/** Runs `main`, or `setup` and `loop`, until the end of transmission; what is sent after that does not count. */
export function interpretedRun(program: Program): InterpretedRun {
  const port = sendingPort();
  const machine = createMachine({
    program,
    limits,
    registers: port.registers,
    outside: port.serial,
    instead: undefined,
    cancelled: undefined,
  });
  const run = (name: string): Outcome => {
    const symbol = program.functions.find(({ qualifiedName }) => qualifiedName === name);
    if (symbol !== undefined) return machine.call(symbol, []);
    return { kind: "stopped", stop: { reason: "cannot-run", message: `no ${name}`, at: undefined } };
  };
  let outcome = machine.reset();
  const isSketch = program.units.some(({ prelude }) => prelude.length > 0);
  if (outcome.kind === "returned") outcome = run(isSketch ? "setup" : "main");
  for (let calls = 0; isSketch && calls < loopCalls && !port.ended(); calls += 1) {
    if (outcome.kind === "stopped") break;
    outcome = run("loop");
  }
  if (outcome.kind === "stopped" && !port.ended()) {
    return { kind: "stopped", text: port.text(), stop: outcome.stop, notUnderstood: problemsOf(program) };
  }
  return { kind: "sent", text: port.text(), missteps: machine.missteps };
}

function problemsOf(program: Program): readonly string[] {
  return program.problems.map(({ message, span }) => `${span.file}: ${message}`);
}

/** A port that is always ready; all other registers keep what is written. */
function sendingPort(): {
  readonly registers: Registers;
  /** The sketch core's serial class, whose driver waits for interrupts that no one makes here. */
  readonly serial: OutsideFunction;
  text(): string;
  ended(): boolean;
} {
  const kept = new Map<number, number>();
  const sent: number[] = [];
  let ended = false;
  const write = (address: number, value: number): void => {
    kept.set(address, value);
    if (address !== serialPort.data) return;
    ended ||= value === endOfTransmission;
    if (!ended) sent.push(value);
  };
  return {
    text: () => String.fromCharCode(...sent),
    ended: () => ended,
    serial: ({ qualifiedName, type }) => {
      if (qualifiedName === "HardwareSerial::begin" || qualifiedName === "HardwareSerial::flush")
        return () => undefined;
      if (qualifiedName !== "HardwareSerial::write" || type.parameters.length !== 1) return undefined;
      return ([, value]) => {
        write(serialPort.data, Number(value) & 0xff);
        return 1;
      };
    },
    registers: {
      read(address, bytes) {
        let value = 0;
        for (let at = bytes - 1; at >= 0; at -= 1) {
          const place = address + at;
          value = value * 256 + (place === serialPort.status ? serialPort.ready : (kept.get(place) ?? 0));
        }
        return value;
      },
      write(address, value, bytes) {
        for (let at = 0; at < bytes; at += 1) write(address + at, Math.floor(value / 256 ** at) % 256);
      },
    },
  };
}
