// `sturn evaluate delivery`: its JSON ⇄ the core's values.
#pragma once

#include <optional>

#include "best_setting.h"
#include "json_document.h"

namespace steadyturn {

Result<DeliveryInput> readDeliveryInput(const Json& document);
OrderedJson deliveryResultJson(const DeliveryResult& result, const std::optional<BestSetting>& best);

}  // namespace steadyturn
