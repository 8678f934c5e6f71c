#include "port.h"

/* Conditions that declare what they test. */
struct Event { uint8_t code; Event *next; explicit operator bool() const { return code != 0; } };
static Event third = { 3, nullptr }, second = { 2, &third }, first = { 1, &second };
static int8_t queue[] = { 4, -2, 9, 0, 5 };
static uint8_t at;
static int take() { return queue[at++]; }
static Event *find(uint8_t code)
{
    for (Event *e = &first; Event *here = e; e = e->next)
        if (here->code == code)
            return here;
    return nullptr;
}

int main()
{
    if (Event *e = find(2))
        SHOW(e->code);
    else
        text("none\n");
    if (Event *e = find(9))
        SHOW(e->code);
    else
        SHOW(e == nullptr);
    if (int n = take()) {
        n += 1;
        SHOW(n);
    } else if (int m = n + 1)
        SHOW(m);
    while (int v = take())
        number(v);
    send('\n');
    at = 0;
    for (int sum = 0; const auto v = take(); sum += v) {
        if (v < 0)
            continue;
        if (v > 8)
            break;
        SHOW(sum);
    }
    SHOW(at);
    for (uint16_t mask = 0x8000; uint8_t high = mask >> 8; mask >>= 3)
        hex(high, 2);
    send('\n');
    switch (int c = take()) {
    case 0: text("zero\n"); break;
    case 5: SHOW(c * 2); break;
    default: SHOW(c);
    }
    if (const bool isOdd = at & 1)
        SHOW(isOdd);
    int total = 0;
    for (int i = 3; int j = i; i--)
        for (int k = 2; int l = k; k--)
            total += j * l;
    SHOW(total);
    finish();
}
