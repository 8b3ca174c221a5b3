// A shop in a folder of its own, gone after the test; or on the throw-away server, where there is one.
#pragma once

#include <gtest/gtest.h>

#include <QFile>
#include <QTemporaryDir>
#include <memory>
#include <string>

#include "check_table.h"
#include "connection.h"
#include "fastener_table.h"
#include "ledger.h"
#include "reference_table.h"
#include "shop_table.h"
#include "statement.h"
#include "test_server.h"
#include "tightening_table.h"
#include "tool_table.h"

namespace steadyturn {

inline const EntryStamp stamp{.at = "2026-03-14T09:26:53.589Z", .who = "petra"};

inline QByteArray bytesOf(const std::string& path) {
  QFile file(QString::fromStdString(path));
  return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

inline void writeBytes(const std::string& path, const QByteArray& bytes) {
  QFile file(QString::fromStdString(path));
  ASSERT_TRUE(file.open(QIODevice::WriteOnly | QIODevice::Truncate));
  ASSERT_EQ(file.write(bytes), bytes.size());
}

class ShopFolder : public testing::Test {
 protected:
  std::string in(const std::string& name) const {
    return folder_.filePath(QString::fromStdString(name)).toStdString();
  }
  QTemporaryDir folder_;
};

// Everything of an open shop, in the order in which it must be let go.
struct OpenShop {
  explicit OpenShop(Database opened) : database(std::move(opened)) {}
  Database database;
  Ledger ledger{database};
  ShopTable shop{database, ledger};
  ToolTable tools{database, ledger};
  ReferenceTable references{database, ledger};
  FastenerTable fasteners{database, ledger};
  CheckTable checks{database, ledger};
  TighteningTable tightenings{database, ledger};

  std::int64_t count(const std::string& query) {
    Statement statement(database, query);
    return statement.run().next() ? statement.integer(0) : -1;
  }
  std::string lastEntry() {
    Statement statement(database, "SELECT entry FROM ledger ORDER BY seq DESC LIMIT 1");
    return statement.run().next() ? statement.bytes(0).toStdString() : std::string();
  }
};

class ShopTest : public ShopFolder {
 protected:
  void SetUp() override {
    address_ = hasTestServer() ? freshDatabase() : in("shop.sturn");
    auto created = Database::create(address_);
    ASSERT_TRUE(created.has_value()) << created.error().front().accepted;
    open_ = std::make_unique<OpenShop>(std::move(*created));
  }
  OpenShop& shop() { return *open_; }
  template <typename Write>
  void write(Write&& inside) {
    Transaction transaction(shop().database);
    inside(shop());
    transaction.commit();
  }
  // The engine's words when it refuses; empty when it doesn't. As the program asks, or on a server the shop's owner,
  // who may do more than the program.
  std::string refusalToProgram(const std::string& sql) {
    try {
      Statement(shop().database, sql).run();
      return {};
    } catch (const StoreError& error) {
      return error.problem().accepted;
    }
  }
  std::string refusal(const std::string& sql) {
    return hasTestServer() ? sayToServer(address_, sql) : refusalToProgram(sql);
  }
  std::string address_;
  std::unique_ptr<OpenShop> open_;
};

}  // namespace steadyturn
