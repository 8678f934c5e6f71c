#include "port.h"

class Parser {
public:
    typedef void (Parser::*Handler)(int);
    struct Command { char letter; Handler handler; };
    void feed(char c)
    {
        if (c >= '0' && c <= '9') {
            argument = argument * 10 + (c - '0');
            return;
        }
        for (uint8_t i = 0; i < sizeof commands / sizeof commands[0]; i++)
            if (commands[i].letter == c)
                (this->*commands[i].handler)(argument);
        argument = 0;
    }
private:
    int argument = 0;
    void rate(int v) { show("rate", v); }
    void level(int v) { show("level", v); }
    static const Command commands[2];
};
const Parser::Command Parser::commands[2] = { { 'r', &Parser::rate }, { 'l', &Parser::level } };

int main()
{
    Parser parser;
    for (const char *c = "100r3l12x7r"; *c; c++)
        parser.feed(*c);
    finish();
}
