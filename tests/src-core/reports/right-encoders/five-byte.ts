import type { Example } from "../../../../src-core/checks/rule.ts";

/**
 * Encoders of `five-byte` that are right, written from its documents:
 * mouse(4), Linux man-pages 6.03: table of the five-byte packet, with eight bits of movement as in FreeBSD's mouse(4).
 */
export const rightEncoders: Readonly<Record<string, Example>> = {
  "the second pair is zero": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes five-byte from x=dx y=dy left=left middle=middle right=right into out
void build_report(uint8_t out[5], int8_t dx, int8_t dy, bool left, bool middle, bool right) {
  out[0] = 0x80 | (left ? 0 : 4) | (middle ? 0 : 2) | (right ? 0 : 1);
  out[1] = (uint8_t)dx;
  out[2] = (uint8_t)dy;
  out[3] = 0;
  out[4] = 0;
}
`,
  },
  "what does not fit goes into the second pair": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
static int8_t clip(int16_t value) {
  if (value > 127) return 127;
  if (value < -127) return -127;
  return (int8_t)value;
}
/* @wire encodes five-byte from x=dx y=-dy left=b.0 right=b.1 middle=b.2 into out */
void encode(uint8_t *out, int16_t dx, int16_t dy, uint8_t b) {
  int16_t up = -dy;
  int8_t x = clip(dx);
  int8_t y = clip(up);
  out[0] = 0x87 ^ ((b & 1) << 2 | (b & 4) >> 1 | (b & 2) >> 1);
  out[1] = x;
  out[2] = y;
  out[3] = clip(dx - x);
  out[4] = clip(up - y);
}
`,
  },
  halves: {
    "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
void sendByte(uint8_t byte);
struct Movement {
  int16_t dx, dy;
  bool left, middle, right;
};
static int16_t limited(int16_t value) { return value < -254 ? -254 : value > 254 ? 254 : value; }
// @wire encodes five-byte from x=m.dx y=m.dy left=m.left middle=m.middle right=m.right into sendByte
void sendReport(const Movement &m) {
  const int16_t x = limited(m.dx);
  const int16_t y = limited(m.dy);
  sendByte(0x80 | !m.left << 2 | !m.middle << 1 | !m.right);
  sendByte(x / 2);
  sendByte(y / 2);
  sendByte(x - x / 2);
  sendByte(y - y / 2);
}
`,
  },
  "a sketch with constrain": {
    "main.ino": `
// @wire board atmega328p clock=16MHz
byte report[5];
// @wire encodes five-byte from x=dx y=dy left=left middle=middle right=right into report
void fillReport(int dx, int dy, bool left, bool middle, bool right) {
  report[0] = B10000111;
  if (left) report[0] &= ~B100;
  if (middle) report[0] &= ~B010;
  if (right) report[0] &= ~B001;
  report[1] = constrain(dx, -127, 127);
  report[2] = constrain(dy, -127, 127);
  report[3] = report[4] = 0;
}
`,
  },
  "a class that keeps the rest": {
    "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
class FiveBytes {
 public:
  long dx = 0, dy = 0;
  uint8_t buttons = 0;
  uint8_t bytes[5];

  // @wire encodes five-byte from x=dx y=-dy left=buttons.0 right=buttons.1 middle=buttons.2 into bytes
  void next() {
    restX += dx;
    restY -= dy;
    bytes[0] = 0x80;
    if (!(buttons & 0x01)) bytes[0] |= 0x04;
    if (!(buttons & 0x02)) bytes[0] |= 0x01;
    if (!(buttons & 0x04)) bytes[0] |= 0x02;
    for (uint8_t pair = 0; pair < 2; pair++) {
      bytes[1 + 2 * pair] = take(restX);
      bytes[2 + 2 * pair] = take(restY);
    }
  }

 private:
  long restX = 0, restY = 0;
  static int8_t take(long &rest) {
    const int8_t part = rest > 127 ? 127 : rest < -127 ? -127 : static_cast<int8_t>(rest);
    rest -= part;
    return part;
  }
};
`,
  },
  "a table of heads by button state": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
/* Index: bit 0 left, bit 1 right, bit 2 middle. */
static const uint8_t heads[8] = {0x87, 0x83, 0x86, 0x82, 0x85, 0x81, 0x84, 0x80};
// @wire encodes five-byte from x=x y=y left=state.0 right=state.1 middle=state.2 into out
void from_bytes(uint8_t state, uint8_t x, uint8_t y, uint8_t out[5]) {
  out[0] = heads[state & 7];
  out[1] = x;
  out[2] = y;
  out[3] = 0x00;
  out[4] = 0x00;
}
`,
  },
  "bit fields, active low": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
typedef union {
  struct {
    uint8_t not_right : 1;
    uint8_t not_middle : 1;
    uint8_t not_left : 1;
    uint8_t zero : 4;
    uint8_t one : 1;
  };
  uint8_t byte;
} head_t;
struct movement {
  int16_t x, y;
  uint8_t left, middle, right;
};
static void put(int16_t value, uint8_t *first, uint8_t *second) {
  int16_t rest;
  if (value > 127) {
    *first = 127;
    rest = value - 127;
    *second = rest > 127 ? 127 : rest;
  } else if (value < -127) {
    *first = (uint8_t)-127;
    rest = value + 127;
    *second = rest < -127 ? -127 : rest;
  } else {
    *first = value;
    *second = 0;
  }
}
// @wire encodes five-byte from x=m->x y=m->y left=m->left middle=m->middle right=m->right into out
void pack(const struct movement *m, uint8_t *out) {
  head_t head = {.byte = 0x80};
  head.not_left = !m->left;
  head.not_middle = !m->middle;
  head.not_right = !m->right;
  out[0] = head.byte;
  put(m->x, &out[1], &out[3]);
  put(m->y, &out[2], &out[4]);
}
`,
  },
  "globals, straight to the USART": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <stdbool.h>
volatile int8_t move_x, move_y;
volatile bool left, middle, right;
static void put(uint8_t byte) {
  while ((UCSR0A & (1 << UDRE0)) == 0) {
  }
  UDR0 = byte;
}
/* @wire encodes five-byte from x=move_x y=-move_y left=left middle=middle right=right into put */
void send_report(void) {
  uint8_t up = (uint8_t)left << 2 | (uint8_t)middle << 1 | (uint8_t)right;
  put((~up & 0x07) | 0x80);
  put(move_x);
  put(-move_y);
  put(0);
  put(0);
}
`,
  },
  "a struct by value, clipped by comparisons": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
#define MIN(a, b) ((a) < (b) ? (a) : (b))
#define MAX(a, b) ((a) > (b) ? (a) : (b))
struct travel {
  int across, up;
  unsigned char pressed;
};
// @wire encodes five-byte from x=t.across y=t.up left=t.pressed.0 right=t.pressed.1 middle=t.pressed.2 into out
void encode(struct travel t, unsigned char *out) {
  const signed char x = MAX(-127, MIN(127, t.across));
  const signed char y = MAX(-127, MIN(127, t.up));
  out[0] = 0x80 + (t.pressed & 1 ? 0 : 4) + (t.pressed & 4 ? 0 : 2) + (t.pressed & 2 ? 0 : 1);
  out[1] = x;
  out[2] = y;
  out[3] = 0;
  out[4] = 0;
}
`,
  },
};
