/*
 * What programs of csmith include, in place of csmith's own header: the checksum leaves over UDR0, and the names
 * of variables are only there with CHECKSUM_TRACE, so that programs fit. The CRC-32 is that of csmith.h.
 */
#ifndef CSMITH_H
#define CSMITH_H

#include <float.h>
#include <limits.h>
#include <math.h>
#include <stdint.h>
#include <string.h>

#define STATIC static
#define COUNT(n)
#define LOG_INDEX
#define LOG_EXEC
#define UNDEFINED(value) (value)
#define FUNC_NAME(x) (safe_##x)
#include "safe_math.h"
#undef FUNC_NAME

#define INT_BIT (sizeof(int) * CHAR_BIT)
#define _CSMITH_BITFIELD(x) (((x) > INT_BIT) ? ((x) % INT_BIT) : (x))
#define assert(condition)
#define printf(...)

static void send_byte(uint8_t byte)
{
    while (!(*(volatile uint8_t *)0xC0 & 0x20)) {
    }
    *(volatile uint8_t *)0xC6 = byte;
}

static void send_hex(uint64_t value, int8_t digits)
{
    int8_t shift;
    for (shift = (digits - 1) * 4; shift >= 0; shift -= 4) {
        uint8_t digit = (value >> shift) & 0xF;
        send_byte(digit < 10 ? '0' + digit : 'A' + digit - 10);
    }
}

static uint32_t crc32_table[256];
static uint32_t crc32_context = 0xFFFFFFFFUL;

static void crc32_gentab(void)
{
    uint16_t i;
    uint8_t j;
    for (i = 0; i < 256; i++) {
        uint32_t crc = i;
        for (j = 8; j > 0; j--) {
            if (crc & 1) {
                crc = (crc >> 1) ^ 0xEDB88320UL;
            } else {
                crc >>= 1;
            }
        }
        crc32_table[i] = crc;
    }
}

static void crc32_byte(uint8_t byte)
{
    crc32_context = (crc32_context >> 8) ^ crc32_table[(crc32_context ^ byte) & 0xFF];
}

static void crc32_value(uint64_t value)
{
    uint8_t i;
    for (i = 0; i < 8; i++) {
        crc32_byte(value & 0xFF);
        value >>= 8;
    }
}

static void crc32_bytes(const char *bytes, int count)
{
    int i;
    for (i = 0; i < count; i++) {
        crc32_byte(bytes[i]);
    }
}

#ifdef CHECKSUM_TRACE
static void trace(const char *name, uint64_t value)
{
    while (*name) {
        send_byte(*name++);
    }
    send_byte('=');
    send_hex(value, 16);
    send_byte('\n');
}
#define transparent_crc(value, name, flag) (trace(name, value), crc32_value(value))
#else
#define transparent_crc(value, name, flag) crc32_value(value)
#endif
#define transparent_crc_bytes(bytes, count, name, flag) crc32_bytes((const char *)(bytes), count)

static void platform_main_begin(void)
{
}

static void platform_main_end(uint32_t crc, int flag)
{
    send_hex(crc, 8);
    send_byte(4);
}

#endif
