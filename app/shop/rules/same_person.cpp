#include "same_person.h"

#include <cctype>

namespace steadyturn {

std::string sameNameForm(const std::string& name) {
  std::string same;
  for (const char sign : name) {
    const auto c = static_cast<unsigned char>(sign);
    if (std::isspace(c) == 0) same += static_cast<char>(std::tolower(c));
  }
  return same;
}

}  // namespace steadyturn
