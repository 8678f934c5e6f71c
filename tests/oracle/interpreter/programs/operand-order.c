/* Which operand the compiler evaluates first, where a call changes the other one. */
#include "port.h"

static int count = 1, list[10];
static long wide = 1;
static uint8_t narrow = 1;
static volatile int port = 1;
static struct { int member; } record = { 1 };

static int next(void)
{
    ++wide;
    ++narrow;
    ++port;
    ++list[0];
    ++record.member;
    return ++count;
}
static int traced(char c) { send(c); return c - '0'; }
static int *traced_list(void) { send('L'); return list; }

int main(void)
{
    int local = 1, *pointer = &local;
    SHOW(count + next()); SHOW(next() + count); SHOW(count * next()); SHOW(count - next()); SHOW(count & next());
    SHOW(count < next()); SHOW(count == next()); SHOW(next() != count); SHOW(port + next()); SHOW(wide + next());
    SHOW(narrow + next()); SHOW(list[0] + next()); SHOW(record.member + next()); SHOW((unsigned)count + next());
    SHOW(count + next() * 2); SHOW(count + (local ? next() : 0)); SHOW(count + (count = 5));
    SHOW(local + (*pointer = 3)); SHOW(local + next());
    count += next(); SHOW(count); count -= next(); SHOW(count); count ^= next(); SHOW(count);
    list[0] += next(); SHOW(list[0]); record.member *= next(); SHOW(record.member);
    wide += next(); SHOW(wide); narrow -= next(); SHOW(narrow); port |= next(); SHOW(port);
    list[traced('1')] += traced('2'); *traced_list() = traced('3'); *traced_list() += traced('4');
    list[traced('1')] = list[traced('2')] + traced('3'); traced_list()[traced('5')] -= traced('6');
    list[traced('1')] <<= traced('2'); send('\n');
    SHOW(list[1] + list[5]);
    pointer = list; pointer += traced('3'); SHOW(pointer - list);
    finish();
    return 0;
}
