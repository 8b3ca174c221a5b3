// Records of an invented depot: one with every field, one with only what is needed.
#pragma once

#include "records.h"

namespace steadyturn {

Date day(int year, unsigned month, unsigned dayOfMonth);

Tool fullTool();
Tool bareTool();
Reference fullReference();
Reference bareReference();
Fastener fullFastener();
Fastener bareFastener();
Check fullCheck();  // of fullTool() with fullReference()
Check bareCheck();  // of bareTool(), one reading, no reference
Tightening fullTightening();
Tightening bareTightening();

}  // namespace steadyturn
