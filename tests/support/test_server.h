// The throw-away server that tests/with-server has started, where there is one.
#pragma once

#include <string>

namespace steadyturn {

bool hasTestServer();
// A new database of its own there; returns its address, of the server's administrator. REQUIRES: hasTestServer,
// a QCoreApplication.
std::string freshDatabase();
// Runs one statement as the administrator, past the program, in the database at `address`; "" where it was taken,
// else the server's words.
std::string sayToServer(const std::string& address, const std::string& sql);
std::string databaseOf(const std::string& address);
// The address with another user.
std::string asUser(std::string address, const std::string& user);

}  // namespace steadyturn
