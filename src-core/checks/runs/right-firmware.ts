import type { Example } from "../rule.ts";

const text = `// @wire board atmega328p clock=16MHz
// @wire ps2 clock=2 data=3 pullups=internal
// @wire serial uart=0 rts=4 report=two-button shifter=inverting baud=1200 line=7N1
#define F_CPU 16000000UL
#include <avr/interrupt.h>
#include <avr/io.h>
#include <stdbool.h>
#include <stdint.h>
#include <util/atomic.h>
#include <util/delay.h>

#define CLOCK _BV(PD2)
#define DATA _BV(PD3)
#define RTS _BV(PD4)

enum { RESET = 0xFF, ENABLE_REPORTING = 0xF4, SET_SAMPLE_RATE = 0xF3 };
enum { ACKNOWLEDGE = 0xFA, SEND_AGAIN = 0xFE, SELF_TEST_PASSED = 0xAA, MOUSE_ID = 0x00 };
#define SAMPLE_RATE 40
#define SEND_MS 20
#define REPLY_MS 30
#define SELF_TEST_MS 1200
#define GAP_MS 20

static volatile uint16_t ticks;

ISR(TIMER0_COMPA_vect) {
  ticks++;
}

static uint16_t now_ms(void) {
  uint16_t now;
  ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {
    now = ticks;
  }
  return now;
}

static bool is_over(uint16_t since, uint16_t ms) {
  return (uint16_t)(now_ms() - since) > ms;
}

/* The serial side. */
struct movement {
  int16_t dx, dy;
  uint8_t buttons;
};

static struct movement queue[16];
static uint8_t queue_first, queue_length, sent_buttons;
static uint8_t report[3], report_at = 3;
static bool was_on, asked;

// @wire encodes two-button from x=dx y=-dy left=buttons.0 right=buttons.1 into out
static void build_report(uint8_t out[3], int8_t dx, int8_t dy, uint8_t buttons) {
  uint8_t x = dx, y = -dy;
  out[0] = 0x40 | (buttons & 1 ? 0x20 : 0) | (buttons & 2 ? 0x10 : 0) | ((y >> 4) & 0x0C) | (x >> 6);
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
}

static int8_t clip(int16_t counts) {
  return counts > 127 ? 127 : counts < -127 ? -127 : counts;
}

static bool take_report(void) {
  while (queue_length > 0) {
    struct movement *first = &queue[queue_first];
    int8_t dx = clip(first->dx), dy = clip(first->dy);
    bool is_new = dx != 0 || dy != 0 || first->buttons != sent_buttons;
    sent_buttons = first->buttons;
    if (is_new) build_report(report, dx, dy, sent_buttons);
    first->dx -= dx;
    first->dy -= dy;
    if (first->dx == 0 && first->dy == 0) {
      queue_first = (queue_first + 1) % 16;
      queue_length--;
    }
    if (is_new) return true;
  }
  return false;
}

static void serve_pc(void) {
  bool is_on = !(PIND & RTS);
  if (is_on && !was_on) asked = true;
  was_on = is_on;
  if (!is_on || !(UCSR0A & _BV(UDRE0))) return;
  if (asked) {
    asked = false;
    queue_length = 0;
    sent_buttons = 0;
    report_at = 3;
    UDR0 = 'M';
    return;
  }
  if (report_at == 3 && take_report()) report_at = 0;
  if (report_at < 3) UDR0 = report[report_at++];
}

/* The mouse's side. */
static volatile uint8_t ring[32], ring_head;
static uint8_t ring_tail;
static volatile uint8_t bits, byte, ones;

ISR(INT0_vect) {
  bool bit = PIND & DATA;
  if (bits == 0) {
    if (bit) return;
    byte = ones = 0;
  } else if (bits < 10) {
    if (bits < 9) byte = byte >> 1 | (bit ? 0x80 : 0);
    if (bit) ones++;
  } else {
    if (bit && (ones & 1)) {
      ring[ring_head] = byte;
      ring_head = (ring_head + 1) % 32;
    }
    bits = 0;
    return;
  }
  bits++;
}

static bool wait_for_clock(uint8_t level, uint16_t since) {
  while ((PIND & CLOCK) != level) {
    if (is_over(since, SEND_MS)) return false;
  }
  return true;
}

static void pull_low(uint8_t line) {
  PORTD &= ~line;
  DDRD |= line;
}

static void let_go(uint8_t line) {
  DDRD &= ~line;
  PORTD |= line;
}

static bool send_bit(bool bit, uint16_t since) {
  if (!wait_for_clock(0, since)) return false;
  if (bit) let_go(DATA);
  else pull_low(DATA);
  return wait_for_clock(CLOCK, since);
}

static bool send_bits(uint8_t value) {
  uint16_t since = now_ms();
  bool parity = true;
  for (uint8_t i = 0; i < 8; i++, value >>= 1) {
    if (value & 1) parity = !parity;
    if (!send_bit(value & 1, since)) return false;
  }
  if (!send_bit(parity, since) || !send_bit(true, since)) return false;
  if (!wait_for_clock(0, since) || (PIND & DATA)) return false;
  return wait_for_clock(CLOCK, since);
}

static bool send(uint8_t value) {
  EIMSK &= ~_BV(INT0);
  pull_low(CLOCK);
  _delay_us(120);
  pull_low(DATA);
  let_go(CLOCK);
  bool sent = send_bits(value);
  let_go(DATA);
  bits = 0;
  EIFR = _BV(INTF0);
  EIMSK |= _BV(INT0);
  return sent;
}

static bool receive(uint8_t *value, uint16_t ms) {
  uint16_t since = now_ms();
  while (ring_tail == ring_head) {
    if (is_over(since, ms)) return false;
    serve_pc();
  }
  *value = ring[ring_tail];
  ring_tail = (ring_tail + 1) % 32;
  return true;
}

static bool expect(uint8_t wanted, uint16_t ms) {
  uint8_t reply;
  return receive(&reply, ms) && reply == wanted;
}

static bool command(uint8_t value) {
  for (uint8_t tries = 0; tries < 3; tries++) {
    uint8_t reply;
    if (!send(value) || !receive(&reply, REPLY_MS)) return false;
    if (reply != SEND_AGAIN) return reply == ACKNOWLEDGE;
  }
  return false;
}

static bool set_up(void) {
  ring_tail = ring_head;
  return command(RESET) && expect(SELF_TEST_PASSED, SELF_TEST_MS) && expect(MOUSE_ID, REPLY_MS) &&
         command(SET_SAMPLE_RATE) && command(SAMPLE_RATE) && command(ENABLE_REPORTING);
}

static uint8_t packet[3], packet_length;
static uint16_t packet_time;

/* Adds to the last movement unless the buttons changed; a click must not be lost behind the slow line. */
static void take_packet(void) {
  int16_t dx = packet[1] - (packet[0] & 0x10 ? 256 : 0);
  int16_t dy = packet[2] - (packet[0] & 0x20 ? 256 : 0);
  uint8_t buttons = packet[0] & 3;
  struct movement *last = &queue[(queue_first + queue_length - 1) % 16];
  if (queue_length == 0 || (queue_length < 16 && last->buttons != buttons)) {
    last = &queue[(queue_first + queue_length) % 16];
    last->dx = last->dy = 0;
    queue_length++;
  }
  last->dx += dx;
  last->dy += dy;
  last->buttons = buttons;
}

/* False when the mouse restarted itself and has to be set up again. */
static bool serve_mouse(void) {
  if (packet_length > 0 && is_over(packet_time, GAP_MS)) {
    bool restarted = packet_length == 2 && packet[0] == SELF_TEST_PASSED && packet[1] == MOUSE_ID;
    packet_length = 0;
    if (restarted) return false;
  }
  uint8_t value;
  while (receive(&value, 0)) {
    if (packet_length == 0 && !(value & 0x08)) continue;
    packet_time = now_ms();
    packet[packet_length++] = value;
    if (packet_length < 3) continue;
    packet_length = 0;
    take_packet();
  }
  return true;
}

int main(void) {
  TCCR0A = _BV(WGM01);
  TCCR0B = _BV(CS01) | _BV(CS00);
  OCR0A = 249;
  TIMSK0 = _BV(OCIE0A);
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  let_go(CLOCK);
  let_go(DATA);
  EICRA = _BV(ISC01);
  EIMSK = _BV(INT0);
  sei();
  bool ready = false;
  for (;;) {
    if (!ready) ready = set_up();
    else ready = serve_mouse();
    serve_pc();
  }
}
`;

/** A whole firmware: the mouse's clock on an interrupt, the serial line asked whether it is free, nothing waited for in vain. */
export const rightFirmware: Example = { "main.c": text };

/** The same with one fault. Throws where `right` does not stand in it exactly once. */
export function firmwareWith(right: string, wrong: string): Example {
  const parts = text.split(right);
  if (parts.length !== 2)
    throw new Error(`"${right}" stands ${parts.length - 1} times in the right firmware`);
  return { "main.c": parts.join(wrong) };
}
