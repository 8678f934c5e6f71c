// Objects by value: copied from what stays, made in place from what is new, moved from what is given up.
#include "port.h"

struct Buffer {
    uint8_t *bytes;
    uint8_t size;
    static int live;
    explicit Buffer(uint8_t n) : bytes(new uint8_t[n]), size(n) { memset(bytes, n, n); live++; send('+'); }
    Buffer(const Buffer &o) : bytes(new uint8_t[o.size]), size(o.size) { memcpy(bytes, o.bytes, size); live++; send('c'); }
    Buffer(Buffer &&o) : bytes(o.bytes), size(o.size) { o.bytes = nullptr; o.size = 0; live++; send('m'); }
    ~Buffer() { delete[] bytes; live--; send('-'); }
    int sum() const { int s = 0; for (uint8_t i = 0; i < size; i++) s += bytes[i]; return s; }
};
int Buffer::live = 0;

struct Frame {
    Buffer head, body;
    int tag;
    Frame(Buffer h, Buffer b) : head(h), body(static_cast<Buffer &&>(b)), tag(1) {}
};
class Queue {
    Buffer *items[4];
    uint8_t count = 0;
public:
    void push(Buffer b) { items[count++] = new Buffer(static_cast<Buffer &&>(b)); }
    Buffer pop() { Buffer *last = items[--count]; Buffer result(static_cast<Buffer &&>(*last)); delete last; return result; }
    ~Queue() { while (count) delete items[--count]; }
};

static int sum(Buffer b) { b.bytes[0] = 100; return b.sum(); }
static int both(Buffer a, const Buffer &b) { return a.sum() * 10 + b.sum(); }
static int recursive(Buffer b, int depth) { return depth == 0 ? b.sum() : b.sum() + recursive(b, depth - 1); }
static int frame(Frame f) { return f.head.sum() + f.body.sum() + f.tag; }
static int (*const pointer)(Buffer) = sum;

int main()
{
    {
        Buffer a(3), b(2);
        SHOW(sum(a));
        SHOW(sum(Buffer(4)));
        SHOW(sum(static_cast<Buffer &&>(b)));
        SHOW(b.size);
        SHOW(both(a, a));
        SHOW(both(a, Buffer(5)));
        SHOW(recursive(a, 3));
        SHOW(pointer(a));
        Frame f(a, Buffer(1)), g = f;
        SHOW(frame(f));
        SHOW(frame(static_cast<Frame &&>(g)));
        SHOW(g.head.size);
        Queue queue;
        queue.push(a);
        queue.push(Buffer(6));
        queue.push(Buffer(7));
        SHOW(queue.pop().sum());
        Buffer last = queue.pop();
        SHOW(last.sum());
        SHOW(Buffer::live);
    }
    SHOW(Buffer::live);
    finish();
}
