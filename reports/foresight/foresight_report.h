// Whether earlier predictions held, and how long the checking interval may be, as a paper.
#pragma once

#include "foresight_charts.h"
#include "observed_reliability.h"
#include "report_document.h"
#include "review_methods.h"

namespace steadyturn {

struct ForesightReportData {
  std::string shopName;
  Date asOf{};
  BacktestScores scores{};
  WhatIf whatIf{};
  std::size_t tools = 0;                    // that the interval is asked for
  ObservedReliability observed{};           // whatever the interval was
  std::string assumption{};                 // empty: every fleet has a record
  std::vector<ReviewedInterval> methods{};  // of one tool; empty for many
};

// "88 of 90 checks inside: 97.8 % (92.2 to 99.7 %), after 371 days on average".
std::string observedText(const ObservedReliability& observed);

ReportDocument buildForesightReport(const ForesightReportData& data);

}  // namespace steadyturn
