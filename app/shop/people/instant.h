// Between the text of an instant and the time it means.
#pragma once

#include <chrono>
#include <optional>
#include <string_view>

namespace steadyturn {

// "2026-03-14T09:26:53.589Z"; nothing for any other text.
std::optional<std::chrono::sys_time<std::chrono::milliseconds>> readInstant(std::string_view text);

}  // namespace steadyturn
