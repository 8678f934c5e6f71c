import { registerBitNamed, registerNamed } from "../../model/chips.ts";
import { avrOnly, define, type HeaderText } from "./header-target.ts";

/** Headers in avr-libc's `avr` folder: names and numbers as its manual documents them. */

export const builtins: HeaderText = avrOnly(`#pragma once
void __builtin_avr_nop(void);
void __builtin_avr_sei(void);
void __builtin_avr_cli(void);
void __builtin_avr_sleep(void);
void __builtin_avr_wdr(void);
unsigned char __builtin_avr_swap(unsigned char value);
void __builtin_avr_delay_cycles(unsigned long cycles);
`);

export const interrupt: HeaderText = avrOnly(({ language }) => {
  const linkage = language === "c++" ? 'extern "C" ' : "";
  return `#pragma once
#include <avr/io.h>
#include <avr/builtins.h>
#define sei() __builtin_avr_sei()
#define cli() __builtin_avr_cli()
#define reti() __asm__ __volatile__ ("reti" ::)
#define BADISR_vect __vector_default
#define ISR_BLOCK
#define ISR_NOBLOCK __attribute__((interrupt))
#define ISR_NAKED __attribute__((naked))
#define ISR_ALIASOF(vector) __attribute__((alias(#vector)))
#define ISR(vector, ...) ${linkage}void vector(void) __attribute__((signal, used)) __VA_ARGS__; void vector(void)
#define SIGNAL(vector) ISR(vector)
#define INTERRUPT(vector) ISR(vector, ISR_NOBLOCK)
#define EMPTY_INTERRUPT(vector) ISR(vector) { }
#define ISR_ALIAS(vector, target) ${linkage}void vector(void) __attribute__((signal, used, alias(#target)));
`;
});

const FAR = `uint8_t pgm_read_byte_far(uint32_t address);
uint16_t pgm_read_word_far(uint32_t address);
uint32_t pgm_read_dword_far(uint32_t address);
`;

/** Flash beyond 64 KiB is read through addresses of its own. */
export const pgmspace: HeaderText = avrOnly(
  ({ avr }) => `#pragma once
#include <stdint.h>
#include <stddef.h>
#define PROGMEM __attribute__((__progmem__))
#define PGM_P const char *
#define PGM_VOID_P const void *
#define PSTR(text) ((const char *)(text))
#define pgm_read_byte(address) (*(const uint8_t *)(address))
#define pgm_read_word(address) (*(const uint16_t *)(address))
#define pgm_read_dword(address) (*(const uint32_t *)(address))
#define pgm_read_float(address) (*(const float *)(address))
#define pgm_read_ptr(address) (*(void *const *)(address))
#define pgm_read_byte_near(address) pgm_read_byte(address)
#define pgm_read_word_near(address) pgm_read_word(address)
#define pgm_read_dword_near(address) pgm_read_dword(address)
#define pgm_read_float_near(address) pgm_read_float(address)
#define pgm_read_ptr_near(address) pgm_read_ptr(address)
${avr === undefined || avr.memory.flashEnd > 0xffff ? FAR : ""}typedef char prog_char;
typedef unsigned char prog_uchar;
typedef uint8_t prog_uint8_t;
typedef uint16_t prog_uint16_t;
void *memcpy_P(void *to, const void *from, size_t count);
int memcmp_P(const void *left, const void *right, size_t count);
char *strcpy_P(char *to, const char *from);
char *strncpy_P(char *to, const char *from, size_t count);
char *strcat_P(char *to, const char *from);
int strcmp_P(const char *left, const char *right);
int strncmp_P(const char *left, const char *right, size_t count);
int strcasecmp_P(const char *left, const char *right);
int strncasecmp_P(const char *left, const char *right, size_t count);
char *strncat_P(char *to, const char *from, size_t count);
size_t strlcpy_P(char *to, const char *from, size_t size);
size_t strlcat_P(char *to, const char *from, size_t size);
char *strstr_P(const char *in, const char *what);
const char *strchr_P(const char *in, int value);
const char *strrchr_P(const char *in, int value);
const void *memchr_P(const void *in, int value, size_t count);
size_t strnlen_P(const char *text, size_t most);
size_t strlen_P(const char *text);
`,
);

export const eeprom: HeaderText = avrOnly(() => {
  const cells = [
    ["byte", "uint8_t"],
    ["word", "uint16_t"],
    ["dword", "uint32_t"],
    ["float", "float"],
  ];
  const lines = cells.flatMap(([name, type]) => [
    `${type} eeprom_read_${name}(const ${type} *from);`,
    `void eeprom_write_${name}(${type} *to, ${type} value);`,
    `void eeprom_update_${name}(${type} *to, ${type} value);`,
  ]);
  return `#pragma once
#include <avr/io.h>
#include <stddef.h>
#define EEMEM __attribute__((section(".eeprom")))
#define eeprom_is_ready() bit_is_clear(EECR, EEPE)
#define eeprom_busy_wait() do { } while (!eeprom_is_ready())
${lines.join("\n")}
void eeprom_read_block(void *to, const void *from, size_t count);
void eeprom_write_block(const void *from, void *to, size_t count);
void eeprom_update_block(const void *from, void *to, size_t count);
`;
});

/** Sleep modes by their SM bits, where the chip's manual names them so. */
const MEGA_MODES = { IDLE: 0, ADC: 1, PWR_DOWN: 2, PWR_SAVE: 3, STANDBY: 6, EXT_STANDBY: 7 };
const TINY_MODES = { IDLE: 0, ADC: 1, PWR_DOWN: 2 };
/** Its SM0 and SM1 stand two bits apart. */
const TINY_2313_MODES = { IDLE: 0, STANDBY: 4, PWR_DOWN: 5 };

export const sleep: HeaderText = avrOnly(({ avr }) => {
  let text = "";
  const lowest = avr && registerBitNamed(avr, "SM0");
  if (avr !== undefined && lowest !== undefined) {
    const isMega = registerNamed(avr, "SMCR") !== undefined;
    const isSplit = registerBitNamed(avr, "SM1")?.bit !== lowest.bit + 1;
    const modes = isMega ? MEGA_MODES : isSplit ? TINY_2313_MODES : TINY_MODES;
    for (const [name, value] of Object.entries(modes)) {
      text += define(`SLEEP_MODE_${name}`, `(${value} << ${lowest.bit})`);
    }
  }
  return `#pragma once
#include <avr/io.h>
${text}void set_sleep_mode(uint8_t mode);
void sleep_enable(void);
void sleep_disable(void);
void sleep_cpu(void);
void sleep_mode(void);
void sleep_bod_disable(void);
`;
});

const WATCHDOG_TIMES = ["15MS", "30MS", "60MS", "120MS", "250MS", "500MS", "1S", "2S"];

export const wdt: HeaderText = avrOnly(({ avr }) => {
  const isLong = avr === undefined || registerBitNamed(avr, "WDP3") !== undefined;
  const times = isLong ? [...WATCHDOG_TIMES, "4S", "8S"] : WATCHDOG_TIMES;
  return `#pragma once
#include <avr/io.h>
${times.map((time, value) => define(`WDTO_${time}`, value)).join("")}void wdt_enable(uint8_t timeout);
void wdt_disable(void);
void wdt_reset(void);
`;
});

const POWERED: Readonly<Record<string, string>> = {
  ...{ PRADC: "adc", PRSPI: "spi", PRTWI: "twi", PRUSI: "usi", PRUSB: "usb" },
  ...{ PRUSART0: "usart0", PRUSART1: "usart1", PRUSART2: "usart2", PRUSART3: "usart3" },
  ...{ PRTIM0: "timer0", PRTIM1: "timer1", PRTIM2: "timer2" },
  ...{ PRTIM3: "timer3", PRTIM4: "timer4", PRTIM5: "timer5" },
};

export const power: HeaderText = avrOnly(({ avr }) => {
  const lines = ["void power_all_enable(void);", "void power_all_disable(void);"];
  for (const [bit, name] of Object.entries(POWERED)) {
    if (avr === undefined || registerBitNamed(avr, bit) === undefined) continue;
    lines.push(`void power_${name}_enable(void);`, `void power_${name}_disable(void);`);
  }
  const divisions = [1, 2, 4, 8, 16, 32, 64, 128, 256].map((by, value) => `clock_div_${by} = ${value}`);
  return `#pragma once
#include <avr/io.h>
${lines.join("\n")}
typedef enum { ${divisions.join(", ")} } clock_div_t;
void clock_prescale_set(clock_div_t division);
clock_div_t clock_prescale_get(void);
`;
});

export const cpufunc: HeaderText = avrOnly(`#pragma once
#include <avr/builtins.h>
#define _NOP() __builtin_avr_nop()
#define _MemoryBarrier() __asm__ __volatile__ ("" ::: "memory")
`);
