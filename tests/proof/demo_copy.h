// The demo depot, made once for the program, and copies of it to do things to.
#pragma once

#include <QTemporaryDir>
#include <string>

#include "shop_proof.h"

namespace steadyturn {

class DemoCopies {
 public:
  DemoCopies();
  const std::string& original() const { return original_; }
  // Replaces the last copy.
  std::string fresh();
  std::string in(const std::string& name) const;

 private:
  QTemporaryDir folder_;
  std::string original_, copy_;
};

DemoCopies& demoCopies();

// Throws std::runtime_error where the shop can't be opened or read.
Verification verified(const std::string& path, const std::optional<Checkpoint>& checkpoint = {});
std::string listed(const Verification& verification);

}  // namespace steadyturn
