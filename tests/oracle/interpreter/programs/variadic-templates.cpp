#include "port.h"

static int sum() { return 0; }
template <typename T, typename... Rest> static long sum(T first, Rest... rest) { return first + sum(rest...); }
template <typename... Ts> static int count(Ts...) { return sizeof...(Ts); }

int main()
{
    SHOW(sum(1, 2L, (char)3, 70000L));
    SHOW(count());
    SHOW(count(1, 'c', "s"));
    finish();
}
