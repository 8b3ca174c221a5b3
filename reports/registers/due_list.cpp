#include "due_list.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace steadyturn {
namespace {

std::vector<DueWork> inOrder(std::vector<DueWork> work) {
  std::ranges::sort(work, [](const DueWork& one, const DueWork& other) {
    return std::tie(one.due, one.tool) < std::tie(other.due, other.tool);  // no date: first
  });
  return work;
}

std::vector<DueWork> of(DueWhen when, const DueListData& data) {
  std::vector<DueWork> chosen;
  std::ranges::copy_if(data.work, std::back_inserter(chosen),
                       [&](const DueWork& work) { return dueWhen(work, data.today) == when; });
  return inOrder(std::move(chosen));
}

std::string dateOr(const std::optional<Date>& date, const char* otherwise) {
  return date ? writeDate(*date) : otherwise;
}

// The last column is filled in by hand; no-break spaces in its heading keep it wide enough for that.
TableBlock tableOf(const std::string& heading, const std::vector<DueWork>& work) {
  TableBlock table{.heading = heading,
                   .columns = {{"Tool"},
                               {"What it is"},
                               {"Due"},
                               {"Why"},
                               {"Last check"},
                               {"Set-points to check"},
                               {"Done,\u00A0by\u00A0(initials)"}},
                   .rows = {}};
  for (const auto& one : work) {
    table.rows.push_back({one.tool, one.description, dateOr(one.due, "now"), whyDueWords(one),
                          dateOr(one.lastCheck, "none"), setPointsWords(one), ""});
  }
  return table;
}

void addSection(ReportDocument& report, const std::string& heading, const std::vector<DueWork>& work) {
  if (work.empty()) {
    report.blocks.push_back(ParagraphBlock{.heading = heading, .text = "None."});
  } else {
    report.blocks.push_back(tableOf(heading, work));
  }
}

std::string laterWords(const std::vector<DueWork>& later) {
  const auto& first = later.front();
  return fmt::format("{} {} due after this month; the first is {} on {}.", later.size(),
                     later.size() == 1 ? "more tool is" : "more tools are", first.tool, writeDate(*first.due));
}

std::string explanation(const DueListData& data) {
  return fmt::format(
      "A tool under the first heading is not used until it has been checked and found within its limits. By date: "
      "the "
      "interval of the tool or of the workshop after its last check. By drift: the day from which one more check "
      "could "
      "find its mean deviation outside its limits, going by the {} % prediction interval of its own checks (one "
      "fitted drift across its adjustments). Set-points and readings: ISO 6789-1:2017. Dates hold as of {}.",
      writeRounded(data.confidence * 100), writeDate(data.today));
}

}  // namespace

ReportDocument buildDueList(const DueListData& data) {
  const auto today = writeDate(data.today);
  ReportDocument report{.title = "Torque tools due for a check",
                        .number = fmt::format("due-{}", today),
                        .issuer = data.shopPlace.empty() ? data.shopName : data.shopName + ", " + data.shopPlace,
                        .issued = today,
                        .blocks = {}};
  addSection(report, "Overdue, failed or never checked", of(DueWhen::Now, data));
  const auto sunday = endOfWeek(data.today), monthEnd = endOfMonth(data.today);
  addSection(report, fmt::format("This week, to Sunday {}", writeDate(sunday)), of(DueWhen::ThisWeek, data));
  if (monthEnd > sunday) {
    addSection(report, fmt::format("This month, to {}", writeDate(monthEnd)), of(DueWhen::ThisMonth, data));
  }
  const auto later = of(DueWhen::Later, data);
  if (!later.empty()) report.blocks.push_back(ParagraphBlock{.heading = "Later", .text = laterWords(later)});
  report.blocks.push_back(ParagraphBlock{.heading = "How to read this list", .text = explanation(data)});
  return report;
}

}  // namespace steadyturn
