// Any bytes as a migration's script: statements lie in it one after the other, none of them blank.
#include "driver.h"
#include "sql_script.h"

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace steadyturn;
  const auto script = fuzz::textOf(data, size);
  const char* from = script.data();
  for (const auto statement : splitStatements(script)) {
    fuzz::promise(!statement.empty(), "a statement is not blank");
    fuzz::promise(statement.data() >= from, "statements follow one another");
    from = statement.data() + statement.size();
    fuzz::promise(from <= script.data() + script.size(), "a statement lies in its script");
  }
  return 0;
}
