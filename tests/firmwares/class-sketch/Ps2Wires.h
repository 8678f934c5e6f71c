#pragma once

#include "OpenCollector.h"

// Bytes on the two wires of a PS/2 port.
class Ps2Wires {
 public:
  Ps2Wires(uint8_t clockPin, uint8_t dataPin) : clock(clockPin), data(dataPin) {}

  void begin();

  // For the interrupt of the clock's falling edge.
  void clockFell();

  // False when the mouse does not take the byte.
  bool write(uint8_t value);

  bool available() const { return count > 0; }
  uint8_t read();
  void clear();

 private:
  static const uint8_t CAPACITY = 24;
  // Of less than 2 us each, while time stands still for the interrupts are off: 15 ms and more.
  static const unsigned int PATIENCE = 20000;
  static const unsigned long LONGEST_FRAME_US = 2500;

  bool awaitClock(bool high);
  bool writeBit(bool bit);
  bool writeFrame(uint8_t value);

  OpenCollector clock;
  OpenCollector data;

  volatile uint8_t bytes[CAPACITY];
  volatile uint8_t first = 0;
  volatile uint8_t count = 0;

  volatile bool busy = false;
  volatile uint8_t position = 0;
  volatile uint8_t value = 0;
  volatile bool parity = false;
  volatile unsigned long began = 0;
};
