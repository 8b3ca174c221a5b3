// A check or a set-up being typed, as text for the store: everything exactly as typed, complete or not.
#pragma once

#include <optional>
#include <string>

#include "shop_views.h"

namespace steadyturn {

std::string writeDraft(const CheckDraft& draft);
// Nothing for a text that writeDraft did not write.
std::optional<CheckDraft> parseDraft(const std::string& text);
std::string writeSetupDraft(const BenchSetupDraft& draft);
std::optional<BenchSetupDraft> parseSetupDraft(const std::string& text);  // likewise

}  // namespace steadyturn
