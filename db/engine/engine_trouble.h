// What the engine's error means for a person, and what can be done about it.
#pragma once

#include <QSqlError>
#include <string>

#include "store_error.h"

namespace steadyturn {

// SQLite's primary result code (its "Result and Error Codes" page), or -1 for trouble of Qt's own or of a server.
int primaryCode(const QSqlError& error);

Problem engineTrouble(const QSqlError& error, const std::string& address);

// A server's connection broke before anything of the step at hand was saved.
Problem connectionLost(const std::string& address);

}  // namespace steadyturn
