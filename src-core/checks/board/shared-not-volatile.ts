// The compiler may keep a variable in a register for as long as nothing that it can see changes it, and it cannot see an
// interrupt handler run. `volatile` tells it to read and write the variable every time.
//
// The rule looks for variables, members and arrays that a handler (an `ISR`, or a function given to `attachInterrupt`)
// writes and the main code reads, or the other way round, with no `volatile` on the way. What the main code does before
// it lets interrupts come, and what it does while they are off (`ATOMIC_BLOCK`, between `cli()` and `sei()`), is left
// alone: there the compiler knows better. Accesses through pointers are not seen.

import type { Access } from "../../facts/board/accesses.ts";
import type { SharedObject } from "../../facts/board/shared-variables.ts";
import type { Facts } from "../../facts/facts.ts";
import type { Fix, RelatedPlace, Span } from "../../finding.ts";
import { visibleRange } from "../../reader/tokens.ts";
import type { At } from "../../reader/typed/nodes.ts";
import { spanOf } from "../literal.ts";
import type { Rule } from "../rule.ts";
import { volatileFix } from "./volatile-fix.ts";

export const sharedNotVolatile: Rule = {
  id: "board/shared-not-volatile",
  title: "A variable shared with an interrupt handler that is not volatile",
  severity: "warning",
  why:
    "The main code may go on for ever with the value that it read first: it waits for a bit that has long come. Whether it " +
    "does depends on the optimiser, so that it breaks with another compiler or another line nearby.",
  wrong: {
    "main.c": `// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static uint8_t ready;
ISR(INT0_vect) {
  ready = 1;
}
int main(void) {
  EIMSK = _BV(INT0);
  sei();
  while (!ready) {
  }
  for (;;) {
  }
}
`,
  },
  right: {
    "main.c": `// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint8_t ready;
ISR(INT0_vect) {
  ready = 1;
}
int main(void) {
  EIMSK = _BV(INT0);
  sei();
  while (!ready) {
  }
  for (;;) {
  }
}
`,
  },
  source:
    "ISO/IEC 9899:2011, 5.1.2.3p2 and 6.7.3p7; avr-libc user manual, FAQ on variables updated in interrupt routines",
  *check(facts) {
    for (const shared of facts.board.shared) {
      const handler = shared.inHandlers.find((access) => !access.volatile);
      const main = shared.inMain.find((access) => !access.volatile);
      const at = placeOf(facts, shared);
      if (handler === undefined || main === undefined || at === undefined || isConstant(shared)) continue;
      const fix = fixFor(facts, shared);
      yield {
        span: at,
        message: `${shared.name} is ${verb(handler)} in an interrupt handler and ${verb(main)} in the main code, but it is not volatile: make it volatile`,
        source: sharedNotVolatile.source,
        related: [place(handler, "in the interrupt handler"), place(main, "in the main code")],
        fixes: fix === undefined ? [] : [fix],
      };
    }
  },
};

function verb({ mode }: Access): string {
  return mode === "read" ? "read" : mode === "write" ? "written" : "changed";
}

function place({ at, mode }: Access, where: string): RelatedPlace {
  return { span: spanOf(visibleRange(at.first, at.last)), message: `${mode} ${where}` };
}

function isConstant({ object }: SharedObject): boolean {
  const type = object.kind === "variable" ? object.variable.type : object.field.type;
  return type.const === true || (type.kind === "array" && type.of.const === true);
}

/** The declared name. */
function placeOf(facts: Facts, { object }: SharedObject): Span | undefined {
  const at = object.kind === "variable" ? object.variable.at : fieldPlace(facts, object.field);
  return at && spanOf(visibleRange(at.first, at.last));
}

function fieldPlace(
  facts: Facts,
  field: Extract<SharedObject["object"], { kind: "member" }>["field"],
): At | undefined {
  for (const { typed } of facts.program.units) {
    const at = typed.fieldPlaces.get(field);
    if (at !== undefined) return at;
  }
  return undefined;
}

/** `volatile` in every declaration: those of other files have to agree. */
function fixFor(facts: Facts, { object, name }: SharedObject): Fix | undefined {
  if (object.kind === "member") {
    const at = fieldPlace(facts, object.field);
    return at && volatileFix(facts.program.units, name, [at]);
  }
  const { variable } = object;
  const same = facts.program.units
    .flatMap(({ typed }) => [...typed.variables, ...typed.locals])
    .filter(
      (each) =>
        each === variable || (each.linkageName !== undefined && each.linkageName === variable.linkageName),
    );
  return volatileFix(
    facts.program.units,
    name,
    same.flatMap((each) => each.declarations),
  );
}
