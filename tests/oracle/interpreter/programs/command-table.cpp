#include "port.h"

class Parser {
public:
    typedef void (*Handler)(Parser &, int);
    struct Command { char letter; Handler handler; };
    void feed(char c)
    {
        if (c >= '0' && c <= '9') {
            argument = argument * 10 + (c - '0');
            return;
        }
        for (const Command &command : commands)
            if (command.letter == c)
                command.handler(*this, argument);
        argument = 0;
    }
private:
    int argument = 0, calls = 0;
    static void rate(Parser &self, int v) { show("rate", v + self.calls++); }
    static void level(Parser &self, int v) { show("level", v * 100 + self.calls); }
    static const Command commands[2];
};
const Parser::Command Parser::commands[2] = { { 'r', rate }, { 'l', &Parser::level } };

int main()
{
    Parser parser;
    for (const char *c = "100r3l12x7r"; *c; c++)
        parser.feed(*c);
    finish();
}
