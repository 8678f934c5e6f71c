import type { Snippets } from "../../harness.ts";

/**
 * Each wrong one sends more or fewer bytes than its layout has.
 * The layouts are those of mouse(4) (Linux man-pages), sermouse.c, psm(4) (FreeBSD), the HT82M35X data sheet and
 * input/sentelic (Linux kernel).
 */
export const lengthSnippets: Snippets = {
  wrong: {
    "two-button: a fourth byte that is always sent": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
void send_byte(uint8_t byte);
// @wire encodes two-button from x=dx y=-dy left=left right=right into send_byte
void send_report(int8_t dx, int8_t dy, bool left, bool right) {
  uint8_t x = (uint8_t)dx;
  uint8_t y = (uint8_t)-dy;
  send_byte(0x40 | left << 5 | right << 4 | (y >> 6) << 2 | x >> 6);
  send_byte(x & 0x3F);
  send_byte(y & 0x3F);
  send_byte(0x00);
  //        ^^^^ report/length
}
`,
    },
    "two-button: a fourth byte when both buttons are down": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <stdint.h>
static void put(uint8_t byte) {
  while (!(UCSR0A & (1 << UDRE0))) {
  }
  UDR0 = byte;
}
// @wire encodes two-button from x=dx y=dy left=b.0 right=b.1 into put
void report(int8_t dx, int8_t dy, uint8_t b) {
  put(0x40 | (b & 1) << 5 | (b & 2) << 3 | (dy & 0xC0) >> 4 | (dx & 0xC0) >> 6);
  put(dx & 0x3F);
  put(dy & 0x3F);
  if ((b & 3) == 3) put(0x20);
  //                    ^^^^ report/length
}
`,
    },
    "wheel: three bytes only": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
struct movement {
  int8_t dx, dy, wheel;
  bool left, right, middle;
};
/* @wire encodes wheel from x=m->dx y=-m->dy wheel=m->wheel left=m->left right=m->right middle=m->middle into out */
void encode(const struct movement *m, uint8_t *out) {
//   ^^^^^^ report/length
  uint8_t y = (uint8_t)-m->dy;
  out[0] = 0x40 | (m->left ? 0x20 : 0) | (m->right ? 0x10 : 0) | ((y >> 4) & 0x0C) | ((uint8_t)m->dx >> 6);
  out[1] = m->dx & 0x3F;
  out[2] = y & 0x3F;
}
`,
    },
    "wheel: the fourth byte only when it has news": {
      "main.ino": `
// @wire board atmega328p clock=16MHz
void sendByte(byte value) { Serial.write(value); }
// @wire encodes wheel from x=dx y=-dy wheel=turn left=left right=right middle=middle into sendByte
void sendReport(int dx, int dy, int turn, bool left, bool right, bool middle) {
//   ^^^^^^^^^^ report/length
  dx = constrain(dx, -127, 127);
  dy = -constrain(dy, -127, 127);
  turn = constrain(turn, -8, 7);
  sendByte(0x40 | (left ? 0x20 : 0) | (right ? 0x10 : 0) | ((dy >> 4) & 0x0C) | ((dx >> 6) & 0x03));
  sendByte(dx & 0x3F);
  sendByte(dy & 0x3F);
  if (turn != 0 || middle) sendByte((middle ? 0x10 : 0) | (turn & 0x0F));
}
`,
    },
    "five-byte: the second pair left out": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire encodes five-byte from x=dx y=dy left=left middle=middle right=right into out
void build_report(uint8_t out[5], int8_t dx, int8_t dy, bool left, bool middle, bool right) {
//   ^^^^^^^^^^^^ report/length
  out[0] = 0x80 | (left ? 0 : 4) | (middle ? 0 : 2) | (right ? 0 : 1);
  out[1] = (uint8_t)dx;
  out[2] = (uint8_t)dy;
}
`,
    },
    "five-byte: a sixth byte to end it": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
class Report {
 public:
  int8_t dx, dy;
  uint8_t buttons;
  uint8_t bytes[6];

  // @wire encodes five-byte from x=dx y=-dy left=buttons.0 right=buttons.1 middle=buttons.2 into bytes
  void build() {
    bytes[0] = 0x80 | (buttons & 1 ? 0 : 4) | (buttons & 4 ? 0 : 2) | (buttons & 2 ? 0 : 1);
    bytes[1] = dx;
    bytes[2] = -dy;
    bytes[3] = 0;
    bytes[4] = 0;
    bytes[5] = 0xFF;
    //         ^^^^ report/length
  }
};
`,
    },
    "ps2-standard: a byte for a wheel that is not there": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes ps2-standard from x=dx y=dy left=b.0 right=b.1 middle=b.2 into packet
void encode(int8_t dx, int8_t dy, uint8_t b, uint8_t *packet) {
  packet[0] = 0x08 | (b & 0x07) | (dx < 0 ? 0x10 : 0) | (dy < 0 ? 0x20 : 0);
  packet[1] = dx;
  packet[2] = dy;
  packet[3] = 0;
  //          ^ report/length
}
`,
    },
    "ps2-wheel: a class that forgets the wheel": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
class Packet {
 public:
  int16_t x, y, wheel;
  bool left, right, middle;
  uint8_t data[4];
  void fill();

 private:
  static int16_t clip(int16_t v) { return v > 255 ? 255 : v < -255 ? -255 : v; }
};
// @wire encodes ps2-wheel from x=x y=y wheel=wheel left=left right=right middle=middle into data
void Packet::fill() {
//           ^^^^ report/length
  const int16_t cx = clip(x), cy = clip(y);
  data[0] = 0x08 | left | right << 1 | middle << 2 | (cx < 0) << 4 | (cy < 0) << 5;
  data[1] = cx;
  data[2] = cy;
}
`,
    },
    "ps2-five-button: no fourth byte while the wheel rests": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
void ps2_write(uint8_t byte);
// @wire encodes ps2-five-button from x=dx y=dy wheel=dz left=b.0 right=b.1 middle=b.2 button4=b.3 button5=b.4 into ps2_write
void send_packet(int8_t dx, int8_t dy, int8_t dz, uint8_t b) {
//   ^^^^^^^^^^^ report/length
  int8_t z = dz > 7 ? 7 : dz < -8 ? -8 : dz;
  ps2_write(0x08 | (b & 7) | (dx < 0) << 4 | (dy < 0) << 5);
  ps2_write(dx);
  ps2_write(dy);
  if (z) ps2_write((b & 0x18) << 1 | (z & 0x0F));
}
`,
    },
    "middle-button: no fourth byte where nothing moved": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
void send_byte(uint8_t byte);
// @wire encodes middle-button from x=dx y=-dy left=left right=right middle=middle into send_byte
void send_report(int8_t dx, int8_t dy, bool left, bool right, bool middle) {
//   ^^^^^^^^^^^ report/length
  uint8_t x = dx, y = -dy;
  send_byte(0x40 | left << 5 | right << 4 | (y & 0xC0) >> 4 | x >> 6);
  send_byte(x & 0x3F);
  send_byte(y & 0x3F);
  if (middle && (x || y)) send_byte(0x20);
}
`,
    },
  },
  right: {
    "middle-button: the fourth byte while the button is down": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
void send_byte(uint8_t byte);
// @wire encodes middle-button from x=dx y=-dy left=left right=right middle=middle into send_byte
void send_report(int8_t dx, int8_t dy, bool left, bool right, bool middle) {
  uint8_t x = dx, y = -dy;
  send_byte(0x40 | left << 5 | right << 4 | (y & 0xC0) >> 4 | x >> 6);
  send_byte(x & 0x3F);
  send_byte(y & 0x3F);
  if (middle) send_byte(0x20);
}
`,
    },
    "middle-button: always four": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes middle-button from x=dx y=dy left=b.0 right=b.1 middle=b.2 into out
void encode(int8_t dx, int8_t dy, uint8_t b, uint8_t out[4]) {
  out[3] = (b & 4) << 3;
  out[2] = dy & 0x3F;
  out[1] = dx & 0x3F;
  out[0] = 0x40 | (b & 1) << 5 | (b & 2) << 3 | (dy & 0xC0) >> 4 | (dx & 0xC0) >> 6;
}
`,
    },
    "two-button: a buffer with room for more": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
int8_t dx, dy;
bool left, right;
uint8_t buffer[8];
// @wire encodes two-button from x=dx y=dy left=left right=right into buffer
void build(void) {
  buffer[0] = 0x40 | left << 5 | right << 4 | (dy & 0xC0) >> 4 | (dx & 0xC0) >> 6;
  buffer[1] = dx & 0x3F;
  buffer[2] = dy & 0x3F;
}
`,
    },
    "five-byte: the second pair in a loop": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
void send_byte(uint8_t byte);
// @wire encodes five-byte from x=dx y=dy left=left middle=middle right=right into send_byte
void send_report(int8_t dx, int8_t dy, bool left, bool middle, bool right) {
  send_byte(0x80 | !left << 2 | !middle << 1 | !right);
  for (uint8_t pair = 0; pair < 2; pair++) {
    send_byte(pair == 0 ? dx : 0);
    send_byte(pair == 0 ? dy : 0);
  }
}
`,
    },
    "wheel: a fourth byte even when it says nothing": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
void sendByte(uint8_t byte);
struct Movement {
  int8_t dx, dy, wheel;
  bool left, right, middle;
};
// @wire encodes wheel from x=m.dx y=m.dy wheel=m.wheel left=m.left right=m.right middle=m.middle into sendByte
void sendReport(const Movement &m) {
  sendByte(0x40 | m.left << 5 | m.right << 4 | (m.dy & 0xC0) >> 4 | (m.dx & 0xC0) >> 6);
  sendByte(m.dx & 0x3F);
  sendByte(m.dy & 0x3F);
  if (m.wheel || m.middle) {
    const int8_t steps = m.wheel > 7 ? 7 : m.wheel < -8 ? -8 : m.wheel;
    sendByte((m.middle ? 0x10 : 0) | (steps & 0x0F));
  } else {
    sendByte(0);
  }
}
`,
    },
    "ps2-standard: a scratch array that is longer": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes ps2-standard from x=dx y=dy left=b.0 right=b.1 middle=b.2 into packet
void encode(int8_t dx, int8_t dy, uint8_t b, uint8_t *packet) {
  uint8_t bytes[4] = {0x08 | (b & 0x07), dx, dy, 0};
  if (dx < 0) bytes[0] |= 0x10;
  if (dy < 0) bytes[0] |= 0x20;
  for (uint8_t i = 0; i < 3; i++) packet[i] = bytes[i];
}
`,
    },
  },
};
