#include "engine_trouble.h"

#include <algorithm>
#include <array>

namespace steadyturn {

namespace {

struct Meaning {
  int code;
  const char* whatToDo;
};

constexpr std::array meanings{
    Meaning{5, "another program is writing to the shop: try again"},
    Meaning{6, "another program is writing to the shop: try again"},
    Meaning{3, "a shop that this user may read"},
    Meaning{7, "not enough memory: close other programs and try again"},
    Meaning{8, "the shop can't be written here: copy it to a folder that can be written"},
    Meaning{10, "the disk can't be read or written: check it and its free space, then try again"},
    Meaning{11, "the shop's file is damaged: go back to a backup"},
    Meaning{13, "the disk is full: free some space and try again"},
    Meaning{14, "the shop's file can't be opened: check its folder and its permissions"},
    Meaning{26, "a shop's file; this is not a database"},
};

constexpr int constraint = 19;

}  // namespace

int primaryCode(const QSqlError& error) {
  bool number = false;
  const int code = error.nativeErrorCode().toInt(&number);
  return number ? code & 0xff : -1;
}

Problem engineTrouble(const QSqlError& error, const std::string& address) {
  const int code = primaryCode(error);
  const auto driverText = error.databaseText().isEmpty() ? error.driverText() : error.databaseText();
  if (code == constraint) {
    return {.kind = ProblemKind::Conflict, .field = "shop", .found = address, .accepted = driverText.toStdString()};
  }
  const auto* meaning = std::ranges::find(meanings, code, &Meaning::code);
  return {.kind = ProblemKind::Unavailable,
          .field = "shop",
          .found = address,
          .accepted = meaning != meanings.end() ? meaning->whatToDo : driverText.toStdString()};
}

}  // namespace steadyturn
