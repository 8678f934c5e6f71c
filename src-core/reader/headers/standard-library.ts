import type { HeaderText } from "./header-target.ts";

/** Prototypes of the C library as far as firmware calls it: C11 7.2 to 7.26, and avr-libc's additions. */

const AVR_STRING = `size_t strlcpy(char *to, const char *from, size_t size);
size_t strlcat(char *to, const char *from, size_t size);
char *strcasestr(const char *in, const char *what);
char *strsep(char **text, const char *separators);
char *strlwr(char *text);
char *strupr(char *text);
char *strrev(char *text);
`;

export const string: HeaderText = ({ isAvr }) => `#pragma once
#include <stddef.h>
void *memcpy(void *to, const void *from, size_t count);
void *memmove(void *to, const void *from, size_t count);
void *memset(void *to, int value, size_t count);
int memcmp(const void *left, const void *right, size_t count);
void *memchr(const void *in, int value, size_t count);
char *strcpy(char *to, const char *from);
char *strncpy(char *to, const char *from, size_t count);
char *strcat(char *to, const char *from);
char *strncat(char *to, const char *from, size_t count);
int strcmp(const char *left, const char *right);
int strncmp(const char *left, const char *right, size_t count);
int strcasecmp(const char *left, const char *right);
int strncasecmp(const char *left, const char *right, size_t count);
char *strchr(const char *in, int value);
char *strrchr(const char *in, int value);
char *strstr(const char *in, const char *what);
char *strpbrk(const char *in, const char *any);
size_t strspn(const char *text, const char *accepted);
size_t strcspn(const char *text, const char *rejected);
char *strtok(char *text, const char *separators);
char *strtok_r(char *text, const char *separators, char **state);
size_t strlen(const char *text);
size_t strnlen(const char *text, size_t most);
char *strdup(const char *text);
${isAvr ? AVR_STRING : ""}`;

export const stdlib: HeaderText = ({ isAvr }) => `#pragma once
#include <stddef.h>
#define EXIT_SUCCESS 0
#define EXIT_FAILURE 1
#define RAND_MAX 32767
typedef struct { int quot; int rem; } div_t;
typedef struct { long quot; long rem; } ldiv_t;
int abs(int value);
long labs(long value);
div_t div(int number, int by);
ldiv_t ldiv(long number, long by);
int atoi(const char *text);
long atol(const char *text);
double atof(const char *text);
long strtol(const char *text, char **end, int base);
unsigned long strtoul(const char *text, char **end, int base);
double strtod(const char *text, char **end);
int rand(void);
void srand(unsigned int seed);
void *malloc(size_t size);
void *calloc(size_t count, size_t size);
void *realloc(void *block, size_t size);
void free(void *block);
void abort(void) __attribute__((noreturn));
void exit(int status) __attribute__((noreturn));
int atexit(void (*function)(void));
void qsort(void *base, size_t count, size_t size, int (*compare)(const void *, const void *));
void *bsearch(const void *key, const void *base, size_t count, size_t size, int (*compare)(const void *, const void *));
${
  isAvr
    ? `long random(void);
void srandom(unsigned long seed);
char *itoa(int value, char *text, int base);
char *utoa(unsigned int value, char *text, int base);
char *ltoa(long value, char *text, int base);
char *ultoa(unsigned long value, char *text, int base);
char *dtostrf(double value, signed char width, unsigned char digits, char *text);
`
    : ""
}`;

export const stdarg: HeaderText = () => `#pragma once
typedef __builtin_va_list va_list;
#define va_start(list, last) ((void)((list) = __builtin_next_arg(last)))
#define va_end(list) ((void)(list))
#define va_arg(list, type) __builtin_va_arg(list, type)
#define va_copy(to, from) ((void)((to) = (from)))
`;

export const stdio: HeaderText = ({ isAvr }) => `#pragma once
#include <stddef.h>
#include <stdint.h>
#include <stdarg.h>
#define EOF (-1)
typedef struct __file FILE;
struct __file {
  char *buf;
  unsigned char unget;
  uint8_t flags;
  int size;
  int len;
  int (*put)(char, struct __file *);
  int (*get)(struct __file *);
  void *udata;
};
extern FILE *stdin;
extern FILE *stdout;
extern FILE *stderr;
int printf(const char *format, ...);
int fprintf(FILE *stream, const char *format, ...);
int sprintf(char *to, const char *format, ...);
int snprintf(char *to, size_t size, const char *format, ...);
int vprintf(const char *format, va_list arguments);
int vsprintf(char *to, const char *format, va_list arguments);
int vsnprintf(char *to, size_t size, const char *format, va_list arguments);
int sscanf(const char *from, const char *format, ...);
int puts(const char *text);
int fputs(const char *text, FILE *stream);
int putchar(int value);
int fputc(int value, FILE *stream);
int getchar(void);
int fgetc(FILE *stream);
char *fgets(char *to, int size, FILE *stream);
${
  isAvr
    ? `#define _FDEV_SETUP_READ 0x0001
#define _FDEV_SETUP_WRITE 0x0002
#define _FDEV_SETUP_RW 0x0003
#define _FDEV_ERR (-1)
#define _FDEV_EOF (-2)
#define FDEV_SETUP_STREAM(writer, reader, mode) { 0, 0, (mode), 0, 0, (writer), (reader), 0 }
int printf_P(const char *format, ...);
int fprintf_P(FILE *stream, const char *format, ...);
int sprintf_P(char *to, const char *format, ...);
int snprintf_P(char *to, size_t size, const char *format, ...);
int vsprintf_P(char *to, const char *format, va_list arguments);
int vsnprintf_P(char *to, size_t size, const char *format, va_list arguments);
int puts_P(const char *text);
int fputs_P(const char *text, FILE *stream);
`
    : ""
}`;

const ONE_ARGUMENT =
  "sin cos tan asin acos atan sinh cosh tanh exp log log10 sqrt cbrt ceil floor trunc round fabs square";
const TWO_ARGUMENTS = "atan2 pow fmod hypot fmin fmax fdim copysign";

export const math: HeaderText = () => {
  const lines = ["#pragma once"];
  for (const name of ONE_ARGUMENT.split(" ")) {
    lines.push(`double ${name}(double x);`);
    if (name !== "square") lines.push(`float ${name}f(float x);`);
  }
  for (const name of TWO_ARGUMENTS.split(" ")) {
    lines.push(`double ${name}(double x, double y);`, `float ${name}f(float x, float y);`);
  }
  return `${lines.join("\n")}
long lround(double x);
long lrint(double x);
double ldexp(double x, int exponent);
double frexp(double x, int *exponent);
double modf(double x, double *whole);
int isnan(double x);
int isinf(double x);
int isfinite(double x);
#define NAN __builtin_nan("")
#define INFINITY __builtin_inf()
#define M_PI 3.14159265358979323846
#define M_PI_2 1.57079632679489661923
#define M_PI_4 0.78539816339744830962
#define M_E 2.7182818284590452354
#define M_LN2 0.69314718055994530942
#define M_LN10 2.30258509299404568402
#define M_SQRT2 1.41421356237309504880
`;
};

export const ctype: HeaderText = () => {
  const tests = "alnum alpha ascii blank cntrl digit graph lower print punct space upper xdigit";
  const lines = tests.split(" ").map((name) => `int is${name}(int character);`);
  return `#pragma once\n${lines.join("\n")}\nint tolower(int character);\nint toupper(int character);\nint toascii(int character);\n`;
};

export const assertion: HeaderText = ({ language }) => `#undef assert
#define assert(condition) ((void)0)
${language === "c" ? "#undef static_assert\n#define static_assert _Static_assert\n" : ""}`;

export const errno: HeaderText = () =>
  "#pragma once\nextern int errno;\n#define EDOM 33\n#define ERANGE 34\n";
