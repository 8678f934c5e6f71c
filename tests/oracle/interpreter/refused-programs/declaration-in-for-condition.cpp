#include "port.h"

int main()
{
    const char *name = "left";
    for (const char *p = name; char c = *p; p++)
        send(c - 32);
    finish();
}
