#include "port.h"

struct Range {
    int from, to;
    struct Iterator {
        int at;
        int operator*() const { return at; }
        Iterator &operator++() { at++; return *this; }
        bool operator!=(const Iterator &o) const { return at != o.at; }
    };
    Iterator begin() const { return { from }; }
    Iterator end() const { return { to }; }
};
struct Buffer {
    uint8_t bytes[4];
    uint8_t *begin() { return bytes; }
    uint8_t *end() { return bytes + 4; }
};

int main()
{
    int values[] = { 3, 1, 4, 1, 5 };
    for (int v : values)
        number(v);
    for (int &v : values)
        v *= 2;
    for (const auto &v : values)
        number(v);
    send('\n');
    for (auto i : Range{ 2, 6 }) {
        if (i == 4)
            continue;
        number(i);
    }
    Buffer buffer = { { 1, 2, 3, 4 } };
    for (auto &byte : buffer)
        byte <<= 4;
    for (auto byte : buffer)
        hex(byte, 2);
    for (char c : "ok")
        hex(c, 2);
    send('\n');
    finish();
}
