#pragma once

#include <stdint.h>

// One side puts in, the other takes out; one of the two may be an interrupt handler. Size is a power of two, one place
// stays free.
template <typename Item, uint8_t Size>
class Ring {
 public:
  bool isEmpty() const { return head == tail; }
  bool isFull() const { return next(head) == tail; }

  void put(Item item) {
    items[head] = item;
    head = next(head);
  }

  Item take() {
    Item item = items[tail];
    tail = next(tail);
    return item;
  }

  void clear() { tail = head; }

 private:
  static uint8_t next(uint8_t at) { return (at + 1) & (Size - 1); }

  volatile Item items[Size];
  volatile uint8_t head = 0;
  volatile uint8_t tail = 0;
};
