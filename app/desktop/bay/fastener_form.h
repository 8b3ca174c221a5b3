// A specification as it is typed.
#pragma once

#include <QString>
#include <map>

#include "records.h"

namespace steadyturn {

// Fields by the names that problems use: "target", "part_limit" …
struct FastenerForm {
  std::map<std::string, QString> texts;
  Unit unit = Unit::NewtonMetre;
  std::optional<bool> renew;

  bool operator==(const FastenerForm&) const = default;
  QString text(const std::string& field) const;
  // All that is wrong with it at once.
  Result<Fastener> fastener() const;
  // What can be read already, for questions while typing goes on; nothing without a target.
  std::optional<Fastener> soFar() const;
};
FastenerForm formOf(const Fastener& fastener);

}  // namespace steadyturn
