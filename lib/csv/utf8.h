// Whether bytes are UTF-8 (RFC 3629: no overlong forms, no surrogates, nothing above U+10FFFF).
#pragma once

#include <string_view>

namespace steadyturn {

bool isUtf8(std::string_view bytes);

}  // namespace steadyturn
