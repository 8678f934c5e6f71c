#pragma once

#include "Ps2Wires.h"

struct Steps {
  int right;
  int up;
  bool leftButton;
  bool rightButton;
};

// A mouse on the wires: set up, set up again when it was unplugged, and its reports.
class Ps2Mouse {
 public:
  explicit Ps2Mouse(Ps2Wires &wires) : wires(wires) {}

  // Called over and over while the mouse keeps us waiting.
  void onWaiting(void (*function)()) { waiting = function; }

  // True when the mouse has told something.
  bool update(Steps &steps);

 private:
  enum Command : uint8_t { RESET = 0xFF, ENABLE = 0xF4, SAMPLE_RATE = 0xF3, RESOLUTION = 0xE8 };
  enum Reply : uint8_t { ACKNOWLEDGED = 0xFA, AGAIN = 0xFE, PASSED = 0xAA, IDENTITY = 0x00 };

  static const uint8_t ATTEMPTS = 3;
  static const unsigned int REPLY_MS = 40;
  static const unsigned int SELF_TEST_MS = 1500;
  static const unsigned int IDENTITY_MS = 100;
  static const unsigned long PAUSE_MS = 350;
  static const unsigned long GAP_MS = 12;

  bool start();
  bool command(uint8_t value);
  bool command(uint8_t value, uint8_t argument) { return command(value) && command(argument); }
  bool receive(uint8_t &value, unsigned int patience);
  bool expect(uint8_t wanted, unsigned int patience);

  Ps2Wires &wires;
  void (*waiting)() = nullptr;
  bool running = false;
  unsigned long stopped = 0;
  uint8_t packet[3];
  uint8_t length = 0;
  unsigned long last = 0;
};
