import { describe } from "vitest";
import { hoverTests, sampleScene, silenceTests } from "./scene.ts";

// The right register-level firmware. Figures are worked out by hand from the documents named here, not from the
// model: ATmega48A/.../328P datasheet, 20.3.1 (BAUD = f / (16 (UBRR + 1))) and Table 20-2 (receiver error ranges);
// mouse(4) (1200 baud, seven data bits); "The PS/2 Mouse/Keyboard Protocol", Host-to-Device (100 us); EM84502 data
// sheet, command table; FreeBSD manual psm(4) (five tries of 200 ms after a reset); ATmega328P datasheet, Figure 1-1
// (pins); avr-libc, avr/iom328p.h (addresses and bits).

describe("hovers in the register-level firmware", () => {
  const scene = sampleScene("ferry-c");

  hoverTests(scene, "serial.c", [
    // 16 MHz / (16 * 833) = 1200.48 baud, 0.04 % fast; nine bits of 7N1 make 0.36 %. Seven data bits: -5.19/+5.11 %.
    [
      "UBRR0 = DIV§ISOR;",
      "1200.5 baud at 16 MHz",
      "UBRR = 832: f / (16 (UBRR + 1))",
      "Wanted: 1200 baud",
      "Error +0.04 % per bit, 0.36 % of a bit over a frame of 9 bits",
      "-5.2 % to +5.1 %",
      "within 2 %, margin 1.96 %",
      "Table 20-1",
    ],
    ["UBR§R0 = DIVISOR;", "1200.5 baud at 16 MHz"],
    ["#define DIV§ISOR", "1200.5 baud at 16 MHz"],
    ["#define BA§UD 1200", "1200.5 baud at 16 MHz"],
    ["#define BAUD 12§00", "1200.5 baud at 16 MHz"],
    ["((F_§CPU + 8UL", "F_CPU: the chip's clock, 16 MHz", "edgewise.json"],
    // UCSZ02:0 = 2 is seven data bits (datasheet, UCSRnC); 9 bits at 1200 baud are 7.5 ms.
    [
      "_BV(UCS§Z01);",
      "7N1: 7 data bits, no parity bit, one stop bit",
      "UCSR0C = 0x04. Bits that are 1: `UCSZ01` (bit 2).",
      "9 bit times, 7.5 ms at 1200 baud",
    ],
    [
      "UCS§R0C =",
      "UCSR0C: 8-bit register at 0xC2 (USART)",
      "`UCSZ01` / `UDORD0` (bit 2)",
      "`USBS0` (bit 3): two stop bits",
    ],
    ["UCSR0B = _BV(TX§EN0)", "UCSR0B = 0x08", "`TXEN0` (bit 3): transmitter on", "All others are 0."],
    ["UCSR0A = §0;", "UCSR0A = 0x00", "All bits are 0."],
    ["UCSR0A & _BV(UD§RE0)", "UCSR0A & 0x20", "`UDRE0` (bit 5): the data register can take the next byte"],
    ["PCMSK2 = _BV(PCI§NT20)", "PCMSK2 = 0x10", "`PCINT20` (bit 4)", "RTS of the PC"],
    ["PCI§CR = _BV", "PCICR: 8-bit register at 0x68 (pin-change interrupts)"],
    ["U§DR0 = value;", "UDR0: 8-bit register at 0xC6 (USART)"],
  ]);

  hoverTests(scene, "ps2.c", [
    [
      "_delay_us(12§0);",
      "Request to send: the clock is low for 120 us",
      "at least 100 us, margin 20 us",
      "The PS/2 Mouse/Keyboard Protocol, Host-to-Device",
    ],
    ["_delay§_us(120);", "Request to send: the clock is low for 120 us"],
    [
      "CMD_RE§SET = 0xFF",
      "0xFF: reset",
      "acknowledge (0xFA), self-test passed (0xAA), its id",
      "EM84502 mouse controller data sheet",
    ],
    ["CMD_RESET = 0x§FF", "0xFF: reset"],
    ["command(CMD_ENABLE§_REPORTING)", "0xF4: enable reporting", "acknowledge (0xFA)"],
    ["CMD_SET_SAMPLE_RATE§ = 0xF3", "0xF3: set sample rate", "reports per second"],
    [
      "command(SAM§PLE_RATE)",
      "40: 40 reports per second (argument of 0xF3, set sample rate)",
      "10, 20, 40, 60, 80, 100 or 200 report/s",
      "psm(4)",
    ],
    ["#define SAMPLE_RATE 4§0", "40: 40 reports per second (argument of 0xF3, set sample rate)"],
    [
      "#define RESO§LUTION 2",
      "2: 4 counts per millimetre (argument of 0xE8, set resolution)",
      "0, 1, 2 or 3",
      "ADNK-5023 design manual",
    ],
    ["REPLY_ACK§NOWLEDGE = 0xFA", "0xFA from the mouse: acknowledge", "EM84502"],
    ["return reply == REPLY_ACKNOWLEDGE§;", "0xFA from the mouse: acknowledge"],
    ["REPLY_SELF_TEST_PASSED = 0x§AA", "0xAA from the mouse: self-test passed", "followed by the id"],
    ["packet[1] == REPLY_PLAIN§_MOUSE", "0x00: id of a plain mouse, three-byte reports"],
    [
      "#define SELF_TEST§_TIMEOUT_MS 1200",
      "After a reset the mouse is waited for 1200 ms",
      "at least 1000 ms, margin 200 ms",
      "psm(4)",
    ],
    ["PS2_PORT &= ~_BV(PS2_CL§OCK);", "PD2 (pin 2): the PS/2 clock", "INT0 and pin-change interrupt PCINT18"],
    [
      "PS2_PORT &= §~_BV(PS2_CLOCK)",
      "PORTD &= 0xFB",
      "Clears to 0:",
      "`PORTD2` (bit 2)",
      "The other bits stay.",
    ],
    ["PS2_P§ORT |= _BV(PS2_CLOCK)", "PORTD: 8-bit register at 0x2B (port pins)", "`PORTD3` (bit 3)"],
    ["return PS2_PIN & _B§V(PS2_DATA)", "PIND & 0x08", "Looks at:", "`PIND3` (bit 3)", "the PS/2 data line"],
    ["EICRA = _BV(ISC§01)", "EICRA = 0x02", "10 falling"],
    ["EIMSK |= _BV(IN§T0)", "EIMSK |= 0x01", "Sets to 1:", "`INT0` (bit 0): interrupt on pin INT0"],
    ["#define RING§_SIZE 32", "RING_SIZE = 32 = 0x20", "`int`: 16 bits on this chip"],
    ["frame_byte |= 0x§80", "0x80 = 128", "Bit 7 alone."],
    ["(ring_tail + 1) & (RING_SIZE §- 1);\n    return true", "31 = 0x1F"],
  ]);

  hoverTests(scene, "board.h", [
    ["#define PS2_CL§OCK PD2", "PD2 (pin 2): the PS/2 clock"],
    ["#define PS2_DATA P§D3", "PD3 (pin 3): the PS/2 data line", "INT1"],
    ["#define RTS_§BIT PD4", "PD4 (pin 4): RTS of the PC", "PCINT20"],
    [
      "#define PS2_DDR§ DDRD",
      "DDRD: 8-bit register at 0x2A (port pins)",
      "`DDD2` (bit 2): PD2 is an output (the PS/2 clock)",
    ],
  ]);

  hoverTests(scene, "clock.c", [
    ["OCR0A = 2§49;", "OCR0A = 249 (0xF9)"],
    ["TIMSK0 = _BV(OCI§E0A)", "TIMSK0 = 0x02", "`OCIE0A` (bit 1): interrupt at compare match 0A"],
    ["_BV(CS0§1)", "TCCR0B = 0x03", "`CS01` (bit 1)", "`CS00` (bit 0)"],
  ]);

  hoverTests(scene, "main.c", [
    ["#define IDENTI§FICATION", "IDENTIFICATION = 77 = 0x4D"],
    ["#define RETRY§_MS 500", "RETRY_MS = 500 = 0x1F4"],
  ]);

  silenceTests(scene, "ps2.c", [
    "stat§ic volatile uint8_t ring_head",
    "uint8_t ne§xt =",
    "whi§le (clock_is_high()",
    "bool parity = tr§ue;",
    "frame_bit <= §8",
    "\n§\nstatic bool wait_for_clock",
    "/* One bit per fall§ing",
    '#inc§lude "ps2.h"',
    "uint16_t si§nce)\n{\n    while (clock_is_high()",
  ]);
});

describe("hovers in the register-level firmware with faults", () => {
  const scene = sampleScene("ferry-c-faults");

  hoverTests(scene, "ps2.c", [
    [
      "_delay_us(REQUEST§_HOLD_US)",
      "Request to send: the clock is low for 52 us",
      "at least 100 us: 48 us missing",
    ],
    [
      "#define REQUEST_HOLD§_US 52",
      "REQUEST_HOLD_US = 52 us: clock hold before sending",
      "at least 100 us: 48 us missing",
      "Host-to-Device",
    ],
    ["#define REQUEST_HOLD_US 5§2", "REQUEST_HOLD_US = 52 us: clock hold before sending"],
    // 80 us of a 16 MHz clock.
    ["_delay_us(8§0)", "_delay_us waits 80 us", "1280 cycles at 16 MHz"],
    ["_delay_ms(2§0)", "After a reset the mouse is waited for 20 ms", "at least 1000 ms: 980 ms missing"],
    ["command(5§0)", "50: 50 reports per second (argument of 0xF3, set sample rate)", "50 is none of them"],
    ["command(§2)", "2: 4 counts per millimetre (argument of 0xE8, set resolution)"],
  ]);

  hoverTests(scene, "serial.c", [
    // 16 MHz / (16 * 417) = 2398.08 baud: 99.8 % more than 1200. With U2X clear, as the code has it, 16 MHz / (16 *
    // 833) = 1200.48 baud, 0.04 % off; with U2X set 16 MHz / (8 * 1667) = 1199.76 baud, 0.02 % off.
    [
      "#define DIVISOR 4§16",
      "2398.1 baud at 16 MHz",
      "Error +99.8 % per bit, more than a bit over a frame",
      "97.8 % too much",
      "Nearer: 832 with U2X=0, 0.04 % off; 1666 with U2X=1, 0.02 % off.",
    ],
    [
      "_BV(UCSZ01) §| _BV(UCSZ00)",
      "8N1: 8 data bits, no parity bit, one stop bit",
      "UCSR0C = 0x06",
      "10 bit times, 8.33 ms",
      "only if bit 7 of every byte is 1",
    ],
  ]);

  // avr-gcc: 60000 needs more than 16 bits; 60000 - 65536 = -5536.
  hoverTests(scene, "main.c", [
    ["60 §* 1000", "-5536", "Meant is 60000, which `int` cannot hold on this chip."],
  ]);
});
