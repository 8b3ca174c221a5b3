# Warnings are errors for our own code; system headers are left alone.
add_library(steadyturn_warnings INTERFACE)
target_compile_options(steadyturn_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Wnon-virtual-dtor -Wold-style-cast
  -Woverloaded-virtual -Werror
  # g++ 12 sees overlapping copies in "literal" + std::string(...) that are not there (GCC bug 105651).
  $<$<CONFIG:Release>:-Wno-restrict>)
