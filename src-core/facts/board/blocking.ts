import type { Span } from "../../finding.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { At, FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { Event, LoopEvent } from "../walk/events.ts";
import { delayOf } from "./delay-calls.ts";
import type { Handler } from "./handlers.ts";

/** Something that makes an interrupt handler wait while other interrupts do too. */
export type Blocking = {
  readonly handler: FunctionSymbol;
  /** The delay's argument, the loop's condition, the call's name. */
  readonly span: Span;
} & (
  | {
      readonly kind: "delay";
      /** Microseconds of one call, and of all calls from this place in one run of the handler. */
      readonly each: number;
      readonly us: number;
      /** Microseconds of all delays in one run of the handler. */
      readonly together: number;
    }
  /** A loop until the transmitter or receiver of a UART is ready. */
  | { readonly kind: "waits for a UART"; readonly register: string }
  /** A call that waits for the line when its buffer is full. */
  | { readonly kind: "sends"; readonly call: string }
);

export function blockingIn(handlers: readonly Handler[], clockHz: number | undefined): readonly Blocking[] {
  return handlers.flatMap((handler) => {
    if (letsOthersIn(handler)) return [];
    const found = new Collector(clockHz);
    found.follow(handler.events, 1);
    const delays = [...found.delays.values()];
    const together = delays.reduce((sum, { us }) => sum + us, 0);
    return [
      ...delays.map((delay) => ({ kind: "delay" as const, ...delay, together, handler: handler.function })),
      ...found.others.map((other) => ({ ...other, handler: handler.function })),
    ];
  });
}

/** A handler that turns interrupts on again, itself or by an attribute of its vector, keeps nobody out. */
function letsOthersIn(handler: Handler): boolean {
  const { attributes } = handler.function;
  if (attributes.some(({ name }) => name === "interrupt" || name === "__interrupt__")) return true;
  return handler.events.some(
    (event) =>
      (event.kind === "outside-call" && /^(sei|interrupts|__builtin_avr_sei)$/.test(event.name)) ||
      (event.kind === "assembly" && /\bsei\b/.test(event.text)),
  );
}

interface Delay {
  readonly span: Span;
  readonly each: number;
  readonly us: number;
}

type Other =
  | { readonly kind: "waits for a UART"; readonly register: string; readonly span: Span }
  | { readonly kind: "sends"; readonly call: string; readonly span: Span };

class Collector {
  readonly delays = new Map<string, Delay>();
  readonly others: Other[] = [];
  private readonly clockHz: number | undefined;

  constructor(clockHz: number | undefined) {
    this.clockHz = clockHz;
  }

  /** `turns` is how often the events happen in one run of the handler. */
  follow(events: readonly Event[], turns: number): void {
    for (const event of events) {
      switch (event.kind) {
        case "call":
          this.follow(event.events, turns);
          break;
        case "branch":
          for (const side of event.sides) this.follow(side, turns);
          break;
        case "loop":
          this.loop(event, turns);
          break;
        case "outside-call":
          this.outsideCall(event, turns);
          break;
        default:
      }
    }
  }

  private loop(loop: LoopEvent, turns: number): void {
    const register = uartWaitedFor(loop);
    if (register !== undefined) {
      const at = conditionOf(loop);
      this.others.push({ kind: "waits for a UART", register, span: visibleRange(at.first, at.last) });
    }
    const { passes } = loop;
    const left = Math.max(0, (loop.turns ?? passes.length) - passes.length);
    for (const [index, pass] of passes.entries()) {
      this.follow(pass, turns * (index === passes.length - 1 ? 1 + left : 1));
    }
  }

  private outsideCall(event: Extract<Event, { kind: "outside-call" }>, turns: number): void {
    const delay = delayOf(event, this.clockHz);
    if (delay?.us !== undefined) {
      const at = delay.length?.from?.at ?? event.expressions[0]?.at ?? event.at;
      const span = visibleRange(at.first, at.last);
      const key = `${span.file} ${span.start}`;
      const known = this.delays.get(key);
      this.delays.set(key, { span, each: delay.us, us: (known?.us ?? 0) + delay.us * turns });
      return;
    }
    if (event.origin === "core" && /^Serial\d?\.(print|println|write|flush)$/.test(event.name)) {
      this.others.push({ kind: "sends", call: event.name, span: calledName(event) });
    }
  }
}

/** The name of the member function in `Serial.println(...)`. */
function calledName(event: Extract<Event, { kind: "outside-call" }>): Span {
  const whole = visibleRange(event.at.first, event.at.last);
  const object = visibleRange(event.at.first, event.at.first);
  const name = event.name.slice(event.name.lastIndexOf(".") + 1);
  const start = object.end + 1;
  return start + name.length <= whole.end ? { file: whole.file, start, end: start + name.length } : whole;
}

/** UCSRnA in the condition of a loop that waits. */
function uartWaitedFor(loop: LoopEvent): string | undefined {
  if (loop.form !== "waiting" || loop.condition?.kind !== "unknown") return undefined;
  for (const trace of loop.condition.traces) {
    if (trace.kind === "register" && /^UCSR\d?A$/.test(trace.register.name)) return trace.register.name;
  }
  return undefined;
}

function conditionOf(loop: LoopEvent): At {
  const { statement } = loop;
  switch (statement.kind) {
    case "while":
    case "do":
      return statement.condition.at;
    case "for":
      return statement.condition?.at ?? loop.at;
    default:
      return loop.at;
  }
}
