import type { Example } from "../../../../src-core/checks/rule.ts";

/**
 * Encoders of `ps2-five-button` that are right, written from its documents:
 * HT82M35X data sheet, p. 3; Linux kernel documentation, input/sentelic, section A.
 */
export const rightEncoders: Readonly<Record<string, Example>> = {
  "everything in one expression each": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
/* @wire encodes ps2-five-button from x=dx y=dy wheel=dz left=left right=right middle=middle button4=back button5=forth into out */
void build_packet(uint8_t out[4], int8_t dx, int8_t dy, int8_t dz, bool left, bool right, bool middle, bool back,
                  bool forth) {
  int8_t z = dz > 7 ? 7 : dz < -8 ? -8 : dz;

  out[0] = 0x08 | left | right << 1 | middle << 2 | (dx < 0) << 4 | (dy < 0) << 5;
  out[1] = (uint8_t)dx;
  out[2] = (uint8_t)dy;
  out[3] = forth << 5 | back << 4 | (z & 0x0F);
}
`,
  },
  "five buttons in one byte": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
static int16_t clip(int16_t value, int16_t most) {
  if (value > most) return most;
  if (value < -most) return -most;
  return value;
}
// @wire encodes ps2-five-button from x=dx y=-dy wheel=dz left=b.0 right=b.1 middle=b.2 button4=b.3 button5=b.4 into out
void encode(uint8_t *out, int16_t dx, int16_t dy, int16_t dz, uint8_t b) {
  int16_t x = clip(dx, 255);
  int16_t y = clip(-dy, 255);
  out[0] = 0x08 | (b & 0x07) | ((x >> 4) & 0x10) | ((y >> 3) & 0x20);
  out[1] = x;
  out[2] = y;
  out[3] = ((b & 0x18) << 1) | (clip(dz, 7) & 0x0F);
}
`,
  },
  "ternaries, sent byte by byte": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
extern void ps2_write(uint8_t byte);
struct movement {
  int dx, dy, wheel;
  uint8_t buttons;
};
// @wire encodes ps2-five-button from x=m->dx y=m->dy wheel=m->wheel left=m->buttons.0 right=m->buttons.1 middle=m->buttons.2 button4=m->buttons.3 button5=m->buttons.4 into ps2_write
void send_packet(const struct movement *m) {
  int x = m->dx > 255 ? 255 : m->dx < -255 ? -255 : m->dx;
  int y = m->dy > 255 ? 255 : m->dy < -255 ? -255 : m->dy;
  int z = m->wheel > 7 ? 7 : m->wheel < -8 ? -8 : m->wheel;
  uint8_t head = 0x08;
  if (m->buttons & (1 << 0)) head |= 1 << 0;
  if (m->buttons & (1 << 1)) head |= 1 << 1;
  if (m->buttons & (1 << 2)) head |= 1 << 2;
  if (x < 0) head |= 1 << 4;
  if (y < 0) head |= 1 << 5;
  ps2_write(head);
  ps2_write(x);
  ps2_write(y);
  ps2_write((z & 0x0F) | (m->buttons & 8 ? 0x10 : 0) | (m->buttons & 16 ? 0x20 : 0));
}
`,
  },
  "bit fields behind a union": {
    "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
union Packet {
  struct {
    uint8_t left : 1, right : 1, middle : 1, one : 1, xSign : 1, ySign : 1, xOver : 1, yOver : 1;
    uint8_t x;
    uint8_t y;
    int8_t wheel : 4;
    uint8_t button4 : 1, button5 : 1, zero : 2;
  };
  uint8_t bytes[4];
};
struct Movement {
  int16_t x, y;
  int8_t wheel;
  bool left, right, middle, button4, button5;
};
static int16_t inNineBits(int16_t v) { return v > 255 ? 255 : v < -256 ? -256 : v; }
Packet packet;
// @wire encodes ps2-five-button from x=m.x y=m.y wheel=m.wheel left=m.left right=m.right middle=m.middle button4=m.button4 button5=m.button5 into packet.bytes
void pack(const Movement &m) {
  const int16_t x = inNineBits(m.x);
  const int16_t y = inNineBits(m.y);
  packet.left = m.left;
  packet.right = m.right;
  packet.middle = m.middle;
  packet.one = 1;
  packet.xSign = x < 0;
  packet.ySign = y < 0;
  packet.xOver = 0;
  packet.yOver = 0;
  packet.x = x;
  packet.y = y;
  packet.wheel = m.wheel < -8 ? -8 : m.wheel > 7 ? 7 : m.wheel;
  packet.button4 = m.button4;
  packet.button5 = m.button5;
  packet.zero = 0;
}
`,
  },
  "a sketch with constrain": {
    "main.ino": `
// @wire board atmega328p clock=16MHz
byte packet[4];
// @wire encodes ps2-five-button from x=dx y=dy wheel=wheel left=left right=right middle=middle button4=thumb button5=ring into packet
void fillPacket(int dx, int dy, int wheel, bool left, bool right, bool middle, bool thumb, bool ring) {
  dx = constrain(dx, -255, 255);
  dy = constrain(dy, -255, 255);
  wheel = constrain(wheel, -8, 7);
  packet[0] = (dy < 0 ? B00100000 : 0) | (dx < 0 ? B00010000 : 0) | B00001000;
  packet[0] |= (middle ? B100 : 0) | (right ? B010 : 0) | (left ? B001 : 0);
  packet[1] = dx;
  packet[2] = dy;
  packet[3] = wheel & B1111;
  if (thumb) packet[3] |= B00010000;
  if (ring) packet[3] |= B00100000;
}
`,
  },
  "a class that keeps the rest": {
    "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
class Mouse {
 public:
  int dx = 0, dy = 0, wheel = 0;
  uint8_t buttons = 0;
  uint8_t report[4];

  // @wire encodes ps2-five-button from x=dx y=-dy wheel=wheel left=buttons.0 right=buttons.1 middle=buttons.2 button4=buttons.3 button5=buttons.4 into report
  void next() {
    restX += dx;
    restY -= dy;
    restWheel += wheel;
    const int x = take(restX, -255, 255);
    const int y = take(restY, -255, 255);
    const int z = take(restWheel, -8, 7);
    report[0] = 0x08 | (buttons & 7) | (x & 0x100) >> 4 | (y & 0x100) >> 3;
    report[1] = x & 0xFF;
    report[2] = y & 0xFF;
    report[3] = (buttons >> 3 & 3) << 4 | (z & 0x0F);
  }

 private:
  int restX = 0, restY = 0, restWheel = 0;
  static int take(int &rest, int low, int high) {
    int now = rest;
    if (now < low) now = low;
    else if (now > high) now = high;
    rest -= now;
    return now;
  }
};
`,
  },
  "tables of masks for two bytes": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct place {
  uint8_t byte, mask;
};
static const struct place places[5] = {{0, 1}, {0, 2}, {0, 4}, {3, 0x10}, {3, 0x20}};
int8_t delta_x, delta_y, delta_z;
uint8_t down;
uint8_t packet[4];
// @wire encodes ps2-five-button from x=delta_x y=delta_y wheel=delta_z left=down.0 right=down.1 middle=down.2 button4=down.3 button5=down.4 into packet
void make_packet(void) {
  int8_t z = delta_z;
  uint8_t i;
  if (z < -7) {
    z = -7;
  } else if (z > 7) {
    z = 7;
  }
  packet[0] = 0x08;
  if (delta_x < 0) packet[0] |= 0x10;
  if (delta_y < 0) packet[0] |= 0x20;
  packet[1] = delta_x;
  packet[2] = delta_y;
  packet[3] = z & 0x0F;
  for (i = 0; i < 5; i++) {
    if (down & (1 << i)) {
      packet[places[i].byte] |= places[i].mask;
    }
  }
}
`,
  },
  "flags where a movement is too long": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
struct travel {
  long x, y;
  signed char wheel;
  bool left, right, middle, fourth, fifth;
};
// @wire encodes ps2-five-button from x=t.x y=t.y wheel=t.wheel left=t.left right=t.right middle=t.middle button4=t.fourth button5=t.fifth into out
void encode(struct travel t, uint8_t *out) {
  bool x_over = t.x > 255 || t.x < -255;
  bool y_over = t.y > 255 || t.y < -255;
  if (x_over) t.x = t.x < 0 ? -255 : 255;
  if (y_over) t.y = t.y < 0 ? -255 : 255;
  if (t.wheel > 7 || t.wheel < -8) t.wheel = t.wheel < 0 ? -8 : 7;
  out[0] = y_over << 7 | x_over << 6 | (t.y < 0) << 5 | (t.x < 0) << 4 | 1 << 3 | t.middle << 2 | t.right << 1 | t.left;
  out[1] = t.x;
  out[2] = t.y;
  out[3] = t.fifth << 5 | t.fourth << 4 | (t.wheel & 15);
}
`,
  },
  "bytes that hold two's complement, no extra buttons": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
static uint8_t nibble(uint8_t z) {
  if (z < 0x80) return z > 7 ? 7 : z;
  return z < 0xF8 ? 0x08 : z & 0x0F;
}
// @wire encodes ps2-five-button from x=x y=y wheel=z left=b.0 right=b.1 middle=b.2 into out
void from_bytes(uint8_t b, uint8_t x, uint8_t y, uint8_t z, uint8_t *out) {
  out[0] = 0x08 + (b & 7) + (x >> 7) * 16 + (y >> 7) * 32;
  out[1] = x;
  out[2] = y;
  out[3] = nibble(z);
}
`,
  },
};
