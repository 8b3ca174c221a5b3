# Warnings are errors for our own code; system headers are left alone.
add_library(steadyturn_warnings INTERFACE)
target_compile_options(steadyturn_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Wnon-virtual-dtor -Wold-style-cast
  -Woverloaded-virtual -Werror)
