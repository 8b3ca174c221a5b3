#include "bench_record.h"

namespace steadyturn {

ToolModel modelOf(const Tool& tool) {
  return {.maker = tool.maker, .description = tool.description, .kind = tool.kind, .maximum = tool.maximumTorque()};
}

}  // namespace steadyturn
