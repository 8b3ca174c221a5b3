// An invented check and an invented history, for every report's test.
#pragma once

#include "certificate.h"
#include "history_chart.h"

namespace steadyturn::test {

// A wrench adjusted on the day: as found beside as left, with surroundings, reference and due date.
CertificateData demoCertificate();
// Two segments: yearly checks, an adjustment in 2023, drifting.
HistoryData demoHistory();
// Fills what a store would have kept of an evaluation.
void evaluateStored(const Tool& tool, Check& check);
HistoryData historyOf(std::vector<PointSummary> points, Date asOf);
PointSummary summary(const char* date, Phase phase, double deviation);

}  // namespace steadyturn::test
