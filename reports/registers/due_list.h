// The due list to print for the bench: what is overdue, what comes this week, what comes later this month.
#pragma once

#include <string>
#include <vector>

#include "due_work.h"
#include "report_document.h"

namespace steadyturn {

struct DueListData {
  std::string shopName{}, shopPlace{};
  Date today{};
  double confidence = 0.95;     // of the prediction interval that "by drift" goes by
  std::vector<DueWork> work{};  // tools in service, in any order
};

ReportDocument buildDueList(const DueListData& data);

}  // namespace steadyturn
