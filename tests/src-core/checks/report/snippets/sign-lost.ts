import type { Snippets } from "../../harness.ts";

/**
 * Each wrong one is right for movements above zero and wrong below.
 * The layouts are those of mouse(4) (Linux man-pages), sermouse.c, psm(4) (FreeBSD), the HT82M35X data sheet and
 * input/sentelic (Linux kernel).
 */
export const signLostSnippets: Snippets = {
  wrong: {
    "two-button: only the size of x": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
#include <stdlib.h>
// @wire encodes two-button from x=dx y=-dy left=left right=right into out
void build_report(uint8_t out[3], int8_t dx, int8_t dy, bool left, bool right) {
  uint8_t x = abs(dx) & 0x7F;
  uint8_t y = (uint8_t)-dy;
  out[0] = 0x40 | (left ? 0x20 : 0) | (right ? 0x10 : 0) | ((y >> 4) & 0x0C) | (x >> 6);
  //                                                                            ^^^^^^ report/sign-lost
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
}
`,
    },
    "two-button: the highest bit of x masked away": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
void send_byte(uint8_t byte);
// @wire encodes two-button from x=dx y=dy left=b.0 right=b.1 into send_byte
void send_report(int8_t dx, int8_t dy, uint8_t b) {
  send_byte(0x40 | (b & 1) << 5 | (b & 2) << 3 | (dy & 0xC0) >> 4 | (dx & 0x40) >> 6);
  //                                                                ^^^^^^^^^^^^^^^^ report/sign-lost
  send_byte(dx & 0x3F);
  send_byte(dy & 0x3F);
}
`,
    },
    "two-button: the highest bit of y masked away, through a local": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct Movement {
  int16_t dx, dy;
  bool left, right;
};
static int8_t clip(int16_t v) { return v > 127 ? 127 : v < -127 ? -127 : v; }
// @wire encodes two-button from x=m.dx y=-m.dy left=m.left right=m.right into out
void encode(const Movement &m, uint8_t *out) {
  const uint8_t x = clip(m.dx);
  const uint8_t y = clip(-m.dy);
  const uint8_t yHigh = (y >> 4) & 0x04;
  out[0] = 0x40 | (m.left ? 0x20 : 0) | (m.right ? 0x10 : 0) | yHigh | (x >> 6);
  //                                                           ^^^^^ report/sign-lost
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
}
`,
    },
    "middle-button: nothing to the left": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct movement {
  int8_t dx, dy;
  uint8_t buttons;
};
/* @wire encodes middle-button from x=m->dx y=m->dy left=m->buttons.0 right=m->buttons.1 middle=m->buttons.2 into out */
void encode(const struct movement *m, uint8_t *out) {
  int8_t x = m->dx < 0 ? 0 : m->dx;
  out[0] = 0x40 | (m->buttons & 1) << 5 | (m->buttons & 2) << 3 | (m->dy & 0xC0) >> 4 | (x >> 6);
  //                                                                                     ^^^^^^ report/sign-lost
  out[1] = x & 0x3F;
  out[2] = m->dy & 0x3F;
  out[3] = (m->buttons & 4) << 3;
}
`,
    },
    "wheel: three bits of wheel": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes wheel from x=dx y=-dy wheel=dz left=l right=r middle=m into out
void encode(uint8_t *out, int8_t dx, int8_t dy, int dz, bool l, bool r, bool m) {
  uint8_t y = -dy;
  if (dz > 7) dz = 7;
  if (dz < -8) dz = -8;
  out[0] = 0x40 | l << 5 | r << 4 | (y & 0xC0) >> 4 | (dx & 0xC0) >> 6;
  out[1] = dx & 0x3F;
  out[2] = y & 0x3F;
  out[3] = m << 4 | (dz & 0x07);
  //                 ^^^^^^^^^ report/sign-lost
}
`,
    },
    "five-byte: seven bits of x, as one table draws them": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes five-byte from x=dx y=dy left=left middle=middle right=right into out
void build_report(uint8_t out[5], int8_t dx, int8_t dy, bool left, bool middle, bool right) {
  out[0] = 0x80 | (left ? 0 : 4) | (middle ? 0 : 2) | (right ? 0 : 1);
  out[1] = dx & 0x7F;
  //       ^^^^^^^^^ report/sign-lost
  out[2] = dy;
  out[3] = 0;
  out[4] = 0;
}
`,
    },
    "five-byte: an unsigned byte halved": {
      "main.ino": `
// @wire board atmega328p clock=16MHz
byte report[5];
// @wire encodes five-byte from x=dx y=dy left=left middle=middle right=right into report
void fillReport(int8_t dx, int8_t dy, bool left, bool middle, bool right) {
  report[0] = 0x80 | (left ? 0 : 4) | (middle ? 0 : 2) | (right ? 0 : 1);
  report[1] = dx;
  report[2] = (byte)dy / 2;
  //          ^^^^^^^^^^^^ report/sign-lost
  report[3] = 0;
  report[4] = (byte)dy - (byte)dy / 2;
}
`,
    },
    "ps2-standard: no sign of y in the first byte": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes ps2-standard from x=dx y=dy left=b.0 right=b.1 middle=b.2 into out
void encode(uint8_t *out, int8_t dx, int8_t dy, uint8_t b) {
  out[0] = 0x08 | (b & 0x07) | (dx < 0 ? 0x10 : 0);
  //       ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ report/sign-lost
  out[1] = dx;
  out[2] = dy;
}
`,
    },
    "ps2-standard: an unsigned value is never below zero": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
void ps2_write(uint8_t byte);
static int16_t clip(int16_t v) { return v > 255 ? 255 : v < -255 ? -255 : v; }
/* @wire encodes ps2-standard from x=dx y=dy left=left right=right middle=middle into ps2_write */
void send_packet(int16_t dx, int16_t dy, bool left, bool right, bool middle) {
  uint16_t x = clip(dx);
  int16_t y = clip(dy);
  ps2_write(0x08 | left | right << 1 | middle << 2 | (x < 0 ? 0x10 : 0) | (y < 0 ? 0x20 : 0));
  //                                                  ^^^^^^^^^^^^^^^^ report/sign-lost
  ps2_write(x);
  ps2_write(y);
}
`,
    },
    "ps2-wheel: a wheel that only turns one way": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
class Packet {
 public:
  int8_t x, y, wheel;
  bool left, right, middle;
  uint8_t data[4];

  // @wire encodes ps2-wheel from x=x y=y wheel=wheel left=left right=right middle=middle into data
  void fill() {
    data[0] = 0x08 | left | right << 1 | middle << 2 | (x < 0) << 4 | (y < 0) << 5;
    data[1] = x;
    data[2] = y;
    data[3] = wheel > 0 ? wheel : 0;
    //        ^^^^^^^^^^^^^^^^^^^^^ report/sign-lost
  }
};
`,
    },
    "ps2-wheel: widened from an unsigned byte": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes ps2-wheel from x=x y=y wheel=z left=b.0 right=b.1 middle=b.2 into out
void from_bytes(uint8_t x, int8_t y, int8_t z, uint8_t b, uint8_t *out) {
  int16_t wide = x;
  out[0] = 0x08 | (b & 7) | ((wide >> 4) & 0x10) | (y < 0 ? 0x20 : 0);
  //                         ^^^^^^^^^^^^^^^^^^ report/sign-lost
  out[1] = x;
  out[2] = y;
  out[3] = z;
}
`,
    },
    "ps2-five-button: the wheel's sign bit left out": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
int8_t dx, dy, dz;
uint8_t b;
uint8_t packet[4];
// @wire encodes ps2-five-button from x=dx y=dy wheel=dz left=b.0 right=b.1 middle=b.2 button4=b.3 button5=b.4 into packet
void make_packet(void) {
  int8_t z = dz > 7 ? 7 : dz < -8 ? -8 : dz;
  packet[0] = 0x08 | (b & 7) | (dx < 0) << 4 | (dy < 0) << 5;
  packet[1] = dx;
  packet[2] = dy;
  packet[3] = (b & 0x18) << 1 | (z & 0x07);
  //                             ^^^^^^^^ report/sign-lost
}
`,
    },
    "decoder of ps2-standard: the sign of x not looked at": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire decodes ps2-standard from buf into x=dx y=dy left=b.0 right=b.1 middle=b.2
void take_apart(const uint8_t buf[3], int16_t *dx, int16_t *dy, uint8_t *b) {
  *dx = buf[1];
  //    ^^^^^^ report/sign-lost
  *dy = (buf[0] & 0x20) ? buf[2] - 256 : buf[2];
  *b = buf[0] & 0x07;
}
`,
    },
    "decoder of ps2-five-button: four bits of wheel without a sign": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct Movement {
  int16_t dx, dy;
  int8_t wheel;
  bool left, right, middle, back, forth;
};
// @wire decodes ps2-five-button from p into x=m.dx y=m.dy wheel=m.wheel left=m.left right=m.right middle=m.middle button4=m.back button5=m.forth
void decode(const uint8_t p[4], Movement &m) {
  m.dx = p[1] - ((p[0] << 4) & 0x100);
  m.dy = p[2] - ((p[0] << 3) & 0x100);
  m.wheel = p[3] & 0x0F;
  //        ^^^^^^^^^^^ report/sign-lost
  m.left = p[0] & 0x01;
  m.right = p[0] & 0x02;
  m.middle = p[0] & 0x04;
  m.back = p[3] & 0x10;
  m.forth = p[3] & 0x20;
}
`,
    },
    "decoder of two-button: eight bits in sixteen": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
int16_t dx, dy;
uint8_t buttons;
/* @wire decodes two-button from in into x=dx y=dy left=buttons.1 right=buttons.0 */
void hear(const uint8_t in[3]) {
  dx = (int8_t)((in[0] & 0x03) << 6 | (in[1] & 0x3F));
  dy = (in[0] & 0x0C) << 4 | (in[2] & 0x3F);
  //   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ report/sign-lost
  buttons = in[0] >> 4 & 3;
}
`,
    },
  },
  right: {
    "two-button: the size, and the sign put back": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
#include <stdlib.h>
// @wire encodes two-button from x=dx y=dy left=left right=right into out
void encode(uint8_t *out, int16_t dx, int16_t dy, bool left, bool right) {
  uint16_t size_x = abs(dx), size_y = abs(dy);
  if (size_x > 127) size_x = 127;
  if (size_y > 127) size_y = 127;
  uint8_t x = dx < 0 ? -size_x : size_x;
  uint8_t y = dy < 0 ? -size_y : size_y;
  out[0] = 0x40 | left << 5 | right << 4 | (y >> 6) << 2 | x >> 6;
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
}
`,
    },
    "ps2-standard: unsigned, but the ninth bit is taken from it": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes ps2-standard from x=dx y=dy left=b.0 right=b.1 middle=b.2 into out
void encode(uint8_t *out, int8_t dx, int8_t dy, uint8_t b) {
  uint16_t x = dx;
  uint16_t y = dy;
  out[0] = 0x08 | (b & 7) | (x >= 0x8000 ? 0x10 : 0) | ((y >> 8 & 1) << 5);
  out[1] = x;
  out[2] = y;
}
`,
    },
    "wheel: sixteen added to a wheel below zero": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes wheel from x=x y=y wheel=z left=b.0 right=b.1 middle=b.2 into out
void encode(uint8_t *out, int8_t x, int8_t y, int8_t z, uint8_t b) {
  uint8_t nibble;
  if (z > 7) z = 7;
  if (z < -8) z = -8;
  nibble = z < 0 ? z + 16 : z;
  out[0] = 0x40 | (b & 1) << 5 | (b & 2) << 3 | (y & 0xC0) >> 4 | (x & 0xC0) >> 6;
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
  out[3] = (b & 4) << 2 | nibble;
}
`,
    },
    "five-byte: 256 added below zero": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
void put(uint8_t byte);
static int clip(int v) { return v > 127 ? 127 : v < -127 ? -127 : v; }
// @wire encodes five-byte from x=dx y=dy left=b.0 right=b.1 middle=b.2 into put
void send_report(int dx, int dy, uint8_t b) {
  int x = clip(dx), y = clip(dy);
  put(0x80 | (b & 1 ? 0 : 4) | (b & 4 ? 0 : 2) | (b & 2 ? 0 : 1));
  put(x < 0 ? 256 + x : x);
  put(y < 0 ? 256 + y : y);
  put(0);
  put(0);
}
`,
    },
    "ps2-standard: the top bit of a byte as the sign": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct Movement {
  uint8_t x, y;
  bool left, right;
};
// @wire encodes ps2-standard from x=m.x y=m.y left=m.left right=m.right into out
void encode(const Movement &m, uint8_t *out) {
  out[0] = 0x08 | m.left | m.right << 1 | (m.x > 127) << 4 | (m.y > 127) << 5;
  out[1] = m.x;
  out[2] = m.y;
}
`,
    },
    "decoder of ps2-standard: a byte and its sign in unsigned values": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire decodes ps2-standard from buf into x=dx y=dy left=left
void take_apart(const uint8_t buf[3], int16_t *dx, int16_t *dy, uint8_t *left) {
  uint16_t x = buf[1], y = buf[2];
  x |= (buf[0] & 0x10) ? 0xFF00 : 0;
  y |= (buf[0] & 0x20) ? 0xFF00 : 0;
  *dx = x;
  *dy = y;
  *left = buf[0] & 1;
}
`,
    },
    "decoder of wheel: eight bits in eight": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct movement {
  int8_t dx, dy, wheel;
};
// @wire decodes wheel from r into x=m->dx y=m->dy wheel=m->wheel
void decode(const uint8_t *r, struct movement *m) {
  m->dx = (r[0] & 3) << 6 | (r[1] & 0x3F);
  m->dy = (r[0] & 12) << 4 | (r[2] & 0x3F);
  m->wheel = ((r[3] & 0x0F) ^ 8) - 8;
}
`,
    },
  },
};
