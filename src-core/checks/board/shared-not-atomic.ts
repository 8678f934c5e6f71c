// An eight-bit chip reads and writes one byte at a time. A variable of two bytes or more that an interrupt handler changes may
// be half old and half new when the main code reads it: 0x00FF that becomes 0x0100 is read as 0x0000 or 0x01FF.
//
// The rule looks at what `board/shared-not-volatile` looks at, and tells each statement of the main code that reads what a
// handler writes, or writes what a handler reads, where an interrupt may come in between. It leaves alone what stands in
// `ATOMIC_BLOCK`, between `cli()` and `sei()` or `noInterrupts()` and `interrupts()`, also where functions or objects of the
// firmware's own do that; what is read behind a flag that the handler sets once the value is there; what is read until two
// readings agree; what is used while the handler's own interrupt is off; and what is only ever set to constants of one byte.

import type { Access } from "../../facts/board/accesses.ts";
import type { MainAccess, SharedObject } from "../../facts/board/shared-variables.ts";
import type { Facts } from "../../facts/facts.ts";
import type { Program } from "../../reader/program/program.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { TypedStatement } from "../../reader/typed/nodes.ts";
import { sizeOf } from "../../reader/types/layout.ts";
import { spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { type Uses, usesAround } from "./adjacent-uses.ts";
import { atomicFix } from "./atomic-fix.ts";

export const sharedNotAtomic: Rule = {
  id: "board/shared-not-atomic",
  title: "A variable of several bytes that an interrupt may change half-way",
  severity: "warning",
  why:
    "Once in many thousand times the interrupt comes between two bytes, and the value is off by 256: the pointer jumps, or a " +
    "wait ends at once. It cannot be repeated on the desk, and no debugger shows it.",
  wrong: {
    "main.c": `// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint16_t ticks;
ISR(TIMER0_COMPA_vect) {
  ticks++;
}
int main(void) {
  TIMSK0 = _BV(OCIE0A);
  sei();
  for (;;) {
    uint16_t now = ticks;
    PORTB = now >> 8;
  }
}
`,
  },
  right: {
    "main.c": `// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
#include <util/atomic.h>
static volatile uint16_t ticks;
ISR(TIMER0_COMPA_vect) {
  ticks++;
}
int main(void) {
  TIMSK0 = _BV(OCIE0A);
  sei();
  for (;;) {
    uint16_t now;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {
      now = ticks;
    }
    PORTB = now >> 8;
  }
}
`,
  },
  source: "avr-libc user manual, <util/atomic.h>: atomically and non-atomically executed code blocks",
  *check(facts) {
    if (facts.board.chip?.kind !== "avr") return;
    const torn = facts.board.shared.flatMap((shared) => tornUses(shared, facts));
    const uses = new Map<TypedStatement, Set<SharedObject>>();
    for (const { access, shared } of torn) {
      const { statement } = access;
      uses.set(statement, (uses.get(statement) ?? new Set()).add(shared));
    }
    for (const each of torn) yield draftFor(each, uses, facts);
  },
  judge: (trials) => draftsOfRuns("board/shared-not-atomic", trials),
};

/** A use in the main code that an interrupt handler may come into. */
interface TornUse {
  readonly shared: SharedObject;
  readonly access: MainAccess;
  readonly handler: Access;
  readonly bytes: number;
}

/** The first of each statement. */
function tornUses(shared: SharedObject, { program }: Facts): readonly TornUse[] {
  if (shared.fitsByte) return [];
  const found = new Map<TypedStatement, TornUse>();
  for (const access of shared.inMain) {
    if (access.handedOver || access.undisturbed || found.has(access.statement)) continue;
    const bytes = bytesOf(access, program);
    const handler = shared.inHandlers.find((each) => touchesWhatItTouches(each, access, program));
    if (bytes === undefined || bytes < 2 || handler === undefined) continue;
    found.set(access.statement, { shared, access, handler, bytes });
  }
  return [...found.values()];
}

function draftFor(
  { shared, access, handler, bytes }: TornUse,
  uses: Uses<SharedObject>,
  { program }: Facts,
): Draft {
  const around = usesAround(program, access.statement, uses);
  const fix = atomicFix(program, around) ?? atomicFix(program, [access.statement]);
  return {
    span: spanOf(visibleRange(access.at.first, access.at.last)),
    message: `${shared.name} has ${bytes} bytes and an interrupt handler ${verb(handler)} it: ${verbOfMain(access)} it with interrupts off, in an ATOMIC_BLOCK`,
    measured: { value: bytes, unit: "bytes" },
    limit: { atMost: 1, unit: "bytes" },
    source: sharedNotAtomic.source,
    related: [
      {
        span: spanOf(visibleRange(handler.at.first, handler.at.last)),
        message: "in the interrupt handler",
      },
    ],
    fixes: fix === undefined ? [] : [fix],
  };
}

/** One of the two writes what the other reads, or both write. */
function touchesWhatItTouches(handler: Access, main: MainAccess, program: Program): boolean {
  if (handler.mode === "read" && main.mode === "read") return false;
  return bytesOf(handler, program) !== undefined;
}

/** Undefined for an array as a whole, which is a pointer then, and for a type that is not known. */
function bytesOf({ type, place }: Access, program: Program): number | undefined {
  if (type.kind === "array") return undefined;
  const bits = place.field?.bitWidth;
  return bits === undefined ? sizeOf(type, program.model) : Math.ceil(bits / 8);
}

function verb({ mode }: Access): string {
  return mode === "read" ? "reads" : mode === "write" ? "writes" : "changes";
}

function verbOfMain({ mode }: Access): string {
  return mode === "read" ? "read" : mode === "write" ? "write" : "change";
}
