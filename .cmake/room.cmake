# A room is one folder, one static library, one include folder: what a room may include is exactly
# what it links, so an include against the direction of the house does not build.
#   steadyturn_room(NAME SOURCES a.cpp … LINKS other_room …)
# SEPARATE keeps the room's files apart in a unity build (tests/run makes one): they use the same local names.
function(steadyturn_room name)
  cmake_parse_arguments(ROOM "MOC;SEPARATE" "" "SOURCES;LINKS;PRIVATE_LINKS" ${ARGN})
  add_library(${name} STATIC ${ROOM_SOURCES})
  target_include_directories(${name} PUBLIC ${CMAKE_CURRENT_SOURCE_DIR})
  target_link_libraries(${name} PUBLIC ${ROOM_LINKS} PRIVATE steadyturn_warnings ${ROOM_PRIVATE_LINKS})
  if(ROOM_MOC)
    set_target_properties(${name} PROPERTIES AUTOMOC ON)
  endif()
  if(ROOM_SEPARATE)
    set_target_properties(${name} PROPERTIES UNITY_BUILD OFF)
  endif()
endfunction()

# A test program of one room: steadyturn_test(NAME SOURCES … LINKS …); ctest labels it with LABEL.
function(steadyturn_test name)
  cmake_parse_arguments(T "MOC;SEPARATE" "LABEL" "SOURCES;LINKS" ${ARGN})
  add_executable(${name} ${T_SOURCES})
  target_link_libraries(${name} PRIVATE ${T_LINKS} steadyturn_warnings GTest::gtest GTest::gmock GTest::gtest_main)
  target_include_directories(${name} PRIVATE ${CMAKE_CURRENT_SOURCE_DIR} ${PROJECT_SOURCE_DIR}/tests/support)
  # The code under test is optimised as released; its tests need not be, and a clean run of CI is the shorter for it.
  target_compile_options(${name} PRIVATE $<$<CONFIG:Release>:-O0>)
  target_compile_definitions(${name} PRIVATE STEADYTURN_TEST_DATA="${PROJECT_SOURCE_DIR}/tests/data")
  if(T_MOC)
    set_target_properties(${name} PROPERTIES AUTOMOC ON)
  endif()
  if(T_SEPARATE)
    set_target_properties(${name} PROPERTIES UNITY_BUILD OFF)
  endif()
  gtest_discover_tests(${name} DISCOVERY_TIMEOUT 60 PROPERTIES LABELS "${T_LABEL}" TIMEOUT 300
    ENVIRONMENT "QT_QPA_PLATFORM=offscreen")
endfunction()
