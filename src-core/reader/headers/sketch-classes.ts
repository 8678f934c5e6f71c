import { cppOnly, define, type HeaderTarget, type HeaderText } from "./header-target.ts";

/** The sketch core's classes, declared as far as sketches call them. */

export const wString: HeaderText = cppOnly(`#pragma once
#include <stddef.h>
class __FlashStringHelper;
class StringSumHelper;
#define F(text) (reinterpret_cast<const __FlashStringHelper *>(PSTR(text)))
class String {
public:
  String(const char *text = "");
  String(const String &other);
  String(const __FlashStringHelper *text);
  String(String &&other);
  String(StringSumHelper &&other);
  explicit String(char character);
  explicit String(unsigned char value, unsigned char base = 10);
  explicit String(int value, unsigned char base = 10);
  explicit String(unsigned int value, unsigned char base = 10);
  explicit String(long value, unsigned char base = 10);
  explicit String(unsigned long value, unsigned char base = 10);
  explicit String(float value, unsigned char decimals = 2);
  explicit String(double value, unsigned char decimals = 2);
  ~String();
  unsigned char reserve(unsigned int size);
  unsigned int length() const;
  String &operator=(const String &other);
  String &operator=(const char *text);
  String &operator=(const __FlashStringHelper *text);
  String &operator=(String &&other);
  String &operator=(StringSumHelper &&other);
  unsigned char concat(const String &other);
  unsigned char concat(const char *text);
  unsigned char concat(const __FlashStringHelper *text);
  unsigned char concat(char character);
  unsigned char concat(unsigned char value);
  unsigned char concat(int value);
  unsigned char concat(unsigned int value);
  unsigned char concat(long value);
  unsigned char concat(unsigned long value);
  unsigned char concat(float value);
  unsigned char concat(double value);
  String &operator+=(const String &other);
  String &operator+=(const char *text);
  String &operator+=(const __FlashStringHelper *text);
  String &operator+=(char character);
  String &operator+=(unsigned char value);
  String &operator+=(int value);
  String &operator+=(unsigned int value);
  String &operator+=(long value);
  String &operator+=(unsigned long value);
  String &operator+=(float value);
  String &operator+=(double value);
  explicit operator bool() const;
  int compareTo(const String &other) const;
  unsigned char equals(const String &other) const;
  unsigned char equals(const char *text) const;
  unsigned char operator==(const String &other) const;
  unsigned char operator==(const char *text) const;
  unsigned char operator!=(const String &other) const;
  unsigned char operator!=(const char *text) const;
  unsigned char operator<(const String &other) const;
  unsigned char operator>(const String &other) const;
  unsigned char operator<=(const String &other) const;
  unsigned char operator>=(const String &other) const;
  unsigned char equalsIgnoreCase(const String &other) const;
  unsigned char startsWith(const String &prefix) const;
  unsigned char startsWith(const String &prefix, unsigned int offset) const;
  unsigned char endsWith(const String &suffix) const;
  char charAt(unsigned int index) const;
  void setCharAt(unsigned int index, char character);
  char &operator[](unsigned int index);
  char operator[](unsigned int index) const;
  void getBytes(unsigned char *to, unsigned int size, unsigned int index = 0) const;
  void toCharArray(char *to, unsigned int size, unsigned int index = 0) const;
  const char *c_str() const;
  char *begin();
  char *end();
  const char *begin() const;
  const char *end() const;
  int indexOf(char character) const;
  int indexOf(char character, unsigned int from) const;
  int indexOf(const String &text) const;
  int indexOf(const String &text, unsigned int from) const;
  int lastIndexOf(char character) const;
  int lastIndexOf(char character, unsigned int from) const;
  int lastIndexOf(const String &text) const;
  int lastIndexOf(const String &text, unsigned int from) const;
  String substring(unsigned int begin) const;
  String substring(unsigned int begin, unsigned int end) const;
  void replace(char what, char by);
  void replace(const String &what, const String &by);
  void remove(unsigned int index);
  void remove(unsigned int index, unsigned int count);
  void toLowerCase();
  void toUpperCase();
  void trim();
  long toInt() const;
  float toFloat() const;
  double toDouble() const;
protected:
  char *buffer;
  unsigned int capacity;
  unsigned int len;
};
class StringSumHelper : public String {
public:
  StringSumHelper(const String &other) : String(other) {}
  StringSumHelper(const char *text) : String(text) {}
  StringSumHelper(char value) : String(value) {}
  StringSumHelper(unsigned char value) : String(value) {}
  StringSumHelper(int value) : String(value) {}
  StringSumHelper(unsigned int value) : String(value) {}
  StringSumHelper(long value) : String(value) {}
  StringSumHelper(unsigned long value) : String(value) {}
  StringSumHelper(float value) : String(value) {}
  StringSumHelper(double value) : String(value) {}
};
StringSumHelper &operator+(const StringSumHelper &left, const String &right);
StringSumHelper &operator+(const StringSumHelper &left, const char *right);
StringSumHelper &operator+(const StringSumHelper &left, const __FlashStringHelper *right);
StringSumHelper &operator+(const StringSumHelper &left, char right);
StringSumHelper &operator+(const StringSumHelper &left, unsigned char right);
StringSumHelper &operator+(const StringSumHelper &left, int right);
StringSumHelper &operator+(const StringSumHelper &left, unsigned int right);
StringSumHelper &operator+(const StringSumHelper &left, long right);
StringSumHelper &operator+(const StringSumHelper &left, unsigned long right);
StringSumHelper &operator+(const StringSumHelper &left, float right);
StringSumHelper &operator+(const StringSumHelper &left, double right);
`);

function printLines(name: string): string {
  const plain = [
    "const __FlashStringHelper *text",
    "const String &text",
    "const char *text",
    "char character",
  ];
  const based = ["unsigned char", "int", "unsigned int", "long", "unsigned long"];
  return [
    ...plain.map((parameter) => `  size_t ${name}(${parameter});`),
    ...based.map((type) => `  size_t ${name}(${type} value, int base = DEC);`),
    `  size_t ${name}(double value, int decimals = 2);`,
    `  size_t ${name}(const Printable &value);`,
  ].join("\n");
}

export const print: HeaderText = cppOnly(`#pragma once
#include <stdint.h>
#include <stdio.h>
#include <WString.h>
#define DEC 10
#define HEX 16
#define OCT 8
#undef BIN
#define BIN 2
class Print;
class Printable {
public:
  virtual size_t printTo(Print &to) const = 0;
};
class Print {
public:
  int getWriteError();
  void clearWriteError();
  virtual size_t write(uint8_t value) = 0;
  size_t write(const char *text);
  virtual size_t write(const uint8_t *buffer, size_t size);
  size_t write(const char *buffer, size_t size);
  virtual int availableForWrite();
${printLines("print")}
${printLines("println")}
  size_t println();
  virtual void flush();
protected:
  int write_error = 0;
  void setWriteError(int error = 1);
};
`);

export const stream: HeaderText = cppOnly(`#pragma once
#include <Print.h>
enum LookaheadMode { SKIP_ALL, SKIP_NONE, SKIP_WHITESPACE };
class Stream : public Print {
public:
  virtual int available() = 0;
  virtual int read() = 0;
  virtual int peek() = 0;
  void setTimeout(unsigned long timeout);
  unsigned long getTimeout();
  bool find(char *target);
  bool find(char target);
  bool findUntil(char *target, char *terminator);
  long parseInt(LookaheadMode lookahead = SKIP_ALL, char ignore = '\\x01');
  float parseFloat(LookaheadMode lookahead = SKIP_ALL, char ignore = '\\x01');
  size_t readBytes(char *buffer, size_t length);
  size_t readBytes(uint8_t *buffer, size_t length);
  size_t readBytesUntil(char terminator, char *buffer, size_t length);
  size_t readBytesUntil(char terminator, uint8_t *buffer, size_t length);
  String readString();
  String readStringUntil(char terminator);
};
`);

/** Data bits, parity and stop bits as the core's header encodes them: bits in UCSRnC. */
function lineFormats(): string {
  let text = "";
  for (const [parity, base] of [["N", 0x00] as const, ["E", 0x20] as const, ["O", 0x30] as const]) {
    for (const stop of [1, 2]) {
      for (const bits of [5, 6, 7, 8]) {
        const value = base + (stop - 1) * 8 + (bits - 5) * 2;
        text += define(
          `SERIAL_${bits}${parity}${stop}`,
          `0x${value.toString(16).toUpperCase().padStart(2, "0")}`,
        );
      }
    }
  }
  return text;
}

function serialClass(name: string, extra: string): string {
  return `class ${name} : public Stream {
public:
  void begin(unsigned long baud);
  void begin(unsigned long baud, uint8_t config);
  void end();
  virtual int available();
  virtual int peek();
  virtual int read();
  virtual int availableForWrite();
  virtual void flush();
  virtual size_t write(uint8_t value);
  size_t write(unsigned long value);
  size_t write(long value);
  size_t write(unsigned int value);
  size_t write(int value);
  using Print::write;
  operator bool();
${extra}};
`;
}

export const hardwareSerial: HeaderText = (target) =>
  target.language === "c++"
    ? `#pragma once
#include <Stream.h>
#define SERIAL 0x0
#define DISPLAY 0x1
#ifndef SERIAL_TX_BUFFER_SIZE
#define SERIAL_TX_BUFFER_SIZE ${bufferSize(target)}
#endif
#ifndef SERIAL_RX_BUFFER_SIZE
#define SERIAL_RX_BUFFER_SIZE ${bufferSize(target)}
#endif
${lineFormats()}${serialClass("HardwareSerial", "")}${serialObjects(target)}`
    : undefined;

function bufferSize({ avr }: HeaderTarget): number {
  return avr !== undefined && avr.memory.ramEnd - avr.memory.ramStart < 1023 ? 16 : 64;
}

/** `Serial` is the first UART, or the USB port on the chips whose only UART is `Serial1`. */
function serialObjects({ avr }: HeaderTarget): string {
  const uarts = avr?.uarts ?? (avr === undefined ? [0, 1, 2, 3] : []);
  const lines = uarts.map((uart) => `extern HardwareSerial Serial${uart === 0 ? "" : uart};\n`);
  const hasUsb = uarts.length > 0 && !uarts.includes(0);
  const usb = serialClass("Serial_", "  unsigned long baud();\n  bool dtr();\n  bool rts();\n");
  return `${lines.join("")}${hasUsb ? `${usb}extern Serial_ Serial;\n` : ""}`;
}
