#include "port.h"

template <typename T> struct Name { static const char *get() { return "other"; } };
template <typename T> struct Name<T *> { static const char *get() { return "pointer"; } };

int main()
{
    text("so far\n");
    SHOW_TEXT(Name<long>::get());
    SHOW_TEXT(Name<char *>::get());
    finish();
}
