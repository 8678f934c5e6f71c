#include "port.h"

extern "C" {
static int plain(int v) { return v + 1; }
struct shared { uint8_t tag; union { uint16_t word; uint8_t bytes[2]; }; };
}
extern "C" int single(shared s) { return s.word; }

int main()
{
    shared s = { 1, { 0x0102 } };
    SHOW(plain(4));
    SHOW(single(s));
    SHOW(s.bytes[0]);
    struct shared other;
    other.word = 0x0A0B;
    SHOW(other.bytes[1]);
    finish();
}
