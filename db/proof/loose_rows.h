// Rows that belong to a record and are reached through it, but whose record is not there; and the search index, which
// must show what the fasteners say.
#pragma once

#include "record_match.h"

namespace steadyturn {

void findLooseRows(Database& database, const ReportFault& report);

}  // namespace steadyturn
