import { passesWholeMatrix } from "./whole-matrix.ts";

passesWholeMatrix("usart-ring-cpp");
