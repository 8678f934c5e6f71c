import type { Example } from "../../../../src-core/checks/rule.ts";

/**
 * Encoders of `middle-button` that are right, written from its documents:
 * mouse(4), Linux man-pages 6.03: three bytes, and a fourth with bit 5 set while the middle button is down.
 */
export const rightEncoders: Readonly<Record<string, Example>> = {
  "the length returned, three or four": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes middle-button from x=dx y=-dy left=left right=right middle=middle into out
uint8_t build_report(uint8_t out[4], int8_t dx, int8_t dy, bool left, bool right, bool middle) {
  uint8_t x = (uint8_t)dx;
  uint8_t y = (uint8_t)-dy;

  out[0] = 0x40 | (left ? 0x20 : 0) | (right ? 0x10 : 0) | ((y >> 4) & 0x0C) | (x >> 6);
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
  if (!middle) return 3;
  out[3] = 0x20;
  return 4;
}
`,
  },
  "a fourth byte sent while the button is down": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
extern void send_byte(uint8_t byte);
static int8_t clip(int16_t counts) {
  if (counts > 127) return 127;
  if (counts < -127) return -127;
  return (int8_t)counts;
}
// @wire encodes middle-button from x=dx y=-dy left=buttons.0 right=buttons.1 middle=buttons.2 into send_byte
void send_report(int16_t dx, int16_t dy, uint8_t buttons) {
  const uint8_t x = (uint8_t)clip(dx);
  const uint8_t y = (uint8_t)clip(-dy);
  send_byte(0x40 | ((buttons & 1) << 5) | ((buttons & 2) << 3) | ((y & 0xC0) >> 4) | ((x & 0xC0) >> 6));
  send_byte(x & 0x3F);
  send_byte(y & 0x3F);
  if (buttons & 4) {
    send_byte(0x20);
  }
}
`,
  },
  "once more when the button is let go": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <stdbool.h>
static bool was_down;
static void send_byte(uint8_t byte) {
  while (!(UCSR0A & _BV(UDRE0))) {
  }
  UDR0 = byte;
}
// @wire encodes middle-button from x=dx y=dy left=l right=r middle=m into send_byte
void report(int8_t dx, int8_t dy, bool l, bool r, bool m) {
  uint8_t head = _BV(6);
  if (l) head |= _BV(5);
  if (r) head |= _BV(4);
  head |= (dy & 0xC0) >> 4 | (dx & 0xC0) >> 6;
  send_byte(head);
  send_byte(dx & 0x3F);
  send_byte(dy & 0x3F);
  if (m || was_down) send_byte(m ? 0x20 : 0x00);
  was_down = m;
}
`,
  },
  "always four bytes": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes middle-button from x=x y=y left=b.0 right=b.1 middle=b.2 into out
void fill(uint8_t *out, uint8_t x, uint8_t y, uint8_t b) {
  out[0] = 0x40 | (b & 0x01) << 5 | (b & 0x02) << 3 | y >> 6 << 2 | x >> 6;
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
  out[3] = (b & 0x04) << 3;
}
`,
  },
  "a class that remembers the button and the rest": {
    "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
class Crossing {
 public:
  int dx, dy;
  bool left, right, middle;
  uint8_t bytes[4];

  // @wire encodes middle-button from x=dx y=-dy left=left right=right middle=middle into bytes
  uint8_t next() {
    restX += dx;
    restY -= dy;
    const int x = taken(restX);
    const int y = taken(restY);
    uint8_t length = 0;
    bytes[length++] = 0x40 | (left ? 0x20 : 0) | (right ? 0x10 : 0) | (y >> 4 & 0x0C) | (x >> 6 & 0x03);
    bytes[length++] = x & 0x3F;
    bytes[length++] = y & 0x3F;
    if (middle || middleWas) bytes[length++] = middle ? 0x20 : 0;
    middleWas = middle;
    return length;
  }

 private:
  static int taken(int &rest) {
    int now = rest > 127 ? 127 : rest < -127 ? -127 : rest;
    rest -= now;
    return now;
  }
  int restX = 0;
  int restY = 0;
  bool middleWas = false;
};
`,
  },
  "a sketch that writes to the serial port": {
    "main.ino": `
// @wire board atmega328p clock=16MHz
void sendByte(byte value) { Serial.write(value); }
// @wire encodes middle-button from x=dx y=-dy left=left right=right middle=middle into sendByte
void sendReport(int dx, int dy, bool left, bool right, bool middle) {
  dx = constrain(dx, -127, 127);
  dy = constrain(dy, -127, 127);
  byte x = lowByte(dx);
  byte y = lowByte(-dy);
  sendByte(0x40 | (left ? 0x20 : 0) | (right ? 0x10 : 0) | ((y >> 6) << 2) | (x >> 6));
  sendByte(x & 0x3F);
  sendByte(y & 0x3F);
  if (middle) sendByte(0x20);
}
`,
  },
  "a table of masks by byte": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct place {
  uint8_t byte;
  uint8_t mask;
};
static const struct place places[3] = {{0, 0x20}, {0, 0x10}, {3, 0x20}};
struct movement {
  int8_t dx, dy;
  uint8_t buttons;
};
// @wire encodes middle-button from x=m->dx y=-m->dy left=m->buttons.0 right=m->buttons.1 middle=m->buttons.2 into out
void encode(const struct movement *m, uint8_t out[4]) {
  uint8_t y = (uint8_t)(-m->dy);
  out[0] = 0x40 | ((y >> 4) & 0x0C) | (((uint8_t)m->dx >> 6) & 0x03);
  out[1] = m->dx & 0x3F;
  out[2] = y & 0x3F;
  out[3] = 0;
  for (uint8_t i = 0; i < 3; i++) {
    if ((m->buttons >> i) & 1) out[places[i].byte] |= places[i].mask;
  }
}
`,
  },
  "bit fields, and low bits of the fourth byte that nobody reads": {
    "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct Head {
  uint8_t xHigh : 2, yHigh : 2, right : 1, left : 1, mark : 2;
};
union Bytes {
  Head head;
  uint8_t all[4];
};
struct Movement {
  int16_t x, y;
  bool left, right, middle;
};
static uint8_t saturate(int16_t v) { return v > 127 ? 127 : v < -128 ? -128 : v; }
Bytes line;
// @wire encodes middle-button from x=m.x y=m.y left=m.left right=m.right middle=m.middle into line.all
void encode(const Movement &m) {
  const uint8_t x = saturate(m.x), y = saturate(m.y);
  line.head.mark = 1;
  line.head.left = m.left;
  line.head.right = m.right;
  line.head.yHigh = y >> 6;
  line.head.xHigh = x >> 6;
  line.all[1] = x & 0x3F;
  line.all[2] = y & 0x3F;
  line.all[3] = m.middle ? 0x22 : 0x02;
}
`,
  },
  "globals, and two tables for the fourth byte": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
int16_t moved_x, moved_y;
uint8_t left_down, right_down, middle_down;
uint8_t report[4];
static const uint8_t fourth[2] = {0x00, 0x20};
static const uint8_t lengths[2] = {3, 4};
/* @wire encodes middle-button from x=moved_x y=moved_y left=left_down right=right_down middle=middle_down into report */
uint8_t take_report(void) {
  int16_t x = moved_x, y = moved_y;
  if (x < -127) x = -127;
  if (x > 127) x = 127;
  if (y < -127) y = -127;
  if (y > 127) y = 127;
  report[0] = 0x40 | left_down << 5 | right_down << 4 | (y & 0xC0) >> 4 | (x & 0xC0) >> 6;
  report[1] = x & 0x3F;
  report[2] = y & 0x3F;
  report[3] = fourth[middle_down];
  return lengths[middle_down];
}
`,
  },
};
