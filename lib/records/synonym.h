// What people call a thing besides what the specification calls it.
#pragma once

#include <string>
#include <vector>

namespace steadyturn {

// Phrases that mean the same, in small letters.
using SynonymGroup = std::vector<std::string>;

}  // namespace steadyturn
