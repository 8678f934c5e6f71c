import type { Example } from "../../../../src-core/checks/rule.ts";

/**
 * Encoders of `two-button` that are right, written from its documents:
 * mouse(4), Linux man-pages 6.03: table of the three-byte packet.
 */
export const rightEncoders: Readonly<Record<string, Example>> = {
  "shifts and masks of 8-bit parameters": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes two-button from x=dx y=-dy left=left right=right into out
void build_report(uint8_t out[3], int8_t dx, int8_t dy, uint8_t left, uint8_t right) {
  uint8_t y = (uint8_t)-dy;

  out[0] = 0x40 | (left << 5) | (right << 4) | ((y >> 4) & 0x0C) | ((uint8_t)dx >> 6);
  out[1] = dx & 0x3F;
  out[2] = y & 0x3F;
}
`,
  },
  "ternaries, clipped by macros": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
#define MIN(a, b) ((a) < (b) ? (a) : (b))
#define MAX(a, b) ((a) > (b) ? (a) : (b))
#define CLIP(v) MAX(-128, MIN(127, (v)))
/* @wire encodes two-button from x=dx y=dy left=lb right=rb into report */
void pack(int dx, int dy, bool lb, bool rb, uint8_t *report) {
  int x = CLIP(dx);
  int y = CLIP(dy);
  report[0] = 0x40 + (lb ? 0x20 : 0x00) + (rb ? 0x10 : 0x00) + ((y & 0xC0) >> 4) + ((x & 0xC0) >> 6);
  report[1] = x & 0x3F;
  report[2] = y & 0x3F;
}
`,
  },
  "bit fields behind a union": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
typedef union {
  struct {
    uint8_t x_high : 2;
    uint8_t y_high : 2;
    uint8_t right : 1;
    uint8_t left : 1;
    uint8_t first : 1;
    uint8_t unused : 1;
  } bits;
  uint8_t byte;
} head_t;
// @wire encodes two-button from x=dx y=-dy left=buttons.0 right=buttons.1 into out
void build(uint8_t buttons, int8_t dx, int8_t dy, uint8_t *out) {
  uint8_t x = dx;
  uint8_t y = -dy;
  head_t head;
  head.byte = 0;
  head.bits.first = 1;
  head.bits.left = buttons & 1;
  head.bits.right = (buttons >> 1) & 1;
  head.bits.x_high = x >> 6;
  head.bits.y_high = y >> 6;
  out[0] = head.byte;
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
}
`,
  },
  "a class with movement and report as members": {
    "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
class Ferry {
 public:
  int16_t dx = 0;
  int16_t dy = 0;
  bool left = false;
  bool right = false;
  uint8_t report[3];

  // @wire encodes two-button from x=dx y=-dy left=left right=right into report
  void build() {
    const uint8_t x = saturated(dx);
    const uint8_t y = saturated(-dy);
    report[0] = 0x40 | left << 5 | right << 4 | (y & 0xC0) >> 4 | (x & 0xC0) >> 6;
    report[1] = x & 0x3F;
    report[2] = y & 0x3F;
  }

 private:
  static int8_t saturated(int16_t counts) {
    if (counts > 127) return 127;
    if (counts < -127) return -127;
    return counts;
  }
};
`,
  },
  "byte by byte through a function that is elsewhere": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
void send_byte(uint8_t byte);
// @wire encodes two-button from x=dx y=-dy left=left right=right into send_byte
void send_report(int16_t dx, int16_t dy, bool left, bool right) {
  uint8_t head = 0x40;
  dy = -dy;
  if (dx > 127) {
    dx = 127;
  } else if (dx < -128) {
    dx = -128;
  }
  if (dy > 127) {
    dy = 127;
  } else if (dy < -128) {
    dy = -128;
  }
  if (left) head |= 0x20;
  if (right) head |= 0x10;
  head |= (dy >> 4) & 0x0C;
  head |= (dx >> 6) & 0x03;
  send_byte(head);
  send_byte(dx & 0x3F);
  send_byte(dy & 0x3F);
}
`,
  },
  "straight to the USART, from long counts": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <stdbool.h>
static long limit(long value, long most) {
  return value > most ? most : value < -most ? -most : value;
}
static void send_byte(uint8_t byte) {
  while (!(UCSR0A & (1 << UDRE0))) {
  }
  UDR0 = byte;
}
// @wire encodes two-button from x=right_counts y=down_counts left=press into send_byte
void send_travel(long right_counts, long down_counts, bool press) {
  const long x = limit(right_counts, 127);
  const long y = limit(down_counts, 127);
  send_byte(0x40 | (press ? 1 << 5 : 0) | ((y >> 6) & 3) << 2 | ((x >> 6) & 3));
  send_byte(x & 0x3F);
  send_byte(y & 0x3F);
}
`,
  },
  "a table of button masks": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
static const uint8_t masks[2] = {0x20, 0x10};
// @wire encodes two-button from x=dx y=dy left=b.0 right=b.1 into out
void encode(uint8_t out[], uint8_t b, int8_t dx, int8_t dy) {
  out[0] = 0x40;
  for (uint8_t i = 0; i < 2; i++) {
    if (b & (1 << i)) out[0] |= masks[i];
  }
  out[0] |= ((uint8_t)dy & 0xC0) >> 4;
  out[0] |= ((uint8_t)dx & 0xC0) >> 6;
  out[1] = dx & 0x3F;
  out[2] = dy & 0x3F;
}
`,
  },
  "a struct by pointer, the rest kept for the next report": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
struct movement {
  int16_t dx;
  int16_t dy;
  bool left;
  bool right;
};
static int16_t clipped(int16_t value) {
  if (value > 127) return 127;
  if (value < -127) return -127;
  return value;
}
// @wire encodes two-button from x=m->dx y=-m->dy left=m->left right=m->right into out
void next_report(const struct movement *m, uint8_t *out) {
  static int16_t rest_x;
  static int16_t rest_y;
  int16_t x;
  int16_t y;
  rest_x += m->dx;
  rest_y -= m->dy;
  x = clipped(rest_x);
  y = clipped(rest_y);
  rest_x -= x;
  rest_y -= y;
  *out++ = 0x40 | (m->left ? 0x20 : 0) | (m->right ? 0x10 : 0) | ((y >> 4) & 0x0C) | ((x >> 6) & 0x03);
  *out++ = x & 0x3F;
  *out = y & 0x3F;
}
`,
  },
  "a sketch with constrain and a struct by reference": {
    "main.ino": `
// @wire board atmega328p clock=16MHz
struct Movement {
  int dx, dy;
  byte buttons;
};
// @wire encodes two-button from x=m.dx y=-m.dy left=m.buttons.0 right=m.buttons.1 into report
void buildReport(const Movement &m, byte report[3]) {
  int8_t x = constrain(m.dx, -127, 127);
  int8_t y = constrain(-m.dy, -127, 127);
  report[0] = 0x40;
  bitWrite(report[0], 5, bitRead(m.buttons, 0));
  bitWrite(report[0], 4, bitRead(m.buttons, 1));
  report[0] |= (y & 0xC0) >> 4;
  report[0] |= (x & 0xC0) >> 6;
  report[1] = x & 0x3F;
  report[2] = y & 0x3F;
}
`,
  },
  "globals in and out": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
volatile int8_t delta_x;
volatile int8_t delta_y;
volatile uint8_t buttons;
uint8_t packet[3];
/* @wire encodes two-button from x=delta_x y=-delta_y left=buttons.0 right=buttons.1 into packet */
void make_packet(void) {
  uint8_t x = (uint8_t)delta_x;
  uint8_t y = (uint8_t)(0 - delta_y);
  packet[0] = 0x40;
  packet[0] |= (buttons & 0x01) << 5;
  packet[0] |= (buttons & 0x02) << 3;
  packet[0] |= (y >> 6) << 2;
  packet[0] |= x >> 6;
  packet[1] = x & 0x3F;
  packet[2] = y & 0x3F;
}
`,
  },
  "bytes that hold two's complement": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes two-button from x=x y=y left=left right=right into out
void from_bytes(uint8_t x, uint8_t y, uint8_t left, uint8_t right, uint8_t out[3]) {
  out[2] = y & ~0xC0;
  out[1] = x % 64;
  out[0] = 64 + left * 32 + right * 16 + y / 64 * 4 + x / 64;
}
`,
  },
  "an eighth bit that is not on the line": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
void uart_put(uint8_t byte);
static uint8_t marked(uint8_t low_bits) { return 0x80 | low_bits; }
// @wire encodes two-button from x=dx y=-dy left=left right=right into uart_put
void report(int8_t dx, int8_t dy, bool left, bool right) {
  uint8_t x = dx, y = -dy;
  uart_put(marked(0x40 | left << 5 | right << 4 | (y >> 6) << 2 | x >> 6));
  uart_put(marked(x & 0x3F));
  uart_put(marked(y & 0x3F));
}
`,
  },
  "a struct by value that is filled and given back": {
    "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct Travel {
  int16_t right, down;
  uint8_t pressed;
};
struct Report {
  uint8_t bytes[3];
};
Report line;
static inline int16_t within(int16_t low, int16_t value, int16_t high) {
  return value < low ? low : (value > high ? high : value);
}
// @wire encodes two-button from x=t.right y=t.down left=t.pressed.0 right=t.pressed.1 into line.bytes
void encode(Travel t) {
  t.right = within(-128, t.right, 127);
  t.down = within(-128, t.down, 127);
  line = {{static_cast<uint8_t>(0x40 | (t.pressed & 1) << 5 | (t.pressed & 2) << 3 | (t.down & 0xC0) >> 4 |
                                (t.right & 0xC0) >> 6),
           static_cast<uint8_t>(t.right & 0x3F), static_cast<uint8_t>(t.down & 0x3F)}};
}
`,
  },
};
