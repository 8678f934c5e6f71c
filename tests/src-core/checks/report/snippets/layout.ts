import type { Snippets } from "../../harness.ts";

/**
 * Each wrong one has a movement's bits in a wrong place.
 * The layouts are those of mouse(4) (Linux man-pages), sermouse.c, psm(4) (FreeBSD), the HT82M35X data sheet and
 * input/sentelic (Linux kernel).
 */
export const layoutSnippets: Snippets = {
  wrong: {
    "two-button: the high bits of x and y exchanged": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes two-button from x=dx y=-dy left=left right=right into out
void build_report(uint8_t out[3], int8_t dx, int8_t dy, bool left, bool right) {
  uint8_t x = (uint8_t)dx;
  uint8_t y = (uint8_t)-dy;
  out[0] = 0x40 | (left ? 0x20 : 0) | (right ? 0x10 : 0) | ((x >> 4) & 0x0C) | (y >> 6);
  //                                                        ^^^^^^^^^^^^^^^ report/layout
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
}
`,
    },
    "two-button: y before x": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
void send_byte(uint8_t byte);
/* @wire encodes two-button from x=dx y=dy left=b.0 right=b.1 into send_byte */
void send_report(int8_t dx, int8_t dy, uint8_t b) {
  send_byte(0x40 | ((b & 1) << 5) | ((b & 2) << 3) | ((dy & 0xC0) >> 4) | ((dx & 0xC0) >> 6));
  send_byte(dy & 0x3F);
  //        ^^^^^^^^^ report/layout
  send_byte(dx & 0x3F);
}
`,
    },
    "two-button: the high bits of x shifted one too little": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct Movement {
  int8_t dx, dy;
  bool left, right;
};
// @wire encodes two-button from x=m.dx y=-m.dy left=m.left right=m.right into out
void encode(const Movement &m, uint8_t *out) {
  const uint8_t x = m.dx;
  const uint8_t y = -m.dy;
  out[0] = 0x40 | m.left << 5 | m.right << 4 | (y >> 4 & 0x0C) | (x >> 5 & 0x03);
  //                                                              ^^^^^^^^^^^^^ report/layout
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
}
`,
    },
    "middle-button: x where y belongs in all bytes": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
struct movement {
  int8_t dx, dy;
  bool left, right, middle;
};
// @wire encodes middle-button from x=m->dx y=m->dy left=m->left right=m->right middle=m->middle into out
uint8_t encode(const struct movement *m, uint8_t *out) {
  uint8_t x = m->dy, y = m->dx;
  out[0] = 0x40 | m->left << 5 | m->right << 4 | (y & 0xC0) >> 4 | (x & 0xC0) >> 6;
  //                                             ^^^^^^^^^^^^^^^ report/layout
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
  if (!m->middle) return 3;
  out[3] = 0x20;
  return 4;
}
`,
    },
    "middle-button: five low bits of y": {
      "main.ino": `
// @wire board atmega328p clock=16MHz
byte report[4];
// @wire encodes middle-button from x=dx y=-dy left=left right=right middle=middle into report
void fillReport(int dx, int dy, bool left, bool right, bool middle) {
  byte x = constrain(dx, -127, 127);
  byte y = -constrain(dy, -127, 127);
  report[0] = 0x40 | (left ? 0x20 : 0) | (right ? 0x10 : 0) | ((y >> 6) << 2) | (x >> 6);
  report[1] = x & 0x3F;
  report[2] = y & 0x1F;
  //          ^^^^^^^^ report/layout
  report[3] = middle ? 0x20 : 0;
}
`,
    },
    "wheel: the wheel shifted by one": {
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
  out[3] = m << 4 | ((dz << 1) & 0x0F);
  //                 ^^^^^^^^^^^^^^^^ report/layout
}
`,
    },
    "five-byte: both of x, then both of y": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
static int8_t clip(int16_t v) { return v > 127 ? 127 : v < -127 ? -127 : v; }
// @wire encodes five-byte from x=dx y=dy left=b.0 right=b.1 middle=b.2 into out
void encode(uint8_t *out, int16_t dx, int16_t dy, uint8_t b) {
  int8_t x = clip(dx);
  int8_t y = clip(dy);
  out[0] = 0x80 | (b & 1 ? 0 : 4) | (b & 4 ? 0 : 2) | (b & 2 ? 0 : 1);
  out[1] = x;
  out[2] = clip(dx - x);
  //       ^^^^^^^^^^^^ report/layout
  out[3] = y;
  out[4] = clip(dy - y);
}
`,
    },
    "five-byte: y in the second pair's x": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
class Report {
 public:
  int8_t dx, dy;
  bool left, middle, right;
  uint8_t bytes[5];

  // @wire encodes five-byte from x=dx y=dy left=left middle=middle right=right into bytes
  void build() {
    bytes[0] = 0x80 | !left << 2 | !middle << 1 | !right;
    bytes[1] = dx;
    bytes[2] = 0;
    //         ^ report/layout
    bytes[3] = dy;
    bytes[4] = 0;
  }
};
`,
    },
    "ps2-standard: the signs exchanged": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes ps2-standard from x=dx y=dy left=b.0 right=b.1 middle=b.2 into out
void encode(uint8_t *out, int8_t dx, int8_t dy, uint8_t b) {
  out[0] = 0x08 | (b & 0x07) | (dx < 0 ? 0x20 : 0) | (dy < 0 ? 0x10 : 0);
  //                            ^^^^^^^^^^^^^^^^^ report/layout
  out[1] = dx;
  out[2] = dy;
}
`,
    },
    "ps2-standard: the second byte is y": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
void ps2_write(uint8_t byte);
// @wire encodes ps2-standard from x=dx y=dy left=left right=right middle=middle into ps2_write
void send_packet(int8_t dx, int8_t dy, bool left, bool right, bool middle) {
  ps2_write(0x08 | left | right << 1 | middle << 2 | (dx < 0) << 4 | (dy < 0) << 5);
  ps2_write((uint8_t)dy);
  //        ^^^^^^^^^^^ report/layout
  ps2_write((uint8_t)dx);
}
`,
    },
    "ps2-wheel: the wheel before y": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
int8_t moved_x, moved_y, turned;
uint8_t b;
uint8_t packet[4];
// @wire encodes ps2-wheel from x=moved_x y=moved_y wheel=turned left=b.0 right=b.1 middle=b.2 into packet
void make_packet(void) {
  packet[0] = 0x08 | (b & 7) | (moved_x < 0) << 4 | (moved_y < 0) << 5;
  packet[1] = moved_x;
  packet[2] = turned;
  //          ^^^^^^ report/layout
  packet[3] = moved_y;
}
`,
    },
    "ps2-five-button: half of the wheel": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct Movement {
  int8_t dx, dy, wheel;
  uint8_t buttons;
};
// @wire encodes ps2-five-button from x=m.dx y=m.dy wheel=m.wheel left=m.buttons.0 right=m.buttons.1 middle=m.buttons.2 button4=m.buttons.3 button5=m.buttons.4 into out
void encode(const Movement &m, uint8_t *out) {
  const int8_t z = m.wheel > 7 ? 7 : m.wheel < -8 ? -8 : m.wheel;
  out[0] = 0x08 | (m.buttons & 7) | (m.dx < 0) << 4 | (m.dy < 0) << 5;
  out[1] = m.dx;
  out[2] = m.dy;
  out[3] = (m.buttons & 0x18) << 1 | ((z >> 1) & 0x0F);
  //                                  ^^^^^^^^^^^^^^^ report/layout
}
`,
    },
    "decoder of ps2-standard: y from the byte of x": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire decodes ps2-standard from buf into x=dx y=dy left=b.0 right=b.1 middle=b.2
void take_apart(const uint8_t buf[3], int16_t *dx, int16_t *dy, uint8_t *b) {
  *dx = (buf[0] & 0x10) ? buf[1] - 256 : buf[1];
  *dy = (buf[0] & 0x20) ? buf[1] - 256 : buf[1];
  //    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ report/layout
  *b = buf[0] & 0x07;
}
`,
    },
    "decoder of two-button: the high bits of y in x": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct Travel {
  int8_t right, down;
  bool left, rightButton;
};
// @wire decodes two-button from in into x=t.right y=t.down left=t.left right=t.rightButton
void hear(const uint8_t *in, Travel &t) {
  t.right = (in[0] & 0x0C) << 4 | (in[1] & 0x3F);
  //        ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ report/layout
  t.down = (in[0] & 0x0C) << 4 | (in[2] & 0x3F);
  t.left = in[0] & 0x20;
  t.rightButton = in[0] & 0x10;
}
`,
    },
    "decoder of ps2-five-button: the wheel shifted by one": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct movement {
  int16_t dx, dy;
  int8_t wheel;
  uint8_t buttons;
};
// @wire decodes ps2-five-button from p into x=m->dx y=m->dy wheel=m->wheel left=m->buttons.0 right=m->buttons.1 middle=m->buttons.2 button4=m->buttons.3 button5=m->buttons.4
void decode(const uint8_t p[4], struct movement *m) {
  m->dx = p[1] - ((p[0] & 0x10) << 4);
  m->dy = p[2] - ((p[0] & 0x20) << 3);
  m->wheel = (int8_t)(p[3] << 4) >> 3;
  //         ^^^^^^^^^^^^^^^^^^^^^^^^ report/layout
  m->buttons = (p[0] & 7) | (p[3] & 0x30) >> 1;
}
`,
    },
  },
  right: {
    "two-button: from the last byte to the first": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes two-button from x=dx y=dy left=left right=right into out
void encode(uint8_t *out, uint8_t dx, uint8_t dy, bool left, bool right) {
  out[2] = dy % 64;
  out[1] = dx % 64;
  out[0] = dx / 64 + dy / 64 * 4 + right * 16 + left * 32 + 64;
}
`,
    },
    "two-button: a sideways mouse, as the note says": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes two-button from x=dy y=dx left=b.0 right=b.1 into out
void encode(uint8_t *out, int8_t dx, int8_t dy, uint8_t b) {
  out[0] = 0x40 | (b & 1) << 5 | (b & 2) << 3 | (dx & 0xC0) >> 4 | (dy & 0xC0) >> 6;
  out[1] = dy & 0x3F;
  out[2] = dx & 0x3F;
}
`,
    },
    "five-byte: all in the second pair": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes five-byte from x=dx y=dy left=left middle=middle right=right into out
void encode(uint8_t out[5], int8_t dx, int8_t dy, bool left, bool middle, bool right) {
  out[0] = 0x80 | (left ? 0 : 4) | (middle ? 0 : 2) | (right ? 0 : 1);
  out[1] = 0;
  out[2] = 0;
  out[3] = dx;
  out[4] = dy;
}
`,
    },
    "ps2-standard: one word, split at last": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes ps2-standard from x=dx y=dy left=b.0 right=b.1 middle=b.2 into out
void encode(uint8_t *out, int8_t dx, int8_t dy, uint8_t b) {
  uint32_t word = (uint32_t)(dy & 0x1FF) << 9 | (dx & 0x1FF);
  out[0] = 0x08 | (b & 7) | (word >> 8 & 1) << 4 | (word >> 17 & 1) << 5;
  out[1] = word;
  out[2] = word >> 9;
}
`,
    },
    "wheel: high bits gathered one by one": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
void put(uint8_t byte);
// @wire encodes wheel from x=x y=y wheel=z left=b.0 right=b.1 middle=b.2 into put
void report(uint8_t x, uint8_t y, int8_t z, uint8_t b) {
  uint8_t head = 0x40;
  if (z > 7) z = 7;
  if (z < -8) z = -8;
  if (b & 1) head |= 0x20;
  if (b & 2) head |= 0x10;
  if (y & 0x80) head |= 0x08;
  if (y & 0x40) head |= 0x04;
  if (x & 0x80) head |= 0x02;
  if (x & 0x40) head |= 0x01;
  put(head);
  put(x & 0x3F);
  put(y & 0x3F);
  put((b & 4) << 2 | (z & 0x0F));
}
`,
    },
    "decoder of ps2-wheel: four bytes at once": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
#include <string.h>
struct packet {
  uint8_t head, x, y;
  int8_t wheel;
};
// @wire decodes ps2-wheel from buf into x=dx y=dy wheel=dz left=b.0 right=b.1 middle=b.2
void take_apart(const uint8_t buf[4], int16_t *dx, int16_t *dy, int8_t *dz, uint8_t *b) {
  struct packet packet;
  memcpy(&packet, buf, sizeof packet);
  *dx = packet.head & 0x10 ? (int16_t)packet.x - 256 : packet.x;
  *dy = packet.head & 0x20 ? (int16_t)packet.y - 256 : packet.y;
  *dz = packet.wheel;
  *b = packet.head & 7;
}
`,
    },
  },
};
