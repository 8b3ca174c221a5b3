// `sturn evaluate joint`: its JSON ⇄ the core's values.
#pragma once

#include "joint.h"
#include "json_document.h"

namespace steadyturn {

Result<JointInput> readJointInput(const Json& document);
OrderedJson jointResultJson(const JointResult& result);

}  // namespace steadyturn
