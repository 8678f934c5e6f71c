import type { HeaderText } from "./header-target.ts";

/**
 * The sketch core header: constants, functions and macros as the core's language reference documents them,
 * values as in its header files, in our own text.
 */
export const sketchCore: HeaderText = (target) => {
  const { avr, isAvr, language } = target;
  const isCpp = language === "c++";
  return `#pragma once
#include <stdlib.h>
#include <stdbool.h>
#include <stdint.h>
#include <string.h>
#include <math.h>
${isAvr ? "#include <avr/pgmspace.h>\n#include <avr/io.h>\n#include <avr/interrupt.h>\n" : NO_FLASH}#include <binary.h>
${CONSTANTS}${analogReferences(avr?.name)}${MACROS}${isAvr ? INTERRUPTS : PLAIN_INTERRUPTS}${FUNCTIONS}${isCpp ? CPP : C_DEFAULTS}#include <pins_arduino.h>
`;
};

const CONSTANTS = `#define HIGH 0x1
#define LOW 0x0
#define INPUT 0x0
#define OUTPUT 0x1
#define INPUT_PULLUP 0x2
#define PI 3.1415926535897932384626433832795
#define HALF_PI 1.5707963267948966192313216916398
#define TWO_PI 6.283185307179586476925286766559
#define DEG_TO_RAD 0.017453292519943295769236907684886
#define RAD_TO_DEG 57.295779513082320876798154814105
#define EULER 2.718281828459045235360287471352
#define LSBFIRST 0
#define MSBFIRST 1
#define CHANGE 1
#define FALLING 2
#define RISING 3
#define NOT_A_PIN 0
#define NOT_A_PORT 0
#define NOT_AN_INTERRUPT -1
#define NOT_ON_TIMER 0
`;

/** Arguments of analogReference: those of the chip's kind. */
function analogReferences(chip: string | undefined): string {
  if (chip === undefined) return "";
  if (/^attiny[248]5$/.test(chip))
    return "#define DEFAULT 0\n#define EXTERNAL 4\n#define INTERNAL1V1 8\n#define INTERNAL 8\n#define INTERNAL2V56 9\n";
  const internal = /^atmega(1280|2560)$/.test(chip)
    ? "#define INTERNAL1V1 2\n#define INTERNAL2V56 3\n"
    : "#define INTERNAL 3\n";
  return `#define DEFAULT 1\n#define EXTERNAL 0\n${internal}`;
}

const MACROS = `#undef abs
#define min(a, b) ((a) < (b) ? (a) : (b))
#define max(a, b) ((a) > (b) ? (a) : (b))
#define abs(x) ((x) > 0 ? (x) : -(x))
#define constrain(value, low, high) ((value) < (low) ? (low) : ((value) > (high) ? (high) : (value)))
#define round(x) ((x) >= 0 ? (long)((x) + 0.5) : (long)((x) - 0.5))
#define radians(degrees) ((degrees) * DEG_TO_RAD)
#define degrees(radians) ((radians) * RAD_TO_DEG)
#define sq(x) ((x) * (x))
#define clockCyclesPerMicrosecond() (F_CPU / 1000000L)
#define clockCyclesToMicroseconds(cycles) ((cycles) / clockCyclesPerMicrosecond())
#define microsecondsToClockCycles(time) ((time) * clockCyclesPerMicrosecond())
#define lowByte(word) ((uint8_t)((word) & 0xff))
#define highByte(word) ((uint8_t)((word) >> 8))
#define bit(number) (1UL << (number))
#define bitRead(value, number) (((value) >> (number)) & 0x01)
#define bitSet(value, number) ((value) |= (1UL << (number)))
#define bitClear(value, number) ((value) &= ~(1UL << (number)))
#define bitToggle(value, number) ((value) ^= (1UL << (number)))
#define bitWrite(value, number, state) ((state) ? bitSet(value, number) : bitClear(value, number))
typedef unsigned int word;
typedef bool boolean;
typedef uint8_t byte;
`;

const INTERRUPTS = `#define interrupts() sei()
#define noInterrupts() cli()
#ifndef _NOP
#define _NOP() __builtin_avr_nop()
#endif
`;

const PLAIN_INTERRUPTS = "void interrupts(void);\nvoid noInterrupts(void);\n";

/** Chips with one address space let the flash macros fall away. */
const NO_FLASH = `#define PROGMEM
#define PSTR(text) (text)
#define pgm_read_byte(address) (*(const uint8_t *)(address))
#define pgm_read_word(address) (*(const uint16_t *)(address))
#define pgm_read_dword(address) (*(const uint32_t *)(address))
`;

const FUNCTIONS = `void init(void);
void initVariant(void);
void setup(void);
void loop(void);
void yield(void);
void pinMode(uint8_t pin, uint8_t mode);
void digitalWrite(uint8_t pin, uint8_t level);
int digitalRead(uint8_t pin);
int analogRead(uint8_t pin);
void analogReference(uint8_t mode);
void analogWrite(uint8_t pin, int value);
unsigned long millis(void);
unsigned long micros(void);
void delay(unsigned long milliseconds);
void delayMicroseconds(unsigned int microseconds);
void shiftOut(uint8_t dataPin, uint8_t clockPin, uint8_t order, uint8_t value);
uint8_t shiftIn(uint8_t dataPin, uint8_t clockPin, uint8_t order);
void attachInterrupt(uint8_t interrupt, void (*function)(void), int mode);
void detachInterrupt(uint8_t interrupt);
`;

const C_DEFAULTS = `unsigned long pulseIn(uint8_t pin, uint8_t state, unsigned long timeout);
unsigned long pulseInLong(uint8_t pin, uint8_t state, unsigned long timeout);
`;

const CPP = `unsigned long pulseIn(uint8_t pin, uint8_t state, unsigned long timeout = 1000000L);
unsigned long pulseInLong(uint8_t pin, uint8_t state, unsigned long timeout = 1000000L);
void tone(uint8_t pin, unsigned int frequency, unsigned long duration = 0);
void noTone(uint8_t pin);
long random(long most);
long random(long least, long most);
void randomSeed(unsigned long seed);
long map(long value, long fromLow, long fromHigh, long toLow, long toHigh);
uint16_t makeWord(uint16_t value);
uint16_t makeWord(uint8_t high, uint8_t low);
#define word(...) makeWord(__VA_ARGS__)
bool isAlphaNumeric(int character);
bool isAlpha(int character);
bool isAscii(int character);
bool isWhitespace(int character);
bool isControl(int character);
bool isDigit(int character);
bool isGraph(int character);
bool isLowerCase(int character);
bool isPrintable(int character);
bool isPunct(int character);
bool isSpace(int character);
bool isUpperCase(int character);
bool isHexadecimalDigit(int character);
#include <WString.h>
#include <Print.h>
#include <Stream.h>
#include <HardwareSerial.h>
`;

/** `B0` to `B11111111`, leading zeros included. */
export const binary: HeaderText = () => {
  let text = "#pragma once\n";
  for (let digits = 1; digits <= 8; digits += 1) {
    for (let value = 0; value < 2 ** digits; value += 1) {
      text += `#define B${value.toString(2).padStart(digits, "0")} ${value}\n`;
    }
  }
  return text;
};
