#include "port.h"

template <uint8_t Needed> class Debouncer {
    bool stable;
    uint8_t count = 0;
public:
    explicit Debouncer(bool start = false) : stable{start} {}
    bool update(bool now)
    {
        if (now == stable) {
            count = 0;
            return false;
        }
        if (++count < Needed)
            return false;
        stable = now;
        count = 0;
        return true;
    }
    operator bool() const { return stable; }
};

int main()
{
    Debouncer<3> button;
    for (char c : "0110111110001000000111") {
        if (c && button.update(c == '1'))
            send(button ? 'D' : 'U');
        else
            send('.');
    }
    SHOW(button);
    finish();
}
