import type { Example } from "../../../../src-core/checks/rule.ts";

/**
 * Encoders of `ps2-wheel` that are right, written from its documents:
 * HT82M35X data sheet, p. 3: the wheel's byte is signed, eight bits; PAW3402 data sheet, 6.2.
 */
export const rightEncoders: Readonly<Record<string, Example>> = {
  "the wheel's byte as it comes": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes ps2-wheel from x=dx y=dy left=left right=right middle=middle wheel=wheel into out
void build_packet(uint8_t out[4], int8_t dx, int8_t dy, int8_t wheel, bool left, bool right, bool middle) {
  out[0] = 0x08 | (left ? 1 : 0) | (right ? 2 : 0) | (middle ? 4 : 0) | (dx < 0 ? 0x10 : 0) | (dy < 0 ? 0x20 : 0);
  out[1] = (uint8_t)dx;
  out[2] = (uint8_t)dy;
  out[3] = (uint8_t)wheel;
}
`,
  },
  "all three clipped by one helper": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
static int16_t clip(int16_t value, int16_t low, int16_t high) {
  if (value < low) {
    return low;
  }
  return value > high ? high : value;
}
/* @wire encodes ps2-wheel from x=dx y=-dy wheel=dz left=b.0 right=b.1 middle=b.2 into out */
void encode(uint8_t *out, int16_t dx, int16_t dy, int16_t dz, uint8_t b) {
  int16_t x = clip(dx, -255, 255);
  int16_t y = clip(-dy, -255, 255);
  out[0] = 0x08 | (b & 0x07) | ((x >> 4) & 0x10) | ((y >> 3) & 0x20);
  out[1] = x;
  out[2] = y;
  out[3] = clip(dz, -8, 7);
}
`,
  },
  "sent byte by byte": {
    "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
void ps2Write(uint8_t byte);
struct Movement {
  int16_t dx, dy;
  int8_t wheel;
  bool left, right, middle;
};
static int16_t clipped(int16_t v) { return v > 255 ? 255 : v < -256 ? -256 : v; }
// @wire encodes ps2-wheel from x=m.dx y=m.dy wheel=m.wheel left=m.left right=m.right middle=m.middle into ps2Write
void sendPacket(const Movement &m) {
  const int16_t x = clipped(m.dx), y = clipped(m.dy);
  ps2Write(0x08 | m.left | m.right << 1 | m.middle << 2 | (x < 0) << 4 | (y < 0) << 5);
  ps2Write(x & 0xFF);
  ps2Write(y & 0xFF);
  ps2Write(m.wheel > 7 ? 7 : m.wheel < -7 ? -7 : m.wheel);
}
`,
  },
  "bit fields behind a union": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
typedef union {
  struct {
    unsigned left : 1;
    unsigned right : 1;
    unsigned middle : 1;
    unsigned one : 1;
    unsigned x_sign : 1;
    unsigned y_sign : 1;
    unsigned x_over : 1;
    unsigned y_over : 1;
    uint8_t x;
    uint8_t y;
    int8_t z;
  } part;
  uint8_t raw[4];
} packet_t;
packet_t packet;
int8_t moved_x, moved_y, turned;
uint8_t left_down, right_down, middle_down;
// @wire encodes ps2-wheel from x=moved_x y=-moved_y wheel=turned left=left_down right=right_down middle=middle_down into packet.raw
void make_packet(void) {
  int16_t y = -(int16_t)moved_y;
  packet.part.left = left_down;
  packet.part.right = right_down;
  packet.part.middle = middle_down;
  packet.part.one = 1;
  packet.part.x_sign = moved_x < 0;
  packet.part.y_sign = y < 0;
  packet.part.x_over = 0;
  packet.part.y_over = 0;
  packet.part.x = moved_x;
  packet.part.y = y;
  packet.part.z = turned;
}
`,
  },
  "a sketch object with its own buffer": {
    "main.ino": `
// @wire board atmega328p clock=16MHz
class WheelPacket {
 public:
  int dx, dy, wheel;
  byte buttons;
  byte data[4];
  void fill();
};
// @wire encodes ps2-wheel from x=dx y=dy wheel=wheel left=buttons.0 right=buttons.1 middle=buttons.2 into data
void WheelPacket::fill() {
  int x = constrain(dx, -255, 255);
  int y = constrain(dy, -255, 255);
  data[0] = B00001000 | (buttons & B111);
  if (x < 0) data[0] |= B00010000;
  if (y < 0) data[0] |= B00100000;
  data[1] = x;
  data[2] = y;
  data[3] = constrain(wheel, -8, 7);
}
`,
  },
  "what is left waits, the wheel's too": {
    "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct Rest {
  int16_t x, y, wheel;
};
static Rest rest = {0, 0, 0};
static int16_t take(int16_t &from, int16_t low, int16_t high) {
  int16_t now = from;
  if (now < low) now = low;
  if (now > high) now = high;
  from -= now;
  return now;
}
// @wire encodes ps2-wheel from x=dx y=-dy wheel=turn left=left right=right middle=middle into packet
void nextPacket(int16_t dx, int16_t dy, int8_t turn, bool left, bool right, bool middle, uint8_t (&packet)[4]) {
  rest.x += dx;
  rest.y -= dy;
  rest.wheel += turn;
  const int16_t x = take(rest.x, -255, 255);
  const int16_t y = take(rest.y, -255, 255);
  packet[0] = 0x08 | left | (right << 1) | (middle << 2) | ((x >> 8) & 1) << 4 | ((y >> 8) & 1) << 5;
  packet[1] = x;
  packet[2] = y;
  packet[3] = take(rest.wheel, -8, 7);
}
`,
  },
  "flags where a movement is too long": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct movement {
  int dx, dy, dz;
  unsigned char buttons;
};
static unsigned char nine_bits(int *value, unsigned char sign, unsigned char overflow) {
  unsigned char flags = 0;
  if (*value > 255) {
    *value = 255;
    flags = overflow;
  }
  if (*value < -255) {
    *value = -255;
    flags = overflow;
  }
  return *value < 0 ? flags | sign : flags;
}
// @wire encodes ps2-wheel from x=m.dx y=m.dy wheel=m.dz left=m.buttons.0 right=m.buttons.1 middle=m.buttons.2 into out
void pack(struct movement m, unsigned char *out) {
  out[0] = 0x08 | (m.buttons & 7);
  out[0] |= nine_bits(&m.dx, 0x10, 0x40);
  out[0] |= nine_bits(&m.dy, 0x20, 0x80);
  out[1] = m.dx;
  out[2] = m.dy;
  out[3] = m.dz > 7 ? 7 : m.dz < -8 ? -8 : m.dz;
}
`,
  },
  "a table of masks and a wheel of steps": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
static const uint8_t masks[] = {1, 2, 4};
// @wire encodes ps2-wheel from x=dx y=dy wheel=steps left=left right=right middle=middle into out
void encode(long dx, long dy, int steps, bool left, bool right, bool middle, uint8_t *out) {
  const bool down[] = {left, right, middle};
  dx = dx < -255 ? -255 : dx > 255 ? 255 : dx;
  dy = dy < -255 ? -255 : dy > 255 ? 255 : dy;
  if (steps < -8) steps = -8;
  if (steps > 7) steps = 7;
  out[0] = 8;
  for (uint8_t i = 0; i < sizeof masks; i++) out[0] |= down[i] ? masks[i] : 0;
  out[0] |= dx < 0 ? 16 : 0;
  out[0] |= dy < 0 ? 32 : 0;
  out[1] = dx & 255;
  out[2] = dy & 255;
  out[3] = steps & 255;
}
`,
  },
  "a mouse without a middle button": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes ps2-wheel from x=x y=y wheel=z left=left right=right into out
void from_bytes(uint8_t x, uint8_t y, uint8_t z, uint8_t left, uint8_t right, uint8_t *out) {
  *out = 0x08 | left | right << 1 | (x >> 7) << 4 | (y >> 7) << 5;
  *++out = x;
  *++out = y;
  *++out = z;
}
`,
  },
};
