#include "port.h"

struct point { int x, y; };
struct line { struct point from, to; char name[6]; };
static struct line lines[2] = { { { 1, 2 }, { 3, 4 }, "one" }, { 5, 6, 7, 8, { 't', 'w', 'o' } } };
static int cube[2][2][3] = { { { 1 }, { 2, 3 } }, { 4, 5, 6, 7 } };
static char words[][4] = { "abc", "de", { 'f' } };

int main(void)
{
    for (int i = 0; i < 2; i++) {
        SHOW(lines[i].from.x + lines[i].from.y * 10 + lines[i].to.x * 100 + lines[i].to.y * 1000);
        SHOW_TEXT(lines[i].name);
    }
    int *flat = &cube[0][0][0];
    for (int i = 0; i < 12; i++) {
        number(flat[i]);
        send(' ');
    }
    SHOW(sizeof words);
    for (unsigned i = 0; i < sizeof words / sizeof words[0]; i++) {
        SHOW_TEXT(words[i]);
    }
    finish();
    return 0;
}
