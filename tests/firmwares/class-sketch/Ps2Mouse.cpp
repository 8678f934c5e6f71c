#include "Ps2Mouse.h"

bool Ps2Mouse::receive(uint8_t &value, unsigned int patience) {
  unsigned long since = millis();
  while (!wires.available()) {
    if (millis() - since > patience) {
      return false;
    }
    if (waiting) {
      waiting();
    }
  }
  value = wires.read();
  return true;
}

bool Ps2Mouse::expect(uint8_t wanted, unsigned int patience) {
  uint8_t value;
  return receive(value, patience) && value == wanted;
}

bool Ps2Mouse::command(uint8_t value) {
  for (uint8_t attempt = 0; attempt < ATTEMPTS; attempt++) {
    uint8_t reply;
    if (!wires.write(value) || !receive(reply, REPLY_MS)) {
      return false;
    }
    if (reply != AGAIN) {
      return reply == ACKNOWLEDGED;
    }
  }
  return false;
}

bool Ps2Mouse::start() {
  wires.clear();
  length = 0;
  return command(RESET) && expect(PASSED, SELF_TEST_MS) && expect(IDENTITY, IDENTITY_MS) &&
         command(SAMPLE_RATE, 40) && command(RESOLUTION, 2) && command(ENABLE);
}

// @wire decodes ps2-standard from bytes into x=steps.right y=steps.up left=steps.leftButton right=steps.rightButton
static void takeApart(const uint8_t bytes[3], Steps &steps) {
  steps.right = bytes[1];
  steps.up = bytes[2];
  if (bitRead(bytes[0], 4)) {
    steps.right -= 256;
  }
  if (bitRead(bytes[0], 5)) {
    steps.up -= 256;
  }
  steps.leftButton = bitRead(bytes[0], 0);
  steps.rightButton = bitRead(bytes[0], 1);
}

bool Ps2Mouse::update(Steps &steps) {
  if (!running) {
    if (stopped == 0 || millis() - stopped > PAUSE_MS) {
      running = start();
      stopped = millis();
    }
    return false;
  }
  if (length > 0 && millis() - last > GAP_MS) {
    running = !(length == 2 && packet[0] == PASSED && packet[1] == IDENTITY);
    length = 0;
  }
  while (wires.available()) {
    uint8_t value = wires.read();
    if (length == 0 && !bitRead(value, 3)) {
      continue;
    }
    last = millis();
    packet[length++] = value;
    if (length == sizeof packet) {
      length = 0;
      takeApart(packet, steps);
      return true;
    }
  }
  return false;
}
