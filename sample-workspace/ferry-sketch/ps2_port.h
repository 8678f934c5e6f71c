#pragma once

#include <Arduino.h>

// One movement: x grows to the right, y away from the user, the wheel towards the user.
struct Movement {
  int dx;
  int dy;
  int wheel;
  bool left;
  bool right;
  bool middle;
};

// Host side of a PS/2 port. Both lines are only ever pulled low or released.
class Ps2Port {
 public:
  Ps2Port(uint8_t clockPin, uint8_t dataPin) : clockPin(clockPin), dataPin(dataPin) {}

  void begin();

  // To be called on every falling edge of the clock.
  void clockFell();

  // Sends one byte to the mouse; false when the mouse did not take it.
  bool send(uint8_t value);

  bool available() const { return head != tail; }
  uint8_t read();
  bool readMovement(Movement &out);

  // True once after the mouse restarted itself.
  bool restarted();
  void forget();

  bool hasWheel = false;

 private:
  static const uint8_t RING_SIZE = 32;
  // Of about 5 us each: a mouse starts clocking within 15 ms. Interrupts are off, so that the time stands still.
  static const unsigned int CLOCK_LOOKS = 4000;
  static const unsigned long REPORT_GAP_MS = 20;

  bool waitForClock(uint8_t level);
  bool sendBit(bool bit);
  bool sendFrame(uint8_t value);

  void pullLow(uint8_t pin) {
    digitalWrite(pin, LOW);
    pinMode(pin, OUTPUT);
  }
  void release(uint8_t pin) { pinMode(pin, INPUT_PULLUP); }

  const uint8_t clockPin;
  const uint8_t dataPin;

  volatile uint8_t ring[RING_SIZE];
  volatile uint8_t head = 0;
  uint8_t tail = 0;

  volatile bool sending = false;
  volatile uint8_t frameBit = 0;
  volatile uint8_t frameByte = 0;
  volatile uint8_t frameOnes = 0;

  uint8_t packet[4];
  uint8_t packetLength = 0;
  unsigned long packetTime = 0;
  bool restartSeen = false;
};
