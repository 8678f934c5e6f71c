import type { Example } from "../../../src-core/checks/rule.ts";

/**
 * Decoders that are right, written from the documents: PS/2 as in FreeBSD's psm(4), the HT82M35X data sheet (p. 3)
 * and the kernel's input/sentelic; serial as in mouse(4) of the Linux man-pages and the EM84520 data sheet (p. 3).
 */
export const rightDecoders: Readonly<Record<string, Example>> = {
  "ps2-standard: 256 less where the sign is set": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire decodes ps2-standard from buf into x=dx y=dy left=b.0 right=b.1 middle=b.2
void take_apart(const uint8_t buf[3], int16_t *dx, int16_t *dy, uint8_t *b) {
  *dx = (buf[0] & 0x10) ? buf[1] - 256 : buf[1];
  *dy = (buf[0] & 0x20) ? buf[2] - 256 : buf[2];
  *b = buf[0] & 0x07;
}
`,
  },
  "ps2-standard: high byte filled where the sign is set": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
struct movement {
  int16_t dx, dy;
  bool left, right, middle;
};
/* @wire decodes ps2-standard from packet into x=m->dx y=-m->dy left=m->left right=m->right middle=m->middle */
void decode(const uint8_t *packet, struct movement *m) {
  uint16_t x = packet[1];
  uint16_t y = packet[2];
  if (packet[0] & (1 << 4)) x |= 0xFF00;
  if (packet[0] & (1 << 5)) y |= 0xFF00;
  m->dx = (int16_t)x;
  m->dy = -(int16_t)y;
  m->left = packet[0] & 1;
  m->right = packet[0] & 2;
  m->middle = packet[0] & 4;
}
`,
  },
  "ps2-standard: the sign shifted into place and taken away": {
    "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct Movement {
  int dx, dy;
  uint8_t buttons;
};
// @wire decodes ps2-standard from raw into x=m.dx y=m.dy left=m.buttons.0 right=m.buttons.1 middle=m.buttons.2
void decode(const uint8_t *raw, Movement &m) {
  m.dx = raw[1] - ((raw[0] << 4) & 0x100);
  m.dy = raw[2] - ((raw[0] << 3) & 0x100);
  m.buttons = raw[0] & 7;
}
`,
  },
  "ps2-standard: bit fields behind a union": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
union packet {
  uint8_t bytes[3];
  struct {
    uint8_t left : 1, right : 1, middle : 1, one : 1;
    uint8_t x_sign : 1, y_sign : 1, x_overflow : 1, y_overflow : 1;
    uint8_t x, y;
  } is;
};
union packet packet;
int moved_x, moved_y;
uint8_t left_down, right_down, middle_down;
// @wire decodes ps2-standard from packet.bytes into x=moved_x y=moved_y left=left_down right=right_down middle=middle_down
void take_apart(void) {
  moved_x = packet.is.x;
  if (packet.is.x_sign) moved_x -= 256;
  moved_y = packet.is.y;
  if (packet.is.y_sign) moved_y -= 256;
  left_down = packet.is.left;
  right_down = packet.is.right;
  middle_down = packet.is.middle;
}
`,
  },
  "ps2-standard: a class that turns y over": {
    "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
class Mouse {
 public:
  int16_t right = 0, down = 0;
  bool leftButton = false, rightButton = false;

  // @wire decodes ps2-standard from packet into x=right y=-down left=leftButton right=rightButton
  void read(const uint8_t (&packet)[3]) {
    right = nineBits(packet[1], packet[0] & 0x10);
    down = -nineBits(packet[2], packet[0] & 0x20);
    leftButton = (packet[0] & 0x01) != 0;
    rightButton = (packet[0] & 0x02) != 0;
  }

 private:
  static int16_t nineBits(uint8_t low, bool negative) { return negative ? int16_t(low) - 256 : low; }
};
`,
  },
  "ps2-standard: shifted up and back down": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
int8_t buttons;
int16_t across, up;
// @wire decodes ps2-standard from p into x=across y=up left=buttons.0 right=buttons.1 middle=buttons.2
void decode(uint8_t p[3]) {
  across = (int16_t)((uint16_t)(p[0] & 0x10) << 11 | (uint16_t)p[1] << 7) >> 7;
  up = (int16_t)((uint16_t)(p[0] & 0x20) << 10 | (uint16_t)p[2] << 7) >> 7;
  buttons = p[0] & 0x07;
}
`,
  },
  "ps2-wheel: a sketch with references": {
    "main.ino": `
// @wire board atmega328p clock=16MHz
// @wire decodes ps2-wheel from data into x=dx y=dy wheel=turn left=left right=right middle=middle
void decodePacket(const byte data[4], int &dx, int &dy, int &turn, bool &left, bool &right, bool &middle) {
  dx = data[1];
  dy = data[2];
  if (bitRead(data[0], 4)) dx -= 256;
  if (bitRead(data[0], 5)) dy -= 256;
  turn = (int8_t)data[3];
  left = bitRead(data[0], 0);
  right = bitRead(data[0], 1);
  middle = bitRead(data[0], 2);
}
`,
  },
  "ps2-wheel: exclusive or with the sign": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct movement {
  int16_t dx, dy, wheel;
  uint8_t buttons;
};
/* @wire decodes ps2-wheel from b into x=m->dx y=m->dy wheel=m->wheel left=m->buttons.0 right=m->buttons.1 middle=m->buttons.2 */
void decode(const uint8_t *b, struct movement *m) {
  const int16_t x = b[1] | (b[0] & 0x10) << 4;
  const int16_t y = b[2] | (b[0] & 0x20) << 3;
  m->dx = (x ^ 0x100) - 0x100;
  m->dy = (y ^ 0x100) - 0x100;
  m->wheel = (b[3] ^ 0x80) - 0x80;
  m->buttons = b[0] & 0x07;
}
`,
  },
  "ps2-wheel: a class method with members for all": {
    "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
class Packet {
 public:
  uint8_t bytes[4];
  int16_t x, y;
  int8_t wheel;
  bool left, right, middle;
  void decode();
};
// @wire decodes ps2-wheel from bytes into x=x y=-y wheel=wheel left=left right=right middle=middle
void Packet::decode() {
  const uint8_t head = bytes[0];
  x = bytes[1];
  y = bytes[2];
  if (head & 0x10) x |= ~0xFF;
  if (head & 0x20) y |= ~0xFF;
  y = -y;
  wheel = static_cast<int8_t>(bytes[3]);
  left = head & 0x01;
  right = head >> 1 & 1;
  middle = head >> 2 & 1;
}
`,
  },
  "ps2-five-button: a wheel of four bits, 16 less": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire decodes ps2-five-button from buf into x=dx y=dy wheel=dz left=b.0 right=b.1 middle=b.2 button4=b.3 button5=b.4
void take_apart(const uint8_t *buf, int16_t *dx, int16_t *dy, int8_t *dz, uint8_t *b) {
  *dx = (buf[0] & 0x10) ? buf[1] - 256 : buf[1];
  *dy = (buf[0] & 0x20) ? buf[2] - 256 : buf[2];
  *dz = (buf[3] & 0x08) ? (buf[3] & 0x0F) - 16 : buf[3] & 0x07;
  *b = (buf[0] & 0x07) | ((buf[3] & 0x30) >> 1);
}
`,
  },
  "ps2-five-button: a wheel of four bits, filled": {
    "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct Movement {
  int16_t dx, dy;
  int8_t wheel;
  bool left, right, middle, back, forth;
};
static int16_t extend(uint8_t low, uint8_t sign) { return sign ? static_cast<int16_t>(0xFF00 | low) : low; }
// @wire decodes ps2-five-button from packet into x=m.dx y=m.dy wheel=m.wheel left=m.left right=m.right middle=m.middle button4=m.back button5=m.forth
void decode(const uint8_t packet[4], Movement &m) {
  m.dx = extend(packet[1], packet[0] & 0x10);
  m.dy = extend(packet[2], packet[0] & 0x20);
  uint8_t wheel = packet[3] & 0x0F;
  if (wheel & 0x08) wheel |= 0xF0;
  m.wheel = wheel;
  m.left = packet[0] & 0x01;
  m.right = packet[0] & 0x02;
  m.middle = packet[0] & 0x04;
  m.back = packet[3] & 0x10;
  m.forth = packet[3] & 0x20;
}
`,
  },
  "ps2-five-button: signed bit fields": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
typedef union {
  uint8_t raw[4];
  struct {
    uint8_t head, x, y;
    int8_t wheel : 4;
    uint8_t button4 : 1, button5 : 1, zero : 2;
  } part;
} packet_t;
struct movement {
  int x, y, wheel;
  uint8_t left, right, middle, fourth, fifth;
};
packet_t packet;
// @wire decodes ps2-five-button from packet.raw into x=m->x y=m->y wheel=m->wheel left=m->left right=m->right middle=m->middle button4=m->fourth button5=m->fifth
void decode(struct movement *m) {
  m->x = (int)packet.part.x - (packet.part.head & 0x10 ? 256 : 0);
  m->y = (int)packet.part.y - (packet.part.head & 0x20 ? 256 : 0);
  m->wheel = packet.part.wheel;
  m->left = packet.part.head & 1;
  m->right = packet.part.head >> 1 & 1;
  m->middle = packet.part.head >> 2 & 1;
  m->fourth = packet.part.button4;
  m->fifth = packet.part.button5;
}
`,
  },
  "ps2-five-button: the wheel shifted up and back down": {
    "main.ino": `
// @wire board atmega328p clock=16MHz
int dx, dy;
int8_t wheel;
byte buttons;
// @wire decodes ps2-five-button from packet into x=dx y=dy wheel=wheel left=buttons.0 right=buttons.1 middle=buttons.2 button4=buttons.3 button5=buttons.4
void readPacket(const byte *packet) {
  dx = packet[1] - (bitRead(packet[0], 4) << 8);
  dy = packet[2] - (bitRead(packet[0], 5) << 8);
  wheel = (int8_t)(packet[3] << 4) >> 4;
  buttons = packet[0] & B111;
  bitWrite(buttons, 3, bitRead(packet[3], 4));
  bitWrite(buttons, 4, bitRead(packet[3], 5));
}
`,
  },
  "two-button: two bits and six": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire decodes two-button from in into x=dx y=-dy left=left right=right
void hear(const uint8_t in[3], int8_t *dx, int16_t *dy, bool *left, bool *right) {
  *dx = (int8_t)((in[0] & 0x03) << 6 | (in[1] & 0x3F));
  *dy = -(int8_t)((in[0] & 0x0C) << 4 | (in[2] & 0x3F));
  *left = in[0] & 0x20;
  *right = in[0] & 0x10;
}
`,
  },
  "two-button: signs of int values": {
    "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct Travel {
  int right, down;
  uint8_t buttons;
};
// @wire decodes two-button from bytes into x=t.right y=t.down left=t.buttons.0 right=t.buttons.1
void hear(const uint8_t *bytes, Travel &t) {
  int x = (bytes[0] << 6 & 0xC0) + (bytes[1] & 0x3F);
  int y = (bytes[0] << 4 & 0xC0) + (bytes[2] & 0x3F);
  if (x > 127) x -= 256;
  if (y > 127) y -= 256;
  t.right = x;
  t.down = y;
  t.buttons = (bytes[0] >> 5 & 1) | (bytes[0] >> 3 & 2);
}
`,
  },
  "wheel: four bits of wheel": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct movement {
  int8_t dx, dy, wheel;
  uint8_t left, right, middle;
};
/* @wire decodes wheel from r into x=m->dx y=m->dy wheel=m->wheel left=m->left right=m->right middle=m->middle */
void decode(const uint8_t *r, struct movement *m) {
  m->dx = (r[0] << 6) | (r[1] & 0x3F);
  m->dy = ((r[0] << 4) & 0xC0) | (r[2] & 0x3F);
  m->wheel = (r[3] & 0x07) - (r[3] & 0x08);
  m->left = r[0] >> 5 & 1;
  m->right = r[0] >> 4 & 1;
  m->middle = r[3] >> 4 & 1;
}
`,
  },
  "five-byte: sums of two, buttons active low": {
    "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdbool.h>
#include <stdint.h>
// @wire decodes five-byte from in into x=dx y=dy left=left middle=middle right=right
void hear(const uint8_t in[5], int16_t *dx, int16_t *dy, bool *left, bool *middle, bool *right) {
  *dx = (int8_t)in[1] + (int8_t)in[3];
  *dy = (int8_t)in[2] + (int8_t)in[4];
  *left = !(in[0] & 4);
  *middle = !(in[0] & 2);
  *right = !(in[0] & 1);
}
`,
  },
  "five-byte: a class that counts downwards": {
    "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
class Receiver {
 public:
  int right, down;
  uint8_t pressed;

  // @wire decodes five-byte from report into x=right y=-down left=pressed.2 middle=pressed.1 right=pressed.0
  void take(const uint8_t *report) {
    right = extended(report[1]) + extended(report[3]);
    down = -(extended(report[2]) + extended(report[4]));
    pressed = ~report[0] & 0x07;
  }

 private:
  static int extended(uint8_t byte) { return byte < 128 ? byte : byte - 256; }
};
`,
  },
};
