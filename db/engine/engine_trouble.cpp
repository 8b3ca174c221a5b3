#include "engine_trouble.h"

#include <algorithm>
#include <array>

#include "shop_address.h"

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

// PostgreSQL's states (its Appendix A) have five characters, SQLite's codes at most four digits.
constexpr qsizetype stateLength = 5;

struct StateMeaning {
  QLatin1String begins;
  const char* whatToDo = "";
};

constexpr std::array stateMeanings{
    StateMeaning{QLatin1String("55P03"), "another program is writing to the shop: try again"},
    StateMeaning{QLatin1String("40"), "another program is writing to the shop: try again"},
    StateMeaning{QLatin1String("53100"), "the server's disk is full: free some space there and try again"},
    StateMeaning{QLatin1String("54"), "shorter words: the server's indexes can't take as long ones"},
    StateMeaning{QLatin1String("53"), "the server has no room for this at the moment: try again later"},
    StateMeaning{QLatin1String("57P"), "the server is starting or stopping: try again in a moment"},
    StateMeaning{QLatin1String("25006"),
                 "the shop can only be looked at here: work at the server that takes changes"},
};

// The server's own words without what stands around them: its first line, behind "ERROR:".
std::string serversWords(const QSqlError& error) {
  QString text = error.databaseText().trimmed();
  if (const auto colon = text.indexOf(QLatin1String(":  ")); colon >= 0) text = text.mid(colon + 3);
  return text.section(QLatin1Char('\n'), 0, 0).trimmed().toStdString();
}

// Integrity constraints (class 23) and what a trigger of ours refused.
bool isConflict(const QString& state) {
  return state.startsWith(QLatin1String("23")) || state == QLatin1String("P0001");
}

Problem serverTrouble(const QSqlError& error, const std::string& address) {
  const auto state = error.nativeErrorCode();
  if (isConflict(state)) {
    return {.kind = ProblemKind::Conflict, .field = "shop", .found = address, .accepted = serversWords(error)};
  }
  const std::string says = state.isEmpty() ? "a server that answers: " : "the server says: ";
  const auto* meaning =
      std::ranges::find_if(stateMeanings, [&](const StateMeaning& known) { return state.startsWith(known.begins); });
  return {.kind = ProblemKind::Unavailable,
          .field = "shop",
          .found = address,
          .accepted = meaning != stateMeanings.end() ? meaning->whatToDo : says + serversWords(error)};
}

}  // namespace

int primaryCode(const QSqlError& error) {
  bool number = false;
  const int code = error.nativeErrorCode().toInt(&number);
  return number && error.nativeErrorCode().size() < stateLength ? code & 0xff : -1;
}

Problem connectionLost(const std::string& address) {
  return {.kind = ProblemKind::Unavailable,
          .field = "shop",
          .found = address,
          .accepted = "the connection to the server broke, and nothing of this was saved: try again"};
}

Problem engineTrouble(const QSqlError& error, const std::string& address) {
  if (isOnServer(address)) return serverTrouble(error, address);
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
