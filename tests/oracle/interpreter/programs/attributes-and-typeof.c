#include "port.h"
#include <stddef.h>

/* What gcc adds to C and firmware uses. */
#define container_of(pointer, type, member) ((type *)((char *)(pointer) - offsetof(type, member)))
#define swap(a, b) do { __typeof__(a) t_ = (a); (a) = (b); (b) = t_; } while (0)
#define max(a, b) ({ __typeof__(a) a_ = (a); __typeof__(b) b_ = (b); a_ > b_ ? a_ : b_; })
#define ARRAY_SIZE(a) (sizeof(a) / sizeof((a)[0]))
#define likely(x) __builtin_expect(!!(x), 1)

struct __attribute__((packed)) report { uint8_t buttons; int16_t dx; int8_t wheel; };
typedef struct { uint8_t id; struct report report; } __attribute__((packed)) slot_t;
typedef uint16_t __attribute__((aligned(2))) aligned_t;
static volatile uint8_t flags __attribute__((section(".noinit")));
static const uint8_t table[] __attribute__((unused)) = { 3, 1, 4, 1, 5 };
static int twice(int) __attribute__((const, noinline));
static __attribute__((always_inline)) inline uint8_t low(uint16_t v) { return v; }
__attribute__((noinline, noclone)) static long slow(long v) { return v * 3; }
static void stop(void) __attribute__((noreturn));
static int twice(int v) { return v * 2; }
int weak_hook(void) __attribute__((weak));
int weak_hook(void) { return 7; }
static int fallthrough(int v)
{
    int n = 0;
    switch (v) {
    case 1: n += 1; __attribute__((fallthrough));
    case 2: n += 10; break;
    default: n = 100;
    }
    return n;
}
enum __attribute__((packed)) mode { STREAM, REMOTE, WRAP = 200 };
typedef enum { BELOW = -5, ABOVE = 300 } __attribute__((packed)) level_t;
enum plain { ONE = 1 };

int main(void)
{
    slot_t slots[3] = { { 1, { 8, -300, 1 } }, { 2, { 9, 5, -1 } } };
    struct report *r = &slots[1].report;
    SHOW(container_of(r, slot_t, report)->id);
    SHOW(sizeof(slot_t) * 10 + sizeof(enum mode));
    swap(slots[0], slots[1]);
    SHOW(slots[0].id * 100 + slots[1].report.wheel);
    SHOW(slots[1].report.dx);
    long a = 70000;
    int b = -3;
    SHOW(max(a, b));
    SHOW(max(b++, -4));
    SHOW(b);
    __typeof__(slots[0].report.dx) dx = 40000;
    SHOW(dx);
    typeof(&slots[0]) p = slots + 2;
    SHOW(p - slots);
    __typeof__(twice) *f = twice;
    SHOW(f(21) + slow(2));
    SHOW(ARRAY_SIZE(table) + weak_hook());
    aligned_t word = 0x1234;
    SHOW(low(word));
    flags = 3;
    if (likely(flags == 3))
        text("likely\n");
    SHOW(fallthrough(1) * 1000 + fallthrough(2) * 10 + fallthrough(3));
    int unused __attribute__((unused)) = 5;
    enum mode m = WRAP;
    level_t level = BELOW;
    SHOW(m + level);
    SHOW(sizeof(level) * 10 + sizeof(enum plain));
    SHOW(level < 0);
    stop();
}
static void stop(void) { finish(); for (;;) ; }
