# STEADYTURN_SANITIZE names what -fsanitize= gets, for example "address,undefined" or "thread".
set(STEADYTURN_SANITIZE "" CACHE STRING "Sanitizers to build with (comma separated)")
if(STEADYTURN_SANITIZE)
  add_compile_options(-fsanitize=${STEADYTURN_SANITIZE} -fno-omit-frame-pointer -fno-sanitize-recover=all)
  add_link_options(-fsanitize=${STEADYTURN_SANITIZE})
endif()
