import { passesMatrix } from "./passes-matrix.ts";

passesMatrix("usart-ring-cpp", "every stroke");
