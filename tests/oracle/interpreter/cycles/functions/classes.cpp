#include "measured.h"

class Accumulator {
public:
    void add(int16_t x, int16_t y);
    int8_t takeX();
    bool isEmpty() const { return x == 0 && y == 0; }

private:
    int16_t x = 0;
    int16_t y = 0;
};

__attribute__((noinline)) void Accumulator::add(int16_t moreX, int16_t moreY)
{
    x += moreX;
    y -= moreY;
}

__attribute__((noinline)) int8_t Accumulator::takeX()
{
    int16_t part = x;
    if (part > 127) {
        part = 127;
    }
    if (part < -128) {
        part = -128;
    }
    x -= part;
    return part;
}

static Accumulator sums;

/* calls: (300, 5) (1, 1) */
MEASURED int8_t accumulate(int16_t x, int16_t y)
{
    sums.add(x, y);
    return sums.takeX();
}

/* calls: () */
MEASURED bool is_empty()
{
    return sums.isEmpty();
}

class Encoder {
public:
    virtual uint8_t encode(uint8_t value) = 0;
};

class Plain : public Encoder {
public:
    uint8_t encode(uint8_t value) override { return value & 0x7f; }
};

class Marked : public Encoder {
public:
    uint8_t encode(uint8_t value) override { return value | 0x40; }
};

static Plain plain;
static Marked marked;
static Encoder *volatile chosen = &plain;

/* calls: (3) (200) */
MEASURED uint8_t encode_virtually(uint8_t value)
{
    Encoder *encoder = chosen;
    chosen = &marked;
    return encoder->encode(value);
}

template <uint8_t bit>
struct Pin {
    static void high() { PORTB |= 1 << bit; }
    static void low() { PORTB &= ~(1 << bit); }
    static void write(bool level)
    {
        if (level) {
            high();
        } else {
            low();
        }
    }
};

/* calls: (0xa5) */
MEASURED void send_by_template(uint8_t byte)
{
    for (uint8_t bit = 0; bit < 8; bit++) {
        Pin<1>::write(byte & 0x80);
        byte <<= 1;
        Pin<2>::high();
        Pin<2>::low();
    }
}

static uint8_t total;

static void note(const uint8_t &value)
{
    total += value;
}

/* calls: (5) */
MEASURED uint8_t by_reference(uint8_t value)
{
    note(value);
    note(value);
    return total;
}

class Port {
public:
    explicit Port(volatile uint8_t &inputs, uint8_t bit) : inputs(inputs), mask(1 << bit) {}
    bool read() const { return inputs & mask; }

private:
    volatile uint8_t &inputs;
    uint8_t mask;
};

static Port port(PIND, 2);

/* calls: () () */
MEASURED bool read_port()
{
    return port.read();
}
