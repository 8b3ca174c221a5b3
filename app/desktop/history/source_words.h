// Where the figures of a history come from, in one line.
#pragma once

#include <QString>

#include "history_chart.h"

namespace steadyturn {

QString sourceWords(const HistoryData& data);

}  // namespace steadyturn
