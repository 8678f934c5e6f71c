#include "port.h"

struct Node {
    int value;
    Node *next;
    static int alive;
    Node(int v, Node *n = nullptr) : value(v), next(n) { alive++; }
    ~Node() { alive--; delete next; }
};
int Node::alive = 0;

int main()
{
    Node *list = nullptr;
    for (int i = 0; i < 4; i++)
        list = new Node(i, list);
    SHOW(Node::alive);
    int sum = 0;
    for (Node *n = list; n; n = n->next)
        sum = sum * 10 + n->value;
    SHOW(sum);
    delete list;
    SHOW(Node::alive);
    int *one = new int(42), *zero = new int(), *array = new int[5]{ 1, 2, 3 };
    SHOW(*one + *zero);
    SHOW(array[2] + array[4]);
    delete one;
    delete zero;
    delete[] array;
    uint8_t *bytes = new uint8_t[10];
    memset(bytes, 3, 10);
    SHOW(bytes[9]);
    delete[] bytes;
    finish();
}
