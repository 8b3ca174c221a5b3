// A change of the shop by somebody who may make it. Nothing in the application layer writes without one: the stamp of
// a ledger entry comes from here alone.
#pragma once

#include "inside.h"
#include "permission.h"

namespace steadyturn {

class Writing {
 public:
  // Takes the write lock and then asks whether the account that acts may: what another program changed about it
  // before counts. Throws StoreError (NotPermitted where it may not); nothing is kept unless committed.
  Writing(Shop::Inside& shop, Act act);
  EntryStamp stamp() const { return {shop_.now(), shop_.who}; }
  void commit() { transaction_.commit(); }

 private:
  Shop::Inside& shop_;
  Transaction transaction_;
};

}  // namespace steadyturn
