// What the shop accepts of each record, for one typed in as for a million imported. Field names are the CSV columns'.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "records.h"
#include "unit_guard.h"

namespace steadyturn {

// Ranges, kinds, order of values (min > max …), text lengths; not whether the id is taken.
Problems problemsOf(const Tool& tool);
Problems problemsOf(const Reference& reference);
Problems problemsOf(const Fastener& fastener);
// What is worth a second look though it is taken in: plastic without a limit, a torque that suits another unit …
std::vector<std::string> warningsOf(const Fastener& fastener);
// What the fastener's thread could sensibly take; nothing where its thread is not an ISO metric one.
std::optional<SensibleTorque> sensibleTorqueFor(const Fastener& fastener);
std::optional<UnitQuestion> unitQuestionOf(const Fastener& fastener);
Problems problemsOf(const Tightening& tightening);

void append(Problems& into, const Problems& more);

// Text as people type it: at most 10,000 bytes, valid UTF-8, no control character but tab and line feed; an id is not
// empty and at most 200 bytes.
void checkText(Problems& problems, const std::string& field, const std::string& text);
void checkId(Problems& problems, const std::string& field, const std::string& id);

}  // namespace steadyturn
