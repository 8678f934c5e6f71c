#include "port.h"

struct Device {
    int uses;
    Device(int start) : uses(start) { text("made\n"); }
    int use() { return ++uses; }
};
static int seed = 5;
static Device &device()
{
    static Device only(seed * 10);
    return only;
}
static int counter()
{
    static int count = seed + 1;
    return count++;
}

int main()
{
    text("start\n");
    seed = 6;
    SHOW(device().use());
    seed = 7;
    SHOW(device().use());
    SHOW(counter());
    seed = 50;
    SHOW(counter());
    finish();
}
