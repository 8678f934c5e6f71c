#include "port.h"

struct movement { signed int x : 9; signed int y : 9; signed char wheel : 4; int plain : 3; };

int main(void)
{
    struct movement movement;
    memset(&movement, 0, sizeof movement);
    for (int i = -300; i <= 300; i += 75) {
        movement.x = i;
        movement.y = -i;
        movement.wheel = i / 25;
        movement.plain = i;
        SHOW(movement.x);
        SHOW(movement.y);
        SHOW(movement.wheel);
        SHOW(movement.plain);
    }
    movement.x = 255;
    SHOW(++movement.x);
    SHOW(movement.x = 511);
    SHOW(movement.wheel-- - 1);
    SHOW(movement.x < movement.y);
    finish();
    return 0;
}
