#include "port.h"

struct Part {
    char name;
    Part(char n) : name(n) { send(name); }
    ~Part() { send(name - 'a' + 'A'); }
};
struct Base {
    Part p;
    Base() : p('b') { send('1'); }
    ~Base() { send('2'); }
};
struct Whole : Base {
    Part x, y;
    Whole() : y('y'), x('x') { send('3'); }
    ~Whole() { send('4'); }
};

int main()
{
    {
        Whole whole;
        Part local('l');
        send('|');
    }
    send('\n');
    for (int i = 0; i < 3; i++) {
        Part part('0' + i + 60);
        if (i == 1)
            continue;
        send('-');
    }
    finish();
}
