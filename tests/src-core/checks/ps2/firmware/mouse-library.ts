/** A class in its own files, with modes, a wheel and named commands. */
export const mouseLibrary = {
  "PortMouse.h": `#ifndef PORT_MOUSE_H
#define PORT_MOUSE_H
#include <Arduino.h>

#define SET_RESOLUTION 0xE8
#define REQUEST_DATA 0xEB
#define SET_REMOTE_MODE 0xF0
#define GET_DEVICE_ID 0xF2
#define SET_SAMPLE_RATE 0xF3
#define ENABLE_DATA_REPORTING 0xF4
#define DISABLE_DATA_REPORTING 0xF5
#define RESET 0xFF
#define REMOTE 1
#define STREAM 2

class PortMouse {
private:
  int _clock_pin;
  int _data_pin;
  int _mode;
  int _initialized;
  bool _supports_wheel;
  void high(int pin);
  void low(int pin);
  void writeAndReadAck(int data);
  void writeBit(int bit);
  char readByte();
  int readBit();
  void writeByte(char data);
  void requestData();
  void waitForClockState(int expectedState);
  void setSampleRate(int rate);
  void checkWheel();
  char getDeviceId();

public:
  PortMouse(int clockPin, int dataPin, int mode = REMOTE);
  void initialize();
  void setResolution(int resolution);
  void enableDataReporting();
  void disableDataReporting();
  void setRemoteMode();
  void readData(int *x, int *y, int *buttons);
};
#endif
`,
  "PortMouse.cpp": `#include "PortMouse.h"

PortMouse::PortMouse(int clockPin, int dataPin, int mode) {
  _clock_pin = clockPin;
  _data_pin = dataPin;
  _mode = mode;
  _initialized = false;
  _supports_wheel = false;
}

void PortMouse::high(int pin) {
  pinMode(pin, INPUT);
  digitalWrite(pin, HIGH);
}

void PortMouse::low(int pin) {
  pinMode(pin, OUTPUT);
  digitalWrite(pin, LOW);
}

void PortMouse::initialize() {
  high(_clock_pin);
  high(_data_pin);
  writeAndReadAck(RESET);
  readByte(); // self-test status
  readByte(); // id
  checkWheel();
  if (_mode == REMOTE) {
    setRemoteMode();
  } else {
    enableDataReporting();
  }
  _initialized = 1;
}

void PortMouse::writeAndReadAck(int data) {
  writeByte((char)data);
  readByte();
}

void PortMouse::setSampleRate(int rate) {
  writeAndReadAck(SET_SAMPLE_RATE);
  writeAndReadAck(rate);
}

void PortMouse::checkWheel() {
  setSampleRate(200);
  setSampleRate(100);
  setSampleRate(80);
  char deviceId = getDeviceId();
  _supports_wheel = (deviceId == 0x03);
}

char PortMouse::getDeviceId() {
  writeAndReadAck(GET_DEVICE_ID);
  return readByte();
}

void PortMouse::setRemoteMode() {
  if (_initialized) disableDataReporting();
  writeAndReadAck(SET_REMOTE_MODE);
  _mode = REMOTE;
}

void PortMouse::setResolution(int resolution) {
  if (_mode == STREAM) disableDataReporting();
  writeAndReadAck(SET_RESOLUTION);
  writeAndReadAck(resolution);
  if (_mode == STREAM) enableDataReporting();
}

void PortMouse::enableDataReporting() { writeAndReadAck(ENABLE_DATA_REPORTING); }

void PortMouse::disableDataReporting() { writeAndReadAck(DISABLE_DATA_REPORTING); }

void PortMouse::requestData() {
  writeByte((char)REQUEST_DATA);
  readByte();
}

void PortMouse::readData(int *x, int *y, int *buttons) {
  requestData();
  *buttons = readByte();
  *x = readByte();
  *y = readByte();
  if (_supports_wheel) readByte();
}

void PortMouse::writeBit(int bit) {
  if (bit) {
    high(_data_pin);
  } else {
    low(_data_pin);
  }
  waitForClockState(HIGH);
  waitForClockState(LOW);
}

void PortMouse::writeByte(char data) {
  char parity = 1;
  high(_data_pin);
  high(_clock_pin);
  delayMicroseconds(300);
  low(_clock_pin);
  delayMicroseconds(300);
  low(_data_pin);
  delayMicroseconds(10);
  high(_clock_pin);
  waitForClockState(LOW);
  for (int i = 0; i < 8; i++) {
    int dataBit = bitRead(data, i);
    writeBit(dataBit);
    parity = parity ^ dataBit;
  }
  writeBit(parity);
  high(_data_pin);
  delayMicroseconds(50);
  waitForClockState(LOW);
  while ((digitalRead(_clock_pin) == LOW) || (digitalRead(_data_pin) == LOW)) {
  }
  low(_clock_pin);
}

int PortMouse::readBit() {
  waitForClockState(LOW);
  int bit = digitalRead(_data_pin);
  waitForClockState(HIGH);
  return bit;
}

char PortMouse::readByte() {
  char data = 0;
  high(_clock_pin);
  high(_data_pin);
  delayMicroseconds(50);
  waitForClockState(LOW);
  delayMicroseconds(5);
  waitForClockState(HIGH);
  for (int i = 0; i < 8; i++) {
    bitWrite(data, i, readBit());
  }
  readBit(); // parity
  readBit(); // stop
  low(_clock_pin);
  return data;
}

void PortMouse::waitForClockState(int expectedState) {
  while (digitalRead(_clock_pin) != expectedState) {
  }
}
`,
  "adapter.ino": `#include "PortMouse.h"

PortMouse mouse(5, 6);

void setup() {
  Serial.begin(1200, SERIAL_7N1);
  mouse.initialize();
  mouse.setResolution(2);
}

void loop() {
  int x, y, buttons;
  mouse.readData(&x, &y, &buttons);
  Serial.write(0x40 | (buttons & 1) << 5);
  Serial.write(x & 0x3F);
  Serial.write(-y & 0x3F);
}
`,
};
