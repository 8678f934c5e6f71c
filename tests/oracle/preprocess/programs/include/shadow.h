shadow in include
