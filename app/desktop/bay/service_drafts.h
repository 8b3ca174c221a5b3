// Service lists that were typed and are not saved yet. They are kept in this workstation's settings, so that neither
// leaving the page nor the end of the program loses one.
#pragma once

#include <map>
#include <optional>
#include <string>

#include "job_record.h"

namespace steadyturn {

struct ServiceDraft {
  std::optional<ServiceList> from;  // the saved list that it changes; absent: a new one
  ServiceList typed;
};
using ServiceDrafts = std::map<std::string, ServiceDraft>;  // by the name of `from`; "" is the new one

ServiceDrafts keptServiceDrafts(const std::string& shopId);
void keepServiceDrafts(const std::string& shopId, const ServiceDrafts& drafts);

}  // namespace steadyturn
