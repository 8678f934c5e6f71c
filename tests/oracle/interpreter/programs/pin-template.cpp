#include "port.h"

template <typename Port, uint8_t Bit> struct Pin {
    static void high() { Port::out() |= 1 << Bit; }
    static void low() { Port::out() &= ~(1 << Bit); }
    static bool get() { return Port::out() >> Bit & 1; }
};
struct PortB { static volatile uint8_t &out() { return PORTB; } };
struct Fake { static uint8_t value; static uint8_t &out() { return value; } };
uint8_t Fake::value = 0xF0;
using Led = Pin<PortB, 5>;
using Clock = Pin<Fake, 2>;
struct Held { Held() { Clock::high(); } ~Held() { Clock::low(); } };

int main()
{
    Led::high();
    SHOW(PORTB);
    SHOW(Led::get());
    Led::low();
    SHOW(PORTB);
    {
        Held held;
        SHOW(Fake::value);
    }
    SHOW(Fake::value);
    finish();
}
