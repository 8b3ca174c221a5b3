# STEADYTURN_SANITIZE names what -fsanitize= gets, for example "address,undefined" or "thread".
set(STEADYTURN_SANITIZE "" CACHE STRING "Sanitizers to build with (comma separated)")
# Tells tests/fuzz/driver.cpp which code an input reached.
option(STEADYTURN_COVERAGE "Call __sanitizer_cov_trace_pc at every edge; only the fuzz targets link then" OFF)
if(STEADYTURN_COVERAGE)
  add_compile_options(-fsanitize-coverage=trace-pc)
endif()
if(STEADYTURN_SANITIZE)
  add_compile_options(-fsanitize=${STEADYTURN_SANITIZE} -fno-omit-frame-pointer -fno-sanitize-recover=all)
  add_link_options(-fsanitize=${STEADYTURN_SANITIZE})
endif()
