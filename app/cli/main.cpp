#include "program.h"

int main(int argc, char** argv) { return steadyturn::runProgram(argc, argv); }
