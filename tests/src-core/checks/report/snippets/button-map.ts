import type { Snippets } from "../../harness.ts";

/**
 * Each wrong one has a button in another's bit, never sent, always sent or turned over.
 * The layouts are those of mouse(4) (Linux man-pages), sermouse.c, psm(4) (FreeBSD), the HT82M35X data sheet and
 * input/sentelic (Linux kernel).
 */
export const buttonMapSnippets: Snippets = {
  wrong: {
    "two-button: the right button is never sent": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes two-button from x=dx y=-dy left=left right=right into out
void build_report(uint8_t out[3], int8_t dx, int8_t dy, bool left, bool right) {
  uint8_t x = (uint8_t)dx;
  uint8_t y = (uint8_t)-dy;
  out[0] = 0x40 | (left ? 0x20 : 0) | ((y >> 4) & 0x0C) | (x >> 6);
  //       ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ report/button-map
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
}
`,
    },
    "two-button: the left button in both places": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
void send_byte(uint8_t byte);
/* @wire encodes two-button from x=dx y=dy left=b.0 right=b.1 into send_byte */
void send_report(int8_t dx, int8_t dy, uint8_t b) {
  send_byte(0x40 | ((b & 1) << 5) | ((b & 1) << 4) | ((dy & 0xC0) >> 4) | ((dx & 0xC0) >> 6));
  //                                 ^^^^^^^^^^^^ report/button-map
  send_byte(dx & 0x3F);
  send_byte(dy & 0x3F);
}
`,
    },
    "two-button: left is turned over": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
class Ferry {
 public:
  int8_t dx, dy;
  bool left, right;
  uint8_t report[3];

  // @wire encodes two-button from x=dx y=-dy left=left right=right into report
  void build() {
    const uint8_t x = dx, y = -dy;
    report[0] = 0x40 | !left << 5 | right << 4 | (y >> 6) << 2 | x >> 6;
    //                 ^^^^^^^^^^ report/button-map
    report[1] = x & 0x3F;
    report[2] = y & 0x3F;
  }
};
`,
    },
    "two-button: a local that right does not reach": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
void put(uint8_t byte);
struct movement {
  int8_t dx, dy;
  bool left, right;
};
// @wire encodes two-button from x=m->dx y=m->dy left=m->left right=m->right into put
void send_report(const struct movement *m) {
  uint8_t head = 0x40;
  if (m->left) head |= 0x20;
  head |= (m->dy & 0xC0) >> 4;
  head |= (m->dx & 0xC0) >> 6;
  put(head);
  //  ^^^^ report/button-map
  put(m->dx & 0x3F);
  put(m->dy & 0x3F);
}
`,
    },
    "middle-button: the fourth byte always says that it is down": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes middle-button from x=dx y=dy left=left right=right middle=middle into out
void encode(uint8_t out[4], int8_t dx, int8_t dy, bool left, bool right, bool middle) {
  out[0] = 0x40 | left << 5 | right << 4 | (dy & 0xC0) >> 4 | (dx & 0xC0) >> 6;
  out[1] = dx & 0x3F;
  out[2] = dy & 0x3F;
  out[3] = 0x20;
  //       ^^^^ report/button-map
}
`,
    },
    "middle-button: the bit of the wheel report": {
      "main.ino": `
// @wire board atmega328p clock=16MHz
byte report[4];
// @wire encodes middle-button from x=dx y=-dy left=left right=right middle=middle into report
byte fillReport(int dx, int dy, bool left, bool right, bool middle) {
  byte x = constrain(dx, -127, 127);
  byte y = -constrain(dy, -127, 127);
  report[0] = 0x40 | (left ? 0x20 : 0) | (right ? 0x10 : 0) | ((y >> 6) << 2) | (x >> 6);
  report[1] = x & 0x3F;
  report[2] = y & 0x3F;
  report[3] = middle ? 0x10 : 0;
  //          ^^^^^^^^^^^^^^^^^ report/button-map
  return 4;
}
`,
    },
    "wheel: the middle button is always down": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct movement {
  int8_t dx, dy, wheel;
  uint8_t left, right, middle;
};
// @wire encodes wheel from x=m.dx y=m.dy wheel=m.wheel left=m.left right=m.right middle=m.middle into out
void pack(struct movement m, uint8_t *out) {
  int8_t z = m.wheel > 7 ? 7 : m.wheel < -8 ? -8 : m.wheel;
  out[0] = 0x40 | m.left << 5 | m.right << 4 | (m.dy & 0xC0) >> 4 | (m.dx & 0xC0) >> 6;
  out[1] = m.dx & 0x3F;
  out[2] = m.dy & 0x3F;
  out[3] = 0x10 | (z & 0x0F);
  //       ^^^^ report/button-map
}
`,
    },
    "five-byte: a 1 for left where a 0 means down": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes five-byte from x=dx y=dy left=left middle=middle right=right into out
void build_report(uint8_t out[5], int8_t dx, int8_t dy, bool left, bool middle, bool right) {
  out[0] = 0x80 | (left ? 4 : 0) | (middle ? 0 : 2) | (right ? 0 : 1);
  //               ^^^^^^^^^^^^ report/button-map
  out[1] = dx;
  out[2] = dy;
  out[3] = 0;
  out[4] = 0;
}
`,
    },
    "five-byte: middle does what right does": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
void sendByte(uint8_t byte);
struct Movement {
  int8_t dx, dy;
  bool left, middle, right;
};
// @wire encodes five-byte from x=m.dx y=m.dy left=m.left middle=m.middle right=m.right into sendByte
void sendReport(const Movement &m) {
  sendByte(0x80 | !m.left << 2 | !m.right << 1 | !m.right);
  //                             ^^^^^^^^^^^^^ report/button-map
  sendByte(m.dx);
  sendByte(m.dy);
  sendByte(0);
  sendByte(0);
}
`,
    },
    "ps2-standard: no middle button": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes ps2-standard from x=dx y=dy left=b.0 right=b.1 middle=b.2 into out
void encode(uint8_t *out, int8_t dx, int8_t dy, uint8_t b) {
  out[0] = 0x08 | (b & 0x03) | (dx < 0 ? 0x10 : 0) | (dy < 0 ? 0x20 : 0);
  //       ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ report/button-map
  out[1] = dx;
  out[2] = dy;
}
`,
    },
    "ps2-wheel: left and right change places": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
int8_t moved_x, moved_y, turned;
bool left, right, middle;
uint8_t packet[4];
// @wire encodes ps2-wheel from x=moved_x y=moved_y wheel=turned left=left right=right middle=middle into packet
void make_packet(void) {
  packet[0] = 0x08 | right | left << 1 | middle << 2 | (moved_x < 0) << 4 | (moved_y < 0) << 5;
  //                         ^^^^^^^^^ report/button-map
  packet[1] = moved_x;
  packet[2] = moved_y;
  packet[3] = turned;
}
`,
    },
    "ps2-five-button: the fifth button follows the fourth": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
void ps2_write(uint8_t byte);
// @wire encodes ps2-five-button from x=dx y=dy wheel=dz left=left right=right middle=middle button4=back button5=forth into ps2_write
void send_packet(int8_t dx, int8_t dy, int8_t dz, bool left, bool right, bool middle, bool back, bool forth) {
  if (dz > 7) dz = 7;
  if (dz < -8) dz = -8;
  ps2_write(0x08 | left | right << 1 | middle << 2 | (dx < 0) << 4 | (dy < 0) << 5);
  ps2_write(dx);
  ps2_write(dy);
  ps2_write(back << 5 | back << 4 | (dz & 0x0F));
  //        ^^^^^^^^^ report/button-map
}
`,
    },
    "decoder of ps2-standard: left is read where right is": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
struct movement {
  int16_t dx, dy;
  bool left, right;
};
// @wire decodes ps2-standard from p into x=m->dx y=m->dy left=m->left right=m->right
void decode(const uint8_t *p, struct movement *m) {
  m->dx = (p[0] & 0x10) ? p[1] - 256 : p[1];
  m->dy = (p[0] & 0x20) ? p[2] - 256 : p[2];
  m->left = (p[0] & 0x02) != 0;
  //        ^^^^^^^^^^^^^^^^^^ report/button-map
  m->right = (p[0] & 0x02) != 0;
}
`,
    },
    "decoder of five-byte: a button that is down reads as up": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
class Receiver {
 public:
  int16_t dx, dy;
  bool left, middle, right;

  // @wire decodes five-byte from in into x=dx y=dy left=left middle=middle right=right
  void take(const uint8_t *in) {
    dx = static_cast<int8_t>(in[1]) + static_cast<int8_t>(in[3]);
    dy = static_cast<int8_t>(in[2]) + static_cast<int8_t>(in[4]);
    left = !(in[0] & 4);
    middle = (in[0] & 2) != 0;
    //       ^^^^^^^^^^^^^^^^ report/button-map
    right = !(in[0] & 1);
  }
};
`,
    },
    "decoder of ps2-five-button: the fourth button is the fifth": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
int16_t dx, dy;
int8_t dz;
uint8_t left, right, middle, back, forth;
// @wire decodes ps2-five-button from p into x=dx y=dy wheel=dz left=left right=right middle=middle button4=back button5=forth
void decode(const uint8_t p[4]) {
  dx = p[1] - ((p[0] & 0x10) << 4);
  dy = p[2] - ((p[0] & 0x20) << 3);
  dz = (p[3] & 0x07) - (p[3] & 0x08);
  left = p[0] & 1;
  right = p[0] >> 1 & 1;
  middle = p[0] >> 2 & 1;
  back = p[3] >> 5 & 1;
  //     ^^^^^^^^^^^^^ report/button-map
  forth = p[3] >> 5 & 1;
}
`,
    },
  },
  right: {
    "five-byte: left and right at the ends": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes five-byte from x=dx y=dy left=b.0 middle=b.1 right=b.2 into out
void encode(uint8_t *out, int8_t dx, int8_t dy, uint8_t b) {
  out[0] = 0x80 | (b & 1 ? 0 : 4) | (~b & 2) | (b & 4 ? 0 : 1);
  out[1] = dx;
  out[2] = dy;
  out[3] = 0;
  out[4] = 0;
}
`,
    },
    "two-button: any value but zero is down": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes two-button from x=dx y=dy left=left right=right into out
void encode(uint8_t *out, int8_t dx, int8_t dy, uint8_t left, uint8_t right) {
  out[0] = 0x40 | !!left << 5 | (right != 0) << 4 | (dy & 0xC0) >> 4 | (dx & 0xC0) >> 6;
  out[1] = dx & 0x3F;
  out[2] = dy & 0x3F;
}
`,
    },
    "wheel: middle in bit 2 of the mouse's byte, bit 4 of ours": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes wheel from x=dx y=dy wheel=dz left=b.0 right=b.1 middle=b.2 into out
void encode(uint8_t *out, int8_t dx, int8_t dy, int8_t dz, uint8_t b) {
  uint8_t z = (dz > 7 ? 7 : dz < -8 ? -8 : dz) & 0x0F;
  uint8_t head = b & 1 ? 0x60 : 0x40;
  if (b & 2) head += 0x10;
  out[0] = head | (dy & 0xC0) >> 4 | (dx & 0xC0) >> 6;
  out[1] = dx & 0x3F;
  out[2] = dy & 0x3F;
  out[3] = b & 4 ? z | 0x10 : z;
}
`,
    },
    "ps2-standard: buttons that are named the other way round": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes ps2-standard from x=dx y=dy left=right_hand right=left_hand into out
void encode(uint8_t *out, int8_t dx, int8_t dy, bool left_hand, bool right_hand) {
  out[0] = 0x08 | left_hand << 1 | right_hand | (dx < 0) << 4 | (dy < 0) << 5;
  out[1] = dx;
  out[2] = dy;
}
`,
    },
    "middle-button: left and right cleared where they are up": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct pins {
  int8_t dx, dy;
  uint8_t down;
};
// @wire encodes middle-button from x=p->dx y=p->dy left=p->down.4 right=p->down.5 middle=p->down.6 into out
uint8_t encode(const struct pins *p, uint8_t *out) {
  uint8_t up = ~p->down;
  out[0] = 0x70 & ~((up & 0x10) << 1) & ~((up & 0x20) >> 1);
  out[0] |= (p->dy & 0xC0) >> 4 | (p->dx & 0xC0) >> 6;
  out[1] = p->dx & 0x3F;
  out[2] = p->dy & 0x3F;
  if (up & 0x40) return 3;
  out[3] = 0x20;
  return 4;
}
`,
    },
    "decoder of ps2-standard: buttons in an order of their own": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct Movement {
  int dx, dy;
  uint8_t buttons;
};
// @wire decodes ps2-standard from p into x=m.dx y=m.dy left=m.buttons.2 middle=m.buttons.1 right=m.buttons.0
void decode(const uint8_t *p, Movement &m) {
  m.dx = p[1] - (p[0] & 0x10 ? 256 : 0);
  m.dy = p[2] - (p[0] & 0x20 ? 256 : 0);
  m.buttons = (p[0] & 1) << 2 | (p[0] & 4) >> 1 | (p[0] & 2) >> 1;
}
`,
    },
  },
};
