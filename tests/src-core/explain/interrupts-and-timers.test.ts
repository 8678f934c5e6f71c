import { describe } from "vitest";
import { hoverTests, sceneOf } from "./scene.ts";

const board = `{ "board": { "chip": "atmega328p", "clock": "16MHz" },
  "wires": { "ps2": { "clock": "PD2", "data": "PD3" }, "serial": { "uart": 0, "report": "two-button" } } }`;

describe("interrupt handlers", () => {
  // ATmega328P datasheet DS40002061A: Table 13-1 (sense of INT0), 13.2.6 (PCMSK), 20.11 (USART vectors). The mouse's
  // clock: kernel driver ps2-gpio, 60 to 100 us from one falling edge to the next; 60 us are 960 cycles at 16 MHz.
  const scene = sceneOf({
    "edgewise.json": board,
    "main.c": `#include <avr/io.h>
#include <avr/interrupt.h>
volatile uint8_t bits, changes, ticks;
ISR(INT0_vect) { if (PIND & _BV(PD3)) bits++; }
ISR(PCINT2_vect) { changes++; }
ISR(TIMER1_COMPA_vect) { ticks++; }
ISR(USART_RX_vect) { bits = UDR0; }
ISR(USART_UDRE_vect) { UDR0 = 'M'; UCSR0B &= ~_BV(UDRIE0); }
int main(void) {
  EICRA = _BV(ISC01);
  EIMSK = _BV(INT0);
  PCMSK2 = _BV(PCINT20);
  PCICR = _BV(PCIE2);
  TCCR1A = 0;
  TCCR1B = _BV(WGM12) | _BV(CS11);
  OCR1A = 1666;
  TIMSK1 = _BV(OCIE1A);
  TCCR0B = 0x03;
  TCCR2A = _BV(WGM21);
  TCCR2B = _BV(CS22);
  OCR2A = 0x7C;
  sei();
  for (;;) ;
}
`,
  });
  hoverTests(scene, "main.c", [
    [
      "ISR(INT§0_vect)",
      "INT0_vect: interrupt of PD2 (pin 2), the PS/2 clock at its falling edge",
      "60 us later, 960 cycles at 16 MHz",
    ],
    ["ISR(PCIN§T2_vect)", "PCINT2_vect: any change of PD4 (pin 4)", "falling and rising edges alike"],
    // (1666 + 1) x 8 / 16 MHz = 833.5 us; a bit at 1200 baud is 833.33 us.
    [
      "ISR(TIMER1_§COMPA_vect)",
      "TIMER1_COMPA_vect: compare match A of timer 1",
      "every 833.5 us at 16 MHz",
      "0.02 % longer",
    ],
    ["ISR(USART_§RX_vect)", "USART_RX_vect: a byte has come in at UART 0"],
    ["ISR(USART_§UDRE_vect)", "USART_UDRE_vect: UART 0 can take the next byte", "833.3 us"],
    [
      "OCR1A = 1§666",
      "OCR1A = 1666 (0x0682)",
      "Timer 1 counts the chip's clock divided by 8 from 0 to 1666 (`OCR1A`) and starts again",
    ],
    ["TCC§R1B", "TCCR1B: 8-bit register at 0x81 (timer 1)", "every 833.5 us"],
    // Normal mode: 256 x 64 / 16 MHz = 1024 us.
    ["TCCR0B = 0x§03", "TCCR0B = 0x03", "from 0 to 255 and starts again: every 1024 us"],
    // Timer 2 has another prescaler: CS22 alone is 64. (124 + 1) x 64 / 16 MHz = 500 us.
    [
      "OCR2A = 0x§7C",
      "OCR2A = 124 (0x7C)",
      "divided by 64 from 0 to 124 (`OCR2A`) and starts again: every 500 us",
    ],
  ]);
});

describe("handlers of the sketch core", () => {
  const scene = sceneOf({
    "mouse.ino": `// @wire board atmega328p clock=16MHz
// @wire ps2 clock=3 data=5 pullups=internal
volatile byte seen;
void clockFell() { seen++; }
void setup() { attachInterrupt(digitalPinToInterrupt(3), clockFell, FALLING); }
void loop() {}
`,
  });
  hoverTests(scene, "mouse.ino", [
    [
      "void clock§Fell",
      "clockFell: interrupt of PD3 (pin 3), the PS/2 clock at its falling edge",
      "60 us later, 960 cycles",
    ],
  ]);
});
