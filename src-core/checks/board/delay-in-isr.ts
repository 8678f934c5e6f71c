// While an interrupt handler runs, no other interrupt gets through on AVR. The mouse makes its own clock: the next
// falling edge comes 60 to 100 us after the last, whether the firmware is ready or not.
//
// The rule follows every handler and what it calls and reports delays longer than the shortest clock period of a mouse,
// loops that wait for a UART, and calls of the serial class that wait once its buffer is full. Handlers that let other
// interrupts in (`ISR_NOBLOCK`, `sei()`) are left alone.

import type { Blocking } from "../../facts/board/blocking.ts";
import type { Facts } from "../../facts/facts.ts";
import { timeText } from "../../figures.ts";
import { byteTimeMs } from "../../model/line-formats.ts";
import { quantity } from "../../model/quantities.ts";
import { formatSources } from "../../model/sources.ts";
import { spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";

const period = quantity("ps2.clock-period");
const source = formatSources(period?.sources ?? []);

export const delayInIsr: Rule = {
  id: "board/delay-in-isr",
  title: "An interrupt handler that waits",
  severity: "warning",
  why:
    "While the handler waits, the mouse goes on clocking, and the bits of that time are lost: the frame no longer fits, and " +
    "the pointer jumps or stands still.",
  wrong: {
    "main.c": `// @wire board atmega328p clock=16MHz
#define F_CPU 16000000UL
#include <avr/io.h>
#include <avr/interrupt.h>
#include <util/delay.h>
ISR(INT0_vect) {
  PORTB |= _BV(PB5);
  _delay_ms(1);
  PORTB &= ~_BV(PB5);
}
int main(void) {
  sei();
  for (;;) {
  }
}
`,
  },
  right: {
    "main.c": `// @wire board atmega328p clock=16MHz
#define F_CPU 16000000UL
#include <avr/io.h>
#include <avr/interrupt.h>
#include <util/delay.h>
static volatile uint8_t blink;
ISR(INT0_vect) {
  blink = 1;
}
int main(void) {
  sei();
  for (;;) {
    if (blink) {
      blink = 0;
      PORTB |= _BV(PB5);
      _delay_ms(1);
      PORTB &= ~_BV(PB5);
    }
  }
}
`,
  },
  source,
  *check(facts) {
    const limit = period?.min;
    if (limit === undefined) return;
    for (const blocking of facts.board.blocking) {
      const draft = draftFor(facts, blocking, limit);
      if (draft !== undefined) yield draft;
    }
  },
};

function draftFor(facts: Facts, blocking: Blocking, limit: number): Draft | undefined {
  const { name } = blocking.handler;
  const rest = { span: spanOf(blocking.span), source, related: [], fixes: [] };
  switch (blocking.kind) {
    case "delay": {
      if (!isTooLong(facts, blocking, limit)) return undefined;
      const us = blocking.us > limit ? blocking.us : blocking.together;
      const sum = us > blocking.each ? ", all turns together" : "";
      return {
        ...rest,
        message: `${handlerText(name)} waits ${timeText(us)} here${sum}, but the mouse's clock falls again after ${limit} us: set a flag and wait in the main code`,
        measured: { value: us, unit: "us" },
        limit: { atMost: limit, unit: "us" },
      };
    }
    case "waits for a UART":
      return {
        ...rest,
        message: `${handlerText(name)} waits for the UART${lineTime(facts)}, while the mouse's clock falls again after ${limit} us: queue the byte and send it in the main code`,
      };
    case "sends":
      return {
        ...rest,
        message: `${blocking.call} waits for the line${lineTime(facts)} once its buffer is full, while the mouse's clock falls again after ${limit} us: set a flag and send in the main code`,
      };
  }
}

/** By itself; or the largest of several that are too long together. */
function isTooLong(facts: Facts, blocking: Extract<Blocking, { kind: "delay" }>, limit: number): boolean {
  if (blocking.us > limit) return true;
  if (blocking.together <= limit) return false;
  const others = facts.board.blocking.filter(
    (each) => each.kind === "delay" && each.handler === blocking.handler,
  );
  if (others.some((each) => each.kind === "delay" && each.us > limit)) return false;
  const largest = others.reduce<Blocking>(
    (best, each) => (each.kind === "delay" && best.kind === "delay" && each.us > best.us ? each : best),
    blocking,
  );
  return largest === blocking;
}

function handlerText(name: string): string {
  return name.startsWith("__vector") ? "the interrupt handler" : `the interrupt handler ${name}`;
}

/** ", up to 7.5 ms for a byte at 1200 baud" */
function lineTime({ serial }: Facts): string {
  const format = serial.mouseSetUps[0]?.format.format;
  const baud = serial.wantedBaud?.baud;
  if (format === undefined || baud === undefined) return "";
  return `, up to ${timeText(byteTimeMs(format, baud) * 1000)} for a byte at ${baud} baud`;
}
