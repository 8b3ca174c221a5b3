// `sturn evaluate check`: its JSON ⇄ the core's values.
#pragma once

#include "check.h"
#include "json_document.h"

namespace steadyturn {

Result<CheckInput> readCheckInput(const Json& document);
OrderedJson checkResultJson(const CheckResult& result);

}  // namespace steadyturn
