shadow in deep
