// The statements that a server keeps ready, parsed and planned, for one connection (PostgreSQL 15, SQL commands,
// PREPARE): parsing and planning a short statement takes a server longer than running it.
#pragma once

#include <QHash>
#include <QString>
#include <QStringList>

namespace steadyturn {

// `sql` with `values`, as the driver writes them, in the place of its '?'. REQUIRES: no '?' in a quoted piece of sql
// or in a comment, and as many values as '?'.
QString withValues(const QString& sql, const QStringList& values);

class ServerPlans {
 public:
  // What to say, in this order, to run `sql` with `values` (as in withValues). Only what reads or writes rows is kept
  // ready.
  QStringList callOf(const QString& sql, const QStringList& values);
  // Something failed, or the connection is a new one: nobody knows what the server still has.
  void forget();

 private:
  QHash<QString, QString> names_;  // by the statement's text
  qint64 named_ = 0;               // so far; no name comes twice
  int calls_ = 0;                  // since all was forgotten
  bool clear_ = true;              // the server is to forget first
};

}  // namespace steadyturn
