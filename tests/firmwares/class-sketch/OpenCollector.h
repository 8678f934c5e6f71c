#pragma once

#include <Arduino.h>

// A line that is pulled low or let go to its pull-up. It knows its registers, for digitalWrite() takes too long between
// two edges of the mouse's clock.
class OpenCollector {
 public:
  explicit OpenCollector(uint8_t pin)
      : mode(portModeRegister(digitalPinToPort(pin))),
        output(portOutputRegister(digitalPinToPort(pin))),
        input(portInputRegister(digitalPinToPort(pin))),
        mask(digitalPinToBitMask(pin)) {}

  void pullLow() {
    *output &= ~mask;
    *mode |= mask;
  }

  void release() {
    *mode &= ~mask;
    *output |= mask;
  }

  bool isHigh() const { return *input & mask; }

 private:
  volatile uint8_t *const mode;
  volatile uint8_t *const output;
  volatile uint8_t *const input;
  const uint8_t mask;
};
