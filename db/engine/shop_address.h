// Where a shop is: a file's path, or postgresql://[user[:password]@][server[:port]]/database[?name=value&…] as libpq
// writes it (PostgreSQL 15, 34.1.1.2 "Connection URIs").
#pragma once

#include <QString>
#include <string>
#include <string_view>

#include "problem.h"

namespace steadyturn {

bool isOnServer(std::string_view address);

struct ServerAddress {
  QString server, user, password, database;
  int port = -1;    // -1: the usual one
  QString options;  // what else libpq is told, "sslmode='require'"
};

// REQUIRES: isOnServer. Problems: no database, a parameter that is none of host, port, user, password, sslmode,
// sslrootcert, sslcert, sslkey and connect_timeout.
Result<ServerAddress> parseServerAddress(const std::string& address);

// The address without its password, for whatever is shown or kept.
std::string shownAddress(const std::string& address);

}  // namespace steadyturn
