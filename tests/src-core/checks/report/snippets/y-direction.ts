import type { Snippets } from "../../harness.ts";

/**
 * Each wrong one counts y the other way than its layout: three bytes downwards, five bytes and PS/2 upwards.
 * The layouts are those of mouse(4) (Linux man-pages), sermouse.c, psm(4) (FreeBSD), the HT82M35X data sheet and
 * input/sentelic (Linux kernel).
 */
export const yDirectionSnippets: Snippets = {
  wrong: {
    "two-button: y of a PS/2 mouse passed on": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes two-button from x=dx y=-dy left=left right=right into out
void build_report(uint8_t out[3], int8_t dx, int8_t dy, bool left, bool right) {
  uint8_t x = (uint8_t)dx;
  uint8_t y = (uint8_t)dy;

  out[0] = 0x40 | (left ? 0x20 : 0) | (right ? 0x10 : 0) | ((y >> 4) & 0x0C) | (x >> 6);
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
  //       ^^^^^^^^ report/y-direction
}
`,
    },
    "two-button: turned over though it counts downwards already": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
void send_byte(uint8_t byte);
static int16_t clip(int16_t v) { return v > 127 ? 127 : v < -127 ? -127 : v; }
/* @wire encodes two-button from x=right y=down left=b.0 right=b.1 into send_byte */
void send_report(int16_t right, int16_t down, uint8_t b) {
  int16_t x = clip(right);
  int16_t y = -clip(down);
  send_byte(0x40 | (b & 1) << 5 | (b & 2) << 3 | (y & 0xC0) >> 4 | (x & 0xC0) >> 6);
  send_byte(x & 0x3F);
  send_byte(y & 0x3F);
  //        ^^^^^^^^ report/y-direction
}
`,
    },
    "two-button: turned over twice": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
class Ferry {
 public:
  int16_t dx, dy;
  bool left, right;
  uint8_t report[3];

  // @wire encodes two-button from x=dx y=-dy left=left right=right into report
  void build() {
    const int8_t x = saturated(dx);
    const int8_t y = saturated(-dy);
    report[0] = 0x40 | left << 5 | right << 4 | (-y & 0xC0) >> 4 | (x & 0xC0) >> 6;
    report[1] = x & 0x3F;
    report[2] = -y & 0x3F;
    //          ^^^^^^^^^ report/y-direction
  }

 private:
  static int8_t saturated(int16_t v) { return v > 127 ? 127 : v < -127 ? -127 : v; }
};
`,
    },
    "middle-button: the rest gathered the wrong way": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
struct movement {
  int16_t dx, dy;
  bool left, right, middle;
};
static int16_t take(int16_t *rest) {
  int16_t now = *rest > 127 ? 127 : *rest < -127 ? -127 : *rest;
  *rest -= now;
  return now;
}
// @wire encodes middle-button from x=m->dx y=-m->dy left=m->left right=m->right middle=m->middle into out
uint8_t next_report(const struct movement *m, uint8_t out[4]) {
  static int16_t rest_x, rest_y;
  rest_x += m->dx;
  rest_y += m->dy;
  int16_t x = take(&rest_x);
  int16_t y = take(&rest_y);
  out[0] = 0x40 | m->left << 5 | m->right << 4 | (y & 0xC0) >> 4 | (x & 0xC0) >> 6;
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
  //       ^^^^^^^^ report/y-direction
  if (!m->middle) return 3;
  out[3] = 0x20;
  return 4;
}
`,
    },
    "wheel: a sketch that leaves y as it is": {
      "main.ino": `
// @wire board atmega328p clock=16MHz
byte report[4];
// @wire encodes wheel from x=dx y=-dy wheel=turn left=left right=right middle=middle into report
void fillReport(int dx, int dy, int turn, bool left, bool right, bool middle) {
  byte x = constrain(dx, -127, 127);
  byte y = constrain(dy, -127, 127);
  report[0] = 0x40 | (left << 5) | (right << 4) | ((y >> 6) << 2) | (x >> 6);
  report[1] = x & 0x3F;
  report[2] = y & 0x3F;
  //          ^^^^^^^^ report/y-direction
  report[3] = (middle << 4) | (constrain(turn, -8, 7) & 0x0F);
}
`,
    },
    "five-byte: turned over as if it were the three-byte report": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes five-byte from x=dx y=dy left=left middle=middle right=right into out
void build_report(uint8_t out[5], int8_t dx, int8_t dy, bool left, bool middle, bool right) {
  out[0] = 0x80 | (left ? 0 : 4) | (middle ? 0 : 2) | (right ? 0 : 1);
  out[1] = dx;
  out[2] = -dy;
  //       ^^^ report/y-direction
  out[3] = 0;
  out[4] = 0;
}
`,
    },
    "five-byte: down is sent where up belongs": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
void put(uint8_t byte);
struct travel {
  int8_t right, down;
  uint8_t pressed;
};
// @wire encodes five-byte from x=t.right y=-t.down left=t.pressed.0 right=t.pressed.1 middle=t.pressed.2 into put
void send_report(struct travel t) {
  put(0x80 | (t.pressed & 1 ? 0 : 4) | (t.pressed & 4 ? 0 : 2) | (t.pressed & 2 ? 0 : 1));
  put(t.right);
  put(t.down);
  //  ^^^^^^ report/y-direction
  put(0);
  put(0);
}
`,
    },
    "ps2-standard: counts down": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
static int16_t clip(int16_t value) {
  if (value > 255) return 255;
  if (value < -255) return -255;
  return value;
}
/* @wire encodes ps2-standard from x=dx y=-dy left=b.0 right=b.1 middle=b.2 into out */
void encode(uint8_t *out, int16_t dx, int16_t dy, uint8_t b) {
  int16_t x = clip(dx);
  int16_t y = clip(dy);
  out[0] = 0x08 | (b & 0x07) | ((x >> 4) & 0x10) | ((y >> 3) & 0x20);
  out[1] = x & 0xFF;
  out[2] = y & 0xFF;
  //       ^^^^^^^^ report/y-direction
}
`,
    },
    "ps2-wheel: multiplied by minus one": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct Movement {
  int16_t dx, dy;
  int8_t wheel;
  bool left, right, middle;
};
static int16_t within(int16_t v) { return v > 255 ? 255 : v < -255 ? -255 : v; }
uint8_t packet[4];
// @wire encodes ps2-wheel from x=m.dx y=m.dy wheel=m.wheel left=m.left right=m.right middle=m.middle into packet
void pack(const Movement &m) {
  const int16_t x = within(m.dx);
  const int16_t y = within(m.dy) * -1;
  packet[0] = 0x08 | m.left | m.right << 1 | m.middle << 2 | (x < 0) << 4 | (y < 0) << 5;
  packet[1] = x;
  packet[2] = y;
  //          ^ report/y-direction
  packet[3] = m.wheel;
}
`,
    },
    "ps2-five-button: globals, subtracted from nothing": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
int8_t up, right_counts, steps;
uint8_t down;
uint8_t packet[4];
// @wire encodes ps2-five-button from x=right_counts y=up wheel=steps left=down.0 right=down.1 middle=down.2 button4=down.3 button5=down.4 into packet
void make_packet(void) {
  int16_t y = 0 - up;
  int8_t z = steps > 7 ? 7 : steps < -8 ? -8 : steps;
  packet[0] = 0x08 | (down & 7) | (right_counts < 0 ? 0x10 : 0) | (y < 0 ? 0x20 : 0);
  packet[1] = right_counts;
  packet[2] = (uint8_t)y;
  //          ^^^^^^^^^^ report/y-direction
  packet[3] = (down & 0x18) << 1 | (z & 0x0F);
}
`,
    },
    "decoder of ps2-standard: not turned over": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire decodes ps2-standard from buf into x=dx y=-dy left=b.0 right=b.1 middle=b.2
void take_apart(const uint8_t buf[3], int16_t *dx, int16_t *dy, uint8_t *b) {
  *dx = (buf[0] & 0x10) ? buf[1] - 256 : buf[1];
  *dy = (buf[0] & 0x20) ? buf[2] - 256 : buf[2];
  //    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ report/y-direction
  *b = buf[0] & 0x07;
}
`,
    },
    "decoder of ps2-wheel: turned over for nothing": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
class Packet {
 public:
  int16_t x, y;
  int8_t wheel;
  uint8_t buttons;

  // @wire decodes ps2-wheel from bytes into x=x y=y wheel=wheel left=buttons.0 right=buttons.1 middle=buttons.2
  void decode(const uint8_t *bytes) {
    x = bytes[1] - ((bytes[0] << 4) & 0x100);
    y = ((bytes[0] << 3) & 0x100) - bytes[2];
    //  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ report/y-direction
    wheel = bytes[3];
    buttons = bytes[0] & 7;
  }
};
`,
    },
    "decoder of five-byte: up taken for down": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
struct travel {
  int16_t right, down;
  bool left_button, middle_button, right_button;
};
// @wire decodes five-byte from in into x=t->right y=-t->down left=t->left_button middle=t->middle_button right=t->right_button
void hear(const uint8_t in[5], struct travel *t) {
  t->right = (int8_t)in[1] + (int8_t)in[3];
  t->down = (int8_t)in[2] + (int8_t)in[4];
  //        ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ report/y-direction
  t->left_button = !(in[0] & 4);
  t->middle_button = !(in[0] & 2);
  t->right_button = !(in[0] & 1);
}
`,
    },
  },
  right: {
    "two-button: the complement and one": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes two-button from x=dx y=-dy left=b.0 right=b.1 into out
void encode(uint8_t *out, uint8_t dx, uint8_t dy, uint8_t b) {
  uint8_t y = ~dy + 1;
  out[0] = 0x40 | (b & 1) << 5 | (b & 2) << 3 | (y & 0xC0) >> 4 | dx >> 6;
  out[1] = dx & 0x3F;
  out[2] = y & 0x3F;
}
`,
    },
    "two-button: turned over twice where it has to stay": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes two-button from x=right y=down left=lb right=rb into out
void encode(uint8_t *out, int8_t right, int8_t down, bool lb, bool rb) {
  int16_t up = -down;
  int16_t y = -up;
  out[0] = 0x40 | lb << 5 | rb << 4 | (y & 0xC0) >> 4 | (right & 0xC0) >> 6;
  out[1] = right & 0x3F;
  out[2] = y & 0x3F;
}
`,
    },
    "five-byte: up is up": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes five-byte from x=dx y=dy left=left middle=middle right=right into out
void build_report(uint8_t out[5], int8_t dx, int8_t dy, bool left, bool middle, bool right) {
  out[0] = 0x80 | (left ? 0 : 4) | (middle ? 0 : 2) | (right ? 0 : 1);
  out[1] = dx;
  out[2] = dy;
  out[3] = 0;
  out[4] = 0;
}
`,
    },
    "ps2-standard: a mouse mounted the other way round": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes ps2-standard from x=-dx y=-dy left=b.0 right=b.1 middle=b.2 into out
void encode(uint8_t *out, int16_t dx, int16_t dy, uint8_t b) {
  int16_t x = dx * -1;
  int16_t y = 0 - dy;
  if (x > 255) x = 255;
  if (x < -255) x = -255;
  if (y > 255) y = 255;
  if (y < -255) y = -255;
  out[0] = 0x08 | (b & 0x07) | (x < 0 ? 0x10 : 0) | (y < 0 ? 0x20 : 0);
  out[1] = x;
  out[2] = y;
}
`,
    },
    "wheel: a rest that shrinks as y grows": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct movement {
  int16_t dx, dy;
  int8_t wheel;
  uint8_t buttons;
};
static int16_t rest_y;
// @wire encodes wheel from x=m->dx y=-m->dy wheel=m->wheel left=m->buttons.0 right=m->buttons.1 middle=m->buttons.2 into out
void encode(const struct movement *m, uint8_t *out) {
  int16_t x = m->dx > 127 ? 127 : m->dx < -127 ? -127 : m->dx;
  int8_t z = m->wheel > 7 ? 7 : m->wheel < -8 ? -8 : m->wheel;
  int16_t y;
  rest_y -= m->dy;
  y = rest_y > 127 ? 127 : rest_y < -127 ? -127 : rest_y;
  rest_y -= y;
  out[0] = 0x40 | (m->buttons & 1) << 5 | (m->buttons & 2) << 3 | (y & 0xC0) >> 4 | (x & 0xC0) >> 6;
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
  out[3] = (m->buttons & 4) << 2 | (z & 0x0F);
}
`,
    },
    "decoder of ps2-standard: the sign first, then turned over": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct Travel {
  int16_t right, down;
  bool left;
};
// @wire decodes ps2-standard from packet into x=t.right y=-t.down left=t.left
void decode(const uint8_t *packet, Travel &t) {
  t.right = packet[1];
  t.down = -packet[2];
  if (packet[0] & 0x10) t.right -= 256;
  if (packet[0] & 0x20) t.down += 256;
  t.left = packet[0] & 1;
}
`,
    },
  },
};
