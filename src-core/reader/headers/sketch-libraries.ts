import { cppOnly, type HeaderText } from "./header-target.ts";

/** Libraries that come with the sketch core, declared as far as sketches call them. */

export const softwareSerial: HeaderText = cppOnly(`#pragma once
#include <Stream.h>
#define _SS_MAX_RX_BUFF 64
class SoftwareSerial : public Stream {
public:
  SoftwareSerial(uint8_t receivePin, uint8_t transmitPin, bool inverse = false);
  ~SoftwareSerial();
  void begin(long baud);
  bool listen();
  void end();
  bool isListening();
  bool stopListening();
  bool overflow();
  virtual int peek();
  virtual size_t write(uint8_t value);
  virtual int read();
  virtual int available();
  virtual void flush();
  operator bool();
  using Print::write;
};
`);

export const eepromClass: HeaderText = cppOnly(`#pragma once
#include <stdint.h>
struct EERef {
  EERef(int index);
  operator uint8_t() const;
  EERef &operator=(uint8_t value);
  EERef &update(uint8_t value);
  int index;
};
struct EEPROMClass {
  EERef operator[](int index);
  uint8_t read(int index);
  void write(int index, uint8_t value);
  void update(int index, uint8_t value);
  uint16_t length();
  template <typename T> T &get(int index, T &value);
  template <typename T> const T &put(int index, const T &value);
};
extern EEPROMClass EEPROM;
`);

export const wire: HeaderText = cppOnly(`#pragma once
#include <Stream.h>
#define BUFFER_LENGTH 32
class TwoWire : public Stream {
public:
  void begin();
  void begin(uint8_t address);
  void begin(int address);
  void end();
  void setClock(uint32_t frequency);
  void setWireTimeout(uint32_t timeout = 25000, bool reset = false);
  void beginTransmission(uint8_t address);
  void beginTransmission(int address);
  uint8_t endTransmission();
  uint8_t endTransmission(uint8_t stop);
  uint8_t requestFrom(uint8_t address, uint8_t count);
  uint8_t requestFrom(int address, int count);
  virtual size_t write(uint8_t value);
  virtual size_t write(const uint8_t *buffer, size_t size);
  size_t write(int value);
  virtual int available();
  virtual int read();
  virtual int peek();
  virtual void flush();
  void onReceive(void (*function)(int));
  void onRequest(void (*function)());
  using Print::write;
};
extern TwoWire Wire;
`);

export const spi: HeaderText = cppOnly(`#pragma once
#include <stdint.h>
#include <stddef.h>
#define SPI_HAS_TRANSACTION 1
#define SPI_CLOCK_DIV4 0x00
#define SPI_CLOCK_DIV16 0x01
#define SPI_CLOCK_DIV64 0x02
#define SPI_CLOCK_DIV128 0x03
#define SPI_CLOCK_DIV2 0x04
#define SPI_CLOCK_DIV8 0x05
#define SPI_CLOCK_DIV32 0x06
#define SPI_MODE0 0x00
#define SPI_MODE1 0x04
#define SPI_MODE2 0x08
#define SPI_MODE3 0x0C
class SPISettings {
public:
  SPISettings();
  SPISettings(uint32_t clock, uint8_t order, uint8_t mode);
};
class SPIClass {
public:
  static void begin();
  static void end();
  static void usingInterrupt(uint8_t interrupt);
  static void beginTransaction(SPISettings settings);
  static void endTransaction();
  static uint8_t transfer(uint8_t value);
  static uint16_t transfer16(uint16_t value);
  static void transfer(void *buffer, size_t count);
  static void setBitOrder(uint8_t order);
  static void setDataMode(uint8_t mode);
  static void setClockDivider(uint8_t divider);
};
extern SPIClass SPI;
`);
