#include "port.h"
#include <stdlib.h>
struct node { int value; struct node *next; };
static struct node *push(struct node *head, int value)
{
    struct node *made = malloc(sizeof *made);
    made->value = value;
    made->next = head;
    return made;
}

int main(void)
{
    struct node *head = 0;
    for (int i = 1; i <= 10; i++)
        head = push(head, i * 3);
    struct node **link = &head;
    while (*link) {
        if ((*link)->value % 2 == 0) {
            struct node *gone = *link;
            *link = gone->next;
            free(gone);
        } else {
            link = &(*link)->next;
        }
    }
    for (struct node *each = head; each; each = each->next)
        SHOW(each->value);
    int *zeros = calloc(4, sizeof(int));
    SHOW(zeros[3]);
    zeros[0] = 77;
    zeros = realloc(zeros, 20);
    SHOW(zeros[0]);
    free(zeros);
    finish();
    return 0;
}
