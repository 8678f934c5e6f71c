#include "port.h"

enum class Button : uint8_t { None, Left = 1, Right = 2, Middle = 4 };
enum class Mode { Stream, Remote = 10, Wrap };
static Button operator|(Button a, Button b) { return static_cast<Button>(static_cast<uint8_t>(a) | static_cast<uint8_t>(b)); }
static bool has(Button set, Button one) { return (uint8_t(set) & uint8_t(one)) != 0; }
static const char *name(Mode mode)
{
    switch (mode) {
    case Mode::Stream: return "stream";
    case Mode::Remote: return "remote";
    case Mode::Wrap: return "wrap";
    }
    return "?";
}

int main()
{
    Button held = Button::Left | Button::Middle;
    SHOW(held);
    SHOW(has(held, Button::Right));
    SHOW(has(held, Button::Middle));
    SHOW(sizeof(Button));
    SHOW(sizeof(Mode));
    SHOW((int)Mode::Wrap);
    SHOW_TEXT(name(Mode::Remote));
    SHOW_TEXT(name(Mode(11)));
    SHOW(held == Button::None);
    SHOW(Mode::Stream < Mode::Wrap);
    finish();
}
