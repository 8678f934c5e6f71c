#include "port.h"

static int made;
struct Item {
    int id;
    Item() : id(++made) {}
    Item(int i) : id(i) { made++; }
    ~Item() { number(id); send('~'); }
};

int main()
{
    {
        Item items[3];
        SHOW(items[2].id);
        Item mixed[3] = { 50, Item(60) };
        SHOW(mixed[1].id);
        SHOW(mixed[2].id);
    }
    send('\n');
    Item *heap = new Item[4];
    SHOW(heap[3].id);
    delete[] heap;
    SHOW(made);
    finish();
}
