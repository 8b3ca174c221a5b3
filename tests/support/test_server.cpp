#include "test_server.h"

#include <unistd.h>

#include <QString>
#include <QtGlobal>

#include "connection.h"
#include "statement.h"

namespace steadyturn {

namespace {

std::string server() { return qEnvironmentVariable("STEADYTURN_TEST_SERVER").toStdString(); }

}  // namespace

bool hasTestServer() { return !server().empty(); }

std::string sayToServer(const std::string& address, const std::string& sql) {
  try {
    Connection connection(address, *parseServerAddress(address));
    connection.makeHabit(
        QStringLiteral("SELECT set_config('search_path', 'steadyturn', false), set_config('client_min_messages', "
                       "'warning', false)"));
    Statement::execute(connection, QString::fromStdString(sql));
    return {};
  } catch (const StoreError& error) {
    return error.problem().accepted;
  }
}

std::string freshDatabase() {
  static int count = 0;
  const auto name = "t" + std::to_string(::getpid()) + "_" + std::to_string(++count);
  const auto made = sayToServer(server(), "CREATE DATABASE " + name);
  if (!made.empty()) qFatal("no database for the test: %s", made.c_str());
  auto address = server();
  constexpr std::string_view administration = "/postgres?";
  return address.replace(address.find(administration), administration.size(), "/" + name + "?");
}

std::string databaseOf(const std::string& address) { return parseServerAddress(address)->database.toStdString(); }

std::string asUser(std::string address, const std::string& user) {
  constexpr std::string_view administrator = "//postgres@";
  return address.replace(address.find(administrator), administrator.size(), "//" + user + "@");
}

}  // namespace steadyturn
