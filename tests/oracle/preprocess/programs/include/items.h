ITEM(left, 1)
ITEM(right, 2)
ITEM(middle, 4)
