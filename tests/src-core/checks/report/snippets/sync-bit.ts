import type { Snippets } from "../../harness.ts";

/**
 * Each wrong one has a constant bit that is missing, wrong or driven by data.
 * The layouts are those of mouse(4) (Linux man-pages), sermouse.c, psm(4) (FreeBSD), the HT82M35X data sheet and
 * input/sentelic (Linux kernel).
 */
export const syncBitSnippets: Snippets = {
  wrong: {
    "two-button: bit 6 of the first byte forgotten": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes two-button from x=dx y=-dy left=left right=right into out
void build_report(uint8_t out[3], int8_t dx, int8_t dy, bool left, bool right) {
  uint8_t x = (uint8_t)dx;
  uint8_t y = (uint8_t)-dy;
  out[0] = (left ? 0x20 : 0) | (right ? 0x10 : 0) | ((y >> 4) & 0x0C) | (x >> 6);
  //       ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ report/sync-bit
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
}
`,
    },
    "two-button: seven bits of x in the second byte": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
/* @wire encodes two-button from x=dx y=dy left=b.0 right=b.1 into out */
void encode(uint8_t *out, int8_t dx, int8_t dy, uint8_t b) {
  out[0] = 0x40 | ((b & 1) << 5) | ((b & 2) << 3) | ((dy & 0xC0) >> 4) | ((dx & 0xC0) >> 6);
  out[1] = dx & 0x7F;
  //       ^^^^^^^^^ report/sync-bit
  out[2] = dy & 0x3F;
}
`,
    },
    "two-button: y sent as it is": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
void send_byte(uint8_t byte);
// @wire encodes two-button from x=dx y=-dy left=left right=right into send_byte
void send_report(int8_t dx, int8_t dy, bool left, bool right) {
  uint8_t x = dx;
  uint8_t y = -dy;
  send_byte(0x40 | left << 5 | right << 4 | (y >> 6) << 2 | x >> 6);
  send_byte(x & 0x3F);
  send_byte(y);
  //        ^ report/sync-bit
}
`,
    },
    "two-button: the mark in bit 7, which is not on the line": {
      "main.ino": `
// @wire board atmega328p clock=16MHz
byte report[3];
// @wire encodes two-button from x=dx y=-dy left=left right=right into report
void fillReport(int dx, int dy, bool left, bool right) {
  byte x = constrain(dx, -127, 127);
  byte y = -constrain(dy, -127, 127);
  report[0] = B10000000 | (left ? B100000 : 0) | (right ? B10000 : 0) | ((y >> 4) & B1100) | (x >> 6);
  //          ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ report/sync-bit
  report[1] = x & B111111;
  report[2] = y & B111111;
}
`,
    },
    "middle-button: bit 6 of the fourth byte set with the button": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct movement {
  int8_t dx, dy;
  uint8_t left, right, middle;
};
// @wire encodes middle-button from x=m->dx y=m->dy left=m->left right=m->right middle=m->middle into out
void encode(const struct movement *m, uint8_t out[4]) {
  out[0] = 0x40 | m->left << 5 | m->right << 4 | (m->dy & 0xC0) >> 4 | (m->dx & 0xC0) >> 6;
  out[1] = m->dx & 0x3F;
  out[2] = m->dy & 0x3F;
  out[3] = m->middle ? 0x60 : 0x00;
  //       ^^^^^^^^^^^^^^^^^^^^^^^ report/sync-bit
}
`,
    },
    "wheel: a bit field for the mark that nobody sets": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
union Head {
  struct {
    uint8_t xHigh : 2, yHigh : 2, right : 1, left : 1, mark : 1;
  };
  uint8_t byte;
};
class Report {
 public:
  int8_t dx, dy, wheel;
  bool left, right, middle;
  uint8_t bytes[4];

  // @wire encodes wheel from x=dx y=-dy wheel=wheel left=left right=right middle=middle into bytes
  void build() {
    const uint8_t x = dx, y = -dy;
    const int8_t z = wheel > 7 ? 7 : wheel < -8 ? -8 : wheel;
    Head head;
    head.byte = 0;
    head.left = left;
    head.right = right;
    head.yHigh = y >> 6;
    head.xHigh = x >> 6;
    bytes[0] = head.byte;
    //         ^^^^^^^^^ report/sync-bit
    bytes[1] = x & 0x3F;
    bytes[2] = y & 0x3F;
    bytes[3] = middle << 4 | (z & 0x0F);
  }
};
`,
    },
    "wheel: every byte marked as a first one": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
void put(uint8_t byte);
// @wire encodes wheel from x=x y=y wheel=z left=left right=right middle=middle into put
void report(int8_t x, int8_t y, int8_t z, bool left, bool right, bool middle) {
  if (z > 7) z = 7;
  if (z < -8) z = -8;
  put(0x40 | left << 5 | right << 4 | (y & 0xC0) >> 4 | (x & 0xC0) >> 6);
  put(x & 0x3F);
  put(y & 0x3F);
  put(0x40 | (middle ? 0x10 : 0) | (z & 0x0F));
  //  ^^^^ report/sync-bit
}
`,
    },
    "five-byte: the first byte without its bit 7": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes five-byte from x=dx y=dy left=left middle=middle right=right into out
void build_report(uint8_t out[5], int8_t dx, int8_t dy, bool left, bool middle, bool right) {
  out[0] = (left ? 0 : 4) | (middle ? 0 : 2) | (right ? 0 : 1);
  //       ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ report/sync-bit
  out[1] = (uint8_t)dx;
  out[2] = (uint8_t)dy;
  out[3] = 0;
  out[4] = 0;
}
`,
    },
    "five-byte: buttons turned over with all bits above them": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes five-byte from x=dx y=dy left=b.2 middle=b.1 right=b.0 into out
void encode(uint8_t *out, uint8_t b, int8_t dx, int8_t dy) {
  out[0] = 0x80 | (uint8_t)~b;
  //              ^^^^^^^^^^^ report/sync-bit
  out[1] = dx;
  out[2] = dy;
  out[3] = 0;
  out[4] = 0;
}
`,
    },
    "ps2-standard: bit 3 forgotten": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct movement {
  int8_t dx, dy;
  uint8_t buttons;
};
/* @wire encodes ps2-standard from x=m.dx y=m.dy left=m.buttons.0 right=m.buttons.1 middle=m.buttons.2 into out */
void pack(struct movement m, uint8_t *out) {
  out[0] = (m.buttons & 0x07) | (m.dx < 0 ? 0x10 : 0) | (m.dy < 0 ? 0x20 : 0);
  //       ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ report/sync-bit
  out[1] = m.dx;
  out[2] = m.dy;
}
`,
    },
    "ps2-wheel: bit 3 in the wrong place, through a local": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
void ps2Write(uint8_t byte);
struct Movement {
  int8_t dx, dy, wheel;
  bool left, right, middle;
};
// @wire encodes ps2-wheel from x=m.dx y=m.dy wheel=m.wheel left=m.left right=m.right middle=m.middle into ps2Write
void sendPacket(const Movement &m) {
  uint8_t head = m.left | m.right << 1 | m.middle << 2;
  if (m.dx < 0) head |= 0x10;
  if (m.dy < 0) head |= 0x20;
  ps2Write(head);
  //       ^^^^ report/sync-bit
  ps2Write(m.dx);
  ps2Write(m.dy);
  ps2Write(m.wheel);
}
`,
    },
    "ps2-five-button: the fourth button turns bit 3 off": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes ps2-five-button from x=dx y=dy wheel=dz left=b.0 right=b.1 middle=b.2 button4=b.3 button5=b.4 into out
void encode(uint8_t *out, int8_t dx, int8_t dy, int8_t dz, uint8_t b) {
  int8_t z = dz > 7 ? 7 : dz < -8 ? -8 : dz;
  out[0] = 0x08 ^ (b & 0x0F) ^ (dx < 0 ? 0x10 : 0) ^ (dy < 0 ? 0x20 : 0);
  //               ^^^^^^^^ report/sync-bit
  out[1] = dx;
  out[2] = dy;
  out[3] = (b & 0x18) << 1 | (z & 0x0F);
}
`,
    },
    "ps2-five-button: the wheel's sign in the two highest bits": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
int8_t dx, dy, dz;
bool left, right, middle, back, forth;
uint8_t packet[4];
// @wire encodes ps2-five-button from x=dx y=dy wheel=dz left=left right=right middle=middle button4=back button5=forth into packet
void make_packet(void) {
  int8_t z = dz > 7 ? 7 : dz < -8 ? -8 : dz;
  packet[0] = 0x08 | left | right << 1 | middle << 2 | (dx < 0) << 4 | (dy < 0) << 5;
  packet[1] = dx;
  packet[2] = dy;
  packet[3] = (z & 0xCF) | back << 4 | forth << 5;
  //           ^^^^^^^^ report/sync-bit
}
`,
    },
  },
  right: {
    "two-button: bit 7 set as well, which is not on the line": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
void send_byte(uint8_t byte);
// @wire encodes two-button from x=dx y=-dy left=left right=right into send_byte
void send_report(int8_t dx, int8_t dy, bool left, bool right) {
  uint8_t x = dx, y = -dy;
  send_byte(0xC0 | left << 5 | right << 4 | (y >> 6) << 2 | x >> 6);
  send_byte(0x80 | (x & 0x3F));
  send_byte(0x80 | (y & 0x3F));
}
`,
    },
    "two-button: x in seven bits, masked at last": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes two-button from x=dx y=dy left=b.0 right=b.1 into out
void encode(uint8_t *out, int8_t dx, int8_t dy, uint8_t b) {
  out[0] = 64 + (b & 1) * 32 + (b & 2) * 8 + ((dy & 0xC0) >> 4) + ((dx & 0xC0) >> 6);
  out[1] = dx & 0x7F;
  out[2] = dy & 0x7F;
  out[1] &= ~0x40;
  out[2] &= ~0x40;
}
`,
    },
    "five-byte: the idle head, and bits taken away": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes five-byte from x=dx y=dy left=left middle=middle right=right into out
void build_report(uint8_t out[5], int8_t dx, int8_t dy, bool left, bool middle, bool right) {
  out[0] = 0x87 - left * 4 - middle * 2 - right;
  out[1] = dx;
  out[2] = dy;
  out[3] = out[4] = 0;
}
`,
    },
    "ps2-standard: bit 3 added through a table": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
static const uint8_t heads[8] = {0x08, 0x09, 0x0A, 0x0B, 0x0C, 0x0D, 0x0E, 0x0F};
// @wire encodes ps2-standard from x=dx y=dy left=b.0 right=b.1 middle=b.2 into out
void encode(uint8_t *out, int8_t dx, int8_t dy, uint8_t b) {
  out[0] = heads[b & 7] | (dx < 0 ? 0x10 : 0) | (dy < 0 ? 0x20 : 0);
  out[1] = dx;
  out[2] = dy;
}
`,
    },
    "middle-button: a fourth byte with other low bits": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes middle-button from x=x y=y left=b.0 right=b.1 middle=b.2 into out
void encode(uint8_t x, uint8_t y, uint8_t b, uint8_t *out) {
  out[0] = 0x40 | (b & 1) << 5 | (b & 2) << 3 | (y & 0xC0) >> 4 | x >> 6;
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
  out[3] = b & 4 ? 0x21 : 0x01;
}
`,
    },
    "ps2-five-button: the fourth button kept out of bit 3": {
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
  out[0] = 0x08 ^ (m.buttons & 0x07) ^ (m.dx < 0 ? 0x10 : 0) ^ (m.dy < 0 ? 0x20 : 0);
  out[1] = m.dx;
  out[2] = m.dy;
  out[3] = (m.buttons << 1 & 0x30) | (z & 0x0F);
}
`,
    },
  },
};
