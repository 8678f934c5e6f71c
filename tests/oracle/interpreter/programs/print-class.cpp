#include "port.h"

class Printer {
public:
    virtual size_t write(uint8_t byte) = 0;
    size_t write(const char *s) { size_t n = 0; while (*s) n += write((uint8_t)*s++); return n; }
    size_t print(const char *s) { return write(s); }
    size_t print(char c) { return write((uint8_t)c); }
    size_t print(long v, int base = 10)
    {
        if (v < 0)
            return print('-') + print(-v, base);
        size_t n = v >= base ? print(v / base, base) : 0;
        return n + print("0123456789ABCDEF"[v % base]);
    }
    size_t print(int v, int base = 10) { return print((long)v, base); }
    template <typename T> size_t println(T v) { size_t n = print(v); return n + print("\n"); }
};
class Port : public Printer {
    uint8_t sum = 0;
public:
    using Printer::write;
    size_t write(uint8_t byte) override { sum += byte; send(byte); return 1; }
    uint8_t checksum() const { return sum; }
};

int main()
{
    Port port;
    Printer &out = port;
    SHOW(out.println("hello"));
    SHOW(out.println(-12345));
    SHOW(out.print(255, 16));
    out.println('c');
    out.println(1000000L);
    SHOW(port.write("raw"));
    SHOW(port.checksum());
    finish();
}
