import { clockMissed } from "../../../../src-core/checks/ps2/clock-missed.ts";
import { ruleTests } from "../harness.ts";
import { type Change, expected, versionIn, versionOf } from "../runs/versions.ts";

// The falling edges of the mouse's clock are 60 to 100 us apart (The PS/2 Mouse/Keyboard Protocol, General Description), and a
// chip keeps one flag for each interrupt (ATmega328P datasheet 8271D, External Interrupts): an edge that comes while the flag
// of the one before is still set is lost. Whoever keeps the handler out for more than two periods while the mouse sends loses
// edges; who does so for 20 us loses none.

/** The line, at which the whole statement is told. */
const told = (line: string): string =>
  expected(
    line,
    line.trim().replace(/;$/, ""),
    "ps2/clock-missed",
    "an edge of the mouse's clock was missed",
  );

const circle = { stroke: "circle" };

/** Where a byte of a packet has come, and the next is on its way. */
const stores = "    packet[packet_length++] = value;\n";
const goesRound = "    else ready = serve_mouse();\n";
const counts = "  ticks++;\n";
const readsTime = "    now = ticks;\n";
const readsTimeElsewhere = "    now = count;\n";

/** The clock's interrupt alone is off meanwhile. */
const masked = (wait: string): Change => [
  stores,
  `    EIMSK &= ~_BV(INT0);\n${stores}${wait}\n    EIMSK |= _BV(INT0);\n`,
];

/** The handler of the timer may ask whether a packet is under way. */
const movedUp: Change = ["static uint8_t packet[3], packet_length;", "static uint8_t packet[3];"];

ruleTests(clockMissed, {
  wrong: {
    "interrupts off between the bytes of a packet": versionOf(circle, [
      stores,
      `    cli();\n${stores}${told("    _delay_us(800);")}\n    sei();\n`,
    ]),
    "the clock's interrupt alone is off between the bytes of a packet": versionOf(
      circle,
      masked(told("    _delay_us(800);")),
    ),
    "the main loop does something else with interrupts off, each time": versionOf(circle, [
      goesRound,
      `${goesRound}    cli();\n${told("    _delay_us(180);")}\n    sei();\n`,
    ]),
    "the handler of the timer takes long now and then": versionOf(circle, [
      counts,
      `${counts}${expected("  if (ticks % 64 == 0) _delay_us(700);", "_delay_us(700)", "ps2/clock-missed")}\n`,
    ]),
    "the handler of the timer takes long while a packet comes": versionOf(
      circle,
      [
        "ISR(TIMER0_COMPA_vect) {\n",
        `static uint8_t packet_length;\n\nISR(TIMER0_COMPA_vect) {\n${expected("  if (packet_length > 0) _delay_us(400);", "_delay_us(400)", "ps2/clock-missed")}\n`,
      ],
      movedUp,
    ),
    "another style: interrupts off while the time is read": versionIn("clock-interrupt-c", circle, [
      readsTimeElsewhere,
      `${told("    __builtin_avr_delay_cycles(16 * 180);")}\n${readsTimeElsewhere}`,
    ]),
  },
  right: {
    "interrupts off for 20 us while the time is read": versionOf(circle, [
      readsTime,
      `    __builtin_avr_delay_cycles(16 * 20);\n${readsTime}`,
    ]),
    "the clock's interrupt alone is off for 20 us": versionOf(circle, masked("    _delay_us(20);")),
    "the main loop does something else with interrupts on": versionOf(circle, [
      goesRound,
      `${goesRound}    _delay_us(900);\n`,
    ]),
    "the handler of the timer takes 15 us": versionOf(circle, [counts, `${counts}  _delay_us(15);\n`]),
    "the main loop has interrupts off for a moment, each time": versionOf(circle, [
      goesRound,
      `${goesRound}    cli();\n    _delay_us(20);\n    sei();\n`,
    ]),
    "another style: a moment with interrupts off": versionIn("clock-interrupt-c", circle, [
      readsTimeElsewhere,
      `    __builtin_avr_delay_cycles(16 * 10);\n${readsTimeElsewhere}`,
    ]),
  },
});
