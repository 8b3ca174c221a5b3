// "Petra  Lind" and "petra lind" are one person.
#pragma once

#include <string>

namespace steadyturn {

std::string sameNameForm(const std::string& name);  // without spaces, in small letters (ASCII)
inline bool samePerson(const std::string& one, const std::string& other) {
  return sameNameForm(one) == sameNameForm(other);
}

}  // namespace steadyturn
