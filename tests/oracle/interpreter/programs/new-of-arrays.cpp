#include "port.h"
#include <stddef.h>
#include <stdlib.h>
inline void *operator new(size_t, void *p) { return p; }
struct Node {
    int value;
    Node *next;
    static int alive;
    Node(int v = 7, Node *n = nullptr) : value(v), next(n) { alive++; send('+'); number(v); }
    ~Node() { alive--; send('-'); number(value); }
};
int Node::alive = 0;
struct Plain { int a, b; };
struct Pair { Node first{1}, second{2}; int tag = 3; };
struct Matrix { Node cells[2][2]; };
struct Shape { virtual int area() const = 0; virtual ~Shape() { text("~Shape "); } };
struct Box : Shape { Node n; int w; Box(int s) : n(s), w(s) {} int area() const override { return w * w; } };
struct Named { virtual const char *name() const { return "?"; } virtual ~Named() = default; };
struct Mouse : Named { Node n{40}; const char *name() const override { return "mouse"; } };
static int count(int n) { send('n'); return n; }
int main()
{
    Node *a = new Node[3]; send('\n'); delete[] a; send('\n');
    Node *b = new Node[count(4)]{ 1, 2 }; send('\n'); SHOW(b[3].value); delete[] b; send('\n');
    Node *c = new Node[2]{ { 5, nullptr }, Node(6) }; send('\n'); delete[] c; send('\n');
    int *d = new int[5]{ 1, 2, 3 }, *e = new int(), *f = new int[3](), *g = new int{ 9 };
    SHOW(d[2] + d[4] * 10 + *e + f[2] + *g);
    delete[] d; delete e; delete[] f; delete g;
    Plain *p = new Plain{ 3, 4 }, *q = new Plain(), *r = new Plain[2]{ { 1, 2 }, { 3 } };
    SHOW(p->a * 100 + p->b * 10 + q->b + r[1].a + r[1].b);
    delete p; delete q; delete[] r;
    Pair *pair = new Pair; send('\n'); SHOW(pair->tag); delete pair; send('\n');
    Pair *pairs = new Pair[2](); send('\n'); delete[] pairs; send('\n');
    Matrix *m = new Matrix; send('\n'); delete m; send('\n');
    Shape *s = new Box(5); send('\n'); SHOW(s->area()); delete s; send('\n');
    Named *n = new Mouse; send('\n'); SHOW_TEXT(n->name()); delete n; send('\n');
    alignas(Node) unsigned char room[sizeof(Node)];
    Node *placed = new (room) Node(30); send('\n'); SHOW(placed->value); placed->~Node(); send('\n');
    Node *none = nullptr; delete none; delete[] none;
    SHOW(Node::alive);
    Node grid[2][2] = { { 1, 2 }, { 3 } }; send('\n');
    { Node row[3]; row[1].value = 8; } send('\n');
    finish();
}
