#include "port.h"

struct head { unsigned char left : 1; unsigned char right : 1; unsigned char x_high : 2; unsigned char y_high : 2; unsigned char mark : 2; };
struct wide { unsigned a : 3; unsigned b : 7; unsigned c : 9; unsigned long d : 21; };

int main(void)
{
    struct head head = { 1, 0, 2, 3, 1 };
    struct wide wide = { 9, 130, 600, 0x3FFFFFUL };
    SHOW(*(unsigned char *)&head);
    head.x_high += 3;
    head.y_high = 7;
    head.left--;
    head.left--;
    SHOW(*(unsigned char *)&head);
    SHOW(wide.a);
    SHOW(wide.b);
    SHOW(wide.c);
    SHOW(wide.d);
    SHOW(sizeof(struct head));
    SHOW(sizeof(struct wide));
    for (unsigned i = 0; i < sizeof wide; i++) {
        hex(((unsigned char *)&wide)[i], 2);
    }
    finish();
    return 0;
}
