import { describe } from "vitest";
import { hoverTests, sceneOf, silenceTests } from "./scene.ts";

const board = `{ "board": { "chip": "atmega328p", "clock": "16MHz" },
  "wires": { "ps2": { "clock": "PD2", "data": "PD3" }, "serial": { "uart": 0, "report": "two-button" } } }`;

describe("bytes for the mouse, and what it answers", () => {
  // Codes: EM84502 data sheet, section E (commands), D (resend, error); ids and knocks: HT82M35X data sheet, p. 3, and
  // the Linux kernel's input/sentelic text, section A; counts per millimetre: ADNK-5023 design manual, p. 9.
  const scene = sceneOf({
    "edgewise.json": board,
    "main.c": `#include <avr/io.h>
#include <util/delay.h>
#define ENABLE 0xF4
enum command { RESET = 0xFF, DEFAULTS = 0xF6 };
static const uint8_t rate = 0xF3;
static const uint8_t knock[] = { 0xF3, 200, 0xF3, 200, 0xF3, 80, 0xF2 };
#define HOLD 70
static const uint16_t extra = 20;
#define LINES_LOW() DDRD |= 1 << PD2
static void ps2_send(uint8_t value) {
  LINES_LOW();
  _delay_us(HOLD + extra);
  DDRD |= (1 << PD3);
  DDRD &= ~(1 << 2);
}
uint8_t ps2_read(void);
void set_up_mouse(void) {
  ps2_send(RESET);
  if (ps2_read() != 0xFA) return;
  while (ps2_read() == 0xFC) ;
  for (uint8_t i = 0; i < sizeof knock; i++) ps2_send(knock[i]);
  uint8_t id = ps2_read();
  switch (id) {
    case 4: break;
    case 0xFE: return;
  }
  ps2_send(rate);
  ps2_send(60);
  ps2_send(0xE8);
  ps2_send(3);
  ps2_send(0xE8);
  ps2_send(7);
  ps2_send(ENABLE);
}
int main(void) {
  uint8_t count = 3;
  set_up_mouse();
  for (;;) if (count == 4) count = 0;
}
`,
  });
  hoverTests(scene, "main.c", [
    ["#define ENABLE 0§xF4", "0xF4: enable reporting", "acknowledge (0xFA)"],
    ["ps2_send(ENA§BLE)", "0xF4: enable reporting"],
    ["enum command { RE§SET", "0xFF: reset", "self-test passed (0xAA)"],
    ["RESET = 0x§FF,", "0xFF: reset"],
    ["DEFA§ULTS", "DEFAULTS = 246 = 0xF6"],
    ["uint8_t ra§te = 0xF3", "0xF3: set sample rate"],
    ["rate = 0x§F3;", "0xF3: set sample rate"],
    ["{ 0x§F3, 200,", "0xF3: set sample rate", "Part of the sequence 200, 200, 80", "gives id 4"],
    ["200, 0xF3, 8§0,", "80: 80 reports per second (argument of 0xF3, set sample rate)", "200, 200, 80"],
    ["80, 0xF§2 }", "0xF2: get device id"],
    ["ps2_send(6§0)", "60: 60 reports per second (argument of 0xF3, set sample rate)"],
    ["ps2_send(§3)", "3: 8 counts per millimetre (argument of 0xE8, set resolution)"],
    ["ps2_send(§7)", "7: no resolution (argument of 0xE8, set resolution)", "7 is none of them"],
    ["ps2_read() != 0xF§A", "0xFA from the mouse: acknowledge"],
    ["ps2_read() == 0xF§C", "0xFC from the mouse: error", "self-test that failed"],
    ["case §4:", "0x04: id of a mouse with five buttons and a wheel, four-byte reports"],
    ["case 0xF§E:", "0xFE from the mouse: resend request", "send the byte again"],
    // 70 + 20 = 90 us, ten less than The PS/2 Mouse/Keyboard Protocol asks for.
    ["_delay_us(HOLD §+ extra)", "Request to send: the clock is low for 90 us", "10 us missing"],
    ["#define HOLD 7§0", "Request to send: the clock is low for 90 us"],
    ["uint16_t ext§ra = 20", "Request to send: the clock is low for 90 us"],
    ["(1 << PD§3)", "PD3 (pin 3): the PS/2 data line"],
    ["~(1 << §2)", "PD2 (pin 2): the PS/2 clock"],
  ]);
  silenceTests(scene, "main.c", [
    "uint8_t co§unt = 3",
    "uint8_t count = §3",
    "count == §4",
    "uint8_t §id =",
    "kno§ck[] =",
  ]);
});

describe("registers and rates", () => {
  // ATmega48A/.../328P datasheet, Table 20-1 and the register descriptions; avr-libc, avr/iom328p.h.
  const scene = sceneOf({
    "edgewise.json": board,
    "main.c": `#include <avr/io.h>
#include <util/delay.h>
#include <util/delay_basic.h>
int main(void) {
  UBRR0H = (F_CPU / 16 / 2400 - 1) >> 8;
  UBRR0L = (F_CPU / 16 / 2400 - 1) & 0xFF;
  UCSR0C = (1 << UCSZ01) | (1 << UPM01) | (1 << USBS0);
  UCSR0B = 1 << TXEN0 | 1 << RXCIE0;
  TCCR1B = (1 << WGM12) | (1 << CS11);
  OCR1A = 1999;
  PORTB ^= 1 << PB5;
  TCCR2A &= ~(1 << WGM20);
  _delay_loop_2(1000);
  _delay_ms(12.5);
  for (;;) if (UCSR0A & (1 << UDRE0)) UDR0 = 'M';
}
`,
  });
  hoverTests(scene, "main.c", [
    // 16 MHz / 16 / 2400 - 1 = 415 in integers: 16 MHz / (16 * 416) = 2403.8 baud; the PC listens at 1200.
    ["UBRR0L = (F_CPU / 16 / 24§00", "2403.8 baud at 16 MHz", "UBRR = 415", "Wanted: 1200 baud"],
    ["UBRR0H = (F_CPU / 16 / 24§00", "2403.8 baud at 16 MHz"],
    ["UBRR§0H = ", "2403.8 baud at 16 MHz"],
    ["UBRR0H = (F_§CPU", "F_CPU: the chip's clock, 16 MHz"],
    // UCSZ = 2 (seven bits), UPM = 2 (even), USBS = 1: 1 + 7 + 1 + 2 = 11 bits.
    [
      "(1 << UPM0§1)",
      "7E2: 7 data bits, even parity, two stop bits",
      "UCSR0C = 0x2C. Bits that are 1: `UPM01` (bit 5), `USBS0` (bit 3), `UCSZ01` (bit 2).",
      "11 bit times",
      "it cannot read this",
    ],
    [
      "1 << RXC§IE0",
      "UCSR0B = 0x88",
      "`RXCIE0` (bit 7): interrupt when a byte has come in",
      "`TXEN0` (bit 3)",
    ],
    ["TCC§R1B =", "TCCR1B: 8-bit register at 0x81 (timer 1)", "`CS12` (bit 2)"],
    ["(1 << CS1§1)", "TCCR1B = 0x0A", "`WGM12` (bit 3)", "`CS11` (bit 1)"],
    ["OCR1A = 19§99", "OCR1A = 1999 (0x07CF)"],
    ["OC§R1A = 1999", "OCR1A: 16-bit register at 0x88 (timer 1)"],
    ["PORTB ^§= 1 << PB5", "PORTB ^= 0x20", "Turns over:", "`PORTB5` (bit 5)"],
    ["1 << PB§5;", "PB5 (pin 13)", "PCINT5"],
    ["TCCR2A &= §~(1 << WGM20)", "TCCR2A &= 0xFE", "Clears to 0:", "`WGM20` (bit 0)"],
    // Four cycles a turn (avr-libc, util/delay_basic.h): 4000 cycles are 250 us at 16 MHz.
    ["_delay_loop_2(1§000)", "_delay_loop_2 waits 4000 cycles", "250 us at 16 MHz"],
    ["_delay_ms(12§.5)", "_delay_ms waits 12.5 ms", "200000 cycles at 16 MHz"],
    ["UCSR0A & (1 << UD§RE0)", "UCSR0A & 0x20", "Looks at:", "`UDRE0` (bit 5)"],
    ["UDR0 = '§M'", "UDR0 = 77 (0x4D)"],
  ]);
  silenceTests(scene, "main.c", ["f§or (;;) if", "int ma§in(void)", "#include <util/del§ay.h>"]);
});

describe("a sketch", () => {
  const scene = sceneOf({
    "ferry.ino": `// @wire board atmega328p clock=16MHz
// @wire ps2 clock=2 data=3
#include <SoftwareSerial.h>
#define PS2_CLOCK 2
const int DATA = 3;
#define HOLD_US 120
// @wire means ps2.inhibit-hold
const unsigned int QUIET_US = 130;
enum { /* @wire means ps2.sample-delay */ SAMPLE_US = 15 };
SoftwareSerial pc(8, 9);
void send(byte value) {
  pinMode(PS2_CLOCK, OUTPUT);
  digitalWrite(PS2_CLOCK, LOW);
  delayMicroseconds(HOLD_US);
  pinMode(DATA, OUTPUT);
  digitalWrite(DATA, LOW);
  pinMode(PS2_CLOCK, INPUT_PULLUP);
}
int answer();
void setup() {
  Serial.begin(9600);
  pc.begin(1200);
  delay(500);
  send(0xEA);
  send(0xF4);
  if (answer() == 0xFA) pc.write('M');
}
void loop() {
  delayMicroseconds(QUIET_US);
  delayMicroseconds(SAMPLE_US);
}
`,
  });
  hoverTests(scene, "ferry.ino", [
    ["delayMicroseconds(HOLD§_US)", "Request to send: the clock is low for 120 us", "margin 20 us"],
    ["#define HOLD§_US 120", "Request to send: the clock is low for 120 us"],
    ["#define HOLD_US 1§20", "Request to send: the clock is low for 120 us"],
    ["delayMicro§seconds(HOLD_US)", "Request to send: the clock is low for 120 us"],
    ["#define PS2_CLO§CK 2", "PD2 (pin 2): the PS/2 clock", "INT0"],
    ["digitalWrite(DA§TA, LOW)", "PD3 (pin 3): the PS/2 data line"],
    // ATmega328P datasheet, Examples of UBRRn Settings: 9600 baud at 16 MHz, U2X = 1: 207, 0.2 %.
    [
      "Serial.begin(96§00)",
      "9615.4 baud at 16 MHz",
      "UBRR = 207",
      "Error +0.16 %",
      "No divisor comes nearer.",
    ],
    ["pc.begin(12§00)", "1200 baud", "833.3 us", "by the program itself"],
    ["delay(5§00)", "delay waits 500 ms"],
    ["send(0xE§A)", "0xEA: set stream mode"],
    ["answer() == 0xF§A", "0xFA from the mouse: acknowledge"],
    [
      "delayMicroseconds(QUIET§_US)",
      "QUIET_US = 130 us: clock hold to keep the mouse quiet",
      "at least 100 us, margin 30 us",
      "Device-to-Host",
    ],
    ["const unsigned int QUIET_US = 1§30", "QUIET_US = 130 us: clock hold to keep the mouse quiet"],
    [
      "delayMicroseconds(SAMPLE§_US)",
      "SAMPLE_US = 15 us: host samples after the falling edge",
      "at most 25 us, margin 10 us",
    ],
  ]);
  silenceTests(scene, "ferry.ino", [
    "digitalWrite(DATA, L§OW)",
    "pinMode(PS2_CLOCK, INPUT§_PULLUP)",
    "byte val§ue)",
    "vo§id setup()",
  ]);
});

describe("what is not known is not made up", () => {
  const noClock = sceneOf({
    "main.c": `// @wire board atmega328p
#include <avr/io.h>
#include <util/delay_basic.h>
int main(void) {
  UBRR0 = 51;
  _delay_loop_1(10);
}
`,
  });
  hoverTests(noClock, "main.c", [
    ["UBRR0 = 5§1", "Divisor 51", "clock is not known"],
    ["_delay_loop_1(1§0)", "_delay_loop_1 waits 30 cycles", "clock is not known"],
  ]);
  const noChip = sceneOf({
    "main.c": `int level(void);
#define LIMIT 0x20
int wait(int hold) {
  if (level() == 0xFA) return hold;
  return missing(LIMIT) + 0x10;
}
`,
  });
  hoverTests(noChip, "main.c", [
    // No PS/2 side is known: FA is a number like others.
    ["level() == 0xF§A", "0xFA = 250", "Bits that are 1: 7, 6, 5, 4, 3, 1."],
    ["missing(LIM§IT)", "LIMIT = 32 = 0x20"],
  ]);
  silenceTests(noChip, "main.c", ["return ho§ld;", "int le§vel(void)", "miss§ing(LIMIT)"]);
});
