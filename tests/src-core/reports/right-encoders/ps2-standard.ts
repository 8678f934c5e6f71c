import type { Example } from "../../../../src-core/checks/rule.ts";

/**
 * Encoders of `ps2-standard` that are right, written from its documents:
 * FreeBSD psm(4): data packet; HT82M35X data sheet, p. 3.
 */
export const rightEncoders: Readonly<Record<string, Example>> = {
  "signs by comparison, 8-bit parameters": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes ps2-standard from x=dx y=dy left=left right=right middle=middle into out
void build_packet(uint8_t out[3], int8_t dx, int8_t dy, bool left, bool right, bool middle) {
  out[0] = 0x08 | (left ? 1 : 0) | (right ? 2 : 0) | (middle ? 4 : 0) | (dx < 0 ? 0x10 : 0) | (dy < 0 ? 0x20 : 0);
  out[1] = (uint8_t)dx;
  out[2] = (uint8_t)dy;
}
`,
  },
  "the ninth bit by shifting": {
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
  int16_t y = clip(-dy);
  out[0] = 0x08 | (b & 0x07) | ((x >> 4) & 0x10) | ((y >> 3) & 0x20);
  out[1] = x & 0xFF;
  out[2] = y & 0xFF;
}
`,
  },
  "with overflow flags": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
void ps2_write(uint8_t byte);
// @wire encodes ps2-standard from x=dx y=dy left=left right=right middle=middle into ps2_write
void send_packet(int dx, int dy, bool left, bool right, bool middle) {
  uint8_t head = 0x08 | left | right << 1 | middle << 2;
  if (dx > 255) {
    dx = 255;
    head |= 0x40;
  } else if (dx < -256) {
    dx = -256;
    head |= 0x40;
  }
  if (dy > 255) {
    dy = 255;
    head |= 0x80;
  } else if (dy < -256) {
    dy = -256;
    head |= 0x80;
  }
  if (dx < 0) head |= 0x10;
  if (dy < 0) head |= 0x20;
  ps2_write(head);
  ps2_write(dx);
  ps2_write(dy);
}
`,
  },
  "a class that keeps the rest": {
    "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
class Pointer {
 public:
  int16_t dx = 0, dy = 0;
  bool left = false, right = false;
  uint8_t packet[3];

  // @wire encodes ps2-standard from x=dx y=-dy left=left right=right into packet
  void next() {
    restX += dx;
    restY -= dy;
    const int16_t x = take(restX);
    const int16_t y = take(restY);
    packet[0] = 0x08 | left | right << 1 | (x < 0) << 4 | (y < 0) << 5;
    packet[1] = static_cast<uint8_t>(x);
    packet[2] = static_cast<uint8_t>(y);
  }

 private:
  int16_t restX = 0, restY = 0;
  static int16_t take(int16_t &rest) {
    const int16_t now = rest > 255 ? 255 : rest < -255 ? -255 : rest;
    rest -= now;
    return now;
  }
};
`,
  },
  "bit fields behind a union": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
union packet {
  struct {
    uint8_t left : 1, right : 1, middle : 1, always_one : 1;
    uint8_t x_sign : 1, y_sign : 1, x_overflow : 1, y_overflow : 1;
    uint8_t x, y;
  } is;
  uint8_t bytes[3];
};
struct movement {
  int8_t dx, dy;
  uint8_t buttons;
};
union packet packet;
// @wire encodes ps2-standard from x=m->dx y=m->dy left=m->buttons.0 right=m->buttons.1 middle=m->buttons.2 into packet.bytes
void pack(const struct movement *m) {
  packet.is.left = m->buttons;
  packet.is.right = m->buttons >> 1;
  packet.is.middle = m->buttons >> 2;
  packet.is.always_one = 1;
  packet.is.x_sign = m->dx < 0;
  packet.is.y_sign = m->dy < 0;
  packet.is.x_overflow = 0;
  packet.is.y_overflow = 0;
  packet.is.x = m->dx;
  packet.is.y = m->dy;
}
`,
  },
  "a sketch with constrain and bitWrite": {
    "main.ino": `
// @wire board atmega328p clock=16MHz
// @wire encodes ps2-standard from x=dx y=dy left=left right=right middle=middle into packet
void buildPacket(byte packet[3], int dx, int dy, bool left, bool right, bool middle) {
  dx = constrain(dx, -255, 255);
  dy = constrain(dy, -255, 255);
  packet[0] = B00001000;
  bitWrite(packet[0], 0, left);
  bitWrite(packet[0], 1, right);
  bitWrite(packet[0], 2, middle);
  bitWrite(packet[0], 4, dx < 0);
  bitWrite(packet[0], 5, dy < 0);
  packet[1] = lowByte(dx);
  packet[2] = lowByte(dy);
}
`,
  },
  "a table of masks, globals in and out": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
long total_x, total_y;
uint8_t pressed;
uint8_t packet[3];
static const uint8_t masks[3] = {0x01, 0x02, 0x04};
static const long most = 255;
// @wire encodes ps2-standard from x=total_x y=total_y left=pressed.0 right=pressed.1 middle=pressed.2 into packet
void make_packet(void) {
  long axes[2] = {total_x, total_y};
  packet[0] = 1 << 3;
  for (uint8_t i = 0; i < 3; i++) {
    packet[0] |= pressed & masks[i];
  }
  for (uint8_t i = 0; i < 2; i++) {
    if (axes[i] > most) axes[i] = most;
    if (axes[i] < -most) axes[i] = -most;
    if (axes[i] < 0) packet[0] |= 0x10 << i;
    packet[i + 1] = (uint8_t)axes[i];
  }
}
`,
  },
  "a template that clamps, bytes written one after the other": {
    "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct Movement {
  int16_t dx, dy;
  bool left, right, middle;
};
constexpr int16_t MOST = 255;
template <typename T>
static T clamped(T value, T low, T high) {
  return value < low ? low : high < value ? high : value;
}
static void write(uint8_t value, uint8_t *&at) { *at++ = value; }
// @wire encodes ps2-standard from x=m.dx y=-m.dy left=m.left right=m.right middle=m.middle into out
void encode(const Movement &m, uint8_t *out) {
  const uint16_t x = clamped<int16_t>(m.dx, -MOST, MOST);
  const uint16_t y = clamped<int16_t>(-m.dy, -MOST, MOST);
  uint8_t head = 0x08;
  head += m.left ? 1 : 0;
  head += m.right ? 2 : 0;
  head += m.middle ? 4 : 0;
  head += (x & 0x100) >> 4;
  head += (y & 0x100) >> 3;
  write(head, out);
  write(x & 0xFF, out);
  write(y & 0xFF, out);
}
`,
  },
  "bytes that hold two's complement": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes ps2-standard from x=x y=y left=left right=right middle=middle into out
void widen(uint8_t x, uint8_t y, uint8_t left, uint8_t right, uint8_t middle, uint8_t *out) {
  out[2] = y;
  out[1] = x;
  out[0] = (y & 0x80) >> 2 | (x & 0x80) >> 3 | 0x08 | middle << 2 | right << 1 | left;
}
`,
  },
};
