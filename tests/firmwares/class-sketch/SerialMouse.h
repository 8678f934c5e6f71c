#pragma once

#include "Ps2Mouse.h"

// What the PC sees. The layout of the reports is left to a derived class.
class SerialMouse {
 public:
  SerialMouse(HardwareSerial &port, uint8_t rtsPin) : port(port), rtsPin(rtsPin) {}

  void begin();
  void add(const Steps &steps);
  void update();

 protected:
  static const uint8_t LONGEST = 3;

  // Writes a report and gives its length.
  virtual uint8_t fill(uint8_t *report, int8_t right, int8_t down, bool leftButton, bool rightButton) = 0;
  virtual void introduce(HardwareSerial &port) = 0;

 private:
  static const uint8_t MOST = 10;

  bool isOn() { return digitalRead(rtsPin) == LOW; }
  bool lineIsFree() { return port.availableForWrite() == SERIAL_TX_BUFFER_SIZE - 1; }
  static bool sameButtons(const Steps &a, const Steps &b) {
    return a.leftButton == b.leftButton && a.rightButton == b.rightButton;
  }

  HardwareSerial &port;
  const uint8_t rtsPin;
  bool wasOn = false;
  Steps waiting[MOST];
  uint8_t length = 0;
  Steps told = {0, 0, false, false};
};

class TwoButtonMouse : public SerialMouse {
 public:
  using SerialMouse::SerialMouse;

 protected:
  uint8_t fill(uint8_t *report, int8_t right, int8_t down, bool leftButton, bool rightButton) override;
  void introduce(HardwareSerial &port) override { port.write('M'); }
};
