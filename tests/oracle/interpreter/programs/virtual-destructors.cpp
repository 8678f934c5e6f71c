#include "port.h"

struct Base {
    virtual ~Base() { send('b'); }
    virtual void act() { send('B'); }
};
struct Middle : Base {
    ~Middle() { send('m'); }
    void act() override { Base::act(); send('M'); }
};
struct Last : Middle {
    ~Last() { send('l'); }
    void act() override { Middle::act(); send('L'); }
};

int main()
{
    Base *things[] = { new Base, new Middle, new Last };
    for (Base *thing : things) {
        thing->act();
        delete thing;
        send('\n');
    }
    Middle *middle = new Last();
    middle->act();
    delete middle;
    Base *none = nullptr;
    delete none;
    finish();
}
