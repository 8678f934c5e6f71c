#include "port.h"

class Decoder {
public:
    enum State { Idle, Busy };
    struct Result { State state; uint8_t bytes[2]; };
    class Filter {
        Decoder &owner;
    public:
        Filter(Decoder &d) : owner(d) {}
        bool pass(uint8_t b) { return b > owner.threshold; }
    };
    Decoder(uint8_t t) : threshold(t), filter(*this) {}
    Result run(uint8_t b)
    {
        Result r = { filter.pass(b) ? Busy : Idle, { b, threshold } };
        return r;
    }
private:
    uint8_t threshold;
    Filter filter;
};

int main()
{
    Decoder decoder(100);
    Decoder::Result a = decoder.run(50), b = decoder.run(150);
    SHOW(a.state);
    SHOW(b.state == Decoder::Busy);
    SHOW(b.bytes[0] + b.bytes[1]);
    finish();
}
