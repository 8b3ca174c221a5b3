#include "shop_address.h"

#include <QUrl>
#include <algorithm>
#include <array>
#include <optional>

namespace steadyturn {

namespace {

constexpr std::array<std::string_view, 2> schemes{"postgresql://", "postgres://"};

std::string_view withoutScheme(std::string_view address) {
  for (const auto scheme : schemes) {
    if (address.starts_with(scheme)) return address.substr(scheme.size());
  }
  return {};
}

QString plain(std::string_view encoded) {
  return QUrl::fromPercentEncoding(QByteArray(encoded.data(), static_cast<qsizetype>(encoded.size())));
}

// Splits at the first `mark`; the second half is empty without one.
std::pair<std::string_view, std::string_view> cut(std::string_view text, char mark) {
  const auto at = text.find(mark);
  if (at == std::string_view::npos) return {text, {}};
  return {text.substr(0, at), text.substr(at + 1)};
}

Problem wrong(const std::string& address, std::string accepted) {
  return {.field = "shop", .found = shownAddress(address), .accepted = std::move(accepted)};
}

std::optional<int> portFrom(std::string_view text) {
  bool number = false;
  const int port = plain(text).toInt(&number);
  return number && port > 0 && port <= 65535 ? std::optional(port) : std::nullopt;
}

// libpq's connection string: a value stands in quotes, a quote or backslash in it after a backslash (34.1.1.1).
QString option(std::string_view name, QString value) {
  value.replace(QLatin1Char('\\'), QLatin1String("\\\\")).replace(QLatin1Char('\''), QLatin1String("\\'"));
  return QString::fromLatin1(name.data(), static_cast<qsizetype>(name.size())) + QStringLiteral("='") + value +
         QLatin1Char('\'');
}

bool isTold(std::string_view name) {
  constexpr std::array<std::string_view, 5> told{"sslmode", "sslrootcert", "sslcert", "sslkey", "connect_timeout"};
  return std::ranges::find(told, name) != told.end();
}

}  // namespace

bool isOnServer(std::string_view address) {
  return std::ranges::any_of(schemes, [&](std::string_view scheme) { return address.starts_with(scheme); });
}

Result<ServerAddress> parseServerAddress(const std::string& address) {
  const auto [place, query] = cut(withoutScheme(address), '?');
  const auto [authority, database] = cut(place, '/');
  ServerAddress found;
  const auto at = authority.rfind('@');
  if (at != std::string_view::npos) {
    const auto [user, password] = cut(authority.substr(0, at), ':');
    found.user = plain(user);
    found.password = plain(password);
  }
  auto server = at == std::string_view::npos ? authority : authority.substr(at + 1);
  // An IPv6 address stands in brackets, which keep its colons from the port's.
  const auto colon = server.rfind(':');
  if (colon != std::string_view::npos && server.find(']', colon) == std::string_view::npos) {
    const auto port = portFrom(server.substr(colon + 1));
    if (!port) return refuse(wrong(address, "a port from 1 to 65535 after the server's name"));
    found.port = *port;
    server = server.substr(0, colon);
  }
  if (server.starts_with('[') && server.ends_with(']')) server = server.substr(1, server.size() - 2);
  found.server = plain(server);
  found.database = plain(database);
  for (auto rest = query; !rest.empty();) {
    const auto [parameter, more] = cut(rest, '&');
    rest = more;
    const auto [name, value] = cut(parameter, '=');
    if (name == "host") {
      found.server = plain(value);
    } else if (name == "user") {
      found.user = plain(value);
    } else if (name == "password") {
      found.password = plain(value);
    } else if (const auto port = portFrom(value); name == "port" && port) {
      found.port = *port;
    } else if (isTold(name)) {
      found.options += QLatin1Char(' ') + option(name, plain(value));
    } else {
      return refuse(wrong(address,
                          "of parameters only host, port, user, password, sslmode, sslrootcert, sslcert, "
                          "sslkey and connect_timeout"));
    }
  }
  if (found.database.isEmpty()) {
    return refuse(wrong(address, "the database's name behind the server's: postgresql://server/database"));
  }
  return found;
}

std::string shownAddress(const std::string& address) {
  if (!isOnServer(address)) return address;
  const auto [place, query] = cut(address, '?');
  std::string shown(place);
  const auto start = shown.find("://") + 3;
  const auto at = shown.substr(0, std::min(shown.find('/', start), shown.size())).rfind('@');
  const auto colon = shown.find(':', start);
  if (at != std::string::npos && colon < at) shown.erase(colon, at - colon);
  char mark = '?';
  for (auto rest = query; !rest.empty();) {
    const auto [parameter, more] = cut(rest, '&');
    rest = more;
    if (parameter.starts_with("password=")) continue;
    shown.append(1, mark).append(parameter);
    mark = '&';
  }
  return shown;
}

}  // namespace steadyturn
