// The shop as it is at one moment: everything read while a Snapshot lives belongs together, though others go on
// writing. Nothing may be written meanwhile on its own connection.
#pragma once

#include "database.h"

namespace steadyturn {

class Snapshot {
 public:
  // REQUIRES: no transaction on this connection (std::logic_error). Throws StoreError.
  explicit Snapshot(Database& database);
  ~Snapshot();
  Snapshot(const Snapshot&) = delete;
  Snapshot& operator=(const Snapshot&) = delete;

 private:
  Connection& connection_;
};

}  // namespace steadyturn
