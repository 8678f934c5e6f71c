#define PORT PORT ## B
#define three a ## b ## c
#define PORTB found
PORT three
