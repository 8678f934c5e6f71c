import type { Example } from "../../../../src-core/checks/rule.ts";

/**
 * Encoders of `wheel` that are right, written from its documents:
 * Linux kernel, sermouse.c: decode; EM84520 data sheet, p. 3.
 */
export const rightEncoders: Readonly<Record<string, Example>> = {
  "shifts and masks of 8-bit parameters": {
    "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes wheel from x=dx y=-dy left=left right=right middle=middle wheel=wheel into report
void buildReport(uint8_t report[4], int8_t dx, int8_t dy, int16_t wheel, bool left, bool right, bool middle) {
  uint8_t x = dx;
  uint8_t y = -dy;
  if (wheel > 7) wheel = 7;
  if (wheel < -8) wheel = -8;
  report[0] = 0x40 | (left ? 0x20 : 0) | (right ? 0x10 : 0) | ((y >> 4) & 0x0C) | (x >> 6);
  report[1] = x & 0x3F;
  report[2] = y & 0x3F;
  report[3] = (middle ? 0x10 : 0) | (wheel & 0x0F);
}
`,
  },
  "everything clipped by one macro": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
#define LIMIT(v, low, high) ((v) < (low) ? (low) : (v) > (high) ? (high) : (v))
/* @wire encodes wheel from x=dx y=dy wheel=dz left=l right=r middle=m into out */
void encode(uint8_t *out, int dx, int dy, int dz, bool l, bool r, bool m) {
  int x = LIMIT(dx, -127, 127), y = LIMIT(dy, -127, 127), z = LIMIT(dz, -7, 7);
  out[0] = 0x40 | l << 5 | r << 4 | (y >> 6 & 3) << 2 | (x >> 6 & 3);
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
  out[3] = m << 4 | (z & 15);
}
`,
  },
  "sent as it is made": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
void send_byte(uint8_t byte);
struct movement {
  int16_t dx, dy, wheel;
  uint8_t buttons;
};
static int16_t clip(int16_t value, int16_t low, int16_t high) {
  if (value < low) return low;
  if (value > high) return high;
  return value;
}
// @wire encodes wheel from x=m->dx y=-m->dy wheel=m->wheel left=m->buttons.0 right=m->buttons.1 middle=m->buttons.2 into send_byte
void send_report(const struct movement *m) {
  int16_t x = clip(m->dx, -128, 127);
  int16_t y = clip(-m->dy, -128, 127);
  int16_t z = clip(m->wheel, -8, 7);
  send_byte(0x40 | (m->buttons & 1 ? 0x20 : 0) | (m->buttons & 2 ? 0x10 : 0) | (y & 0xC0) >> 4 | (x & 0xC0) >> 6);
  send_byte(x & 0x3F);
  send_byte(y & 0x3F);
  send_byte((m->buttons & 4 ? 0x10 : 0) | (z & 0x0F));
}
`,
  },
  "a sketch whose object sends itself": {
    "main.ino": `
// @wire board atmega328p clock=16MHz
class WheelReport {
 public:
  int dx = 0, dy = 0, wheel = 0;
  bool left = false, middle = false, right = false;
  byte data[4];

  // @wire encodes wheel from x=dx y=-dy wheel=wheel left=left right=right middle=middle into data
  void fill() {
    const int x = constrain(dx, -127, 127);
    const int y = -constrain(dy, -127, 127);
    const int z = constrain(wheel, -8, 7);
    data[0] = B01000000;
    if (left) bitSet(data[0], 5);
    if (right) bitSet(data[0], 4);
    bitWrite(data[0], 3, bitRead(y, 7));
    bitWrite(data[0], 2, bitRead(y, 6));
    bitWrite(data[0], 1, bitRead(x, 7));
    bitWrite(data[0], 0, bitRead(x, 6));
    data[1] = x & B00111111;
    data[2] = y & B00111111;
    data[3] = z & B00001111;
    if (middle) bitSet(data[3], 4);
  }
};
`,
  },
  "the wheel carried over too": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct axis {
  int16_t rest;
  int8_t low, high;
};
static struct axis across = {0, -127, 127};
static struct axis down = {0, -127, 127};
static struct axis turned = {0, -8, 7};
static int8_t take(struct axis *axis, int16_t more) {
  int16_t sum = axis->rest + more;
  int8_t now = sum > axis->high ? axis->high : sum < axis->low ? axis->low : (int8_t)sum;
  axis->rest = sum - now;
  return now;
}
// @wire encodes wheel from x=dx y=-dy wheel=dz left=b.0 right=b.1 middle=b.2 into out
void next_report(int16_t dx, int16_t dy, int8_t dz, uint8_t b, uint8_t out[4]) {
  uint8_t x = take(&across, dx);
  uint8_t y = take(&down, -dy);
  uint8_t z = take(&turned, dz);
  out[0] = 0x40 | (b & 1) << 5 | (b & 2) << 3 | (y & 0xC0) >> 4 | (x & 0xC0) >> 6;
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
  out[3] = (b & 4) << 2 | (z & 0x0F);
}
`,
  },
  "bit fields for each of the four bytes": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
union report {
  struct {
    uint8_t x_high : 2, y_high : 2, right : 1, left : 1, first : 2;
    uint8_t x_low : 6, second : 2;
    uint8_t y_low : 6, third : 2;
    uint8_t wheel : 4, middle : 1, fourth : 3;
  } fields;
  uint8_t bytes[4];
};
union report line;
struct movement {
  int8_t x, y, wheel;
  uint8_t left, right, middle;
};
/* @wire encodes wheel from x=m.x y=m.y wheel=m.wheel left=m.left right=m.right middle=m.middle into line.bytes */
void pack(struct movement m) {
  line.fields.first = 1;
  line.fields.left = m.left;
  line.fields.right = m.right;
  line.fields.y_high = (uint8_t)m.y >> 6;
  line.fields.x_high = (uint8_t)m.x >> 6;
  line.fields.second = 0;
  line.fields.x_low = m.x;
  line.fields.third = 0;
  line.fields.y_low = m.y;
  line.fields.fourth = 0;
  line.fields.middle = m.middle;
  line.fields.wheel = m.wheel > 7 ? 7 : m.wheel < -8 ? -8 : m.wheel;
}
`,
  },
  "a table of wheel codes in flash": {
    "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/pgmspace.h>
static const uint8_t codes[16] PROGMEM = {8, 9, 10, 11, 12, 13, 14, 15, 0, 1, 2, 3, 4, 5, 6, 7};
static void sendByte(uint8_t byte) {
  loop_until_bit_is_set(UCSR0A, UDRE0);
  UDR0 = byte;
}
// @wire encodes wheel from x=dx y=dy wheel=turn left=pressed.0 right=pressed.1 middle=pressed.2 into sendByte
void sendReport(int8_t dx, int8_t dy, int8_t turn, uint8_t pressed) {
  if (turn < -8) turn = -8;
  if (turn > 7) turn = 7;
  const uint8_t x = static_cast<uint8_t>(dx);
  const uint8_t y = static_cast<uint8_t>(dy);
  sendByte(0x40 | (pressed & 1) << 5 | (pressed & 2) << 3 | y >> 6 << 2 | x >> 6);
  sendByte(x & 0x3F);
  sendByte(y & 0x3F);
  sendByte((pressed & 4) << 2 | pgm_read_byte(&codes[turn + 8]));
}
`,
  },
  "globals, and an eighth bit that is not on the line": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
static int16_t travel_x, travel_y;
static int8_t travel_wheel;
static bool left, middle, right;
static uint8_t report[4];
#define SEVEN(bits) (0x80 | ((bits) & 0x7F))
// @wire encodes wheel from x=travel_x y=-travel_y wheel=travel_wheel left=left right=right middle=middle into report
void make_report(void) {
  int16_t x = travel_x > 127 ? 127 : travel_x < -127 ? -127 : travel_x;
  int16_t y = travel_y > 127 ? -127 : travel_y < -127 ? 127 : -travel_y;
  int8_t z = travel_wheel;
  if (z >= 8) z = 7;
  if (z <= -8) z = -8;
  report[0] = SEVEN(0x40 | left << 5 | right << 4 | (y & 0xC0) >> 4 | (x & 0xC0) >> 6);
  report[1] = SEVEN(x & 0x3F);
  report[2] = SEVEN(y & 0x3F);
  report[3] = SEVEN(middle << 4 | (z & 0x0F));
}
`,
  },
};
