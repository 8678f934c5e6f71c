import type { Snippets } from "../../harness.ts";

/**
 * Each wrong one lets a movement wrap that is longer than the layout carries.
 * The layouts are those of mouse(4) (Linux man-pages), sermouse.c, psm(4) (FreeBSD), the HT82M35X data sheet and
 * input/sentelic (Linux kernel).
 */
export const clipMissingSnippets: Snippets = {
  wrong: {
    "two-button: x of sixteen bits as it is": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes two-button from x=dx y=-dy left=left right=right into out
void build_report(uint8_t out[3], int16_t dx, int8_t dy, bool left, bool right) {
  uint8_t x = (uint8_t)dx;
  uint8_t y = (uint8_t)-dy;
  out[0] = 0x40 | (left ? 0x20 : 0) | (right ? 0x10 : 0) | ((y >> 4) & 0x0C) | (x >> 6);
  out[1] = x & 0x3F;
  //       ^^^^^^^^ report/clip-missing
  out[2] = y & 0x3F;
}
`,
    },
    "two-button: y is clipped upwards only": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
void send_byte(uint8_t byte);
// @wire encodes two-button from x=dx y=dy left=b.0 right=b.1 into send_byte
void send_report(int16_t dx, int16_t dy, uint8_t b) {
  if (dx > 127) dx = 127;
  if (dx < -127) dx = -127;
  if (dy > 127) dy = 127;
  send_byte(0x40 | (b & 1) << 5 | (b & 2) << 3 | (dy & 0xC0) >> 4 | (dx & 0xC0) >> 6);
  send_byte(dx & 0x3F);
  send_byte(dy & 0x3F);
  //        ^^^^^^^^^ report/clip-missing
}
`,
    },
    "two-button: narrowed first, clipped afterwards": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct Movement {
  int16_t dx, dy;
  bool left, right;
};
static int8_t clip(int16_t v) { return v > 127 ? 127 : v < -127 ? -127 : v; }
// @wire encodes two-button from x=m.dx y=m.dy left=m.left right=m.right into out
void encode(const Movement &m, uint8_t *out) {
  const int8_t narrow = m.dx;
  const uint8_t x = clip(narrow);
  const uint8_t y = clip(m.dy);
  out[0] = 0x40 | m.left << 5 | m.right << 4 | (y >> 6) << 2 | x >> 6;
  out[1] = x & 0x3F;
  //       ^^^^^^^^ report/clip-missing
  out[2] = y & 0x3F;
}
`,
    },
    "middle-button: clipped to what a PS/2 packet holds": {
      "main.ino": `
// @wire board atmega328p clock=16MHz
void sendByte(byte value) { Serial.write(value); }
// @wire encodes middle-button from x=dx y=-dy left=left right=right middle=middle into sendByte
void sendReport(int dx, int dy, bool left, bool right, bool middle) {
  int x = constrain(dx, -255, 255);
  int y = -constrain(dy, -127, 127);
  sendByte(0x40 | (left << 5) | (right << 4) | ((y >> 4) & 0x0C) | ((x >> 6) & 0x03));
  sendByte(x & 0x3F);
  //       ^^^^^^^^ report/clip-missing
  sendByte(y & 0x3F);
  if (middle) sendByte(0x20);
}
`,
    },
    "wheel: sixteen bits of wheel in four": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes wheel from x=dx y=-dy wheel=dz left=l right=r middle=m into out
void encode(uint8_t *out, int8_t dx, int8_t dy, int16_t dz, bool l, bool r, bool m) {
  uint8_t y = -dy;
  out[0] = 0x40 | l << 5 | r << 4 | (y & 0xC0) >> 4 | (dx & 0xC0) >> 6;
  out[1] = dx & 0x3F;
  out[2] = y & 0x3F;
  out[3] = m << 4 | (dz & 0x0F);
  //                 ^^^^^^^^^ report/clip-missing
}
`,
    },
    "wheel: y forgotten in a class that clips the rest": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
class Report {
 public:
  int dx, dy, wheel;
  uint8_t buttons;
  uint8_t bytes[4];

  // @wire encodes wheel from x=dx y=-dy wheel=wheel left=buttons.0 right=buttons.1 middle=buttons.2 into bytes
  void build() {
    const int x = within(-127, dx, 127);
    const int y = -dy;
    const int z = within(-8, wheel, 7);
    bytes[0] = 0x40 | (buttons & 1) << 5 | (buttons & 2) << 3 | (y & 0xC0) >> 4 | (x & 0xC0) >> 6;
    bytes[1] = x & 0x3F;
    bytes[2] = y & 0x3F;
    //         ^^^^^^^^ report/clip-missing
    bytes[3] = (buttons & 4) << 2 | (z & 0x0F);
  }

 private:
  static int within(int low, int value, int high) { return value < low ? low : value > high ? high : value; }
};
`,
    },
    "five-byte: a cast is no clipping": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
#define LIMIT(v) ((v) > 127 ? 127 : (v) < -127 ? -127 : (v))
// @wire encodes five-byte from x=dx y=dy left=left middle=middle right=right into out
void build_report(uint8_t out[5], int dx, int dy, bool left, bool middle, bool right) {
  out[0] = 0x80 | (left ? 0 : 4) | (middle ? 0 : 2) | (right ? 0 : 1);
  out[1] = (int8_t)dx;
  //       ^^^^^^^^^^ report/clip-missing
  out[2] = LIMIT(dy);
  out[3] = 0;
  out[4] = 0;
}
`,
    },
    "ps2-standard: x longer than nine bits": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct movement {
  int16_t dx;
  int8_t dy;
  uint8_t buttons;
};
/* @wire encodes ps2-standard from x=m->dx y=m->dy left=m->buttons.0 right=m->buttons.1 middle=m->buttons.2 into out */
void encode(const struct movement *m, uint8_t *out) {
  out[0] = 0x08 | (m->buttons & 7) | (m->dx < 0 ? 0x10 : 0) | (m->dy < 0 ? 0x20 : 0);
  out[1] = (uint8_t)m->dx;
  //       ^^^^^^^^^^^^^^ report/clip-missing
  out[2] = m->dy;
}
`,
    },
    "ps2-wheel: the limit is one power of two too high": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
void ps2_write(uint8_t byte);
static int16_t clip(int16_t value, int16_t most) {
  if (value > most) return most;
  if (value < -most) return -most;
  return value;
}
// @wire encodes ps2-wheel from x=dx y=-dy wheel=dz left=b.0 right=b.1 middle=b.2 into ps2_write
void send_packet(int16_t dx, int16_t dy, int8_t dz, uint8_t b) {
  int16_t x = clip(dx, 255);
  int16_t y = clip(-dy, 511);
  ps2_write(0x08 | (b & 7) | (x < 0 ? 0x10 : 0) | (y < 0 ? 0x20 : 0));
  ps2_write(x);
  ps2_write(y);
  //        ^ report/clip-missing
  ps2_write(dz);
}
`,
    },
    "ps2-wheel: a wheel of sixteen bits in a byte": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
int8_t moved_x, moved_y;
int turned;
bool left, right, middle;
uint8_t packet[4];
// @wire encodes ps2-wheel from x=moved_x y=moved_y wheel=turned left=left right=right middle=middle into packet
void make_packet(void) {
  packet[0] = 0x08 | left | right << 1 | middle << 2 | (moved_x < 0) << 4 | (moved_y < 0) << 5;
  packet[1] = moved_x;
  packet[2] = moved_y;
  packet[3] = (uint8_t)turned;
  //          ^^^^^^^^^^^^^^^ report/clip-missing
}
`,
    },
    "ps2-five-button: a wheel clipped to five bits": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes ps2-five-button from x=dx y=dy wheel=dz left=b.0 right=b.1 middle=b.2 button4=b.3 button5=b.4 into out
void encode(uint8_t *out, int8_t dx, int8_t dy, int16_t dz, uint8_t b) {
  int8_t z = dz > 15 ? 15 : dz < -16 ? -16 : dz;
  out[0] = 0x08 | (b & 7) | (dx < 0) << 4 | (dy < 0) << 5;
  out[1] = dx;
  out[2] = dy;
  out[3] = (b & 0x18) << 1 | (z & 0x0F);
  //                          ^^^^^^^^ report/clip-missing
}
`,
    },
  },
  right: {
    "two-button: eight bits need no clipping": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes two-button from x=dx y=dy left=left right=right into out
void encode(uint8_t *out, int8_t dx, int8_t dy, bool left, bool right) {
  int x = dx;
  int y = dy;
  out[0] = 0x40 | left << 5 | right << 4 | (y & 0xC0) >> 4 | (x & 0xC0) >> 6;
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
}
`,
    },
    "ps2-standard: eight bits need no clipping either": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes ps2-standard from x=dx y=-dy left=b.0 right=b.1 middle=b.2 into out
void encode(uint8_t *out, int8_t dx, int8_t dy, uint8_t b) {
  int16_t y = -(int16_t)dy;
  out[0] = 0x08 | (b & 7) | (dx < 0 ? 0x10 : 0) | (y < 0 ? 0x20 : 0);
  out[1] = dx;
  out[2] = y;
}
`,
    },
    "two-button: a narrower limit than need be": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
static int16_t clip(int16_t v) { return v > 127 ? 127 : v < -127 ? -127 : v; }
struct movement {
  int16_t dx, dy;
  uint8_t buttons;
};
// @wire encodes two-button from x=m->dx y=-m->dy left=m->buttons.0 right=m->buttons.1 into out
void encode(const struct movement *m, uint8_t *out) {
  int8_t x = clip(m->dx);
  int8_t y = -clip(m->dy);
  out[0] = 0x40 | (m->buttons & 1) << 5 | (m->buttons & 2) << 3 | (y & 0xC0) >> 4 | (x & 0xC0) >> 6;
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
}
`,
    },
    "five-byte: what is left of 127 in the second pair, clipped too": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
static int8_t clip(int v) { return v > 127 ? 127 : v < -127 ? -127 : v; }
struct Report {
  uint8_t bytes[5];
};
Report report;
// @wire encodes five-byte from x=dx y=dy left=left middle=middle right=right into report.bytes
void encode(int dx, int dy, bool left, bool middle, bool right) {
  const int8_t x = clip(dx), y = clip(dy);
  report.bytes[0] = 0x80 | !left << 2 | !middle << 1 | !right;
  report.bytes[1] = x;
  report.bytes[2] = y;
  report.bytes[3] = clip(dx - x);
  report.bytes[4] = clip(dy - y);
}
`,
    },
    "wheel: carried over instead of cut": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
static int16_t rest[3];
static int16_t take(uint8_t axis, int16_t more, int16_t most) {
  int16_t now;
  rest[axis] += more;
  now = rest[axis] > most ? most : rest[axis] < -most ? -most : rest[axis];
  rest[axis] -= now;
  return now;
}
// @wire encodes wheel from x=dx y=-dy wheel=dz left=b.0 right=b.1 middle=b.2 into out
void encode(uint8_t *out, int16_t dx, int16_t dy, int16_t dz, uint8_t b) {
  int16_t x = take(0, dx, 127);
  int16_t y = take(1, -dy, 127);
  int16_t z = take(2, dz, 7);
  out[0] = 0x40 | (b & 1) << 5 | (b & 2) << 3 | (y & 0xC0) >> 4 | (x & 0xC0) >> 6;
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
  out[3] = (b & 4) << 2 | (z & 0x0F);
}
`,
    },
    "ps2-wheel: the wheel's byte holds all of eight bits": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes ps2-wheel from x=dx y=dy wheel=dz left=b.0 right=b.1 middle=b.2 into out
void encode(uint8_t *out, int8_t dx, int8_t dy, int8_t dz, uint8_t b) {
  out[0] = 0x08 | (b & 7) | (dx < 0) << 4 | (dy < 0) << 5;
  out[1] = dx;
  out[2] = dy;
  out[3] = dz;
}
`,
    },
  },
};
