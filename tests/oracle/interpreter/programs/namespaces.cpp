#include "port.h"

namespace port {
    static int rate = 1200;
    namespace detail {
        static int scale(int v) { return v * rate / 100; }
    }
    struct Frame { int bits; int length() const { return detail::scale(bits); } };
    static int twice(Frame f) { return f.length() * 2; }
}
namespace {
    int hidden = 5;
}
namespace mouse = port::detail;
static int rate = 7;
using port::Frame;

int main()
{
    SHOW(port::rate);
    SHOW(rate);
    SHOW(::rate + hidden);
    SHOW(mouse::scale(3));
    Frame frame = { 10 };
    SHOW(twice(frame));
    {
        using namespace port::detail;
        SHOW(scale(4));
        int rate = 1;
        SHOW(rate + ::rate + port::rate);
    }
    finish();
}
