// Text as the store keeps it: Unicode in normalisation form C, so that the same word typed on two keyboards is one
// word, and a row reads as its ledger entry does.
#pragma once

#include <QString>
#include <string>
#include <string_view>

namespace steadyturn {

// Never null (Qt would store NULL), zero bytes kept, a byte order mark at its head left out. Throws StoreError
// (BadInput) for bytes that are not UTF-8.
QString storedText(std::string_view utf8);

// The same as UTF-8, in place; ASCII is left alone.
void normalise(std::string& utf8);

}  // namespace steadyturn
