#pragma once

#include <stdint.h>

struct Movement {
  int16_t x;      // to the right
  int16_t y;      // away from the user
  int8_t wheel;   // towards the user
  uint8_t buttons;  // as the mouse has them: 1 left, 2 right, 4 middle
};

class Mouse {
 public:
  // Called while the mouse is waited for.
  explicit Mouse(void (*meanwhile)()) : meanwhile(meanwhile) {}

  // Sets the mouse up when that is due; true when it has moved.
  bool poll(Movement &movement);

 private:
  static constexpr uint8_t tries = 3;
  static constexpr uint16_t replyTimeout = 30;
  static constexpr uint16_t selfTestTimeout = 1200;
  static constexpr uint16_t idTimeout = 100;
  static constexpr uint16_t retryTime = 400;
  static constexpr uint16_t gap = 12;

  bool setUp();
  bool reply(uint8_t &value, uint16_t ms);
  bool expect(uint8_t value, uint16_t ms);
  bool command(uint8_t value);
  bool sampleRate(uint8_t perSecond);
  bool gather(Movement &movement);

  void (*const meanwhile)();
  bool isReady = false;
  bool hasWheel = false;
  bool hasTried = false;
  uint16_t tried = 0;
  uint8_t packet[4];
  uint8_t length = 0;
  uint16_t last = 0;
};
